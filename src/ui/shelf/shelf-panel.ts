import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { checkProduct } from '../../plan/check';
import { addProduct, removeProduct } from '../../yard/edits';
import type { Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { blankProduct, isRateEmpty, visitsWith } from './product-edits';
import './product-form';
import { analysisWords, FORM_WORDS, packsWords, productName, rateWords } from '../../words/productWords';
import { freeName } from '../../words/zoneWords';
import { shared } from '../parts/shared';
import { flagWords, quietGaps } from './product-gaps';

/** Shelf: the products as their labels state them. */
@customElement('shelf-panel')
export class ShelfPanel extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      ul { list-style: none; margin: 0 0 0.75rem; padding: 0; border-top: 1px solid var(--line); }
      li { border-bottom: 1px solid var(--line); }
      .open { display: grid; grid-template-columns: 1fr auto; gap: 0 0.75rem; width: 100%; padding: 0.5rem 0; text-align: left; border: 0; background: none; }
      .open:hover { background: var(--sheet-sunk); }
      .open .name { font-weight: 650; }
      .open .analysis { font-weight: 650; white-space: nowrap; }
      .open .words { grid-column: 1 / -1; color: var(--ink-soft); font-size: var(--text-small); }
      .open .flag { grid-column: 1 / -1; color: var(--danger); font-size: var(--text-small); font-weight: 650; }
      li.chosen { box-shadow: inset 4px 0 0 var(--accent); padding: 0 0 0.75rem 0.75rem; }
      .acts { margin: 0.25rem 0 0.75rem; }
    `,
  ];

  /** product whose removal is asked about. */
  @state() private asking: string | null = null;

  /** by product: keys of the fields gone to and left. */
  @state() private left: ReadonlyMap<string, ReadonlySet<string>> = new Map();

  /** a product was just added: its name is to be typed first. */
  private isNew = false;

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('product-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  protected override render() {
    const { products } = this.app.yard;
    return html`
      <h2>Shelf</h2>
      <p class="note warning">The label comes first. Type what it says; the figures here only do its arithmetic.</p>
      ${
        products.length === 0
          ? html`<p>The shelf is empty. Add the first product and copy its rate, analysis and pack sizes from the label.</p>`
          : html`<ul>${products.map((product) => this.renderProduct(product))}</ul>`
      }
      <button class="primary" @click=${this.add}>Add a product</button>
    `;
  }

  private renderProduct(product: Product) {
    const { units, view } = this.app;
    const isOpen = view.productId === product.id;
    const flag = flagWords(quietGaps(checkProduct(product), product, this.leftOf(product)));
    return html`
      <li class=${isOpen ? 'chosen' : ''}>
        <button class="open" aria-expanded=${isOpen ? 'true' : 'false'}
          @click=${() => this.open(isOpen ? null : product.id)}>
          <span class="name">${productName(product)}</span>
          <span class="analysis">${analysisWords(product)}</span>
          <span class="words">${FORM_WORDS[product.form]}${isRateEmpty(product.rate) ? nothing : html`; ${rateWords(product, units)}`}${
            product.packs.some((pack) => pack.content.value > 0)
              ? html`; packs: ${packsWords(product, units)}`
              : nothing
          }</span>
          ${flag ? html`<span class=${flag.isFault ? 'flag' : 'words'}>${flag.words}</span>` : nothing}
        </button>
        ${isOpen ? this.renderOpen(product) : nothing}
      </li>
    `;
  }

  private renderOpen(product: Product) {
    return html`
      <div class="row acts">
        <button @click=${() => this.copy(product)}>Copy</button>
        <button class="danger" @click=${() => this.askOrRemove(product)}>Remove</button>
        <button @click=${() => this.open(null)}>Close</button>
      </div>
      ${this.asking === product.id ? this.renderAsk(product) : nothing}
      <product-form .app=${this.app} .rev=${this.rev} .product=${product} .left=${this.leftOf(product)}
        @field-left=${(event: CustomEvent<string>) => this.noteLeft(product, event.detail)}></product-form>
    `;
  }

  private renderAsk(product: Product) {
    const names = visitsWith(this.app.yard.visits, product.id).map((visit) => `“${visit.name}”`);
    return html`
      <div class="note warning" role="alert">
        <p>In use by ${names.join(', ')}. Removing it takes its doses out of ${names.length === 1 ? 'that visit' : 'those visits'}. Undo brings all of it back.</p>
        <div class="row">
          <button class="danger" @click=${() => this.removeNow(product)}>Remove with its doses</button>
          <button @click=${() => {
            this.asking = null;
          }}>Keep it</button>
        </div>
      </div>
    `;
  }

  private leftOf(product: Product): ReadonlySet<string> {
    return this.left.get(product.id) ?? new Set();
  }

  private noteLeft(product: Product, key: string): void {
    this.left = new Map(this.left).set(product.id, new Set(this.leftOf(product)).add(key));
  }

  private open(productId: string | null): void {
    this.asking = null;
    this.app.setView({ productId });
  }

  private add(): void {
    const { app } = this;
    const name = freeName(
      'Product',
      app.yard.products.map((one) => one.name),
    );
    const product = blankProduct(app.newId('product'), app.newId('pack'), name);
    app.dispatch('Add product', (yard) => addProduct(yard, product));
    this.open(product.id);
    this.isNew = true;
  }

  private copy(product: Product): void {
    const { app } = this;
    const taken = app.yard.products.map((one) => one.name);
    const copy = { ...product, id: app.newId('product'), name: freeName(`${product.name}, copy`, taken) };
    app.dispatch('Copy product', (yard) => addProduct(yard, copy));
    this.open(copy.id);
  }

  private askOrRemove(product: Product): void {
    if (visitsWith(this.app.yard.visits, product.id).length > 0) this.asking = product.id;
    else this.removeNow(product);
  }

  private removeNow(product: Product): void {
    const { app } = this;
    app.dispatch('Remove product', (yard) => removeProduct(yard, product.id));
    this.open(null);
    app.note('product-removed', `“${product.name}” is off the shelf.`, {
      label: 'Undo',
      run: () => app.session.undo(),
    });
  }
}
