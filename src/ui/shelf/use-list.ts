import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import { applyUse, usesOf } from '../../plan/applyUse';
import { rateWords, useTitle } from '../../words/productWords';
import type { Issue, Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { issuesAt } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { isRateEmpty } from './product-edits';
import { sendProductChange } from './product-form';
import { copyOfUse, FIRST_USE_FIELDS, makeUseFirst, namesWithUse, removeUse } from './use-edits';
import './use-fields';

/** The issues of one use, their paths as if it stood in the product itself. @param index 0: the first use */
function issuesOfUse(issues: readonly Issue[], index: number): readonly Issue[] {
  if (index === 0) return issuesAt(issues, ...FIRST_USE_FIELDS);
  const head = `otherUses[${index - 1}].`;
  return issues.flatMap((issue) => {
    const path = issue.place.path ?? '';
    return path.startsWith(head)
      ? [{ ...issue, place: { ...issue.place, path: path.slice(head.length) } }]
      : [];
  });
}

/** The uses of a label: one is plainly there, of several one is open. */
@customElement('use-list')
export class UseList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.75rem; }
      ol { list-style: none; margin: 0; padding: 0; border-top: 1px solid var(--line); }
      li { border-bottom: 1px solid var(--line); }
      .use { display: grid; width: 100%; padding: 0.4rem 0.25rem 0.4rem 0.75rem; text-align: left; border: 0; background: none; }
      .use[aria-expanded='true'] { box-shadow: inset 4px 0 0 var(--ink); }
      .use:hover { background: var(--sheet-sunk); }
      .use b { font-weight: 650; }
      .use span { color: var(--ink-soft); font-size: var(--text-small); }
      .use .flag { color: var(--danger); font-weight: 650; }
      .inside { padding: 0.25rem 0 0.75rem 0.75rem; box-shadow: inset 4px 0 0 var(--ink); display: grid; gap: 0.75rem; }
      .row { align-items: center; }
      .note { margin: 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];
  /** the use that is open; null: the first; '': none. */
  @state() private open: string | null = null;
  /** use whose removal is asked about. */
  @state() private asking: string | null = null;

  /** A use that is not there (yet, or any more) leaves the first one open. */
  private get openId(): string | null {
    const { open, product } = this;
    return open === '' || product.otherUses.some((use) => use.id === open) ? open : null;
  }

  protected override render() {
    const uses = usesOf(this.product);
    return html`
      ${uses.length === 1 ? this.renderFields(null, 0) : html`<ol>${uses.map((use, i) => this.renderUse(use, i))}</ol>`}
      <div><button type="button" @click=${this.add}>Add another use</button></div>
      <p class="quiet">A label can have several: the same bottle on the hose and in a tank, a light rate beside the full one. A dose says which it goes by.</p>
    `;
  }

  private renderUse({ id, product }: ReturnType<typeof usesOf>[number], index: number) {
    const isOpen = this.openId === id;
    const issues = issuesOfUse(this.issues, index);
    const faults = issues.filter((issue) => issue.severity === 'error').length;
    const checks = issues.filter((issue) => issue.severity === 'warning').length;
    return html`<li>
      <button type="button" class="use" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => {
        this.open = isOpen ? '' : id;
        this.asking = null;
      }}>
        <b>${useTitle(product)}</b>
        <span>${index === 0 ? 'First use: ' : ''}${isRateEmpty(product.rate) ? 'Rate still to fill in' : rateWords(product, this.app.units)}</span>
        ${checks > 0 && !isOpen ? html`<span>${checks === 1 ? 'One entry to check' : `${checks} entries to check`}</span>` : nothing}
        ${faults > 0 ? html`<span class="flag">${faults === 1 ? 'One entry cannot be right' : `${faults} entries cannot be right`}</span>` : nothing}
      </button>
      ${isOpen ? html`<div class="inside">${this.renderFields(id, index)}${id === null ? nothing : this.renderActs(id)}</div>` : nothing}
    </li>`;
  }

  private renderFields(id: string | null, index: number) {
    return keyed(
      id,
      html`<use-fields .app=${this.app} .rev=${this.rev} .product=${this.product} .useId=${id} .issues=${issuesOfUse(this.issues, index)}></use-fields>`,
    );
  }

  private renderActs(id: string) {
    const names = namesWithUse(this.app.yard, this.product.id, id);
    if (this.asking === id)
      return html`<div class="note warning" role="alert">
        <p>${names.map((name) => `“${name}”`).join(', ')} ${names.length === 1 ? 'goes' : 'go'} by this use. Without it ${names.length === 1 ? 'its doses go' : 'their doses go'} by the first use, at its rate. Undo brings it back.</p>
        <div class="row"><button type="button" class="danger" @click=${() => this.removeNow(id)}>Remove it</button>
          <button type="button" @click=${() => {
            this.asking = null;
          }}>Keep it</button></div></div>`;
    return html`<div class="row">
      <button type="button" @click=${() => this.makeFirst(id)}>Make it the first</button>
      <button type="button" class="danger" @click=${() => {
        if (names.length > 0) this.asking = id;
        else this.removeNow(id);
      }}>Remove this use</button></div>`;
  }

  private add(): void {
    const { product } = this;
    const from = applyUse(product, this.openId || null) ?? product;
    const use = copyOfUse(from, this.app.newId('use'));
    sendProductChange(this, `use ${use.id} add`, { otherUses: [...product.otherUses, use] });
    this.open = use.id;
  }

  private makeFirst(id: string): void {
    this.app.dispatch('Make use the first', (yard) => makeUseFirst(yard, this.product.id, id));
    this.open = null;
  }

  private removeNow(id: string): void {
    this.asking = null;
    this.open = null;
    this.app.dispatch('Remove use', (yard) => removeUse(yard, this.product.id, id));
  }
}
