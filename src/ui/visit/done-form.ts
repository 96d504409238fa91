import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { convertAmount, isBulk } from '../../plan/rate';
import { stockOf } from '../../plan/stockIssues';
import { takeFromStock } from '../../plan/takeFromStock';
import type { DoseFigures, VisitFigures } from '../../plan/types';
import { changeActual, markDone, unmarkDone, usedAmount } from '../../season/markDone';
import type { Quantity } from '../../units/choices';
import { amountWords, doseName } from '../../words/productWords';
import { replaceVisit } from '../../yard/edits';
import type { Amount, Visit, VisitDose } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

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

  protected override willUpdate(changed: Map<string, unknown>): void {
    const before = changed.get('visit') as Visit | undefined;
    if (before && before.id !== this.visit.id) this.day = null;
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
    const stocked = figures?.doses.filter((dose) => stockOf(dose.product, dose.amount.unit) !== null) ?? [];
    return html`
      <form class="mark" @submit=${(event: Event) => this.mark(event, day, stocked.length > 0 && this.fromShelf)}>
        <label>Done on<input type="date" required .value=${day} @change=${(event: Event) => {
          this.day = fieldValue(event) || null;
        }} /></label>
        <button class="primary" ?disabled=${figures === null}>Mark done</button>
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
      <p class="quiet">Then type what was really used; the ledger counts that.</p>
    `;
  }

  private renderDone(doneOn: string) {
    const { visit, figures, app } = this;
    const tookAny = visit.doses.some((dose) => Object.keys(dose.taken ?? {}).length > 0);
    return html`
      <div class="mark">
        <label>Done on<input type="date" required .value=${doneOn} @change=${(event: Event) => this.changeDay(fieldValue(event))} /></label>
        <button @click=${() => app.dispatch('Visit not done', (yard) => unmarkDone(yard, visit.id))}>Not done after all</button>
      </div>
      ${tookAny ? html`<p class="quiet">“Not done after all” puts back on the shelf what was taken off.</p>` : nothing}
      ${visit.doses.map((dose) => this.renderDose(dose, figures))}
    `;
  }

  private renderDose(dose: VisitDose, figures: VisitFigures | null) {
    const { app } = this;
    const name = doseName(dose, app.yard.products);
    const own = figures?.doses.find((each) => each.dose.id === dose.id);
    if (!figures || !own) {
      return html`<fieldset><legend>${name}</legend><p class="note warning"><b>Check: </b>It cannot be planned as it stands, so nothing of it is counted.</p></fieldset>`;
    }
    const { product, amount } = own;
    const used = usedAmount(dose, figures) ?? amount;
    const inPlanned = convertAmount(used, amount.unit, product.densityKgPerL);
    const share =
      inPlanned && amount.value > 0 ? Number((inPlanned.value / amount.value).toPrecision(4)) : null;
    const other: Amount['unit'] = used.unit === 'L' ? 'kg' : 'L';
    const turned = convertAmount(used, other, product.densityKgPerL);
    const set = (actual: Amount | null) =>
      app.dispatch(
        'Change what was used',
        (yard) => changeActual(yard, figures, dose.id, actual),
        `used ${dose.id}`,
      );
    return html`<fieldset><legend>${name}</legend>
      <div class="used">
        <quantity-field label="Really used" .quantity=${quantityOf(own, used)} optional .system=${app.units} .value=${used.value} .min=${0}
          @quantity-change=${(event: CustomEvent<QuantityChange>) =>
            set(
              event.detail.valueSi === null ? null : { unit: used.unit, value: event.detail.valueSi },
            )}></quantity-field>
        <number-field label="Share of the plan" suffix="%" .value=${share} .scale=${100} .min=${0} .max=${10_000}
          @number-change=${(event: CustomEvent<NumberChange>) => {
            const { value } = event.detail;
            if (value !== null) set(value === 1 ? null : { unit: amount.unit, value: amount.value * value });
          }}></number-field>
      </div>
      <p class="quiet">Planned: ${amountWords(product, amount, app.units)}${dose.actual === null ? ', counted as planned' : ''}.${this.takenWords(own, dose)}</p>
      ${turned ? html`<button type="button" class="plain" @click=${() => set(turned)}>Tell it by ${other === 'kg' ? 'weight' : 'volume'}</button>` : nothing}
    </fieldset>`;
  }

  /** What the shelf gave, and what it lacked. */
  private takenWords({ product, amount }: DoseFigures, { taken, actual }: VisitDose): string {
    if (taken === null) return ' Nothing was taken off the shelf.';
    const given = product.packs.reduce((sum, pack) => {
      const content = convertAmount(pack.content, amount.unit, product.densityKgPerL);
      return sum + (taken[pack.id] ?? 0) * (content?.value ?? 0);
    }, 0);
    const used = convertAmount(actual ?? amount, amount.unit, product.densityKgPerL);
    const short = used !== null && given < used.value * (1 - 1e-6);
    const show = amountWords(product, { unit: amount.unit, value: given }, this.app.units);
    return given > 0
      ? ` ${show} came off the shelf${short ? ', all there was' : ''}.`
      : ' The shelf had none of it.';
  }

  private mark(event: Event, day: string, fromShelf: boolean): void {
    event.preventDefault();
    const { app, figures } = this;
    if (!figures) return;
    const short = fromShelf
      ? figures.doses.filter(({ product, amount }) => takeFromStock(product, amount).short.value > 0)
      : [];
    app.dispatch('Mark visit done', (yard) => markDone(yard, figures, day, fromShelf));
    const words = !fromShelf
      ? 'The visit is marked done.'
      : short.length === 0
        ? 'The visit is marked done and its products are off the shelf.'
        : 'The visit is marked done; the shelf held less than it took of some products.';
    app.note('visit-done', words, { label: 'Undo', run: () => app.session.undo() });
  }

  private changeDay(day: string): void {
    if (day === '') return;
    const { id } = this.visit;
    this.app.dispatch('Change day of visit done', (yard) => {
      const visit = yard.visits.find((each) => each.id === id);
      return visit ? replaceVisit(yard, { ...visit, doneOn: day }) : yard;
    });
  }
}

function quantityOf({ product }: DoseFigures, amount: Amount): Quantity {
  if (amount.unit === 'kg') return 'mass';
  return isBulk(product) ? 'bulk-volume' : 'volume';
}

function stockWords(dose: DoseFigures | undefined): string {
  return dose?.product.name.trim() || 'the product';
}

declare global {
  interface HTMLElementTagNameMap {
    'done-form': DoneForm;
  }
}
