import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { applyUse } from '../../plan/applyUse';
import { productName, rateWords, useChoices } from '../../words/productWords';
import type { Issue, Program, ProgramDose, ZoneChoice } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import '../visit/zone-choice';

/** Detail of the event `dose-change`; null: the dose is to go. */
export interface DoseChange {
  readonly dose: ProgramDose | null;
  /** what is changed, so that typing in one field is one step. */
  readonly field: string;
}

/** Share of the label, or of the need, that a dose begins with. */
const FIRST_AMOUNT = {
  label: { kind: 'label', rateFactor: 1 },
  need: { kind: 'need', share: 1, maxFactor: 1 },
} as const;

/** One product of a program: by the label, or by what the ground needs. Event `dose-change`. */
@customElement('program-dose')
export class ProgramDoseRow extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; border: 1px solid var(--line-strong); border-left: 4px solid var(--ink); }
      header { display: flex; align-items: center; padding-left: 0.75rem; border-bottom: 1px solid var(--line); }
      h4 { flex: 1; margin: 0; font-size: 1rem; }
      header button { border-color: transparent; background: none; }
      .inside { padding: 0.5rem 0.75rem; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 0.5rem; align-items: end; }
      .use { margin-bottom: 0.5rem; }
      p { margin: 0.35rem 0 0; }
    `,
  ];

  @property({ attribute: false }) program!: Program;
  @property({ attribute: false }) dose!: ProgramDose;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { app, dose, program } = this;
    const product = app.yard.products.find((one) => one.id === dose.productId);
    const used = product && applyUse(product, dose.useId);
    const { amount } = dose;
    const name = productName(product);
    return html`
      <header><h4>${name}</h4><button class="danger" aria-label=${`Take ${name} out of the program`} @click=${() => this.send(null, 'remove')}>✕</button></header>
      <div class="inside">
        ${product ? this.renderUse(useChoices(product, app.units)) : nothing}
        <div class="fields">
          <label>How much<select @change=${(event: Event) =>
            this.send({ ...dose, amount: FIRST_AMOUNT[fieldValue(event) as 'label' | 'need'] }, 'amount')}>
            <option value="label" .selected=${amount.kind === 'label'}>by the label</option>
            <option value="need" .selected=${amount.kind === 'need'}>by the need</option></select></label>
          ${
            amount.kind === 'label'
              ? html`<number-field label="Share of the label rate" suffix="%" .value=${amount.rateFactor} .scale=${100} .min=${1} .max=${1000}
                  @number-change=${(event: CustomEvent<NumberChange>) => {
                    const { value } = event.detail;
                    if (value !== null)
                      this.send({ ...dose, amount: { ...amount, rateFactor: value } }, 'factor');
                  }}></number-field>`
              : html`<number-field label="Share of the month’s need" suffix="%" .value=${amount.share} .scale=${100} .min=${1} .max=${100}
                    @number-change=${(event: CustomEvent<NumberChange>) => {
                      const { value } = event.detail;
                      if (value !== null)
                        this.send({ ...dose, amount: { ...amount, share: value } }, 'share');
                    }}></number-field>
                  <number-field label="At most, of the label rate" suffix="%" .value=${amount.maxFactor} .scale=${100} .min=${1} .max=${1000}
                    @number-change=${(event: CustomEvent<NumberChange>) => {
                      const { value } = event.detail;
                      if (value !== null)
                        this.send({ ...dose, amount: { ...amount, maxFactor: value } }, 'most');
                    }}></number-field>`
          }
        </div>
        ${used ? html`<p class="quiet">Label: ${rateWords(used, app.units)}</p>` : nothing}
        ${
          amount.kind === 'need'
            ? html`<p class="quiet">What the month wants, less what is done, made by hand or set by the label in any program, is shared out over the visits of that month; programs take their part in the order of the list. The label’s most, the caps and the rules hold all that lies on one day.</p>`
            : nothing
        }
        <label class="check"><input type="checkbox" .checked=${dose.zones !== null}
          @change=${(event: Event) => this.send({ ...dose, zones: isTicked(event) ? program.zones : null }, 'zones')} />Ground of its own</label>
        ${
          dose.zones === null
            ? nothing
            : html`<zone-choice .app=${app} .rev=${this.rev} .choice=${dose.zones}
                @choice-change=${(event: CustomEvent<ZoneChoice>) => this.send({ ...dose, zones: event.detail }, 'zones')}></zone-choice>`
        }
        ${issueNotes(this.issues)}
      </div>`;
  }

  private renderUse(uses: ReturnType<typeof useChoices>) {
    const { dose } = this;
    const isGone = uses.every((use) => use.id !== dose.useId);
    if (uses.length === 1 && !isGone) return nothing;
    return html`<label class="use">Use of the label<select @change=${(event: Event) =>
      this.send({ ...dose, useId: fieldValue(event) || null }, 'use')}>
      ${isGone ? html`<option value=${dose.useId ?? ''} selected disabled>a use that is no longer on the label</option>` : nothing}
      ${uses.map((use) => html`<option value=${use.id ?? ''} .selected=${use.id === dose.useId}>${use.name}: ${use.words}</option>`)}
    </select></label>`;
  }

  private send(dose: ProgramDose | null, field: string): void {
    this.dispatchEvent(new CustomEvent<DoseChange>('dose-change', { detail: { dose, field } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'program-dose': ProgramDoseRow;
  }
}
