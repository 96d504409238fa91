import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { compareProducts, sortOptions } from '../../buy/compareProducts';
import {
  COMPARE_KEYS,
  type CompareDose,
  type CompareKey,
  type CompareOption,
  type Comparison,
} from '../../buy/compareTypes';
import { formatArea } from '../../units/format';
import { productName, useName } from '../../words/productWords';
import { zoneClass } from '../../yard/choose';
import { type Product, ZONE_CLASSES, type ZoneChoice } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import '../visit/zone-choice';
import './compare-result';
import { phosphorusWords } from './compare-ground';
import { KEY_WORDS } from './compare-words';
import { groundOfChoice } from './ground-of-choice';
import { ruleVerdicts } from './rule-verdicts';
import { wantedNitrogen } from './wanted-nitrogen';

const DOSE_WORDS: Readonly<Record<CompareDose, string>> = {
  'label-rate': 'at most the label rate',
  'label-most': 'up to the label’s most',
};

/**
 * Products side by side for the same nitrogen on the same ground. Opened from the shelf; event
 * `compare-close` when the person is done.
 */
@customElement('compare-view')
export class CompareView extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .head { display: flex; flex-wrap: wrap; justify-content: space-between; gap: var(--gap); align-items: start; margin-bottom: 0.5rem; }
      .head h2 { margin: 0.5rem 0 0; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(16rem, 1fr)); gap: 0.5rem 1rem; margin: 0.5rem 0; align-items: end; }
      fieldset { border: 0; padding: 0; margin: 0 0 0.5rem; min-width: 0; }
      legend { padding: 0; font-weight: 650; }
      .list { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); column-gap: 1rem; }
      summary { min-height: var(--touch); display: flex; align-items: center; cursor: pointer; text-decoration: underline; }
    `,
  ];

  @state() private choice: ZoneChoice | null = null;
  /** null: the need of the ground. */
  @state() private nKgPerM2: number | null = null;
  @state() private dose: CompareDose = 'label-rate';
  @state() private sort: CompareKey = 'cost';
  /** products taken out by hand. */
  @state() private without: ReadonlySet<string> = new Set();

  override connectedCallback(): void {
    super.connectedCallback();
    this.app.setView({ isBroad: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.app.setView({ isBroad: false });
  }

  /** The button that opened it is gone: the keys go on from here, and the view begins at its head. */
  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLButtonElement>('.head button')?.focus();
  }

  /** Turf of the first class there is, until ground is chosen. */
  private get ground(): ZoneChoice {
    if (this.choice) return this.choice;
    const own = ZONE_CLASSES.find((one) => this.app.yard.zones.some((zone) => zoneClass(zone) === one));
    return { classes: own ? [own] : [], include: [], exclude: [] };
  }

  private get feeding(): readonly Product[] {
    return this.app.yard.products.filter((product) => product.analysis.nPct > 0);
  }

  protected override render() {
    const { app, rev } = this;
    const wanted = wantedNitrogen(app.yard, this.ground);
    return html`
      <div class="head"><h2>Compare products</h2>
        <button @click=${() => this.dispatchEvent(new CustomEvent('compare-close'))}>Back to the shelf</button></div>
      <p>The same nitrogen on the same ground by each product of the shelf and each use of its label. Packs are bought new; what stands on the shelf is left out.</p>
      <fieldset><legend>Ground</legend>
        <zone-choice .app=${app} .rev=${rev} .choice=${this.ground}
          @choice-change=${(event: CustomEvent<ZoneChoice>) => {
            this.choice = event.detail;
          }}></zone-choice></fieldset>
      <div class="fields">
        <quantity-field label="Nitrogen wanted in all" quantity="mass-per-area" .system=${app.units}
          .value=${this.nKgPerM2 ?? wanted.nKgPerM2} .min=${1e-6} .max=${0.1}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.nKgPerM2 = event.detail.valueSi;
          }}></quantity-field>
        ${selectField('Each visit lays down', this.dose, ['label-rate', 'label-most'], DOSE_WORDS, (dose) => {
          this.dose = dose;
        })}
        ${selectField('Least first', this.sort, COMPARE_KEYS, KEY_WORDS, (sort) => {
          this.sort = sort;
        })}
      </div>
      ${this.renderWanted(wanted.words)}
      ${this.renderProducts()}
      ${this.renderResult(this.nKgPerM2 ?? wanted.nKgPerM2)}
    `;
  }

  /** Where the nitrogen wanted comes from: it changes with the ground until it is typed. */
  private renderWanted(words: string) {
    if (this.nKgPerM2 === null)
      return html`<p class="quiet wanted" aria-live="polite">Nitrogen wanted: ${words}</p>`;
    return html`<div class="row wanted"><p class="quiet">Nitrogen wanted: as typed, whatever the ground.</p>
      <button @click=${() => {
        this.nKgPerM2 = null;
      }}>Go by the ground’s need</button></div>`;
  }

  private renderProducts() {
    const { feeding } = this;
    if (feeding.length < 2) return nothing;
    const count = feeding.filter((product) => !this.without.has(product.id)).length;
    return html`<details><summary>Products (${count} of ${feeding.length} compared)</summary>
      <div class="list">${feeding.map(
        (
          product,
        ) => html`<label class="check"><input type="checkbox" .checked=${!this.without.has(product.id)}
          @change=${(event: Event) => this.take(product.id, isTicked(event))} />${productName(product)}</label>`,
      )}</div></details>`;
  }

  private renderResult(nKgPerM2: number) {
    const { app, rev, ground } = this;
    if (this.feeding.length === 0)
      return html`<p class="note">No product of the shelf holds nitrogen. Give their labels’ analysis first.</p>`;
    const areaM2 = groundOfChoice(app.session.derived, ground);
    if (!(areaM2 > 0)) return html`<p class="note">Choose the ground to feed.</p>`;
    const found: Comparison = compareProducts({
      products: this.feeding.filter((product) => !this.without.has(product.id)),
      areaM2,
      nKgPerM2,
      dose: this.dose,
      caps: app.yard.caps,
    });
    return html`
      <p class="quiet">On ${formatArea(areaM2, app.units, 4)}, strips left untreated taken off. Visits are alike and keep to the yard’s caps; days are at the label’s least interval. Local rules that are on are held against each product; those about days and strips are left to the visits.</p>
      <compare-result .app=${app} .rev=${rev} .options=${sortOptions(found.options, this.sort)} .sort=${this.sort}
        .phosphorus=${phosphorusWords(app.yard, ground)}
        .ruleWords=${(option: CompareOption) => ruleVerdicts(app.yard, ground, option, app.today())}
        @sort-change=${(event: CustomEvent<CompareKey>) => {
          this.sort = event.detail;
        }}></compare-result>
      ${found.leftOut.map(
        ({ product, why }) =>
          html`<p class="quiet">Left out: ${productName(product)}, ${useName(product)}: ${why}.</p>`,
      )}
      <p class="note">Labels and local rules come first. Salt is told as the sodium nitrate that would act alike: it compares products, it does not say at which dose leaves burn.</p>
    `;
  }

  private take(productId: string, isTaken: boolean): void {
    const without = new Set(this.without);
    if (isTaken) without.delete(productId);
    else without.add(productId);
    this.without = without;
  }
}
