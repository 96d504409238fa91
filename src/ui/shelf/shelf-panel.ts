import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { checkProduct } from '../../plan/check';
import { recordAll } from '../../season/markDone';
import { formatNumber } from '../../units/format';
import { addProduct, removeProduct } from '../../yard/edits';
import type { Product, UnitSystem } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { filterProducts } from './filter-products';
import { blankProduct, isRateEmpty, shownAnalysis, visitsWith } from './product-edits';
import './product-form';
import {
  amountWords,
  FORM_WORDS,
  packsWords,
  productName,
  rateWords,
  useChoices,
} from '../../words/productWords';
import { freeName } from '../../words/zoneWords';
import { isEquipmentAsked } from '../equipment/equipment-open';
import { entryList } from '../parts/entry-list';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';
import { onLabelFile, takeLabelFile } from './label-inbox';
import { flagWords, quietGaps } from './product-gaps';

/** With more products than this there is a field to find one by. */
const MANY = 8;

/** Parts that are fetched when first opened. */
const PARTS = {
  share: () => import('./label-share'),
  open: () => import('./label-open'),
  compare: () => import('../compare/compare-view'),
  equipment: () => import('../equipment/equipment-view'),
} as const;
type Part = keyof typeof PARTS;

/** "2.5 × 32 fl oz, 1 × 1 gal"; empty for nothing. */
function onHandWords(product: Product, units: UnitSystem): string {
  return product.packs
    .flatMap((pack) => {
      const count = product.onHand[pack.id] ?? 0;
      return count > 0 ? [`${formatNumber(count, 3)} × ${amountWords(product, pack.content, units)}`] : [];
    })
    .join(', ');
}

/** Shelf: the products as their labels state them. */
@customElement('shelf-panel')
export class ShelfPanel extends AppPart {
  static override styles = [
    shared,
    entryList,
    fold,
    css`
      :host { display: block; }
      .open .analysis { font-weight: 650; white-space: nowrap; }
      .open .flag { grid-column: 1 / -1; color: var(--danger); font-size: var(--text-small); font-weight: 650; }
      .open .use { padding-left: 0.75rem; }
      .acts { margin: 0.25rem 0 0.75rem; }
      .ends { margin-bottom: 0.75rem; }
      .find { margin-bottom: 0.25rem; }
      .sides { display: grid; grid-template-columns: 1fr 1fr; margin-bottom: 0.75rem; }
      .sides button + button { border-left: 0; }
    `,
  ];

  /** product whose removal is asked about. */
  @state() private asking: string | null = null;

  /** by product: keys of the fields gone to and left. */
  @state() private left: ReadonlyMap<string, ReadonlySet<string>> = new Map();

  @state() private typed = '';
  @state() private loaded: ReadonlySet<Part> = new Set();
  @state() private compares = false;
  /** what one spreads with is shown, not what is spread. */
  @state() private showsEquipment = false;

  /** a product was just added: its name is to be typed first. */
  private isNew = false;

