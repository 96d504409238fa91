import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { flipZone, moveZone, repeatZone, rotateZone } from '../../measure/shapes';
import { freeName } from '../../words/zoneWords';
import { reorderZone } from '../../yard/edits';
import type { Zone } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

/** Lines to flip about, and their directions, degrees from north. */
const FLIPS = { 'east-west': 0, 'north-south': 90 } as const;
type Flip = keyof typeof FLIPS;
const FLIP_WORDS: Readonly<Record<Flip, string>> = {
  'east-west': 'East for west',
  'north-south': 'North for south',
};
const MOST_COPIES = 50;

/** What is done with a whole zone by typed values: move, turn, flip, repeat in a row, its place in the list. */
@customElement('zone-whole-tools')
export class ZoneWholeTools extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .typed { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
      .typed + .typed { margin-top: 0.75rem; padding-top: 0.75rem; border-top: 1px solid var(--line); }
      .whole { grid-column: 1 / -1; margin: 0; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  @state() private eastM: number | null = null;
  @state() private northM: number | null = null;
  @state() private copies = '';
  @state() private turn = '';
  @state() private flip: Flip = 'east-west';

  protected override render() {
    const { zone, app } = this;
    const index = app.yard.zones.findIndex((each) => each.id === zone.id);
    return html`
      <div class="typed">
        ${this.length('Move east', this.eastM, (value) => {
          this.eastM = value;
        })}
        ${this.length('Move north', this.northM, (value) => {
          this.northM = value;
        })}
        <p class="quiet whole">Negative moves west or south.</p>
        <label>Copies in a row
          <input inputmode="numeric" placeholder="1" .value=${this.copies} @input=${(event: Event) => {
            this.copies = fieldValue(event);
          }} /></label>
        <span></span>
        <button @click=${this.move}>Move</button>
        <button @click=${this.repeat}>Copy that far apart</button>
      </div>
      <div class="typed">
        <label>Turn clockwise, degrees
          <input inputmode="decimal" .value=${this.turn} @input=${(event: Event) => {
            this.turn = fieldValue(event);
          }} /></label>
        <button @click=${this.rotate}>Turn</button>
        ${selectField('Flip', this.flip, Object.keys(FLIPS) as Flip[], FLIP_WORDS, (flip) => {
          this.flip = flip;
        })}
        <button @click=${this.turnOver}>Flip</button>
      </div>
      <div class="typed">
        <button ?disabled=${index <= 0} @click=${() => this.reorder(index - 1)}>Earlier in the list</button>
        <button ?disabled=${index < 0 || index >= app.yard.zones.length - 1} @click=${() => this.reorder(index + 1)}>Later in the list</button>
      </div>
    `;
  }

  private length(label: string, value: number | null, set: (value: number | null) => void) {
    return html`<quantity-field label=${label} quantity="length" optional .system=${this.app.units} .value=${value}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => set(event.detail.valueSi)}></quantity-field>`;
  }

  private get by(): readonly [number, number] {
    return [this.eastM ?? 0, this.northM ?? 0];
  }

  private move(): void {
    const { plane } = this.app.session.derived.measured;
    const { by } = this;
    if (this.app.attempt('Move zone', (yard) => moveZone(yard, this.zone.id, by, plane))) {
      this.eastM = null;
      this.northM = null;
    }
  }

  private fault(code: string, message: string): void {
    this.app.tell({ code, severity: 'error', message, place: { zoneId: this.zone.id } });
  }

  private repeat(): void {
    const { app, zone, by } = this;
    const count = this.copies.trim() === '' ? 1 : Number(this.copies.trim());
    if (!Number.isInteger(count) || count < 1 || count > MOST_COPIES) {
      this.fault('copies-not-number', `Type how many copies, from 1 to ${MOST_COPIES}.`);
      return;
    }
    const names = app.yard.zones.map((each) => each.name);
    const copies = Array.from({ length: count }, () => {
      const name = freeName(`${zone.name || 'Zone'} copy`, names);
      names.push(name);
      return { id: app.newId('zone'), name };
    });
    const { plane } = app.session.derived.measured;
    const label = count === 1 ? 'Copy zone' : `Copy zone ${count} times`;
    if (app.attempt(label, (yard) => repeatZone(yard, zone.id, copies, by, plane)))
      app.setView({ selectedZoneIds: copies.map((copy) => copy.id) });
  }

  private rotate(): void {
    const degrees = Number(this.turn.trim().replace(/°$/, ''));
    if (this.turn.trim() === '' || !Number.isFinite(degrees)) {
      this.fault('turn-not-number', 'Type by how many degrees to turn, such as 12.5 or -90.');
      return;
    }
    const { plane } = this.app.session.derived.measured;
    if (this.app.attempt('Turn zone', (yard) => rotateZone(yard, this.zone.id, degrees, plane)))
      this.turn = '';
  }

  private turnOver(): void {
    const { plane } = this.app.session.derived.measured;
    this.app.attempt('Flip zone', (yard) => flipZone(yard, this.zone.id, FLIPS[this.flip], plane));
  }

  private reorder(toIndex: number): void {
    this.app.dispatch('Change order', (yard) => reorderZone(yard, this.zone.id, toIndex));
  }
}
