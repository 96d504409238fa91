import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { SOIL_REFUSAL } from '../../plan/soilOverride';
import type { DoseFigures } from '../../plan/types';
import { replaceVisit } from '../../yard/edits';
import type { Product, Visit, VisitDose, ZoneChoice } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import './dose-result';
import { issueNotes, withoutName } from '../parts/issue-notes';
import '../parts/number-field';
import { applyUse } from '../../plan/applyUse';
import { doneRows } from '../../words/doneWords';
import { amountRateWords, doseName, productName, rateWords, useChoices } from '../../words/productWords';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import './dose-refusal';
import './zone-choice';

/** One product of a visit: how much of the label rate, on which ground, and what comes of it. */
@customElement('dose-card')
export class DoseCard extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 1rem; border: 1px solid var(--line-strong); border-top: 4px solid var(--ink); background: var(--sheet); }
      header { display: flex; align-items: center; gap: 0.25rem; padding: 0.25rem 0.25rem 0.25rem 0.75rem; border-bottom: 1px solid var(--line); }
      h4 { flex: 1; margin: 0; font-size: 1rem; line-height: 1.25; }
      header button { padding: 0; }
      .inside { padding: 0.5rem 0.75rem 0.75rem; }
      .rate { display: grid; grid-template-columns: 9rem 1fr; gap: 0.75rem; align-items: end; margin-bottom: 0.25rem; }
      .rate p { margin: 0; }
      .use { margin-bottom: 0.5rem; }
      .walk { margin-top: 0.75rem; }
    `,
  ];

  @property({ attribute: false }) visit!: Visit;
  @property({ attribute: false }) dose!: VisitDose;
  @property({ attribute: false }) index = 0;

  private get figures(): DoseFigures | undefined {
    return this.app.visit?.figures.doses.find((one) => one.dose.id === this.dose.id);
  }

  protected override render() {
    const { app, dose, index, visit, figures } = this;
    const product = app.yard.products.find((one) => one.id === dose.productId);
    const use = product && applyUse(product, dose.useId);
    const name = doseName(dose, app.yard.products);
    const inVisit = app.visit?.figures.issues.filter((issue) => issue.place.doseId === dose.id) ?? [];
    const issues = withoutName([...inVisit, ...(figures?.issues ?? [])], productName(product));
    return html`
      <header>
        <h4>${index + 1}. ${name}</h4>
        <button aria-label=${`Move ${name} earlier`} ?disabled=${index === 0} @click=${() => this.move(-1)}>↑</button>
        <button aria-label=${`Move ${name} later`} ?disabled=${index === visit.doses.length - 1} @click=${() => this.move(1)}>↓</button>
        <button class="danger" aria-label=${`Remove ${name} from the visit`} @click=${this.removeDose}>✕</button>
      </header>
      <div class="inside">
        ${product ? this.renderUse(product) : nothing}
        <div class="rate">
          <number-field label="Share of label rate" suffix="%" .value=${dose.rateFactor} .scale=${100} .min=${1} .max=${1000}
            @number-change=${(event: CustomEvent<NumberChange>) => {
              if (event.detail.value !== null)
                this.change('Change rate', { rateFactor: event.detail.value }, 'rate');
            }}></number-field>
          <p>${figures ? html`<b>${amountRateWords(figures.product, figures.rate.perM2, app.units)}</b><br />` : nothing}
            ${use ? html`<span class="quiet">Label: ${rateWords(use, app.units)}</span>` : nothing}</p>
        </div>
        <label class="check"><input type="checkbox" .checked=${dose.zones !== null}
          @change=${(event: Event) => this.change('Choose ground', { zones: isTicked(event) ? visit.zones : null })} />Ground of its own</label>
        ${
          dose.zones === null
            ? nothing
            : html`<zone-choice .app=${app} .rev=${this.rev} .choice=${dose.zones}
                @choice-change=${(event: CustomEvent<ZoneChoice>) => this.change('Choose ground', { zones: event.detail })}></zone-choice>`
        }
        ${this.renderDone()}
        ${issueNotes(issues)}
        <dose-refusal .app=${app} .rev=${this.rev} .visit=${visit} .dose=${dose}></dose-refusal>
        ${
          figures && figures.areaM2 > 0
            ? html`<dose-result .app=${app} .rev=${this.rev} .figures=${figures}></dose-result>
                <button class="walk" @click=${() => app.setView({ step: 'passes', doseId: dose.id })}>How it is walked</button>`
            : nothing
        }
        ${
          !figures && product && !issues.some((issue) => issue.code === SOIL_REFUSAL)
            ? html`<button @click=${() => app.setView({ step: 'shelf', productId: product.id })}>Mend it on the shelf</button>`
            : nothing
        }
      </div>
    `;
  }

  /** Of a done visit, what was really used: the issues go by that. */
  private renderDone() {
    const { app, dose } = this;
    const figures = app.visit?.figures;
    const rows = figures ? doneRows(figures, app.yard.products, app.units) : [];
    const row = rows.find(({ doseId }) => doseId === dose.id);
    if (!row) return nothing;
    return html`<p class="note"><b>Really used: ${row.used}</b>${row.share === '' ? nothing : `, ${row.share}`}.
      ${row.laid.length > 0 ? `It laid down ${row.laid.join('; ')}.` : nothing}${this.figures ? ' The figures below are the plan’s.' : nothing}</p>`;
  }

  /** Of a label with several uses, which one this dose goes by. */
  private renderUse(product: Product) {
    const { useId } = this.dose;
    const uses = useChoices(product, this.app.units);
    const isGone = uses.every((use) => use.id !== useId);
    if (uses.length === 1 && !isGone) return nothing;
    return html`<label class="use">Use of the label<select @change=${(event: Event) =>
      this.change('Choose use of the label', { useId: fieldValue(event) || null })}>
      ${isGone ? html`<option value=${useId ?? ''} selected disabled>a use that is no longer on the label</option>` : nothing}
      ${uses.map((use) => html`<option value=${use.id ?? ''} .selected=${use.id === useId}>${use.name}: ${use.words}</option>`)}
    </select></label>`;
  }

  private edit(
    label: string,
    edit: (doses: readonly VisitDose[]) => readonly VisitDose[],
    mergeKey?: string,
  ): void {
    const visitId = this.visit.id;
    this.app.dispatch(
      label,
      (yard) => {
        const visit = yard.visits.find((one) => one.id === visitId);
        return visit ? replaceVisit(yard, { ...visit, doses: edit(visit.doses) }) : yard;
      },
      mergeKey,
    );
  }

  private change(label: string, change: Partial<VisitDose>, field?: string): void {
    const { id } = this.dose;
    this.edit(
      label,
      (doses) => doses.map((dose) => (dose.id === id ? { ...dose, ...change } : dose)),
      field && `dose ${id} ${field}`,
    );
  }

  private move(by: -1 | 1): void {
    const { dose, index } = this;
    this.edit('Reorder products', (doses) => doses.toSpliced(index, 1).toSpliced(index + by, 0, dose));
  }

  private removeDose(): void {
    const { id } = this.dose;
    this.edit('Remove product from visit', (doses) => doses.filter((dose) => dose.id !== id));
  }
}
