import { css, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { checkProduct } from '../../plan/check';
import { isLiquid } from '../../plan/rate';
import { replaceProduct } from '../../yard/edits';
import { type Analysis, type Issue, PRODUCT_FORMS, type Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes, issuesAt, withoutName } from '../parts/issue-notes';
import './limit-fields';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import './pack-list';
import { FORM_WORDS } from '../../words/productWords';
import { inForm, isSpreadDry } from './product-edits';
import { quietGaps } from './product-gaps';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import './rate-fields';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

/** Fields whose issues stand beside them; the rest stand at the head of the form. */
const PLACED = [
  'name',
  'form',
  'analysis',
  'densityKgPerL',
  'rate',
  'packs',
  'onHand',
  'carrierLPerM2',
  'carrierIsTotal',
  'spreadDistanceM',
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
    new CustomEvent<ProductChange>('product-change', { detail: { field, change }, bubbles: true }),
  );
}

@customElement('product-form')
export class ProductForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem 0.5rem; align-items: start; margin-bottom: 0.75rem; }
      .three { display: grid; grid-template-columns: repeat(3, 1fr); gap: 0.5rem; align-items: start; margin-bottom: 0.5rem; }
      .whole { grid-column: 1 / -1; margin: 0; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); }
      .note { margin: 0.25rem 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  /** keys of the fields gone to and left, see `product-gaps.ts`. */
  @property({ attribute: false }) left: ReadonlySet<string> = new Set();
  @query('#name') private nameField?: HTMLInputElement;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    void this.updateComplete.then(() => {
      this.nameField?.focus();
      this.nameField?.select();
    });
  }

  protected override render() {
    const { product, app } = this;
    const issues = withoutName(quietGaps(checkProduct(product), product, this.left), product.name);
    const placed = new Set(issuesAt(issues, ...PLACED));
    return html`
      <form @submit=${(event: Event) => event.preventDefault()} @product-change=${(
        event: CustomEvent<ProductChange>,
      ) => this.change(event.detail.field, event.detail.change)}>
        ${issueNotes(issues.filter((issue) => !placed.has(issue)))}
        ${this.renderNames(product, issues)}
        ${this.renderAnalysis(product, issues)}
        <h3>Packs</h3>
        <pack-list .app=${app} .rev=${this.rev} .product=${product} .issues=${issuesAt(issues, 'packs', 'onHand')}></pack-list>
        <h3>Label rate</h3>
        <rate-fields .app=${app} .rev=${this.rev} .product=${product} .issues=${issuesAt(issues, 'rate')}></rate-fields>
        ${this.renderCarrier(product, issues)}
        ${this.renderCare(product, issues)}
        <details class="fold" ?open=${issuesAt(issues, 'limits').length > 0}><summary>Limits on the label</summary>
          <limit-fields .app=${app} .rev=${this.rev} .product=${product} .issues=${issuesAt(issues, 'limits')}></limit-fields></details>
        <details class="fold" ?open=${product.note !== ''}><summary>Note</summary>
          <label>Note<textarea .value=${product.note} @input=${(event: Event) => this.change('note', { note: fieldValue(event) })}></textarea></label></details>
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

  private renderAnalysis(product: Product, issues: readonly Issue[]) {
    const { analysis } = product;
    const set = (part: Partial<Analysis>) =>
      this.change(`analysis.${Object.keys(part)[0]}`, { analysis: { ...analysis, ...part } });
    const percent = (
      label: string,
      key: 'nPct' | 'p2o5Pct' | 'k2oPct',
    ) => html`<number-field label=${label} suffix="%"
      .value=${analysis[key]} .min=${0} @number-change=${(event: CustomEvent<NumberChange>) => set({ [key]: event.detail.value ?? 0 })}></number-field>`;
    return html`
      <h3>Analysis</h3>
      <div class="three">${percent('N', 'nPct')}${percent('P₂O₅', 'p2o5Pct')}${percent('K₂O', 'k2oPct')}</div>
      ${issueNotes(issuesAt(issues, 'analysis'))}
      <p class="quiet">Percent by weight. By label convention the second and third numbers are P₂O₅ and K₂O (oxides), not bare P and K.</p>
      <div class="fields">
        <number-field label="Slow-release share of the N" suffix="% of N" optional .value=${analysis.slowNPctOfN} .min=${0} .max=${100}
          @number-change=${(event: CustomEvent<NumberChange>) => set({ slowNPctOfN: event.detail.value, elementsPct: {} })}></number-field>
        <quantity-field label="Density" quantity="density" optional .system=${this.app.units} .value=${product.densityKgPerL} .min=${0}
          hint=${isLiquid(product) ? 'Weight of a full gallon or litre; on the label or its safety sheet.' : ''}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.change('densityKgPerL', { densityKgPerL: event.detail.valueSi })}></quantity-field>
      </div>
      ${issueNotes(issuesAt(issues, 'densityKgPerL'))}
    `;
  }

  private renderCarrier(product: Product, issues: readonly Issue[]) {
    const isMixed = product.carrierLPerM2 !== null;
    if (isSpreadDry(product) && !isMixed) return nothing;
    return html`
      <h3>Water to mix in</h3>
      <quantity-field label="Carrier water (leave empty when none is mixed in)" quantity="volume-per-area" unit="gal per 1,000 sq ft" optional
        .system=${this.app.units} .value=${product.carrierLPerM2} .min=${0}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => this.change('carrierLPerM2', { carrierLPerM2: event.detail.valueSi })}></quantity-field>
      ${
        isMixed
          ? html`<label>That figure is<select @change=${(event: Event) => this.change('carrierIsTotal', { carrierIsTotal: fieldValue(event) === 'total' })}>
              <option value="added" .selected=${!product.carrierIsTotal}>water added to the product</option>
              <option value="total" .selected=${product.carrierIsTotal}>the whole mix, product included</option></select></label>`
          : nothing
      }
      ${issueNotes(issuesAt(issues, 'carrierLPerM2', 'carrierIsTotal'))}
    `;
  }

  private renderCare(product: Product, issues: readonly Issue[]) {
    return html`
      <h3>Where it lands</h3>
      <quantity-field label="Spread distance past the edge aimed at" quantity="length" .system=${this.app.units} .value=${product.spreadDistanceM}
        .min=${0} .max=${50} hint="Hardscape within this distance is listed for rinsing or sweeping."
        @quantity-change=${(event: CustomEvent<QuantityChange>) => {
          if (event.detail.valueSi !== null)
            this.change('spreadDistanceM', { spreadDistanceM: event.detail.valueSi });
        }}></quantity-field>
      <label class="check"><input type="checkbox" .checked=${product.stainsHardscape}
        @change=${(event: Event) => this.change('stainsHardscape', { stainsHardscape: isTicked(event) })} />Stains hardscape</label>
      <label class="check"><input type="checkbox" .checked=${product.waterIn}
        @change=${(event: Event) => this.change('waterIn', { waterIn: isTicked(event) })} />Water in afterwards</label>
      ${issueNotes(issuesAt(issues, 'spreadDistanceM'))}
    `;
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
