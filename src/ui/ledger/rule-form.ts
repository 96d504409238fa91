import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ROUND_WORDS } from '../../words/ledgerWords';
import { NUTRIENT_WORDS } from '../../words/productWords';
import { NUTRIENTS, type RuleTerms } from '../../yard/types';
import { SHORT_MONTH_NAMES } from '../../yard/yearDay';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { type RuleDraft, termsOfDraft } from './rule-draft';

/** Detail of the event `rule-done`: the draft with its terms; null: given up. */
export type RuleDone = { readonly draft: RuleDraft; readonly terms: RuleTerms } | null;

const PER_WORDS = { dose: 'at once', year: 'in a calendar year' } as const;

/** Entry of one rule of the place. Nothing is stored until all of it is filled in: `rule-done`. */
@customElement('rule-form')
export class RuleForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; padding: 0.75rem; border: 1px solid var(--line-strong); border-top: 4px solid var(--ink); background: var(--sheet); }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(11.5rem, 1fr)); gap: 0.75rem 0.5rem; align-items: end; margin-bottom: 0.75rem; }
      .whole { grid-column: 1 / -1; }
      fieldset { border: 0; margin: 0; padding: 0; min-width: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink); font-weight: 650; }
      .day { display: grid; grid-template-columns: 1fr 4.5rem; gap: 0.25rem; }
      label.check input { flex: none; }
      .ticks { display: flex; flex-wrap: wrap; gap: 0 1rem; }
    `,
  ];

  @property({ attribute: false }) draft!: RuleDraft;
  /** words of the button that takes the entry. */
  @property() action = 'Add rule';
  @state() private fault = '';

  protected override render() {
    const { draft } = this;
    return html`
      <form @submit=${this.submit}>
        <div class="fields">
          <label class="whole">Name of the rule<input autocomplete="off" .value=${draft.name} @input=${(event: Event) => this.set({ name: fieldValue(event) })} /></label>
          ${this.renderTerms(draft)}
          <label class="whole">Where you read it (the code and its section, or who told you)<input autocomplete="off" .value=${draft.source}
            @input=${(event: Event) => this.set({ source: fieldValue(event) })} /></label>
          <label>Day you read it<input type="date" .value=${draft.readOn ?? ''} @change=${(event: Event) => this.set({ readOn: fieldValue(event) || null })} /></label>
        </div>
        ${this.fault ? html`<p class="note error" role="alert">${this.fault}</p>` : nothing}
        <div class="row"><button class="primary">${this.action}</button><button type="button" @click=${() => this.send(null)}>Cancel</button></div>
      </form>
    `;
  }

  private renderTerms(draft: RuleDraft) {
    switch (draft.kind) {
      case 'no-phosphorus':
        return html`
          <label class="check whole"><input type="checkbox" .checked=${draft.unlessSoilTest} @change=${(event: Event) => this.set({ unlessSoilTest: isTicked(event) })} />
            Allowed where a soil test shows a need</label>
          ${
            draft.unlessSoilTest
              ? html`<number-field class="whole" label="A soil test counts for (empty: for ever)" suffix="years" optional .min=${0} .max=${50} .value=${draft.testYears}
                  @number-change=${(event: CustomEvent<NumberChange>) => this.set({ testYears: event.detail.value })}></number-field>`
              : nothing
          }
          <label class="check whole"><input type="checkbox" .checked=${draft.unlessNewLawn} @change=${(event: Event) => this.set({ unlessNewLawn: isTicked(event) })} />
            Allowed on turf sown or laid within a year (the zone tells when)</label>`;
      case 'blackout':
        return html`${this.renderDay('First day', draft.from, (from) => this.set({ from }))}${this.renderDay('Last day', draft.to, (to) => this.set({ to }))}
          <fieldset class="whole"><legend>Not allowed then</legend><div class="ticks">${NUTRIENTS.map(
            (
              nutrient,
            ) => html`<label class="check"><input type="checkbox" .checked=${draft.nutrients.includes(nutrient)}
              @change=${(event: Event) =>
                this.set({
                  nutrients: NUTRIENTS.filter((each) =>
                    each === nutrient ? isTicked(event) : draft.nutrients.includes(each),
                  ),
                })} />${NUTRIENT_WORDS[nutrient]}</label>`,
          )}</div></fieldset>`;
      case 'buffer':
        return html`${selectField('Left untreated', draft.round, ['water', 'storm-drain', 'well'], ROUND_WORDS, (round) => this.set({ round }))}
          <quantity-field label="Least width" quantity="length" optional .system=${this.app.units} .value=${draft.widthM} .min=${0} .max=${1000}
            @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set({ widthM: event.detail.valueSi })}></quantity-field>`;
      case 'cap':
        return html`${selectField('Nutrient', draft.nutrient, NUTRIENTS, NUTRIENT_WORDS, (nutrient) => this.set({ nutrient }))}
          ${selectField('Counted', draft.per, ['dose', 'year'], PER_WORDS, (per) => this.set({ per }))}
          ${
            draft.nutrient === 'N'
              ? html`<label class="check whole"><input type="checkbox" .checked=${draft.isSolubleOnly} @change=${(event: Event) => this.set({ isSolubleOnly: isTicked(event) })} />
                  Soluble nitrogen alone</label>`
              : nothing
          }
          <quantity-field class="whole" label="Most allowed" quantity="mass-per-area" optional .system=${this.app.units} .value=${draft.maxKgPerM2} .min=${0}
            @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set({ maxKgPerM2: event.detail.valueSi })}></quantity-field>`;
      case 'slow-share':
        return html`<number-field class="whole" label="Least slow-release share of the nitrogen of a product" suffix="% of N" optional .min=${0} .max=${100} .value=${draft.minPct}
          @number-change=${(event: CustomEvent<NumberChange>) => this.set({ minPct: event.detail.value })}></number-field>`;
    }
  }

  private renderDay(label: string, day: string, set: (day: string) => void) {
    const [month = '', date = ''] = day.split('-');
    const setDay = (event: Event) => {
      const typed = fieldValue(event).trim();
      set(`${month}-${typed === '' ? '' : typed.padStart(2, '0')}`);
    };
    return html`<fieldset><legend>${label}</legend><div class="day">
      <label>Month<select aria-label=${`${label}: month`} @change=${(event: Event) => set(`${fieldValue(event)}-${date}`)}>
        <option value="" .selected=${month === ''}>choose</option>
        ${SHORT_MONTH_NAMES.map((words, index) => {
          const value = String(index + 1).padStart(2, '0');
          return html`<option value=${value} .selected=${value === month}>${words}</option>`;
        })}
      </select></label>
      <label>Day<input aria-label=${`${label}: day of the month`} inputmode="numeric" maxlength="2" autocomplete="off" .value=${date === '' ? '' : String(Number(date))}
        @change=${setDay} /></label></div></fieldset>`;
  }

  private set(change: Partial<RuleDraft>): void {
    this.draft = { ...this.draft, ...change };
    this.fault = '';
  }

  private submit(event: Event): void {
    event.preventDefault();
    const read = termsOfDraft(this.draft);
    this.fault = read.ok ? '' : read.message;
    if (read.ok) this.send({ draft: this.draft, terms: read.terms });
  }

  private send(detail: RuleDone): void {
    this.dispatchEvent(new CustomEvent<RuleDone>('rule-done', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rule-form': RuleForm;
  }
}
