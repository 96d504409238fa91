import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { heldNeed, suggestHold } from '../../need/flushHold';
import { monthlyNeed } from '../../need/monthlyNeed';
import { formatNutrientRate } from '../../units/format';
import { holdBasisWords, holdWords } from '../../words/needWords';
import type { FlushHold, NutrientNeed } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import { sendNeedChange } from './need-change';
import { yearDayField } from './yearDayField';

/** The rule that holds nitrogen back before the spring flush. Sends `need-change`. */
@customElement('hold-fields')
export class HoldFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: 0.5rem; margin: 0.25rem 0 0.5rem; align-items: end; }
      .year-day { display: grid; grid-template-columns: minmax(0, 1fr) 5rem; gap: 0.25rem; }
    `,
  ];

  @property({ attribute: false }) need!: NutrientNeed;

  protected override render() {
    const { need, app } = this;
    const suggested = suggestHold(need.season, app.yard.climate);
    const { hold } = need;
    return html`
      <label class="check"><input type="checkbox" .checked=${hold !== null}
        @change=${(event: Event) => this.send(isTicked(event) ? suggested.hold : null)} />Hold nitrogen back before the spring flush</label>
      ${
        hold === null
          ? html`<p class="quiet">Nitrogen put down early in spring goes into top growth and mowing, not roots.</p>`
          : html`${this.renderFields(hold)}
            ${
              isSame(hold, suggested.hold)
                ? html`<p class="quiet">${holdBasisWords(suggested)}</p>`
                : html`<p class="quiet">Suggested: ${holdWords(suggested.hold, app.units)} ${holdBasisWords(suggested)}</p>
                  <button @click=${() => this.send(suggested.hold)}>Take the suggestion</button>`
            }`
      }
    `;
  }

  private renderFields(hold: FlushHold) {
    const { need, app } = this;
    const months = monthlyNeed(need, app.yard.climate);
    const moved = months ? heldNeed(months, hold).movedKgPerM2 : 0;
    return html`<div class="fields">
        ${yearDayField('First day', hold.from, (from) => this.send({ ...hold, from }))}
        ${yearDayField('Last day', hold.to, (to) => this.send({ ...hold, to }))}
        <quantity-field label="Most N in that time" quantity="mass-per-area" .system=${app.units} .value=${hold.maxNKgPerM2} .min=${0} .max=${0.1}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi !== null) this.send({ ...hold, maxNKgPerM2: event.detail.valueSi });
          }}></quantity-field>
      </div>
      ${moved > 1e-9 ? html`<p>${formatNutrientRate(moved, app.units)} of the year moves to later months, each by its share.</p>` : nothing}`;
  }

  private send(hold: FlushHold | null): void {
    sendNeedChange(this, 'hold', { hold });
  }
}

function isSame(a: FlushHold, b: FlushHold): boolean {
  return a.from === b.from && a.to === b.to && Math.abs(a.maxNKgPerM2 - b.maxNKgPerM2) < 1e-9;
}

declare global {
  interface HTMLElementTagNameMap {
    'hold-fields': HoldFields;
  }
}
