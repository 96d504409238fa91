import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { judgeRate } from '../../pace/calibrate/judgeRate';
import { landedRate } from '../../pace/usual';
import { formatAmountRate, formatPercent } from '../../units/format';
import { productName } from '../../words/productWords';
import type { Equipment, SpreaderSetting } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import { sendEquipmentChange } from './equipment-change';
import { productsFor, wantedKgPerM2, withBlankSetting } from './equipment-edits';

/** Settings of a spreader, one for each product: what stands on the dial, what it puts out. */
@customElement('setting-list')
export class SettingList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .one { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.4rem 0.5rem; align-items: start; padding: 0.5rem 0; border-top: 1px solid var(--line); }
      .one > b, .one > p, .one > .note { grid-column: 1 / -1; margin: 0; }
      .head { grid-column: 1 / -1; display: grid; grid-template-columns: minmax(0, 1fr) auto; align-items: center; }
      form { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.5rem; align-items: end; }
    `,
  ];

  @property({ attribute: false }) equipment!: Equipment;
  @state() private chosen = '';

  protected override render() {
    const { settings, applicator } = this.equipment;
    const products = productsFor(this.app.yard.products, applicator);
    return html`
      ${settings.length === 0 ? html`<p class="quiet">No setting yet. A catch test finds one; what the bag says can be typed in.</p>` : settings.map((setting, index) => this.renderSetting(setting, index))}
      ${
        products.length === 0
          ? nothing
          : html`<form @submit=${(event: Event) => this.add(event)}>
              <label>Setting for<select @change=${(event: Event) => {
                this.chosen = fieldValue(event);
              }}><option value="" .selected=${this.chosen === ''}>choose from the shelf</option>
                ${products.map((product) => html`<option value=${product.id} .selected=${product.id === this.chosen}>${productName(product)}</option>`)}</select></label>
              <button>Add setting</button></form>`
      }`;
  }

  private renderSetting(setting: SpreaderSetting, index: number) {
    const { units } = this.app;
    const product = this.app.yard.products.find((each) => each.id === setting.productId);
    const wanted = product ? wantedKgPerM2(product, this.equipment.applicator, 1) : null;
    return html`<div class="one">
      <div class="head"><b>${productName(product)}</b>
        <button type="button" aria-label=${`Take out the setting for ${productName(product)}`} @click=${() => this.send(this.equipment.settings.filter((each) => each !== setting))}>×</button></div>
      <label>On the dial<input autocomplete="off" .value=${setting.words} @change=${(event: Event) => this.put(index, { ...setting, words: fieldValue(event).trim() })} /></label>
      <quantity-field label="It puts out" quantity="mass-per-area" optional .system=${units} .value=${setting.rateKgPerM2 > 0 ? setting.rateKgPerM2 : null} .min=${0} .max=${20}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => this.put(index, { ...setting, rateKgPerM2: event.detail.valueSi ?? 0 })}></quantity-field>
      ${this.renderJudgement(setting.rateKgPerM2, wanted)}
    </div>`;
  }

  private renderJudgement(rate: number, wanted: number | null) {
    if (!(rate > 0))
      return html`<p class="quiet">Not known yet: do a catch test with it, or type what the bag says for this spreader.</p>`;
    if (wanted === null || !(wanted > 0)) return nothing;
    const { overlapShare } = this.equipment;
    const landed = landedRate(rate, this.equipment);
    const { off, isGood } = judgeRate(landed, wanted);
    const half = judgeRate(landed, wanted / 2);
    const label = formatAmountRate({ unit: 'kg', value: wanted }, this.app.units);
    const words = isGood
      ? `Within 5 % of the label’s ${label}.`
      : half.isGood
        ? `Half of the label’s ${label}, within 5 %: for two coats.`
        : `${formatPercent(Math.abs(off))} ${off > 0 ? 'over' : 'under'} the label’s ${label}.`;
    const laid =
      overlapShare > 0
        ? `With ${formatPercent(overlapShare)} overlap ${formatAmountRate({ unit: 'kg', value: landed }, this.app.units)} lands. `
        : '';
    return html`<p class=${isGood || half.isGood ? 'quiet' : 'note warning'}>${laid}${words}</p>`;
  }

  private add(event: Event): void {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    if (this.chosen === '') {
      form.querySelector('select')?.focus();
      return;
    }
    this.send(withBlankSetting(this.equipment.settings, this.chosen));
    this.chosen = '';
  }

  private put(index: number, setting: SpreaderSetting): void {
    this.send(this.equipment.settings.with(index, setting));
  }

  private send(settings: Equipment['settings']): void {
    sendEquipmentChange(this, 'settings', { settings });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setting-list': SettingList;
  }
}
