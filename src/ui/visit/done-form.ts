import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { productOfDose } from '../../plan/applyUse';
import { doneRecord } from '../../plan/laidDose';
import { convertAmount, isBulk } from '../../plan/rate';
import { stockOf } from '../../plan/stockIssues';
import { takeFromStock } from '../../plan/takeFromStock';
import type { DoseFigures, VisitFigures } from '../../plan/types';
import { changeActual, markDone, unmarkDone, usedAmount } from '../../season/markDone';
import type { Quantity } from '../../units/choices';
import { formatAmount, formatArea } from '../../units/format';
import { formatDay } from '../../units/formatDay';
import { type DoneRow, doneRows, notYetWords } from '../../words/doneWords';
import { amountWords, doseName } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import { replaceVisit } from '../../yard/edits';
import type { Amount, DoneRecord, Product, UnitSystem, Visit, VisitDose } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';

/** A visit that is done: the day, what was really used of each product, and what that takes off the shelf. */
@customElement('done-form')
export class DoneForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .mark { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: end; }
      .whole { grid-column: 1 / -1; }
      fieldset { border: 0; border-top: 1px solid var(--line); margin: 0.5rem 0 0; padding: 0.5rem 0 0; min-width: 0; }
      legend { padding: 0; font-weight: 650; }
      .used { display: grid; grid-template-columns: minmax(0, 1fr) 7.5rem; gap: 0.5rem; align-items: start; }
      fieldset p { margin: 0.25rem 0; }
      fieldset button.plain { padding: 0; }
    `,
  ];

  @property({ attribute: false }) visit!: Visit;
  /** null: the day of the visit, or today where that is still to come. */
  @state() private day: string | null = null;
  @state() private fromShelf = true;
  /** the day to come that was typed for a visit done already; it is not taken. */
  @state() private refused = '';

  protected override willUpdate(changed: Map<string, unknown>): void {
    const before = changed.get('visit') as Visit | undefined;
    if (before && before.id !== this.visit.id) {
      this.day = null;
      this.refused = '';
    }
  }

  private get figures(): VisitFigures | null {
    return this.app.session.derived.visit(this.visit.id)?.figures ?? null;
  }

  protected override render() {
    return this.visit.doneOn === null ? this.renderPlanned() : this.renderDone(this.visit.doneOn);
  }

  private renderPlanned() {
    const { app, visit, figures } = this;
    const today = app.today();
    // nothing is done before its day has come
    const usual = visit.date !== null && visit.date <= today ? visit.date : today;
    const day = this.day ?? usual;
    const fault = notYetWords(day, today);
    const stocked = figures?.doses.filter((dose) => stockOf(dose.product, dose.amount.unit) !== null) ?? [];
    return html`
      <form class="mark" novalidate @submit=${(event: Event) => this.mark(event, day, stocked.length > 0 && this.fromShelf)}>
        <label>Done on<input type="date" required max=${today} aria-invalid=${fault !== ''} .value=${day} @change=${(
          event: Event,
        ) => {
          this.day = fieldValue(event) || null;
        }} /></label>
        <button class="primary" ?disabled=${figures === null}>Mark done</button>
        ${dayFault(fault)}
        ${
          stocked.length === 0
            ? nothing
            : html`<label class="check whole"><input type="checkbox" .checked=${this.fromShelf} @change=${(
                event: Event,
              ) => {
                this.fromShelf = isTicked(event);
              }} />Take ${stocked.length === 1 ? stockWords(stocked[0]) : 'the products'} off the shelf, opened packs first</label>`
        }
      </form>
      <p class="quiet">Then type what was really used; the ledger counts that. Label and ground are kept on record as they stand.</p>
    `;
  }

  private renderDone(doneOn: string) {
    const { visit, figures, app, refused } = this;
    const rows = figures ? doneRows(figures, app.yard.products, app.units) : [];
    const tookAny = visit.doses.some((dose) => Object.keys(dose.taken ?? {}).length > 0);
    return html`
      <div class="mark">
        <label>Done on<input type="date" required max=${app.today()} aria-invalid=${refused !== ''} .value=${refused || doneOn} @change=${(event: Event) => this.changeDay(fieldValue(event))} /></label>
        <button @click=${() => app.dispatch('Visit not done', (yard) => unmarkDone(yard, visit.id))}>Not done after all</button>
        ${refused ? dayFault(`${notYetWords(refused, app.today())} It stays ${formatDay(doneOn, true)}.`) : nothing}
      </div>
      ${tookAny ? html`<p class="quiet">“Not done after all” puts back on the shelf what was taken off.</p>` : nothing}
      <p class="quiet">What was laid down is on record as it stood on the day it was marked: later changes of the label, the zones or the plan above leave it as it is. To count such a change, take the mark off and mark the visit done anew.</p>
      ${visit.doses.map((dose) =>
        this.renderDose(
          dose,
          figures,
          rows.find((row) => row.doseId === dose.id),
        ),
      )}
    `;
  }

  private renderDose(dose: VisitDose, figures: VisitFigures | null, row: DoneRow | undefined) {
    const { app } = this;
    const name = doseName(dose, app.yard.products);
    const own = figures?.doses.find((each) => each.dose.id === dose.id) ?? null;
    const record = dose.laid ?? (own && doneRecord(own));
    if (!figures || !record) {
      return dose.actual?.value === 0
        ? html`<fieldset><legend>${name}</legend><p class="quiet">Not put down.</p></fieldset>`
        : html`<fieldset><legend>${name}</legend><p class="note warning"><b>Check: </b>It has no record and cannot be planned as it stands, so nothing of it is counted.</p></fieldset>`;
    }
    const { planned, densityKgPerL } = record;
    const label = productOfDose(app.yard.products, dose);
    const used = usedAmount(dose, figures) ?? planned;
    const inPlanned = convertAmount(used, planned.unit, densityKgPerL);
    const share =
      inPlanned && planned.value > 0 ? Number((inPlanned.value / planned.value).toPrecision(4)) : null;
    const other: Amount['unit'] = used.unit === 'L' ? 'kg' : 'L';
    const turned = used.value > 0 ? convertAmount(used, other, densityKgPerL) : null;
    const set = (actual: Amount | null) =>
      app.dispatch(
        'Change what was used',
        (yard) => changeActual(yard, figures, dose.id, actual),
        `used ${dose.id}`,
      );
    return html`<fieldset><legend>${name}</legend>
      <div class="used">
        <quantity-field label="Really used" .quantity=${quantityOf(label, used)} optional .system=${app.units} .value=${used.value} .min=${0}
          @quantity-change=${(event: CustomEvent<QuantityChange>) =>
            set(
              event.detail.valueSi === null ? null : { unit: used.unit, value: event.detail.valueSi },
            )}></quantity-field>
        <number-field label="Share of the plan" suffix="%" .value=${share} .scale=${100} .min=${0} .max=${10_000}
          @number-change=${(event: CustomEvent<NumberChange>) => {
            const { value } = event.detail;
            if (value !== null)
              set(value === 1 ? null : { unit: planned.unit, value: planned.value * value });
          }}></number-field>
      </div>
      <p class="quiet">Planned: ${this.show(label, planned)}${dose.actual === null ? ', counted as planned' : ''}.${this.takenWords(label, record, dose)}</p>
      ${row ? laidWords(row) : nothing}
      ${dose.laid !== null ? this.renderRecord(record, own) : dose.actual?.value === 0 ? nothing : this.renderUnrecorded(figures)}
      ${turned ? html`<button type="button" class="plain" @click=${() => set(turned)}>Tell it by ${other === 'kg' ? 'weight' : 'volume'}</button>` : nothing}
    </fieldset>`;
  }

  /** The ground on record, and whether today's plan says otherwise. */
  private renderRecord(record: DoneRecord, own: DoseFigures | null) {
    const { app } = this;
    return html`<p class="quiet">On record: ${groundWords(record, app.units)}.</p>
      ${
        own && !isAsRecorded(record, own)
          ? html`<p class="note">By today’s label and zones the plan above would be ${this.show(own.product, own.amount)} on ${groundWords(doneRecord(own), app.units)}; the ledger counts what is on record.</p>`
          : nothing
      }`;
  }

  /** A dose added to a visit that was done already, or marked before records were kept. */
  private renderUnrecorded(figures: VisitFigures) {
    const { app, visit } = this;
    const keep = () =>
      app.dispatch('Put dose on record', (yard) =>
        markDone(yard, figures, visit.doneOn ?? app.today(), false),
      );
    return html`<p class="note">It is not on record yet, so it changes with its label, its zones and the plan above.</p>
      <button type="button" @click=${keep}>Put it on record as it stands</button>`;
  }

  private show(product: Product | null, amount: Amount): string {
    return product ? amountWords(product, amount, this.app.units) : formatAmount(amount, this.app.units);
  }

  /** What the shelf gave, and what it lacked. */
  private takenWords(
    label: Product | null,
    { planned, densityKgPerL }: DoneRecord,
    { taken, actual }: VisitDose,
  ): string {
    if (taken === null) return ' Nothing was taken off the shelf.';
    if (label === null) return '';
    const given = label.packs.reduce((sum, pack) => {
      const content = convertAmount(pack.content, planned.unit, densityKgPerL);
      return sum + (taken[pack.id] ?? 0) * (content?.value ?? 0);
    }, 0);
    const used = convertAmount(actual ?? planned, planned.unit, densityKgPerL);
    const short = used !== null && given < used.value * (1 - 1e-6);
    const words = this.show(label, { unit: planned.unit, value: given });
    return given > 0
      ? ` ${words} came off the shelf${short ? ', all there was' : ''}.`
      : ' The shelf had none of it.';
  }

  private mark(event: Event, day: string, fromShelf: boolean): void {
    event.preventDefault();
    const { app, figures } = this;
    if (!figures || notYetWords(day, app.today()) !== '') return;
    const short = fromShelf
      ? figures.doses.filter(({ product, amount }) => takeFromStock(product, amount).short.value > 0)
      : [];
    app.dispatch('Mark visit done', (yard) => markDone(yard, figures, day, fromShelf));
    const words = !fromShelf
      ? 'The visit is marked done.'
      : short.length === 0
        ? 'The visit is marked done and its products are off the shelf.'
        : 'The visit is marked done; the shelf held less than it took of some products.';
    app.note('visit-done', words, undoStep(app));
  }

  private changeDay(day: string): void {
    if (day === '') return;
    this.refused = notYetWords(day, this.app.today()) === '' ? '' : day;
    if (this.refused) return;
    const { id } = this.visit;
    this.app.dispatch('Change day of visit done', (yard) => {
      const visit = yard.visits.find((each) => each.id === id);
      return visit ? replaceVisit(yard, { ...visit, doneOn: day }) : yard;
    });
  }
}

/** Why a day is not taken; nothing where it is. */
function dayFault(fault: string) {
  return fault === '' ? nothing : html`<p class="note error whole" role="alert">${fault}</p>`;
}

/** What was laid down by what was used; beside it what the plan wanted, where that differs. */
function laidWords({ laid, laidByPlan }: DoneRow) {
  if (laid.length === 0 && laidByPlan.length === 0) return nothing;
  const words = laid.length === 0 ? 'nothing' : laid.join('; ');
  const isAsPlanned = words === laidByPlan.join('; ');
  return html`<p><b>Laid down: ${words}</b>${isAsPlanned ? nothing : html` <span class="quiet">(by the plan: ${laidByPlan.join('; ')})</span>`}</p>`;
}

function quantityOf(product: Product | null, amount: Amount): Quantity {
  if (amount.unit === 'kg') return 'mass';
  return product && isBulk(product) ? 'bulk-volume' : 'volume';
}

/** "Front lawn, Back lawn and 3 more, 2,000 sq ft". */
function groundWords({ zones }: DoneRecord, units: UnitSystem): string {
  if (zones.length === 0) return 'no ground';
  const shown = zones.slice(0, zones.length > 4 ? 3 : 4).map((zone) => groundName(zone.name));
  const more = zones.length > shown.length ? ` and ${zones.length - shown.length} more` : '';
  const areaM2 = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  return `${shown.join(', ')}${more}, ${formatArea(areaM2, units, 4)}`;
}

/** True while today's plan lays down the same, to a thousandth, on the same ground. */
function isAsRecorded(record: DoneRecord, own: DoseFigures): boolean {
  const now = doneRecord(own);
  const isNear = (a: number, b: number) => Math.abs(a - b) <= 1e-3 * Math.max(a, b);
  return (
    now.planned.unit === record.planned.unit &&
    isNear(now.planned.value, record.planned.value) &&
    now.zones.length === record.zones.length &&
    now.zones.every(({ zoneId, areaM2 }) =>
      record.zones.some((zone) => zone.zoneId === zoneId && isNear(zone.areaM2, areaM2)),
    )
  );
}

function stockWords(dose: DoseFigures | undefined): string {
  return dose?.product.name.trim() || 'the product';
}

declare global {
  interface HTMLElementTagNameMap {
    'done-form': DoneForm;
  }
}
