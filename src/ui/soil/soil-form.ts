import { css, html } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { tableOfTest } from '../../soil/interpretSoil';
import { depthShown } from '../../soil/sampleDepth';
import { tablesOf, usualTable } from '../../soil/tables';
import { EXTRACTANT_WORDS, tableSourceWords } from '../../words/soilWords';
import { EXTRACTANTS, type SoilTest, type ZoneChoice } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { focusAll } from '../parts/focus-all';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import '../visit/zone-choice';
import { sendSoilChange } from './soil-change';
import './soil-values';

const UNIT_CHOICES = { ppm: 'ppm (mg/kg)', 'lb-per-acre': 'lb per acre' } as const;

/** Entry of one soil test as the lab reports it. Sends `soil-change`. */
@customElement('soil-form')
export class SoilForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.6rem 0.5rem; align-items: start; margin-bottom: 0.5rem; }
      .whole { grid-column: 1 / -1; margin: 0; }
      h4 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); font-size: 1rem; }
    `,
  ];

  @property({ attribute: false }) test!: SoilTest;
  @query('#name') private nameField?: HTMLInputElement;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    focusAll(this, () => this.nameField);
  }

  protected override render() {
    const { app, test } = this;
    return html`<form @submit=${(event: Event) => event.preventDefault()}>
      <div class="fields">
        <label class="whole">Name<input id="name" autocomplete="off" .value=${test.name}
          @input=${(event: Event) => this.send('name', { name: fieldValue(event) })} /></label>
        <label>Day of sampling<input type="date" .value=${test.date ?? ''}
          @change=${(event: Event) => this.send('date', { date: fieldValue(event) || null })} /></label>
        <label>Laboratory<input autocomplete="off" .value=${test.lab}
          @input=${(event: Event) => this.send('lab', { lab: fieldValue(event) })} /></label>
      </div>
      <h4>Ground it was taken from</h4>
      <zone-choice .app=${app} .rev=${this.rev} .choice=${test.zones}
        @choice-change=${(event: CustomEvent<ZoneChoice>) => this.send('zones', { zones: event.detail })}></zone-choice>
      <h4>Figures of the report</h4>
      <div class="fields">
        ${selectField('Extracted by (method)', test.extractant, EXTRACTANTS, EXTRACTANT_WORDS, (extractant) => this.send('extractant', { extractant, tableId: '' }))}
        ${selectField('Unit of the report', test.labUnit, ['ppm', 'lb-per-acre'] as const, UNIT_CHOICES, (labUnit) => this.send('unit', { labUnit }))}
      </div>
      <p class="quiet">As elements: P, not P₂O₅; K, not K₂O. Figures of one method cannot be read by the table of another.</p>
      <soil-values .app=${app} .rev=${this.rev} .test=${test}></soil-values>
      ${this.renderTable()}
      <h4>Soil</h4>
      <div class="fields">
        ${this.number('pH', 'ph', 14)}
        ${this.number('Buffer pH', 'bufferPh', 14)}
        ${this.number('Organic matter', 'organicMatterPct', 100, '%')}
        ${this.number('Cation exchange (meq/100 g)', 'cecCmolPerKg', 200)}
        <quantity-field label="Depth of the sample" quantity="depth" unit=${app.units === 'us' ? 'in' : 'cm'} .system=${app.units} .value=${depthShown(test.depthM, app.units)} .min=${0.005} .max=${2}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi !== null) this.send('depth', { depthM: event.detail.valueSi });
          }}></quantity-field>
      </div>
      <h4>The lab’s advice</h4>
      <div class="fields">
        <quantity-field class="whole" label="Lime, as pure calcium carbonate (empty: none advised)" quantity="mass-per-area" optional .system=${app.units} .value=${test.limeKgPerM2} .min=${0} .max=${10}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send('lime', { limeKgPerM2: event.detail.valueSi })}></quantity-field>
        <quantity-field class="whole" label="Elemental sulfur (empty: none advised)" quantity="mass-per-area" optional .system=${app.units} .value=${test.sulfurKgPerM2} .min=${0} .max=${10}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send('sulfur', { sulfurKgPerM2: event.detail.valueSi })}></quantity-field>
        <label class="whole">In the lab’s own words<textarea .value=${test.labAdvice}
          @input=${(event: Event) => this.send('advice', { labAdvice: fieldValue(event) })}></textarea></label>
        <label class="whole">Note<textarea .value=${test.note}
          @input=${(event: Event) => this.send('note', { note: fieldValue(event) })}></textarea></label>
      </div>
    </form>`;
  }

  private renderTable() {
    const { test } = this;
    const tables = tablesOf(test.extractant);
    const usual = usualTable(test.extractant);
    const table = tableOfTest(test);
    if (tables.length === 0 || !table) {
      return html`<p class="note">No published table is kept for this method: only the lab’s own ratings count.</p>`;
    }
    return html`
      <label>Read by the table<select @change=${(event: Event) => this.send('table', { tableId: fieldValue(event) })}>
        ${tables.map(
          (each) => html`<option value=${each.id} .selected=${each.id === table.id}>${each.name}</option>`,
        )}
      </select></label>
      <p class="quiet">${table === usual ? 'The usual one for this method. ' : ''}${tableSourceWords(table)} ${table.phosphorusWords}</p>
    `;
  }

  private number(
    label: string,
    key: 'ph' | 'bufferPh' | 'organicMatterPct' | 'cecCmolPerKg',
    max: number,
    suffix = '',
  ) {
    return html`<number-field label=${label} suffix=${suffix} optional .value=${this.test[key]} .min=${0} .max=${max}
      @number-change=${(event: CustomEvent<NumberChange>) => this.send(key, { [key]: event.detail.value })}></number-field>`;
  }

  private send(field: string, change: Partial<SoilTest>): void {
    sendSoilChange(this, field, change);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'soil-form': SoilForm;
  }
}
