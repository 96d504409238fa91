import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { unitCostsOfPack } from '../../buy/unitCosts';
import { nutrientCostWords, packName } from '../../words/buyWords';
import { replaceProduct } from '../../yard/edits';
import { NUTRIENTS, type Pack, type Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';

/** Prices and stock of a product's packs, changed in place, and what each pack costs by its first nutrient. */
@customElement('buy-packs')
export class BuyPacks extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.5rem; }
      .pack { display: grid; grid-template-columns: minmax(5rem, 1fr) minmax(6.5rem, 1fr) minmax(6.5rem, 1fr); gap: 0.5rem; align-items: end; border: 0; border-top: 1px solid var(--line); margin: 0; padding: 0.4rem 0; }
      .name { display: grid; align-content: center; min-height: var(--touch); }
      .name span { font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) product!: Product;

  protected override render() {
    return html`${this.product.packs.map((pack) => this.renderPack(pack))}`;
  }

  private renderPack(pack: Pack) {
    const { product, app } = this;
    const { currency } = app.yard.settings;
    const name = packName(product, pack.id, app.units);
    const costs = unitCostsOfPack(product, pack);
    const nutrient = NUTRIENTS.find((each) => costs !== null && costs.perKg[each] !== null);
    const perKg = nutrient && costs ? costs.perKg[nutrient] : null;
    return html`<div class="pack" role="group" aria-label=${`${name} pack`}>
      <span class="name">${name}${nutrient && perKg !== null ? html`<span>${nutrientCostWords(nutrient, perKg, currency, app.units)}</span>` : nothing}</span>
      <number-field label=${`Price, ${currency}`} optional sign=${currency} .value=${pack.price} .min=${0}
        @number-change=${(event: CustomEvent<NumberChange>) => this.setPrice(pack, event.detail.value)}></number-field>
      <number-field label="On hand, packs" .value=${product.onHand[pack.id] ?? 0} .min=${0}
        @number-change=${(event: CustomEvent<NumberChange>) => this.setOnHand(pack, event.detail.value ?? 0)}></number-field>
    </div>`;
  }

  private setPrice(pack: Pack, price: number | null): void {
    this.change('Change price', `price ${pack.id}`, (now) => ({
      packs: now.packs.map((each) => (each.id === pack.id ? { ...each, price } : each)),
    }));
  }

  private setOnHand(pack: Pack, count: number): void {
    this.change('Change stock', `stock ${pack.id}`, (now) => {
      const { [pack.id]: _, ...others } = now.onHand;
      return { onHand: count > 0 ? { ...others, [pack.id]: count } : others };
    });
  }

  private change(label: string, field: string, change: (now: Product) => Partial<Product>): void {
    const { id } = this.product;
    this.app.dispatch(
      label,
      (yard) => {
        const now = yard.products.find((each) => each.id === id);
        return now ? replaceProduct(yard, { ...now, ...change(now) }) : yard;
      },
      `product ${id} ${field}`,
    );
  }
}
