import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { monthlyShares } from '../../need/monthlyNeed';
import { usualSplit } from '../../need/setUpNeeds';
import { formatNumber } from '../../units/format';
import { SPLIT_WORDS } from '../../words/needWords';
import { NO_CLIMATE } from '../../yard/defaults';
import type { NitrogenSplit, NutrientNeed } from '../../yard/types';
import { MONTH_NAMES } from '../../yard/yearDay';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { sendNeedChange } from './need-change';

const KINDS = ['growth', 'even', 'typed'] as const;

/** How the year's nitrogen is shared out over its months. Sends `need-change`. */
@customElement('split-fields')
export class SplitFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .quiet { margin-top: 0.4rem; }
      .two { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin-top: 0.5rem; }
      .twelve { display: grid; grid-template-columns: repeat(auto-fill, minmax(5.75rem, 1fr)); gap: 0.5rem; margin: 0.5rem 0; }
    `,
  ];

  @property({ attribute: false }) need!: NutrientNeed;

  protected override render() {
    const { split } = this.need;
    return html`
      ${selectField('Share the year out', split.kind, KINDS, SPLIT_WORDS, (kind) => this.send(this.splitOf(kind)))}
      ${split.kind === 'even' ? this.renderEven(split) : nothing}
      ${split.kind === 'typed' ? this.renderTyped(split.shares) : nothing}
      ${
        split.kind === 'growth'
          ? html`<p class="quiet">Each month gets its part by growth potential: how near its mean temperature is to the best for the grass (Gelernter and Stowell, 2005). It knows nothing of drought or shade.</p>`
          : nothing
      }
    `;
  }

  private renderEven(split: Extract<NitrogenSplit, { kind: 'even' }>) {
    const field = (label: string, key: 'fromMonth' | 'toMonth') => html`<label>${label}<select
      @change=${(event: Event) => this.send({ ...split, [key]: Number(fieldValue(event)) })}>
      ${MONTH_NAMES.map((name, month) => html`<option value=${month + 1} .selected=${month + 1 === split[key]}>${name}</option>`)}
    </select></label>`;
    return html`<div class="two">${field('From', 'fromMonth')}${field('To', 'toMonth')}</div>
      <p class="quiet">Every month gets the same, long or short. The run may go over the new year.</p>`;
  }

  private renderTyped(shares: readonly number[]) {
    const sum = shares.reduce((total, share) => total + share, 0);
    return html`<div class="twelve">${MONTH_NAMES.map(
      (name, month) => html`<number-field label=${name} .value=${shares[month] ?? 0} .min=${0} .max=${1e6}
        @number-change=${(event: CustomEvent<NumberChange>) =>
          this.send(
            { kind: 'typed', shares: shares.with(month, event.detail.value ?? 0) },
            `typed ${month}`,
          )}></number-field>`,
    )}</div>
    <p class="quiet">Parts of any size: percents, pounds or counts. They come to ${formatNumber(sum, 4)} and are scaled to the year.</p>`;
  }

  /** The split of another kind, begun with what is in force. */
  private splitOf(kind: NitrogenSplit['kind']): NitrogenSplit {
    const { need, app } = this;
    if (kind === 'growth') return { kind };
    if (kind === 'even') return need.split.kind === 'even' ? need.split : usualSplit(need.season, NO_CLIMATE);
    const now = monthlyShares(need.split, need.season, app.yard.climate);
    return { kind, shares: (now ?? Array<number>(12).fill(0)).map((share) => Math.round(share * 1000) / 10) };
  }

  private send(split: NitrogenSplit, field = 'split'): void {
    sendNeedChange(this, field, { split });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'split-fields': SplitFields;
  }
}
