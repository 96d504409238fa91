import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Amount, Issue, Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { sendProductChange } from './product-form';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

type Limits = Product['limits'];

/** What the label forbids to exceed. Empty: the label is silent. */
@customElement('limit-fields')
export class LimitFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { limits } = this.product;
    return html`
      <p class="quiet">Leave empty where the label is silent.</p>
      <div class="fields">
        <div class="whole">${this.renderAmount('Most product in one dose', 'maxPerDose')}</div>
        <div class="whole">${this.renderAmount('Most product in a year', 'maxPerYear')}</div>
        <number-field label="Least days between doses" suffix="days" optional whole .value=${limits.minIntervalDays} .min=${0}
          @number-change=${(event: CustomEvent<NumberChange>) => this.set({ minIntervalDays: event.detail.value })}></number-field>
        <number-field label="Most doses in a year" optional whole .value=${limits.maxDosesPerYear} .min=${1}
          @number-change=${(event: CustomEvent<NumberChange>) => this.set({ maxDosesPerYear: event.detail.value })}></number-field>
        <quantity-field label="Not in air warmer than" quantity="temperature" optional .system=${this.app.units} .value=${limits.maxAirTempC}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set({ maxAirTempC: event.detail.valueSi })}></quantity-field>
      </div>
      ${issueNotes(this.issues)}
    `;
  }

  private renderAmount(label: string, key: 'maxPerDose' | 'maxPerYear') {
    const limit = this.product.limits[key];
    const unit: Amount['unit'] = limit?.unit ?? this.product.packs[0]?.content.unit ?? 'kg';
    return html`<quantity-field label=${label} .quantity=${unit === 'L' ? 'volume-per-area' : 'mass-per-area'} optional
      .system=${this.app.units} .value=${limit?.value ?? null} .min=${0}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => {
        const value = event.detail.valueSi;
        this.set({ [key]: value === null ? null : { unit, value } });
      }}></quantity-field>`;
  }

  private set(change: Partial<Limits>): void {
    const limits = { ...this.product.limits, ...change };
    sendProductChange(this, `limits ${Object.keys(change)[0]}`, { limits });
  }
}
