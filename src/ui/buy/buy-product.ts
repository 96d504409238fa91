import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type AreaStep, areaSteps } from '../../buy/areaSteps';
import { type BreakEven, breakEvens } from '../../buy/breakEven';
import type { Purchase } from '../../buy/purchases';
import { BUY_GOALS, type BuyGoal, type PurchasePlan } from '../../buy/types';
import { unitCosts } from '../../buy/unitCosts';
import { formatMoney } from '../../units/format';
import {
  areaStepWords,
  breakEvenWords,
  carriedLines,
  GOAL_WORDS,
  leftWords,
  neededWords,
  packsToBuyWords,
  usedCostWords,
} from '../../words/buyWords';
import { productName } from '../../words/productWords';
import { dayWords } from '../../words/seasonWords';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import './buy-openings';
import './buy-packs';

/** One product to buy: the three choices side by side, what they rest on, prices and stock. Event `goal-change`. */
@customElement('buy-product')
export class BuyProduct extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; border-top: 2px solid var(--ink); padding-top: 0.6rem; }
      fieldset { border: 0; margin: 0.25rem 0 0.75rem; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(12rem, 1fr)); gap: 0.5rem; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      .choice { display: grid; grid-template-columns: auto 1fr; gap: 0 0.5rem; align-content: start; padding: 0.5rem; border: 1px solid var(--line-strong); color: var(--ink); font-size: var(--text); cursor: pointer; }
      .choice[data-taken] { border: 2px solid var(--ink); padding: calc(0.5rem - 1px); background: var(--sheet-sunk); }
      .choice.none { color: var(--ink-soft); border-style: dashed; cursor: default; }
      .choice input { margin: 0; align-self: start; }
      .choice b { line-height: 1.35rem; }
      .choice .packs { grid-column: 1 / -1; margin-top: 0.35rem; font-weight: 650; }
      dl { grid-column: 1 / -1; display: grid; grid-template-columns: auto 1fr; gap: 0 0.5rem; margin: 0.25rem 0 0; font-size: var(--text-small); }
      dt { color: var(--ink-soft); }
      dd { margin: 0; text-align: right; }
      ul { margin: 0 0 0.5rem; padding-left: 1.1rem; }
      li { margin-bottom: 0.2rem; }
    `,
  ];

  @property({ attribute: false }) purchase!: Purchase;
  @property({ attribute: false }) goal: BuyGoal | null = null;

  /** what takes a while to find, kept until the purchase or the goal is another. */
  private kept: {
    purchase: Purchase;
    goal: BuyGoal;
    steps: readonly AreaStep[] | null;
    pays: readonly BreakEven[];
  } | null = null;

  private found(goal: BuyGoal) {
    const { purchase } = this;
    if (this.kept?.purchase !== purchase || this.kept.goal !== goal) {
      const { atHand, need } = purchase;
      this.kept = { purchase, goal, steps: areaSteps(atHand, need, goal), pays: breakEvens(atHand, need) };
    }
    return this.kept;
  }

  protected override render() {
    const { purchase, app, goal } = this;
    const { product } = purchase;
    const plan = goal && purchase.plans[goal];
    return html`
      <h3>${productName(product)}</h3>
      <p>${neededWords(product, purchase, app.units, purchase.spokenFor)}</p>
      ${issueNotes(purchase.issues)}
      <fieldset><legend>Taken for the order</legend>
        ${choicesOf(purchase.plans).map((goals) => this.renderChoice(goals))}
      </fieldset>
      ${plan ? this.renderWords(plan) : nothing}
      <buy-packs .app=${app} .rev=${this.rev} .product=${product}></buy-packs>
      ${plan ? this.renderFolds(plan) : nothing}
    `;
  }

  /** @param goals that come to the same packs, or have no plan */
  private renderChoice(goals: readonly BuyGoal[]) {
    const { purchase, app } = this;
    const { product, plans } = purchase;
    const goal = goals[0] as BuyGoal;
    const plan = plans[goal];
    const name = goals
      .map((each, i) => (i === 0 ? GOAL_WORDS[each] : lowerFirst(GOAL_WORDS[each])))
      .join(', ');
    if (plan === null) {
      return html`<div class="choice none"><b>${name}</b><span class="packs">not known</span></div>`;
    }
    const isTaken = this.goal !== null && goals.includes(this.goal);
    // the price of the other choices beside the least one
    const more = plan.cost !== null && plans.cost?.cost != null ? plan.cost - plans.cost.cost : 0;
    return html`<label class="choice" ?data-taken=${isTaken}>
      <input type="radio" name="goal" .checked=${isTaken} @change=${() => this.take(goal)} />
      <b>${name}</b>
      <span class="packs">${packsToBuyWords(product, plan.packs, app.units)}</span>
      <dl>
        <dt>Cost of whole packs</dt><dd>${this.money(plan.cost)}${more > 0.005 ? html` (+${this.money(more)})` : nothing}</dd>
        <dt>Packs</dt><dd>${plan.packCount}</dd>
        <dt>Left over</dt><dd>${leftWords(product, purchase, plan, app.units)}</dd>
      </dl></label>`;
  }

  private renderWords(plan: PurchasePlan) {
    const { purchase, app } = this;
    const { product, need } = purchase;
    const { currency } = app.yard.settings;
    const ground = need.lines.reduce((sum, line) => sum + line.areaM2, 0);
    const perM2 = ground > 0 ? purchase.needed / ground : null;
    const costs =
      plan.cost === null ? null : unitCosts(product, plan.cost, { unit: need.unit, value: plan.bought });
    const later = plan.orders.slice(1);
    const { steps, pays } = this.found(plan.goal);
    const spoils = plan.spoiled > 1e-6 * purchase.needed && product.openedLifeDays !== null;
    const lines = [
      spoils
        ? `The label gives an opened container ${product.openedLifeDays} days: what spoils was opened longer before its next visit than that.`
        : null,
      areaStepWords(product, plan, steps, app.units),
      // where packs spoil, what they hold no longer tells from when they pay
      ...(spoils || plan.packCount === 0 ? [] : pays).map((found) =>
        breakEvenWords(product, found, purchase, app.units),
      ),
      costs && plan.packCount > 0 ? usedCostWords(costs, perM2, currency, app.units) : null,
      ...later.map(
        ({ by, packs }) =>
          `Buy ${packsToBuyWords(product, packs, app.units)} of it later, by ${by ? dayWords(by, true) : 'then'}: the label’s shelf life is shorter than the span.`,
      ),
    ].filter((line) => line !== null);
    return lines.length > 0 ? html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>` : nothing;
  }

  private renderFolds(plan: PurchasePlan) {
    const { purchase, app } = this;
    const { product } = purchase;
    return html`
      <details class="fold"><summary>Visit by visit: what is opened</summary>
        <buy-openings .app=${app} .rev=${this.rev} .product=${product} .unit=${purchase.need.unit} .openings=${plan.openings}></buy-openings></details>
      <details class="fold"><summary>Carried over to the next season</summary>
        ${this.renderCarried(plan)}</details>
    `;
  }

  private renderCarried(plan: PurchasePlan) {
    const { product, need } = this.purchase;
    if (plan.carried.length === 0) return html`<p>Nothing is carried over.</p>`;
    const first = need.lines.find((line) => line.date !== null)?.date ?? null;
    const next = first === null ? null : `${Number(first.slice(0, 4)) + 1}${first.slice(4)}`;
    const isShort = plan.carried.some(
      ({ goodUntil }) => goodUntil !== null && next !== null && goodUntil < next,
    );
    const isSilent = plan.carried.some(({ goodUntil, isOpen }) =>
      goodUntil === null ? (isOpen ? product.openedLifeDays : product.shelfLifeDays) === null : false,
    );
    return html`<ul>${carriedLines(product, plan.carried, this.app.units).map((line) => html`<li>${line}</li>`)}</ul>
      ${isShort ? html`<p class="note warning"><b>Check: </b>Not all of it keeps until the first visit of the next season: use it up, or buy less.</p>` : nothing}
      ${isSilent ? html`<p class="quiet">How long it keeps is not told: the label may say, and the shelf has fields for it. Close containers well and keep them dry, cool and out of reach of children.</p>` : nothing}`;
  }

  private money(value: number | null): string {
    return value === null ? 'not known' : formatMoney(value, this.app.yard.settings.currency);
  }

  private take(goal: BuyGoal): void {
    this.dispatchEvent(new CustomEvent<BuyGoal>('goal-change', { detail: goal }));
  }
}

/** Goals that come to the same packs stand together; those without a plan by themselves. */
function choicesOf(plans: Purchase['plans']): readonly (readonly BuyGoal[])[] {
  const key = (plan: PurchasePlan | null) => JSON.stringify(plan?.orders.map((order) => order.packs) ?? null);
  const choices: BuyGoal[][] = [];
  for (const goal of BUY_GOALS) {
    const same = choices.find((goals) => key(plans[goals[0] as BuyGoal]) === key(plans[goal]));
    if (same) same.push(goal);
    else choices.push([goal]);
  }
  return choices;
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
