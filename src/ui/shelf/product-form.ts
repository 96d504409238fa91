import { css, html } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { checkProduct } from '../../plan/check';
import { replaceProduct } from '../../yard/edits';
import { type Issue, PRODUCT_FORMS, type Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { focusAll } from '../parts/focus-all';
import { fold } from '../parts/fold';
import { issueNotes, issuesAt, withoutName } from '../parts/issue-notes';
import './analysis-fields';
import { hasMore, MORE_FIELDS } from './label-more';
import './limit-fields';
import './pack-list';
import { FORM_WORDS } from '../../words/productWords';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { inForm } from './product-edits';
import { quietGaps } from './product-gaps';
import { FIRST_USE_FIELDS } from './use-edits';
import './use-list';

/** Fields whose issues stand beside them; the rest stand at the head of the form. */
const PLACED = [
  'name',
  'form',
  'analysis',
  'densityKgPerL',
  'seed',
  'packs',
  'onHand',
  ...FIRST_USE_FIELDS,
  'otherUses',
  ...MORE_FIELDS,
  'limits',
];

/** Entry of one product. Parts of it send `product-change` with the changed fields. */
export interface ProductChange {
  readonly field: string;
  readonly change: Partial<Product>;
}

/** Tells the shelf that a field was left (key of `product-gaps.ts`): what is wrong in it may be said now. */
export function sendFieldLeft(from: HTMLElement, key: string): void {
  from.dispatchEvent(new CustomEvent<string>('field-left', { detail: key, bubbles: true, composed: true }));
}

/** Sends a change of the product up to the form. */
export function sendProductChange(from: HTMLElement, field: string, change: Partial<Product>): void {
  from.dispatchEvent(
    new CustomEvent<ProductChange>('product-change', {
      detail: { field, change },
      bubbles: true,
      composed: true,
    }),
  );
}

@customElement('product-form')
export class ProductForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; container-type: inline-size; }
      .parts > section { min-width: 0; }
      @container (min-width: 36rem) {
        .parts { display: grid; grid-template: auto 1fr auto / 1fr 1fr; gap: 0 1.5rem; align-items: start; }
        /* each column goes on under what stands above, whichever is longer */
        .packs { grid-area: 1 / 2 / span 2; }
        .uses { grid-area: 2 / 1 / span 2; }
        .more { grid-area: 3 / 2; }
        .fields > .whole { grid-column: auto; }
      }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem 0.5rem; align-items: start; margin-bottom: 0.75rem; }
      .whole { grid-column: 1 / -1; margin: 0; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); }
      .note { margin: 0.25rem 0; }
      .more { margin-top: 1rem; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  /** keys of the fields gone to and left, see `product-gaps.ts`. */
  @property({ attribute: false }) left: ReadonlySet<string> = new Set();
  /** a label that tells more is opened with that in sight; it does not fold open under the hands. */
  private opensMore = false;
  @query('#name') private nameField?: HTMLInputElement;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    focusAll(this, () => this.nameField);
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    const before = changed.get('product') as Product | undefined;
    if (changed.has('product') && before?.id !== this.product.id) this.opensMore = hasMore(this.product);
  }

  protected override render() {
    const { product, app, rev } = this;
    const issues = withoutName(quietGaps(checkProduct(product), product, this.left), product.name);
    const placed = new Set(issuesAt(issues, ...PLACED));
    const more = issuesAt(issues, ...MORE_FIELDS);
    return html`
      <form @submit=${(event: Event) => event.preventDefault()} @product-change=${(
        event: CustomEvent<ProductChange>,
      ) => this.change(event.detail.field, event.detail.change)}>
        ${issueNotes(issues.filter((issue) => !placed.has(issue)))}
        ${this.renderNames(product, issues)}
        <div class="parts">
        <section><h3>Analysis</h3>
        <analysis-fields .app=${app} .rev=${rev} .product=${product} .issues=${issuesAt(issues, 'analysis', 'densityKgPerL', 'seed')}></analysis-fields></section>
        <section class="packs"><h3>Packs</h3>
        <pack-list .app=${app} .rev=${rev} .product=${product} .issues=${issuesAt(issues, 'packs', 'onHand')}></pack-list></section>
        <section class="uses"><h3>${product.otherUses.length === 0 ? 'Label rate and use' : 'Uses on the label'}</h3>
        <use-list .app=${app} .rev=${rev} .product=${product} .issues=${issues}></use-list>
        ${this.renderStains(product)}</section>
        <section class="more">
        <details class="fold" ?open=${more.length > 0 || this.opensMore}><summary>More on the label</summary>
          <label-more .app=${app} .rev=${rev} .product=${product} .issues=${more}></label-more></details>
        <details class="fold" ?open=${issuesAt(issues, 'limits').length > 0}><summary>Limits on the label</summary>
          <limit-fields .app=${app} .rev=${rev} .product=${product} .issues=${issuesAt(issues, 'limits')}></limit-fields></details>
        <details class="fold" ?open=${product.note !== ''}><summary>Note</summary>
          <label>Note<textarea .value=${product.note} @input=${(event: Event) => this.change('note', { note: fieldValue(event) })}></textarea></label></details></section></div>
      </form>
    `;
  }

  private renderNames(product: Product, issues: readonly Issue[]) {
    return html`
      <div class="fields">
        <label class="whole">Name<input id="name" autocomplete="off" .value=${product.name}
          @input=${(event: Event) => this.change('name', { name: fieldValue(event) })} /></label>
        <div class="whole">${selectField('Form', product.form, PRODUCT_FORMS, FORM_WORDS, (form) => this.change('form', inForm(product, form)))}</div>
      </div>
      ${issueNotes(issuesAt(issues, 'name', 'form'))}
    `;
  }

  private renderStains(product: Product) {
    return html`<label class="check"><input type="checkbox" .checked=${product.stainsHardscape}
      @change=${(event: Event) => this.change('stainsHardscape', { stainsHardscape: isTicked(event) })} />Stains hardscape</label>`;
  }

  private change(field: string, change: Partial<Product>): void {
    const { id } = this.product;
    const key = `product ${id} ${field}`;
    this.app.dispatch(
      'Change product',
      (yard) => {
        const now = yard.products.find((product) => product.id === id);
        return now ? replaceProduct(yard, { ...now, ...change }) : yard;
      },
      key,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'product-form': ProductForm;
  }
}