  /** a file of labels that was dropped on the page. */
  @state() private given: File | null = null;
  private stopListening: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.stopListening = onLabelFile(() => this.takeGiven());
    this.takeGiven();
    if (isEquipmentAsked()) void this.turnTo('equipment');
  }

  override disconnectedCallback(): void {
    this.stopListening?.();
    super.disconnectedCallback();
  }

  private takeGiven(): void {
    const file = takeLabelFile();
    if (!file) return;
    this.compares = false;
    this.showsEquipment = false;
    this.given = file;
    void this.load('open').then(() => {
      const part = this.renderRoot.querySelector<HTMLDetailsElement>('details#open');
      if (part) part.open = true;
    });
  }

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('product-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  protected override render() {
    const { app, rev } = this;
    const { products } = app.yard;
    if (this.compares)
      return html`<compare-view .app=${app} .rev=${rev} @compare-close=${() => {
        this.compares = false;
      }}></compare-view>`;
    return html`
      <h2>Shelf</h2>
      <div class="sides" role="group" aria-label="On the shelf">
        <button aria-pressed=${this.showsEquipment ? 'false' : 'true'} @click=${() => this.turnTo('products')}>Products</button>
        <button aria-pressed=${this.showsEquipment ? 'true' : 'false'} @click=${() => this.turnTo('equipment')}>Equipment</button>
      </div>
      ${this.showsEquipment ? html`<equipment-view .app=${app} .rev=${rev}></equipment-view>` : this.renderProducts(products)}
    `;
  }

  private renderProducts(products: readonly Product[]) {
    const { app, rev } = this;
    const hasFilter = products.length > MANY;
    const shown = hasFilter ? filterProducts(products, this.typed) : products;
    return html`
      <p class="note warning">The label comes first. Type what it says; the figures here only do its arithmetic.</p>
      ${
        hasFilter
          ? html`<label class="find">Find on the shelf<input type="search" autocomplete="off" .value=${this.typed} @input=${(
              event: Event,
            ) => {
              this.typed = fieldValue(event);
            }} /></label>
            <p class="quiet" role="status">${shown.length === products.length ? `${products.length} products` : `${shown.length} of ${products.length} products`}</p>`
          : nothing
      }
      ${
        products.length === 0
          ? html`<p>The shelf is empty. Add the first product and copy its rate, analysis and pack sizes from the label.</p>`
          : html`<ul>${repeat(
              shown,
              (product) => product.id,
              (product) => this.renderProduct(product),
            )}</ul>`
      }
      <div class="row ends"><button class="primary" @click=${this.add}>Add a product</button>
        ${products.length > 1 ? html`<button @click=${this.compare}>Compare</button>` : nothing}</div>
      ${products.length > 0 ? this.renderFold('Share labels as a file', 'share', () => html`<label-share .app=${app} .rev=${rev}></label-share>`) : nothing}
      ${this.renderFold('Open labels from a file', 'open', () => html`<label-open .app=${app} .rev=${rev} .given=${this.given}></label-open>`)}
    `;
  }

  /** A fold whose content is fetched and made when it is first opened. */
  private renderFold(title: string, part: Part, content: () => unknown) {
    return html`<details class="fold" id=${part} @toggle=${() => this.load(part)}><summary>${title}</summary>
      ${this.loaded.has(part) ? content() : nothing}</details>`;
  }

  private async load(part: Part): Promise<void> {
    try {
      await PARTS[part]();
      this.loaded = new Set(this.loaded).add(part);
    } catch {
      const message = 'This part of the shelf could not be loaded. Check the connection and try again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    }
  }

  private async turnTo(side: 'products' | 'equipment'): Promise<void> {
    if (side === 'equipment') await this.load('equipment');
    this.showsEquipment = side === 'equipment' && this.loaded.has('equipment');
  }

  private async compare(): Promise<void> {
    await this.load('compare');
    this.compares = this.loaded.has('compare');
  }

  private renderProduct(product: Product) {
    const { view } = this.app;
    const isOpen = view.productId === product.id;
    const flag = flagWords(quietGaps(checkProduct(product), product, this.leftOf(product)));
    return html`
      <li class=${isOpen ? 'chosen' : ''}>
        <button class="open" aria-expanded=${isOpen ? 'true' : 'false'}
          @click=${() => this.open(isOpen ? null : product.id)}>
          <span class="name">${productName(product)}</span>
          <span class="analysis">${shownAnalysis(product)}</span>
          ${this.renderSummary(product)}
          ${flag ? html`<span class=${flag.isFault ? 'flag' : 'words'}>${flag.words}</span>` : nothing}
        </button>
        ${isOpen ? this.renderOpen(product) : nothing}
      </li>
    `;
  }

  private renderSummary(product: Product) {
    const { units } = this.app;
    const uses = useChoices(product, units);
    const hasPacks = product.packs.some((pack) => pack.content.value > 0);
    const onHand = onHandWords(product, units);
    return html`
      <span class="words">${FORM_WORDS[product.form]}${uses.length > 1 || isRateEmpty(product.rate) ? nothing : html`; ${rateWords(product, units)}`}${
        hasPacks ? html`; packs: ${packsWords(product, units)}` : nothing
      }</span>
      ${uses.length > 1 ? uses.map((use) => html`<span class="words use">${use.name}: ${use.words}</span>`) : nothing}
      ${onHand === '' ? nothing : html`<span class="words">On hand: ${onHand}</span>`}
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
    const visits = visitsWith(this.app.yard.visits, product.id);
    const names = visits.map((visit) => `“${visit.name}”`);
    const planned = visits.filter((visit) => visit.doneOn === null).length;
    const lost =
      planned === 0
        ? ''
        : ` Removing it takes its doses out of ${planned < visits.length ? `the ${planned === 1 ? 'visit' : 'visits'} still planned` : planned === 1 ? 'that visit' : 'those visits'}.`;
    const stays = planned < visits.length ? ' What is done stays on record.' : '';
    return html`
      <div class="note warning" role="alert">
        <p>In use by ${names.join(', ')}.${lost}${stays} Undo brings all of it back.</p>
        <div class="row">
          <button class="danger" @click=${() => this.removeNow(product)}>${planned === 0 ? 'Remove it' : 'Remove with its doses'}</button>
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
    const product = blankProduct(app.newId('product'), app.newId('pack'), name, app.units);
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
    const { derived } = app.session;
    app.dispatch('Remove product', (yard) =>
      removeProduct(
        recordAll(yard, (id) => derived.visit(id)?.figures ?? null, product.id),
        product.id,
      ),
    );
    this.open(null);
    app.note('product-removed', `“${product.name}” is off the shelf.`, undoStep(app));
  }
}
