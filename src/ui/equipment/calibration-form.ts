import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { calibrationResult } from '../../pace/calibrate/calibrationResult';
import type { Readings } from '../../pace/calibrate/readings';
import { courseLength, SMALL_PLOT_M2 } from '../../pace/calibrate/sprayOutput';
import type { CalibrationResult } from '../../pace/calibrate/types';
import { formatAmountRate } from '../../units/format';
import {
  CALIBRATION_FINDS,
  CALIBRATION_WORDS,
  calibrationCautions,
  equipmentName,
  takenWords,
} from '../../words/equipmentWords';
import { productName } from '../../words/productWords';
import type { Calibration, CalibrationKind, Equipment, Product } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { type CalibrationDraft, calibrationDrafts, type DraftPlace } from './calibration-draft';
import { calibrationDrawing, drawingStyles } from './calibration-drawing';
import './calibration-result';
import { sheetOf } from './calibration-sheets';
import { hasTakings, productsFor, wantedKgPerM2, withCalibration } from './equipment-edits';
import type { AskedDose } from './equipment-open';
import { panChart, panChartStyles } from './pan-chart';
import type { CalibrationSheet, SheetField, SheetStep } from './sheet-types';
import './reading-fields';
import { undoStep } from '../parts/undo-step';

/** One calibration, step by step in the yard. Event `calibration-close` when it is kept or left. */
@customElement('calibration-form')
export class CalibrationForm extends AppPart {
  static override styles = [
    shared,
    fold,
    drawingStyles,
    panChartStyles,
    css`
      :host { display: block; }
      h2 { margin-bottom: 0.25rem; }
      .head { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 0.75rem; align-items: center; margin-bottom: 0.5rem; }
      .head p { margin: 0; }
      ol { list-style: none; counter-reset: step; margin: 0.75rem 0; padding: 0; }
      ol > li { counter-increment: step; position: relative; padding: 0.6rem 0 0.75rem 2.5rem; border-top: 1px solid var(--line); }
      ol > li::before { content: counter(step); position: absolute; left: 0; top: 0.6rem; width: 1.75rem; height: 1.75rem; display: grid; place-items: center; border: 1.5px solid var(--ink); border-radius: 50%; font-weight: 650; }
      .ask { display: grid; gap: 0.6rem; }
      ul { margin: 0.25rem 0 0; padding-left: 1.1rem; }
      .ends { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.75rem 0; }
      .whole { grid-column: 1 / -1; }
    `,
  ];

  @property({ attribute: false }) equipment!: Equipment;
  @property({ attribute: false }) kind!: CalibrationKind;
  /** the dose that it is done for. */
  @property({ attribute: false }) asked: AskedDose | null = null;
  @state() private draft: CalibrationDraft = blankDraft();
  private openFor = '';

  /** On a phone the sheet comes up whole, and goes down again after. */
  override connectedCallback(): void {
    super.connectedCallback();
    this.sendHeight('full');
  }

