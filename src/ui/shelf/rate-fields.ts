import { css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Quantity } from '../../units/choices';
import { amountWords, BASIS_WORDS, NUTRIENT_WORDS } from '../../words/productWords';
import { type Issue, type LabelRate, NUTRIENTS, type Product, type RateBasis } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { rateInBasis } from './product-edits';
import { sendFieldLeft, sendProductChange } from './product-form';
import { fieldKey } from './product-gaps';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const BASES = Object.keys(BASIS_WORDS) as readonly RateBasis[];

/** Bases that a label of that form can have: seed alone by what lives, lime alone by its effective value. */
function basesFor(product: Product): readonly RateBasis[] {
  const isLime = product.form === 'soil-amendment' || product.limePct !== null;
  return BASES.filter(
    (basis) =>
      basis === product.rate.basis ||
      ((basis !== 'pure-live-seed' || product.form === 'seed') && (basis !== 'effective-lime' || isLime)),
  );
}

/** The rate as the label states it, with the fields its basis needs. */
@customElement('rate-fields')
export class RateFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.5rem; }
      .note { margin: 0; }
    `,
  ];

  /** the product as the use has it. */
  @property({ attribute: false }) product!: Product;
  /** null: the first use. */
  @property({ attribute: false }) useId: string | null = null;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { rate } = this.product;
    return html`
      ${selectField('The label gives', rate.basis, basesFor(this.product), BASIS_WORDS, (basis) => this.send(rateInBasis(this.product, basis)))}
      ${keyed(rate.basis, this.renderBasis(rate))}
      ${issueNotes(this.issues)}
    `;
  }

  private renderBasis(rate: LabelRate): TemplateResult {
    switch (rate.basis) {
      case 'area-per-container':
        return html`
          ${this.renderPackChoice(rate)}
          ${this.field('covers', 'area', rate.areaM2, (areaM2) => ({ ...rate, areaM2 }))}`;
      case 'volume-per-area':
        return this.field('Product', 'volume-per-area', rate.rateLPerM2, (rateLPerM2) => ({
          ...rate,
          rateLPerM2,
        }));
      case 'mass-per-area':
        return this.field('Product', 'mass-per-area', rate.rateKgPerM2, (rateKgPerM2) => ({
          ...rate,
          rateKgPerM2,
        }));
      case 'nutrient-per-area':
        return html`
          ${selectField('Nutrient', rate.nutrient, NUTRIENTS, NUTRIENT_WORDS, (nutrient) => this.send({ ...rate, nutrient }))}
          ${this.field(`${NUTRIENT_WORDS[rate.nutrient]} laid down`, 'mass-per-area', rate.rateKgPerM2, (rateKgPerM2) => ({ ...rate, rateKgPerM2 }))}`;
      case 'pure-live-seed':
        return this.field('Pure live seed', 'mass-per-area', rate.rateKgPerM2, (rateKgPerM2) => ({
          ...rate,
          rateKgPerM2,
        }));
      case 'effective-lime':
        return this.field('Effective lime', 'mass-per-area', rate.rateKgPerM2, (rateKgPerM2) => ({
          ...rate,
          rateKgPerM2,
        }));
      case 'depth':
        return this.field('Depth of the layer', 'depth', rate.depthM, (depthM) => ({ ...rate, depthM }));
    }
  }

  private renderPackChoice(rate: Extract<LabelRate, { basis: 'area-per-container' }>) {
    const { packs } = this.product;
    return html`<label>One pack of<select @change=${(event: Event) => this.send({ ...rate, packId: fieldValue(event) })}>
      ${packs.some((pack) => pack.id === rate.packId) ? '' : html`<option value="" selected>choose a pack</option>`}
      ${packs.map(
        (pack) =>
          html`<option value=${pack.id} .selected=${pack.id === rate.packId}>${amountWords(this.product, pack.content, this.app.units)}</option>`,
      )}
    </select></label>`;
  }

  private field(label: string, quantity: Quantity, value: number, make: (value: number) => LabelRate) {
    return html`<quantity-field label=${label} quantity=${quantity} .system=${this.app.units} .value=${value} .min=${0} @focusout=${() => sendFieldLeft(this, fieldKey({ useId: this.useId }))}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => {
        if (event.detail.valueSi !== null) this.send(make(event.detail.valueSi));
      }}></quantity-field>`;
  }

  private send(rate: LabelRate): void {
    sendProductChange(this, 'rate', { rate });
  }
}
