import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { VisitOpening } from '../../buy/types';
import { drawWords } from '../../words/buyWords';
import { amountWords } from '../../words/productWords';
import { dayWords, visitName } from '../../words/seasonWords';
import type { Amount, Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Which containers are opened at each visit, and how full they stay. */
@customElement('buy-openings')
export class BuyOpenings extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      td ul { list-style: none; margin: 0; padding: 0; }
      th:last-child, td:last-child { padding-left: 0.75rem; }
      td span { display: block; font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property() unit: Amount['unit'] = 'kg';
  @property({ attribute: false }) openings: readonly VisitOpening[] = [];

  protected override render() {
    const { product, app, unit } = this;
    const amount = (value: number) => amountWords(product, { unit, value } as Amount, app.units);
    return html`<table>
      <thead><tr><th scope="col">Visit</th><th scope="col" class="num">Takes</th><th scope="col">Containers</th></tr></thead>
      <tbody>${this.openings.map(({ visitId, date, draws }) => {
        const visit = app.yard.visits.find((each) => each.id === visitId);
        return html`<tr>
          <td>${visit ? visitName(visit) : ''}<span>${date ? dayWords(date) : 'no day set'}</span></td>
          <td class="num">${amount(draws.reduce((sum, draw) => sum + draw.taken, 0))}</td>
          <td><ul>${draws.map((draw) => html`<li>${drawWords(product, draw, app.units)}</li>`)}</ul></td></tr>`;
      })}</tbody></table>`;
  }
}
