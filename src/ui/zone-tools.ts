import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Tool } from '../map/types';
import { moveZone, rotateZone } from '../measure/shapes';
import { addZone, removeZones, reorderZone } from '../yard/edits';
import type { Zone, ZoneKind } from '../yard/types';
import { AppPart, fieldValue } from './app-part';
import { fold } from './fold';
import './quantity-field';
import { KIND_WORDS } from '../words/zoneWords';
import type { QuantityChange } from './quantity-field';
import { shared } from './shared';

const KINDS_TO_CUT: readonly ZoneKind[] = ['bed', 'hardscape', 'structure', 'water', 'turf', 'other'];

/** What can be done with one zone, by pointer or by typed values. */
@customElement('zone-tools')
export class ZoneTools extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .tools { display: grid; grid-template-columns: 1fr 1fr; gap: 0.35rem; margin-bottom: 0.5rem; }
      .typed { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  @state() private cutKind: ZoneKind = 'bed';
  @state() private eastM: number | null = null;
  @state() private northM: number | null = null;
  @state() private turn = '';

  protected override render() {
    const { zone, app } = this;
    const { tool } = app.view;
    const button = (words: string, wanted: Tool, isOn: boolean) =>
      html`<button aria-pressed=${isOn ? 'true' : 'false'} @click=${() => app.setView({ tool: isOn ? { type: 'select' } : wanted })}>${words}</button>`;
    const isDraw = (purpose: 'hole' | 'cut') => tool.type === 'draw' && tool.purpose === purpose;
    const draw = (purpose: 'hole' | 'cut', kind: ZoneKind): Tool => ({
      type: 'draw',
      shape: 'polygon',
      purpose,
      kind,
      zoneId: zone.id,
    });
    const index = app.yard.zones.findIndex((each) => each.id === zone.id);
    return html`
      <div class="tools">
        ${button('Reshape corners', { type: 'reshape', zoneId: zone.id }, tool.type === 'reshape')}
        ${button('Split by a line', { type: 'split', zoneId: zone.id }, tool.type === 'split')}
        ${button('Cut a hole', draw('hole', zone.kind), isDraw('hole'))}
        <button @click=${() => app.map?.fit([zone.id])}>Show</button>
        ${button(`Cut out: ${KIND_WORDS[this.cutKind].toLowerCase()}`, draw('cut', this.cutKind), isDraw('cut'))}
        <select aria-label="Kind to cut out of the zone" @change=${(event: Event) => {
          this.cutKind = fieldValue(event) as ZoneKind;
        }}>
          ${KINDS_TO_CUT.map((kind) => html`<option value=${kind} .selected=${kind === this.cutKind}>${KIND_WORDS[kind]}</option>`)}
        </select>
        <button class="danger" @click=${() => app.dispatch('Delete zone', (yard) => removeZones(yard, [zone.id]))}>Delete</button>
        <button @click=${this.copy}>Copy beside</button>
      </div>
      <details class="fold"><summary>Move, turn, change order</summary>
        <div class="typed">
          ${this.length('Move east', this.eastM, (value) => {
            this.eastM = value;
          })}
          ${this.length('Move north', this.northM, (value) => {
            this.northM = value;
          })}
          <p class="quiet">Negative moves west or south.</p>
          <button @click=${this.move}>Move</button>
          <label>Turn clockwise, degrees
            <input inputmode="decimal" .value=${this.turn} @input=${(event: Event) => {
              this.turn = fieldValue(event);
            }} /></label>
          <button @click=${this.rotate}>Turn</button>
          <button ?disabled=${index <= 0} @click=${() => this.reorder(index - 1)}>Earlier in the list</button>
          <button ?disabled=${index < 0 || index >= app.yard.zones.length - 1} @click=${() => this.reorder(index + 1)}>Later in the list</button>
        </div>
      </details>
    `;
  }

  private length(label: string, value: number | null, set: (value: number | null) => void) {
    return html`<quantity-field label=${label} quantity="length" optional .system=${this.app.units} .value=${value}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => set(event.detail.valueSi)}></quantity-field>`;
  }

  private move(): void {
    const { plane } = this.app.session.derived.measured;
    const by: readonly [number, number] = [this.eastM ?? 0, this.northM ?? 0];
    if (this.app.attempt('Move zone', (yard) => moveZone(yard, this.zone.id, by, plane))) {
      this.eastM = null;
      this.northM = null;
    }
  }

  private rotate(): void {
    const degrees = Number(this.turn.trim().replace(/°$/, ''));
    if (this.turn.trim() === '' || !Number.isFinite(degrees)) {
      this.app.tell({
        code: 'turn-not-number',
        severity: 'error',
        message: 'Type by how many degrees to turn, such as 12.5 or -90.',
        place: { zoneId: this.zone.id },
      });
      return;
    }
    const { plane } = this.app.session.derived.measured;
    if (this.app.attempt('Turn zone', (yard) => rotateZone(yard, this.zone.id, degrees, plane)))
      this.turn = '';
  }

  private reorder(toIndex: number): void {
    this.app.dispatch('Change order', (yard) => reorderZone(yard, this.zone.id, toIndex));
  }

  /** A twin of the zone, moved a little aside, chosen for the next step. */
  private copy(): void {
    const { plane } = this.app.session.derived.measured;
    const twin: Zone = { ...this.zone, id: this.app.newId('zone'), name: `${this.zone.name} copy` };
    if (this.app.attempt('Copy zone', (yard) => moveZone(addZone(yard, twin), twin.id, [3, 0], plane))) {
      this.app.setView({ selectedZoneIds: [twin.id] });
    }
  }
}
