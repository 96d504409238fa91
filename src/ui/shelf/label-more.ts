import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { saltWords } from '../../words/labelWords';
import type { Issue, Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import './content-lists';
import './keep-field';
import type { KeepChange } from './keep-field';
import './lime-fields';
import { sendProductChange } from './product-form';

const S_PER_H = 3600;

/** Members of a label that `<label-more>` shows. */
export const MORE_FIELDS = [
  'analysis.elementsPct',
  'ingredients',
  'limePct',
  'saltIndex',
  'rainfastS',
  'waterInDepthM',
  'shelfLifeDays',
  'openedLifeDays',
];

/** What else a label may tell. Empty: the label is silent. */
@customElement('label-more')
export class LabelMore extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 1rem; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem 0.5rem; align-items: end; }
      .note, p { margin: 0; }
      .whole { grid-column: 1 / -1; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { app, product, issues } = this;
    const set = (key: keyof Product, value: number | null) => sendProductChange(this, key, { [key]: value });
    const isLime = product.form === 'soil-amendment' || product.limePct !== null;
    return html`
      <p class="quiet">Leave empty where the label is silent.</p>
      <content-lists .app=${app} .rev=${this.rev} .product=${product} .issues=${issuesAt(issues, 'analysis.elementsPct', 'ingredients')}></content-lists>
      ${isLime ? html`<lime-fields .app=${app} .rev=${this.rev} .product=${product} .issues=${issuesAt(issues, 'limePct')}></lime-fields>` : nothing}
      <div class="fields">
        <number-field label="Rainfast after" suffix="hours" optional .value=${product.rainfastS === null ? null : product.rainfastS / S_PER_H} .min=${0}
          @number-change=${(event: CustomEvent<NumberChange>) => set('rainfastS', event.detail.value === null ? null : event.detail.value * S_PER_H)}></number-field>
        <quantity-field label="Water in with" quantity="depth" optional .system=${app.units} .value=${product.waterInDepthM} .min=${0}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => set('waterInDepthM', event.detail.valueSi)}></quantity-field>
        <keep-field label="Keeps closed" .days=${product.shelfLifeDays} @keep-change=${(event: CustomEvent<KeepChange>) => set('shelfLifeDays', event.detail.days)}></keep-field>
        <keep-field label="Keeps opened" .days=${product.openedLifeDays} @keep-change=${(event: CustomEvent<KeepChange>) => set('openedLifeDays', event.detail.days)}></keep-field>
        <number-field label="Salt index" optional .value=${product.saltIndex} .min=${0}
          @number-change=${(event: CustomEvent<NumberChange>) => set('saltIndex', event.detail.value)}></number-field>
        <p class="quiet">By weight; sodium nitrate is 100.${product.saltIndex === null ? '' : ` Here: ${saltWords(product)}.`}</p>
        <div class="whole">${issueNotes(issuesAt(issues, 'rainfastS', 'waterInDepthM', 'shelfLifeDays', 'openedLifeDays', 'saltIndex'))}</div>
      </div>
    `;
  }
}

/** Whether a label tells anything of that. */
export function hasMore(product: Product): boolean {
  return (
    Object.keys(product.analysis.elementsPct).length > 0 ||
    product.ingredients.length > 0 ||
    [
      product.limePct,
      product.saltIndex,
      product.rainfastS,
      product.waterInDepthM,
      product.shelfLifeDays,
      product.openedLifeDays,
    ].some((value) => value !== null)
  );
}