  /** The button that opened it is gone: the keyboard goes on at the head of the sheet. */
  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('.head button')?.focus({ preventScroll: true });
  }

  private sendHeight(height: 'full' | 'half'): void {
    this.dispatchEvent(new CustomEvent('height-change', { detail: height, bubbles: true, composed: true }));
  }

  protected override willUpdate(): void {
    const key = `${this.app.yard.id} ${this.equipment.id} ${this.kind}`;
    if (key === this.openFor) return;
    this.openFor = key;
    const first = { ...blankDraft(), readings: firstReadings(this.kind, this.equipment) };
    const draft = calibrationDrafts.draftOf(this.place) ?? first;
    this.draft = this.asked ? forDose(draft, this.asked) : draft;
  }

  private get place(): DraftPlace {
    return { yardId: this.app.yard.id, equipmentId: this.equipment.id, kind: this.kind };
  }

  private get products(): readonly Product[] {
    return productsFor(this.app.yard.products, this.equipment.applicator);
  }

  private get product(): Product | null {
    return this.products.find((product) => product.id === this.draft.productId) ?? null;
  }

  private get result(): CalibrationResult {
    const { product, equipment, draft } = this;
    return calibrationResult(this.kind, draft.readings, {
      equipment,
      wantedKgPerM2: product && wantedKgPerM2(product, equipment.applicator, draft.coats, draft.doseKgPerM2),
      units: this.app.units,
    });
  }

  protected override render() {
    const { app, equipment, kind, draft, result } = this;
    const sheet = sheetOf(kind, equipment, draft.readings, app.units);
    return html`
      <div class="head"><button @click=${this.close}>Back</button>
        <p class="quiet">${equipmentName(equipment)}</p></div>
      <h2>${CALIBRATION_WORDS[kind]}</h2>
      <p>Finds ${CALIBRATION_FINDS[kind]}.</p>
      ${calibrationDrawing(kind)}
      <p><b>At hand:</b> ${sheet.needs}</p>
      <div class="note warning"><b>Before you begin</b>
        <ul>${calibrationCautions(equipment.applicator).map((words) => html`<li>${words}</li>`)}</ul></div>
      ${this.renderSteps(sheet)}
      <h3>Result</h3>
      ${kind === 'pans' ? panChart(draft.readings, app.units) : nothing}
      <calibration-result .app=${app} .rev=${this.rev} .result=${result} .equipment=${equipment} .product=${this.product}></calibration-result>
      ${
        result.figures.length > 0
          ? this.renderEnds(result)
          : calibrationDrafts.draftOf(this.place) !== null
            ? html`<div class="row"><button class="plain" @click=${this.drop}>Begin anew</button></div>`
            : nothing
      }
    `;
  }

  private renderSteps({ steps }: CalibrationSheet) {
    return html`<ol @readings-change=${(event: CustomEvent<Readings>) => this.change({ readings: this.following(event.detail) })}>
      ${steps.map((step) => html`<li><p>${step.words}</p>${this.renderFields(step)}</li>`)}</ol>`;
  }

  private renderFields({ fields }: SheetStep) {
    const read = fields.filter((field) => !['product', 'dial', 'coats'].includes(field.type));
    const asked = fields.filter((field) => !read.includes(field));
    return html`
      ${asked.length > 0 ? html`<div class="ask">${asked.map((field) => this.renderAsk(field))}</div>` : nothing}
      ${
        read.length > 0
          ? html`<reading-fields .holdsL=${this.equipment.holds?.unit === 'L' ? this.equipment.holds.value : null} .fields=${read} .readings=${this.draft.readings} .system=${this.app.units} .now=${() => this.app.services.now().getTime()}></reading-fields>`
          : nothing
      }`;
  }

  private renderAsk(field: SheetField) {
    const { draft, products } = this;
    if (field.type === 'dial')
      return html`<label>Setting on the dial<input autocomplete="off" .value=${draft.dial} @input=${(event: Event) => this.change({ dial: fieldValue(event) })} /></label>`;
    if (field.type === 'coats')
      return html`<label>Laid in<select @change=${(event: Event) => this.change({ coats: fieldValue(event) === '2' ? 2 : 1 })}>
        <option value="1" .selected=${draft.coats === 1}>one coat at the full rate</option>
        <option value="2" .selected=${draft.coats === 2}>two coats at half the rate</option></select></label>`;
    if (field.type !== 'product') return nothing;
    if (products.length === 0)
      return html`<p class="note">No product on the shelf goes out with it. ${field.isNeeded ? 'What it puts out is found all the same; put the product on the shelf to keep a setting for it.' : ''}</p>`;
    return html`<label>${field.label}<select @change=${(event: Event) => this.change({ productId: fieldValue(event) || null, doseKgPerM2: null })}>
      <option value="" .selected=${draft.productId === null}>${field.isNeeded ? 'choose from the shelf' : 'none'}</option>
      ${products.map((product) => html`<option value=${product.id} .selected=${product.id === draft.productId}>${productName(product)}</option>`)}
    </select></label>${draft.doseKgPerM2 === null ? nothing : html`<p class="quiet">Held against its dose: ${formatAmountRate({ unit: 'kg', value: draft.doseKgPerM2 }, this.app.units)} in all.</p>`}`;
  }

  private renderEnds(result: CalibrationResult) {
    const { draft } = this;
    const needsProduct = result.settingKgPerM2 !== null && this.product === null;
    return html`
      <div class="ends">
        <label>Done on<input type="date" .value=${draft.on ?? this.app.today()} @change=${(event: Event) => this.change({ on: fieldValue(event) || null })} /></label>
        <label class="whole">Note (weather, ground, pressure)<input autocomplete="off" .value=${draft.note} @input=${(event: Event) => this.change({ note: fieldValue(event) })} /></label>
      </div>
      ${needsProduct ? html`<p class="note">Without a product the setting is not kept, only the record.</p>` : nothing}
      <div class="row">
        <button class="primary" ?disabled=${!hasTakings(result, this.product !== null)} @click=${() => this.keep(result, true)}>Put it into the equipment</button>
        <button @click=${() => this.keep(result, false)}>Keep the record alone</button>
        <button class="plain" @click=${this.drop}>Begin anew</button>
      </div>`;
  }

  /** The course of a small plot follows its width. */
  private following(next: Readings): Readings {
    const { widthM } = next;
    const isOther =
      this.kind === 'small-plot' && widthM !== undefined && widthM !== this.draft.readings.widthM;
    return isOther ? { ...next, lengthM: courseLength(SMALL_PLOT_M2, widthM) } : next;
  }

  private change(change: Partial<CalibrationDraft>): void {
    this.draft = { ...this.draft, ...change };
    calibrationDrafts.keepDraft(this.place, this.draft);
  }

  private keep(result: CalibrationResult, isTaken: boolean): void {
    const { app, equipment, kind, draft } = this;
    const calibration: Calibration = {
      id: app.newId('calibration'),
      kind,
      on: draft.on ?? app.today(),
      productId: this.product?.id ?? null,
      readings: draft.readings,
      note: draft.note.trim(),
    };
    const name = CALIBRATION_WORDS[kind];
    app.dispatch(`Keep ${name.toLowerCase()}`, (yard) =>
      withCalibration(yard, equipment.id, { calibration, result, dial: draft.dial, isTaken }),
    );
    calibrationDrafts.keepDraft(this.place, null);
    const taken = takenWords(result, this.product !== null);
    const words =
      isTaken && taken !== ''
        ? `${name}, put into “${equipmentName(equipment)}”: ${taken}.`
        : `${name}: the record is kept.`;
    app.note('calibration-kept', words, undoStep(app));
    this.close();
  }

  private drop(): void {
    calibrationDrafts.keepDraft(this.place, null);
    this.draft = { ...blankDraft(), readings: firstReadings(this.kind, this.equipment) };
  }

  private close(): void {
    this.sendHeight('half');
    this.dispatchEvent(new CustomEvent('calibration-close', { bubbles: true, composed: true }));
  }
}

function blankDraft(): CalibrationDraft {
  return { readings: {}, productId: null, coats: 1, doseKgPerM2: null, dial: '', note: '', on: null };
}

/** The draft as the dose that asks has it: its product, its coats, its rate. */
function forDose(draft: CalibrationDraft, { productId, coats, kgPerM2 }: AskedDose): CalibrationDraft {
  return { ...draft, productId, coats, doseKgPerM2: kgPerM2 };
}

/** What is known before the first run: the swath as the width of a course. */
function firstReadings(kind: CalibrationKind, { swathM }: Equipment): Readings {
  if (kind === 'catch') return { widthM: swathM };
  return kind === 'small-plot' ? { widthM: swathM, lengthM: courseLength(SMALL_PLOT_M2, swathM) } : {};
}

declare global {
  interface HTMLElementTagNameMap {
    'calibration-form': CalibrationForm;
  }
}
