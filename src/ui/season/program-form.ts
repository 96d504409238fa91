import { css, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { type ProgramAmounts, programAmounts } from '../../season/programAmounts';
import { paceAsBefore, programDates } from '../../season/programDates';
import { programVisits } from '../../season/programVisits';
import { formatPercent } from '../../units/format';
import { productName } from '../../words/productWords';
import { dayWords, programName } from '../../words/seasonWords';
import { replaceEntry } from '../../yard/edits';
import type { Issue, Program, ProgramDose, ProgramPace, ZoneChoice } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { focusAll } from '../parts/focus-all';
import { fold } from '../parts/fold';
import { issueNotes, issuesAt, withoutName } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import '../visit/zone-choice';
import './program-dose';
import type { DoseChange } from './program-dose';

/** Value of the choice that is no other program. */
const OWN = '';

/** A program as a form: name, days, pace, ground, products and tank, with the days it comes to. */
@customElement('program-form')
export class ProgramForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 0.5rem; margin-bottom: 0.5rem; align-items: end; }
      .whole { grid-column: 1 / -1; }
      .pair { display: grid; grid-template-columns: minmax(4rem, 1fr) auto; align-items: end; }
      .pair select { width: auto; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); }
      .add { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.5rem; align-items: end; margin-bottom: 0.5rem; }
      .dates { columns: 9.5rem; margin: 0; padding: 0; list-style: none; font-size: var(--text-small); }
      .dates li.skipped { text-decoration: line-through; color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) program!: Program;
  @query('#name') private nameField?: HTMLInputElement;
  /** weeks or days, where the count is whole weeks. */
  private inDays = false;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    focusAll(this, () => this.nameField);
  }

  protected override render() {
    const { app, program, rev } = this;
    const { yard } = app;
    const { dates, hostId } = programDates(program, yard.programs);
    const amounts = programAmounts(yard);
    const found: readonly Issue[] = programVisits(yard, program, amounts).issues;
    const issues = withoutName(found, programName(program));
    return html`
      <form @submit=${(event: Event) => event.preventDefault()}>
        <div class="fields">
          <label class="whole">Name<input id="name" autocomplete="off" .value=${program.name}
            @input=${(event: Event) => this.change('name', { name: fieldValue(event) })} /></label>
          <label>First day<input type="date" required .value=${program.from} @change=${(event: Event) => this.setDay('from', event)} /></label>
          <label>Last possible day<input type="date" required .value=${program.to} @change=${(event: Event) => this.setDay('to', event)} /></label>
        </div>
        ${issueNotes(issuesAt(issues, 'from', 'to'))}
        <div class="fields">${this.renderPace(program.pace)}</div>
        ${issueNotes(issuesAt(issues, 'pace'))}
        <h3>Ground</h3>
        <zone-choice .app=${app} .rev=${rev} .choice=${program.zones}
          @choice-change=${(event: CustomEvent<ZoneChoice>) => this.change('zones', { zones: event.detail })}></zone-choice>
        <h3>Products</h3>
        ${program.doses.map(
          (
            dose,
            i,
          ) => html`<program-dose .app=${app} .rev=${rev} .program=${program} .dose=${dose} .issues=${issuesAt(issues, `doses[${i}]`)}
            @dose-change=${(event: CustomEvent<DoseChange>) => this.changeDose(dose, event.detail)}></program-dose>`,
        )}
        ${issueNotes(issues.filter((issue) => issue.place.path === 'doses'))}
        ${this.renderAdd()}
        <quantity-field label="What the sprayer’s tank holds (empty: as its equipment tells)" quantity="volume" unit="gal" optional .system=${app.units}
          .value=${program.tankL} .min=${0.5} .max=${100_000} @quantity-change=${(
            event: CustomEvent<QuantityChange>,
          ) => this.change('tankL', { tankL: event.detail.valueSi || null })}></quantity-field>
        <h3>Days it comes to</h3>
        ${this.renderDates(dates, hostId, amounts)}
      </form>`;
  }

  private renderPace(pace: ProgramPace) {
    const others = this.app.yard.programs.filter((one) => one.id !== this.program.id);
    return html`
      <label class="whole">Pace<select @change=${(event: Event) => this.pair(fieldValue(event))}>
        <option value=${OWN} .selected=${pace.kind === 'every'}>its own</option>
        ${others.map((one) => html`<option value=${one.id} .selected=${pace.kind === 'with' && pace.programId === one.id}>paired with “${programName(one)}”</option>`)}
        ${
          pace.kind === 'with' && others.every((one) => one.id !== pace.programId)
            ? html`<option value=${pace.programId} selected disabled>paired with a program that is gone</option>`
            : nothing
        }
      </select></label>
      ${pace.kind === 'every' ? this.renderEvery(pace.days) : this.renderWith(pace)}`;
  }

  private renderEvery(days: number) {
    const weekly = days % 7 === 0 && !this.inDays;
    return html`<div class="pair"><number-field label="A visit every" whole .value=${weekly ? days / 7 : days} .min=${1} .max=${366}
        @number-change=${(event: CustomEvent<NumberChange>) => {
          const { value } = event.detail;
          if (value !== null)
            this.change('pace', { pace: { kind: 'every', days: weekly ? 7 * value : value } });
        }}></number-field>
      <select aria-label="Unit of the pace" @change=${(event: Event) => this.setUnit(fieldValue(event), days)}>
        <option value="weeks" .selected=${weekly}>weeks</option><option value="days" .selected=${!weekly}>days</option></select></div>`;
  }

  private renderWith(pace: Extract<ProgramPace, { kind: 'with' }>) {
    return html`<number-field label="With every … visit of it" whole .value=${pace.nth} .min=${1} .max=${100}
        @number-change=${(event: CustomEvent<NumberChange>) => {
          const { value } = event.detail;
          if (value !== null) this.change('pace', { pace: { ...pace, nth: value } });
        }}></number-field>
      <number-field label="Days after it (0: same visit)" whole .value=${pace.offsetDays} .min=${0} .max=${366}
        @number-change=${(event: CustomEvent<NumberChange>) => {
          const { value } = event.detail;
          if (value !== null) this.change('pace', { pace: { ...pace, offsetDays: value } });
        }}></number-field>
      <p class="quiet whole">Counted from the first of its visits on or after the first day above.</p>`;
  }

  private renderAdd() {
    const { products } = this.app.yard;
    if (products.length === 0)
      return html`<p class="note">The shelf is empty. <button class="plain" @click=${() => this.app.setView({ step: 'shelf' })}>Add a product first</button></p>`;
    return html`<div class="add"><label>Add a product<select id="product">
        <option value="" selected>choose from the shelf</option>
        ${products.map((product) => html`<option value=${product.id}>${productName(product)}</option>`)}</select></label>
      <button type="button" @click=${this.addDose}>Add to program</button></div>`;
  }

  private renderDates(dates: readonly string[], hostId: string, amounts: ProgramAmounts) {
    const { program, app } = this;
    if (dates.length === 0) return html`<p class="quiet">None yet.</p>`;
    const host = app.yard.programs.find((one) => one.id === hostId);
    const count = dates.length === 1 ? 'One day' : `${dates.length} days`;
    const isBare = program.doses.length === 0;
    return html`<p class="quiet">${count}${
      hostId === program.id ? nothing : html`, joined to the visits of “${programName(host)}”`
    }. ${
      isBare
        ? 'Once it has a product, it comes to a visit on each.'
        : html`${program.doses.some((dose) => dose.amount.kind === 'need') ? 'Beside each: the share of the label rate that the need comes to, less what other doses lay down.' : ''} The button at the head of the list makes the visits.`
    }</p>
      <ul class="dates">${dates.map((date) => this.renderDate(date, hostId, amounts))}</ul>`;
  }

  /** A day, the share of the label by need, and where its visit stands otherwise than the rule has it. */
  private renderDate(date: string, hostId: string, amounts: ProgramAmounts) {
    const { program } = this;
    const stand = amounts.standOf(hostId, date);
    if (stand.kind === 'removed')
      return html`<li class="skipped">${dayWords(date)}<span class="visually-hidden">, removed by hand</span></li>`;
    if (stand.kind === 'kept') {
      const { doneOn } = stand.visit;
      return html`<li>${dayWords(date)}: ${doneOn === null ? 'changed by hand' : doneOn === date ? 'done' : `done ${dayWords(doneOn)}`}</li>`;
    }
    const shares = program.doses.flatMap((dose) =>
      dose.amount.kind === 'need' ? formatPercent(amounts.factorOf(program.id, dose.id, date)) : [],
    );
    const moved = stand.date === date ? '' : `, moved to ${dayWords(stand.date)}`;
    return html`<li>${dayWords(date)}${moved}${shares.length > 0 ? `: ${shares.join(', ')}` : ''}</li>`;
  }

  private setDay(field: 'from' | 'to', event: Event): void {
    const value = fieldValue(event);
    if (value !== '') this.change(field, { [field]: value });
  }

  private setUnit(unit: string, days: number): void {
    this.inDays = unit === 'days';
    if (unit === 'weeks')
      this.change('pace', { pace: { kind: 'every', days: 7 * Math.max(1, Math.round(days / 7)) } });
    this.requestUpdate();
  }

  private pair(programId: string): void {
    const pace = paceAsBefore(this.program, programId === OWN ? null : programId, this.app.yard.programs);
    this.change('pair', { pace });
  }

  private readonly addDose = (): void => {
    const list = this.renderRoot.querySelector<HTMLSelectElement>('#product');
    if (!list?.value) {
      list?.focus();
      return;
    }
    const dose: ProgramDose = {
      id: this.app.newId('dose'),
      productId: list.value,
      useId: null,
      amount: { kind: 'label', rateFactor: 1 },
      zones: null,
    };
    list.value = '';
    this.change('add', { doses: [...this.program.doses, dose] });
  };

  private changeDose(dose: ProgramDose, { dose: next, field }: DoseChange): void {
    const doses = this.program.doses.flatMap((one) => (one.id === dose.id ? (next ?? []) : one));
    this.change(`${dose.id} ${field}`, { doses });
  }

  private change(field: string, change: Partial<Program>): void {
    const { id } = this.program;
    this.app.dispatch(
      'Change program',
      (yard) => {
        const now = yard.programs.find((one) => one.id === id);
        return now ? replaceEntry(yard, 'programs', { ...now, ...change }) : yard;
      },
      `program ${id} ${field}`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'program-form': ProgramForm;
  }
}
