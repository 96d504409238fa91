import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type OrderLine, type OrderList, shelveOrder } from '../../buy/orderList';
import type { SheetModel } from '../../print/types';
import { formatMoney } from '../../units/format';
import { haveByWords, packName } from '../../words/buyWords';
import { productName } from '../../words/productWords';
import { AppPart } from '../parts/app-part';
import { saveFile } from '../parts/save-file';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';

const PAPER_WORDS = { letter: 'Letter', a4: 'A4' } as const;
type PaperName = keyof typeof PAPER_WORDS;

/** The order that the plans taken make: print it, save it as a table, put it on the shelf. */
@customElement('buy-order')
export class BuyOrder extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; border-top: 2px solid var(--ink); padding-top: 0.6rem; container-type: inline-size; }
      .do { margin-top: 0.75rem; }
      .do label { min-width: 6rem; }
      td.by, th.by { padding-left: 1rem; max-width: 11rem; }
      tfoot td { font-weight: 650; border-top: 2px solid var(--ink); border-bottom: 0; }
      @container (max-width: 480px) {
        thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
        tr { display: grid; grid-template-columns: 1fr auto; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
        th, td { border: 0; padding: 0; }
        td.product { grid-column: 1 / -1; font-weight: 650; }
        td.price, td.count, td.none { display: none; }
        td.pack::before { content: attr(data-count) ' × '; }
        td.by { grid-column: 1 / -1; padding: 0; max-width: none; font-size: var(--text-small); color: var(--ink-soft); }
        td.by:empty { display: none; }
        tfoot td.product { grid-column: auto; }
        tfoot tr { border-bottom: 0; }
        tfoot td { border: 0; }
      }
    `,
  ];

  @property({ attribute: false }) order!: OrderList;
  /** days the order is for, in words. */
  @property() span = '';
  @state() private paper: PaperName | null = null;
  @state() private fault = '';

  private unmount: (() => void) | null = null;

  override disconnectedCallback(): void {
    // printing itself can change the layout of the shell: the page stays until another step is opened
    if (this.app.view.step !== 'buy') this.clearStage();
    super.disconnectedCallback();
  }

  protected override render() {
    const { order } = this;
    if (order.lines.length === 0) {
      return html`<h3>Order</h3><p>All that these visits take is on the shelf: there is nothing to buy.</p>`;
    }
    const hasDays = order.lines.some((line) => line.by !== null);
    return html`
      <h3>Order</h3>
      <table>
        <thead><tr><th scope="col">Product</th><th scope="col">Pack</th><th scope="col" class="num">Packs</th>
          <th scope="col" class="num">Price</th><th scope="col" class="num">Sum</th>${hasDays ? html`<th scope="col" class="by">Have by</th>` : nothing}</tr></thead>
        <tbody>${order.lines.map((line) => this.renderLine(line, hasDays))}</tbody>
        <tfoot><tr><td class="product">Sum</td><td class="none"></td><td class="num count">${order.packs}</td><td class="none"></td>
          <td class="num">${this.money(order.total)}</td>${hasDays ? html`<td class="none"></td>` : nothing}</tr></tfoot>
      </table>
      ${order.unpriced > 0 ? html`<p class="note">The sum leaves out packs without a price.</p>` : nothing}
      <div class="row do">
        ${selectField('Paper', this.paperName, ['letter', 'a4'], PAPER_WORDS, (paper) => {
          this.paper = paper;
        })}
        <button class="primary" @click=${this.print}>Print the order</button>
        <button @click=${this.saveCsv}>Save as CSV</button>
        <button @click=${this.shelve}>Put it on the shelf</button>
      </div>
      ${this.fault ? html`<p class="note error">${this.fault}</p>` : nothing}
      <p class="quiet">“Put it on the shelf” adds the packs to what is on hand once they are bought. The label on the pack goes before all that is worked out here.</p>
    `;
  }

  private renderLine(line: OrderLine, hasDays: boolean) {
    const product = this.app.yard.products.find((each) => each.id === line.productId);
    const pack = product ? packName(product, line.packId, this.app.units) : '';
    return html`<tr><td class="product">${productName(product)}</td><td class="pack" data-count=${line.count}>${pack}</td><td class="num count">${line.count}</td>
      <td class="num price">${line.price === null ? 'no price' : this.money(line.price)}</td>
      <td class="num">${line.price === null ? '–' : this.money(line.price * line.count)}</td>
      ${hasDays ? html`<td class="by">${line.by === null ? '' : haveByWords(line.by, line.isLater)}</td>` : nothing}</tr>`;
  }

  private get paperName(): PaperName {
    return this.paper ?? (this.app.units === 'us' ? 'letter' : 'a4');
  }

  private money(value: number): string {
    return formatMoney(value, this.app.yard.settings.currency);
  }

  private clearStage(): void {
    this.unmount?.();
    this.unmount = null;
  }

  private async print(): Promise<void> {
    const { app, order, span } = this;
    let model: SheetModel;
    try {
      const [{ orderSheet }, { mountSheet }] = await Promise.all([
        import('../../print/orderSheet'),
        import('../../print/mountSheet'),
      ]);
      this.clearStage();
      model = orderSheet(app.yard, order, span || 'no days set', this.paperName, app.today());
      this.unmount = mountSheet(model, document.body);
      this.fault = '';
    } catch {
      this.fault = 'The order list could not be loaded. Check the connection and try again.';
      return;
    }
    addEventListener('afterprint', () => this.clearStage(), { once: true });
    window.print();
  }

  private async saveCsv(): Promise<void> {
    const { app, order } = this;
    const { orderCsv } = await import('../../io/writeOrderCsv');
    saveFile(`${app.yard.name || 'yard'} order.csv`, 'text/csv', orderCsv(app.yard, order));
  }

  private shelve(): void {
    const { app, order } = this;
    app.dispatch('Put the order on the shelf', (yard) => shelveOrder(yard, order.lines));
    const packs = order.packs === 1 ? 'One pack is' : `${order.packs} packs are`;
    app.note('order-shelved', `${packs} added to the shelf.`, undoStep(app));
  }
}
