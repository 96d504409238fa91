import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  MOST_PANS,
  MOST_READINGS,
  type Readings,
  readingList,
  withReadingList,
} from '../../pace/calibrate/readings';
import type { UnitSystem } from '../../yard/types';
import { fieldValue } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import { DRAWS, type Draw, drawRead, withDraw } from './draw-readings';
import type { SheetField } from './sheet-types';
import './timed-readings';

/** Pans across the path that can be laid. */
const USUAL_PANS = 9;
const PAN_COUNTS = [5, 7, 9, 11, 13, MOST_PANS] as const;

/** The fields of one step of a calibration. Event `readings-change` with all readings anew. */
@customElement('reading-fields')
export class ReadingFields extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.6rem; }
      .pair { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.6rem 0.5rem; align-items: start; }
      .pans { display: grid; grid-template-columns: repeat(auto-fill, minmax(6.5rem, 1fr)); gap: 0.5rem; }
      p { margin: 0; }
    `,
  ];

  @property({ attribute: false }) fields: readonly SheetField[] = [];
  @property({ attribute: false }) readings: Readings = {};
  @property() system: UnitSystem = 'us';
  @property({ attribute: false }) now: () => number = () => Date.now();
  /** what a full bottle holds, L; null: not told. */
  @property({ attribute: false }) holdsL: number | null = null;
  /** way of the draw that was chosen and has no reading yet. */
  private draw: Draw | null = null;

  protected override render() {
    const small = this.fields.filter((field) => field.type === 'quantity');
    return html`
      ${small.length > 0 ? html`<div class="pair">${small.map((field) => this.renderField(field))}</div>` : nothing}
      ${this.fields.filter((field) => field.type !== 'quantity').map((field) => this.renderField(field))}
    `;
  }

  private renderField(field: SheetField): unknown {
    switch (field.type) {
      case 'quantity':
        return html`<quantity-field label=${field.label} quantity=${field.quantity} unit=${field.unit ?? ''} optional .system=${this.system}
          .value=${this.readings[field.key] ?? null} .min=${1e-6} .max=${field.max}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.put(field.key, event.detail.valueSi)}></quantity-field>`;
      case 'times':
        return html`<timed-readings label=${field.label} .values=${readingList(this.readings, 'timeS')} .now=${this.now}
          @times-change=${(event: CustomEvent<readonly number[]>) => this.send(withReadingList(this.readings, 'timeS', event.detail))}></timed-readings>`;
      case 'quantities':
        return this.renderList(
          field.key,
          (
            value,
            i,
          ) => html`<quantity-field label=${`${field.label} ${i + 1}`} quantity=${field.quantity} unit=${field.unit ?? ''} optional .system=${this.system}
          .value=${value} .min=${1e-6} .max=${field.max} @quantity-change=${(event: CustomEvent<QuantityChange>) => this.putInList(field.key, i, event.detail.valueSi)}></quantity-field>`,
        );
      case 'counts':
        return this.renderList(
          field.key,
          (
            value,
            i,
          ) => html`<number-field label=${`${field.label} ${i + 1}`} optional whole .value=${value} .min=${1} .max=${10_000}
          @number-change=${(event: CustomEvent<NumberChange>) => this.putInList(field.key, i, event.detail.value)}></number-field>`,
        );
      case 'draw':
        return this.renderDraw();
      case 'pans':
        return this.renderPans();
      default:
        return nothing;
    }
  }

  /** The readings of a list, and one empty field after them. */
  private renderList(key: string, one: (value: number | null, index: number) => unknown) {
    const values = readingList(this.readings, key);
    const shown = values.length < MOST_READINGS ? [...values, null] : values;
    return html`<div class="pair">${shown.map(one)}</div>`;
  }

  private renderDraw() {
    const draw = this.draw ?? drawRead(this.readings);
    const small = this.system === 'us' ? 'fl oz' : 'mL';
    return html`
      <label>Share of product<select @change=${(event: Event) => this.chooseDraw(fieldValue(event) as Draw)}>
        ${(Object.keys(DRAWS) as Draw[]).map((each) => html`<option value=${each} .selected=${each === draw}>${DRAWS[each].words}</option>`)}
      </select></label>
      ${
        draw === 'ratio'
          ? html`<number-field label="One part of product to this many of water" optional .value=${this.readings.waterParts ?? null} .min=${0.1} .max=${10_000}
              @number-change=${(event: CustomEvent<NumberChange>) => this.put('waterParts', event.detail.value)}></number-field>
            <p class="quiet">${this.system === 'us' ? 'A dial at 4 fl oz a gallon is 1 to 32: 128 by the fluid ounces.' : 'A dial at 30 mL a litre is 1 to 33: 1,000 by the millilitres.'}</p>`
          : nothing
      }
      ${draw === 'emptied' ? this.renderGone('emptiedL', 'A full bottle holds', 'emptiedS', 'Time until it was empty', small) : nothing}
      ${
        draw === 'gone'
          ? html`<p class="quiet">Fill the rinsed bottle with plain water to a known level, spray for about a minute, measure what is gone.</p>
            ${this.renderGone('goneL', 'Gone from the bottle', 'goneS', 'Sprayed for', small)}`
          : nothing
      }`;
  }

  private renderGone(volume: string, volumeLabel: string, time: string, timeLabel: string, unit: string) {
    return html`<div class="pair">
      <quantity-field label=${volumeLabel} quantity="volume" unit=${unit} optional .system=${this.system} .value=${this.readings[volume] ?? null} .min=${1e-6} .max=${100}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => this.put(volume, event.detail.valueSi)}></quantity-field>
      <number-field label=${timeLabel} suffix="s" optional .value=${this.readings[time] ?? null} .min=${1} .max=${36_000}
        @number-change=${(event: CustomEvent<NumberChange>) => this.put(time, event.detail.value)}></number-field></div>`;
  }

  private renderPans() {
    const count = this.readings.pans ?? USUAL_PANS;
    const middle = (count - 1) / 2;
    return html`
      <label>Pans<select @change=${(event: Event) => this.setPans(Number(fieldValue(event)))}>${PAN_COUNTS.map(
        (each) => html`<option value=${each} .selected=${each === count}>${each}</option>`,
      )}</select></label>
      <div class="pans">${Array.from({ length: count }, (_, i) => {
        const from = i - middle;
        const name = from === 0 ? 'Middle' : `${Math.abs(from)} ${from < 0 ? 'left' : 'right'}`;
        return html`<number-field label=${name} optional .value=${this.readings[`pan${i + 1}`] ?? null} .min=${0} .max=${1_000_000}
          @number-change=${(event: CustomEvent<NumberChange>) => this.putPan(i, count, event.detail.value)}></number-field>`;
      })}</div>
      <p class="quiet">Fill in every pan; one with nothing in it holds 0.</p>`;
  }

  private putPan(index: number, count: number, value: number | null): void {
    const { [`pan${index + 1}`]: _before, ...others } = this.readings;
    this.send({ ...others, pans: count, ...(value === null ? {} : { [`pan${index + 1}`]: value }) });
  }

  /** More pans come in at both ends, fewer go from both: the middle one stays the middle one. */
  private setPans(count: number): void {
    const before = this.readings.pans ?? USUAL_PANS;
    const shift = (count - before) / 2;
    const others = Object.entries(this.readings).filter(([key]) => !/^pan\d+$/.test(key));
    const moved = Array.from(
      { length: count },
      (_, i) => [`pan${i + 1}`, this.readings[`pan${i + 1 - shift}`]] as const,
    );
    const held = moved.flatMap(([key, value]) => (value === undefined ? [] : [[key, value] as const]));
    this.send(Object.fromEntries([...others, ['pans', count], ...held]));
  }

  private chooseDraw(draw: Draw): void {
    this.draw = draw;
    this.send(withDraw(this.readings, draw, this.holdsL));
    this.requestUpdate();
  }

  private put(key: string, value: number | null): void {
    const { [key]: _before, ...others } = this.readings;
    this.send(value === null ? others : { ...others, [key]: value });
  }

  private putInList(key: string, index: number, value: number | null): void {
    const values = readingList(this.readings, key);
    const next =
      value === null
        ? values.filter((_, i) => i !== index)
        : index < values.length
          ? values.with(index, value)
          : [...values, value];
    this.send(withReadingList(this.readings, key, next));
  }

  private send(readings: Readings): void {
    this.dispatchEvent(
      new CustomEvent<Readings>('readings-change', { detail: readings, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-fields': ReadingFields;
  }
}
