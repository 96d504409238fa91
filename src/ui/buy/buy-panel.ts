import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { type CostSummary, costSummary } from '../../buy/costSummary';
import { orderList, takenPlan } from '../../buy/orderList';
import { purchasesOf, type SpanPurchase } from '../../buy/purchases';
import type { BuyGoal, BuySpan } from '../../buy/types';
import type { Derived } from '../../session/types';
import { formatMoney } from '../../units/format';
import { dayWords } from '../../words/seasonWords';
import { visitChoices } from '../../words/visitWords';
import type { Visit } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { type BuyChoices, FIRST_CHOICES, spanOf } from './buy-choices';
import './buy-costs';
import './buy-order';
import './buy-product';

const KIND_WORDS: Readonly<Record<BuyChoices['kind'], string>> = {
  all: 'All visits still to do',
  days: 'Visits between two days',
  visit: 'One visit',
};

let lastChoices = FIRST_CHOICES;

/** Buy: packs for the visits of a span, less what is on the shelf, and the order they make. */
@customElement('buy-panel')
export class BuyPanel extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; container-type: inline-size; }
      .span { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 0.5rem; align-items: end; }
      .span label.check { align-self: end; }
      .sum { margin: 0.5rem 0 0.75rem; }
      buy-product { margin-bottom: 1.25rem; }
    `,
  ];

  @state() private choices: BuyChoices = lastChoices;
  private kept: { derived: Derived; key: string; found: SpanPurchase } | null = null;

  protected override render() {
    const { app, rev, choices } = this;
    const { visits } = app.yard;
    const toDo = visits.filter((visit) => visit.doneOn === null);
    if (toDo.length === 0) return this.renderNothing(visits.length > 0);
    const span = this.spanIn(toDo);
    if (span.from !== null && span.to !== null && span.to < span.from) {
      return html`<h2>Buy</h2>${this.renderSpan(toDo, span)}
        <p class="note error" role="alert"><b>Not right: </b>The last day, ${dayWords(span.to, true)}, is before the first, ${dayWords(span.from, true)}.</p>`;
    }
    const found = this.purchases(span);
    const taken = found.purchases.map((purchase) => ({
      purchase,
      plan: takenPlan(purchase, choices.goals[purchase.product.id]),
    }));
    const bought = taken.flatMap(({ purchase, plan }) =>
      plan ? [{ productId: purchase.product.id, plan }] : [],
    );
    const order = orderList(app.yard.products, bought);
    const costs = costSummary(taken);
    return html`
      <h2>Buy</h2>
      ${this.renderSpan(toDo, span)}
      <p class="sum">${this.spanWords(found)}${this.costWords(costs)}</p>
      ${found.unplanned > 0 ? html`<p class="note warning"><b>Check: </b>${doseCount(found.unplanned)} cannot be planned, so nothing is bought for ${found.unplanned === 1 ? 'it' : 'them'}; the visit says why.</p>` : nothing}
      ${found.undatedLeftOut > 0 ? html`<p class="note">${found.undatedLeftOut === 1 ? 'One visit without a day is' : `${found.undatedLeftOut} visits without a day are`} left out.</p>` : nothing}
      ${taken.map(
        ({ purchase, plan }) => html`<buy-product .app=${app} .rev=${rev} .purchase=${purchase}
          .goal=${plan?.goal ?? null}
          @goal-change=${(event: CustomEvent<BuyGoal>) => this.takeGoal(purchase.product.id, event.detail)}></buy-product>`,
      )}
      ${
        found.purchases.length === 0
          ? html`<p class="note">These visits take no product: choose ground and products in the Visit step.</p>`
          : html`<buy-costs .app=${app} .rev=${rev} .costs=${costs}></buy-costs>
        <buy-order .app=${app} .rev=${rev} .order=${order} span=${this.dayRange(found)}></buy-order>`
      }
    `;
  }

  private renderNothing(hasVisits: boolean) {
    return html`<h2>Buy</h2>
      <p>${hasVisits ? 'Every visit is done: there is nothing to buy for.' : 'Nothing is planned yet. Plan visits by hand or by a program, and this step counts the packs to buy for them.'}</p>
      <div class="row"><button class="primary" @click=${() => this.app.setView({ step: 'season' })}>Plan the season</button>
        <button @click=${() => this.app.setView({ step: 'visit' })}>Plan a visit</button></div>`;
  }

  private renderSpan(toDo: readonly Visit[], span: BuySpan) {
    const { choices } = this;
    const day = (
      label: string,
      key: 'from' | 'to',
    ) => html`<label>${label}<input type="date" .value=${choices[key]}
      @change=${(event: Event) => this.choose({ [key]: fieldValue(event) })} /></label>`;
    return html`<div class="span">
      <label>Buy for<select @change=${(event: Event) => this.chooseKind(fieldValue(event) as BuyChoices['kind'], toDo)}>
        ${(Object.keys(KIND_WORDS) as BuyChoices['kind'][]).map((kind) => html`<option value=${kind} .selected=${kind === choices.kind}>${KIND_WORDS[kind]}</option>`)}
      </select></label>
      ${choices.kind === 'days' ? [day('First day', 'from'), day('Last day', 'to')] : nothing}
      ${
        choices.kind === 'visit'
          ? html`<label>Visit<select @change=${(event: Event) => this.choose({ visitId: fieldValue(event) })}>
            ${visitChoices(toDo, this.app.today()).map(({ id, words }) => html`<option value=${id} .selected=${id === span.visitId}>${words}</option>`)}
          </select></label>`
          : nothing
      }
      ${
        choices.kind !== 'visit' && toDo.some((visit) => visit.date === null)
          ? html`<label class="check"><input type="checkbox" .checked=${choices.withUndated}
            @change=${(event: Event) => this.choose({ withUndated: isTicked(event) })} />Visits without a day too</label>`
          : nothing
      }
    </div>`;
  }

  private spanIn(toDo: readonly Visit[]): BuySpan {
    const shown = [this.choices.visitId, this.app.view.visitId].find((id) =>
      toDo.some((visit) => visit.id === id),
    );
    return spanOf({ ...this.choices, visitId: shown ?? toDo[0]?.id ?? null }, null);
  }

  /** Kept while the document and the span are the same: a render for something else finds nothing anew. */
  private purchases(span: BuySpan): SpanPurchase {
    const { derived } = this.app.session;
    const key = JSON.stringify(span);
    if (this.kept?.derived !== derived || this.kept.key !== key) {
      const figures = derived.yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
      this.kept = { derived, key, found: purchasesOf(derived.yard, figures, span) };
    }
    return this.kept.found;
  }

  private spanWords(found: SpanPurchase): string {
    const visits = found.visitIds.length === 1 ? 'one visit' : `${found.visitIds.length} visits`;
    const products = found.purchases.length === 1 ? 'One product' : `${found.purchases.length} products`;
    const range = this.dayRange(found);
    return `${products} for ${visits}${range ? `, ${range}` : ''}.`;
  }

  /** What is to be paid, at the head of the screen; empty where no price is known. */
  private costWords({ products, paid }: CostSummary): string {
    const known = products.filter((each) => each.paid !== null).length;
    if (known === 0) return '';
    const rest = known < products.length ? ', without those that have no price' : '';
    return ` Whole packs to buy: ${formatMoney(paid, this.app.yard.settings.currency)}${rest}.`;
  }

  /** "Wed, Apr 2 to Fri, Oct 3"; empty where no visit has a day. */
  private dayRange({ visitIds }: SpanPurchase): string {
    const days = this.app.yard.visits
      .flatMap(({ id, date }) => (visitIds.includes(id) && date ? [date] : []))
      .sort();
    const [first, last] = [days[0], days.at(-1)];
    if (!first || !last) return '';
    return first === last ? dayWords(first, true) : `${dayWords(first)} to ${dayWords(last, true)}`;
  }

  private takeGoal(productId: string, goal: BuyGoal): void {
    this.choose({ goals: { ...this.choices.goals, [productId]: goal } });
  }

  private chooseKind(kind: BuyChoices['kind'], toDo: readonly Visit[]): void {
    const days = toDo.flatMap((visit) => visit.date ?? []).sort();
    const { from, to } = this.choices;
    this.choose({ kind, from: from || (days[0] ?? ''), to: to || (days.at(-1) ?? '') });
  }

  private choose(change: Partial<BuyChoices>): void {
    lastChoices = { ...this.choices, ...change };
    this.choices = lastChoices;
  }
}

function doseCount(count: number): string {
  return count === 1 ? 'One dose' : `${count} doses`;
}
