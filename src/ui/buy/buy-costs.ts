import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CostSummary } from '../../buy/costSummary';
import { formatMoney } from '../../units/format';
import { productName } from '../../words/productWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** What the span costs, by product and in all: whole packs to buy, and what of the product is used. */
@customElement('buy-costs')
export class BuyCosts extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; border-top: 2px solid var(--ink); padding-top: 0.6rem; margin-bottom: 1.25rem; }
      th:not(:first-child), td:not(:first-child) { padding-left: 0.75rem; }
      th.num { white-space: normal; }
      tfoot td { font-weight: 650; border-top: 2px solid var(--ink); border-bottom: 0; }
    `,
  ];

  @property({ attribute: false }) costs!: CostSummary;

  protected override render() {
    const { costs, app } = this;
    const { products, settings } = app.yard;
    const money = (value: number | null) =>
      value === null ? 'not known' : formatMoney(value, settings.currency);
    return html`<h3>What it costs</h3>
      <table>
        <thead><tr><th scope="col">Product</th><th scope="col" class="num">Whole packs to buy</th><th scope="col" class="num">Only what is used</th></tr></thead>
        <tbody>${costs.products.map(
          ({ productId, paid, goesOut }) => html`<tr>
            <td>${productName(products.find((each) => each.id === productId))}</td>
            <td class="num">${money(paid)}</td><td class="num">${money(goesOut)}</td></tr>`,
        )}</tbody>
        <tfoot><tr><td>In all</td><td class="num">${money(costs.paid)}</td><td class="num">${money(costs.goesOut)}</td></tr></tfoot>
      </table>
      ${costs.unknown > 0 ? html`<p class="note">The sums leave out what has no price.</p>` : nothing}
      <p class="quiet">“Only what is used” is what the visits take, from the shelf too, at the price of the packs; what is left over is not in it.</p>`;
  }
}
