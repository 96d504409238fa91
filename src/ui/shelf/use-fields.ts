import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { applyUse, usesOf } from '../../plan/applyUse';
import { formatLength } from '../../units/format';
import { APPLICATOR_WORDS, amountWords } from '../../words/productWords';
import { APPLICATORS, type Applicator, type Issue, type Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import { isSpreadDry } from './product-edits';
import { type ProductChange, sendProductChange } from './product-form';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import './rate-fields';
import { changeOfUse, isPutOutDry, usualSpreadM, withApplicator } from './use-edits';

/** One use of a label: what puts it out, its rate, its water, where it lands, which packs it opens. */
@customElement('use-fields')
export class UseFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.75rem; }
      .note, p { margin: 0; }
      .spread { display: grid; gap: 0.25rem; justify-items: start; }
      .spread quantity-field { width: 100%; }
      fieldset { border: 0; margin: 0; padding: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  /** the whole label. */
  @property({ attribute: false }) product!: Product;
  /** null: the first use. */
  @property({ attribute: false }) useId: string | null = null;
  /** of this use, their paths as if it stood in the product itself. */
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { app, issues } = this;
    const use = applyUse(this.product, this.useId);
    if (use === null) return nothing;
    return html`
        <label>Put out with<select @change=${(event: Event) => this.chooseApplicator(use, (fieldValue(event) || null) as Applicator | null)}>
          <option value="" .selected=${use.applicator === null}>not told</option>
          ${APPLICATORS.map((each) => html`<option value=${each} .selected=${each === use.applicator}>${APPLICATOR_WORDS[each]}</option>`)}
        </select></label>
        <label>Name of this use, where it needs one<input autocomplete="off" .value=${use.useName} placeholder=${use.applicator ? APPLICATOR_WORDS[use.applicator] : ''}
          @input=${(event: Event) => this.send('useName', { useName: fieldValue(event) })} /></label>
      ${issueNotes(issuesAt(issues, 'name', 'useName', 'applicator', 'id'))}
      <rate-fields .app=${app} .rev=${this.rev} .product=${use} .useId=${this.useId} .issues=${issuesAt(issues, 'rate')}
        @product-change=${(event: CustomEvent<ProductChange>) => {
          event.stopPropagation();
          this.send(event.detail.field, event.detail.change);
        }}></rate-fields>
      ${this.renderPacks(use)}
      ${this.renderCarrier(use)}
      ${this.renderSpread(use)}
      <label class="check"><input type="checkbox" .checked=${use.waterIn}
        @change=${(event: Event) => this.send('waterIn', { waterIn: isTicked(event) })} />Water in afterwards</label>
      ${issueNotes(issuesAt(issues, 'waterIn'))}
    `;
  }

  private renderPacks(use: Product) {
    const { packs, packIds } = use;
    const issues = issuesAt(this.issues, 'packIds');
    if (packs.length < 2 && packIds === null) return issueNotes(issues);
    const isOn = (id: string) => packIds === null || packIds.includes(id);
    const set = (id: string, on: boolean) => {
      const ids = packs.map((pack) => pack.id).filter((each) => (each === id ? on : isOn(each)));
      this.send('packIds', { packIds: ids.length === packs.length ? null : ids });
    };
    return html`<fieldset><legend>Packs this use opens</legend>
      ${packs.map(
        (pack, i) =>
          html`<label class="check"><input type="checkbox" .checked=${isOn(pack.id)} @change=${(event: Event) => set(pack.id, isTicked(event))} />${
            pack.content.value > 0 ? amountWords(use, pack.content, this.app.units) : `Pack ${i + 1}`
          }</label>`,
      )}</fieldset>${issueNotes(issues)}`;
  }

  private renderCarrier(use: Product) {
    const isMixed = use.carrierLPerM2 !== null;
    const issues = issueNotes(issuesAt(this.issues, 'carrierLPerM2', 'carrierIsTotal'));
    const isDry = isSpreadDry(use) || isPutOutDry(use.applicator) || use.applicator === 'hose-end';
    if (isDry && !isMixed) return issues;
    return html`
      <quantity-field label="Carrier water (leave empty when none is mixed in)" quantity="volume-per-area" unit="gal per 1,000 sq ft" optional
        hint=${use.applicator === 'tank-sprayer' ? 'What the sprayer puts out, by its calibration.' : ''}
        .system=${this.app.units} .value=${use.carrierLPerM2} .min=${0}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send('carrierLPerM2', { carrierLPerM2: event.detail.valueSi })}></quantity-field>
      ${
        isMixed
          ? html`<label>That figure is<select @change=${(event: Event) => this.send('carrierIsTotal', { carrierIsTotal: fieldValue(event) === 'total' })}>
              <option value="added" .selected=${!use.carrierIsTotal}>water added to the product</option>
              <option value="total" .selected=${use.carrierIsTotal}>the whole mix, product included</option></select></label>`
          : nothing
      }
      ${issues}
    `;
  }

  private renderSpread(use: Product) {
    const usual = use.applicator === null ? null : usualSpreadM(use.applicator, this.app.units);
    const isOther = usual !== null && Math.abs(usual - use.spreadDistanceM) > 0.01;
    return html`<div class="spread">
      <quantity-field label="Spread distance past the edge aimed at" quantity="length" .system=${this.app.units} .value=${use.spreadDistanceM}
        .min=${0} .max=${50} hint="Hardscape within this distance is listed for rinsing or sweeping."
        @quantity-change=${(event: CustomEvent<QuantityChange>) => {
          if (event.detail.valueSi !== null)
            this.send('spreadDistanceM', { spreadDistanceM: event.detail.valueSi });
        }}></quantity-field>
      ${
        isOther
          ? html`<button type="button" class="plain" @click=${() => this.send('spreadDistanceM', { spreadDistanceM: usual })}>Take the usual ${formatLength(usual, this.app.units)}</button>`
          : nothing
      }
      ${issueNotes(issuesAt(this.issues, 'spreadDistanceM'))}
    </div>`;
  }

  private chooseApplicator(use: Product, applicator: Applicator | null): void {
    const others = usesOf(this.product)
      .filter((one) => one.id !== this.useId)
      .map((one) => one.product.rate);
    this.send('applicator', withApplicator(use, applicator, others, this.app.units));
  }

  private send(field: string, change: Partial<Product>): void {
    const { product, useId } = this;
    sendProductChange(this, `use ${useId ?? 'first'} ${field}`, changeOfUse(product, useId, change));
  }
}
