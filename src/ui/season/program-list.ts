import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type AppliedPrograms, applyPrograms } from '../../season/applyPrograms';
import { programDates } from '../../season/programDates';
import { type ProgramFault, programFaults } from '../../season/programFaults';
import { programPatterns } from '../../season/programPatterns';
import { programSpan } from '../../season/programSpan';
import { deriveYard } from '../../session/derive';
import type { Derived } from '../../session/types';
import { productName } from '../../words/productWords';
import {
  appliedWords,
  choiceWords,
  dayWords,
  PATTERN_WORDS,
  paceWords,
  programName,
  visitName,
} from '../../words/seasonWords';
import { freeName } from '../../words/zoneWords';
import { addEntry, removeEntry } from '../../yard/edits';
import type { Program, Yard } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import './copy-year';
import { issuesOfVisit } from './judge-move';
import './program-form';
import { undoStep } from '../parts/undo-step';

/** Programs: rules that make the visits of a season, and the making of them. */
@customElement('program-list')
export class ProgramList extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      ul { list-style: none; margin: 0 0 0.75rem; padding: 0; border-top: 1px solid var(--line); }
      li { border-bottom: 1px solid var(--line); }
      li.chosen { box-shadow: inset 4px 0 0 var(--accent); padding: 0 0 0.75rem 0.75rem; }
      .open { display: block; width: 100%; padding: 0.5rem 0; text-align: left; border: 0; background: none; }
      .open:hover { background: var(--sheet-sunk); }
      .open .name { display: block; font-weight: 650; }
      .open .words { display: block; color: var(--ink-soft); font-size: var(--text-small); }
      .add { margin-bottom: 0.75rem; }
      .acts { margin: 0.25rem 0 0.75rem; }
      .make { border: 1.5px solid var(--ink); padding: 0.6rem 0.75rem; margin-bottom: 0.75rem; }
      .make p { margin: 0; }
      .make button { margin-top: 0.5rem; }
      .make details { margin-top: 0.35rem; }
      .make summary { padding: 0.75rem 0; cursor: pointer; font-weight: 650; }
      .make ol { margin: 0; padding-left: 1.5rem; }
      .make ol li { border: 0; padding: 0.15rem 0; }
      .make .note { margin: 0.5rem 0 0; font-size: var(--text-small); }
      .patterns { display: grid; grid-template-columns: repeat(auto-fit, minmax(13rem, 1fr)); gap: 0.5rem; margin-bottom: 0.75rem; }
      .pattern { display: grid; align-content: start; gap: 0.15rem; padding: 0.5rem 0.75rem; text-align: left; line-height: 1.3; }
      .pattern b { display: block; }
      .pattern span { font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) year = 0;
  @state() private openId: string | null = null;
  @state() private asking: string | null = null;
  private isNew = false;
  private trial: {
    readonly yard: Yard;
    readonly result: AppliedPrograms;
    readonly faults: readonly ProgramFault[];
  } | null = null;

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('program-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  /** What making the visits would do, and what would not be right then, without doing it. */
  private get outlook(): { readonly result: AppliedPrograms; readonly faults: readonly ProgramFault[] } {
    const { yard, derived } = this.app.session;
    if (this.trial?.yard !== yard) {
      let count = 0;
      const result = applyPrograms(yard, (prefix) => `${prefix}-trial-${count++}`);
      this.trial = { yard, result, faults: faultsOf(deriveYard(result.yard, derived)) };
    }
    return this.trial;
  }

  protected override render() {
    const { app, year } = this;
    const { yard } = app;
    const isEmpty = yard.programs.length === 0;
    // one that is open stays where it is while its days are typed
    const isShown = ({ id, from, to }: Program) =>
      id === this.openId || (Number(from.slice(0, 4)) <= year && Number(to.slice(0, 4)) >= year);
    const others = yard.programs.filter((program) => !isShown(program));
    return html`
      ${isEmpty ? html`<p>A program makes visits by a rule: every so many days or weeks between two days, on some ground, with some products. Two programs can be paired.</p>` : this.renderMake()}
      ${isEmpty ? this.renderPatterns(true) : this.renderList(yard.programs.filter(isShown))}
      <button class=${isEmpty ? 'add' : 'primary add'} @click=${this.add}>Add a program</button>
      ${isEmpty ? nothing : html`<details class="fold"><summary>Begin from a pattern</summary>${this.renderPatterns(false)}</details>`}
      ${others.length > 0 ? html`<details class="fold"><summary>Programs of other years (${others.length})</summary>${this.renderList(others)}</details>` : nothing}
      ${
        yard.visits.length + yard.programs.length > 0
          ? html`<details class="fold"><summary>Copy a year</summary><copy-year .app=${this.app} .rev=${this.rev} .year=${this.year}></copy-year></details>`
          : nothing
      }
    `;
  }

  private renderList(programs: readonly Program[]) {
    if (programs.length === 0) return html`<p class="quiet">No program in ${this.year}.</p>`;
    return html`<ul>${programs.map((program) => this.renderProgram(program))}</ul>`;
  }

  private renderMake() {
    const { result: outlook, faults } = this.outlook;
    const isNothing = outlook.yard === this.app.yard;
    return html`<section class="make" aria-label="Visits of the programs">
      <p>${
        isNothing
          ? html`The visits are as the programs have them.`
          : html`Visits: <b>${appliedWords(outlook)}</b>.`
      }${
        outlook.kept > 0
          ? html` ${outlook.kept === 1 ? 'One that is done or was changed by hand stays' : `${outlook.kept} that are done or were changed by hand stay`} as ${outlook.kept === 1 ? 'it is' : 'they are'}.`
          : nothing
      }</p>
      ${isNothing ? nothing : html`<button class="primary" @click=${() => this.make([])}>Make the visits</button>`}
      ${this.renderFaults(faults)}</section>`;
  }

  private renderFaults(faults: readonly ProgramFault[]) {
    const [first] = faults;
    if (!first) return nothing;
    const line = ({ visit, message }: ProgramFault) =>
      html`${visitName(visit)}, ${dayWords(visit.date ?? '', true)}: ${message}`;
    if (faults.length === 1)
      return html`<div class="note error"><b>One visit is not right by the programs.</b> ${line(first)}</div>`;
    return html`<div class="note error"><b>${faults.length} visits are not right by the programs, the first:</b> ${line(first)}
      <details><summary>All ${faults.length} of them</summary><ol>${faults.map((fault) => html`<li>${line(fault)}</li>`)}</ol></details></div>`;
  }

  private renderPatterns(isFirst: boolean) {
    const { yard } = this.app;
    let count = 0;
    const patterns = programPatterns(yard, this.year, (prefix) => `${prefix}-look-${count++}`);
    if (patterns.length === 0) {
      const hasTurf = yard.zones.some((zone) => zone.kind === 'turf');
      return html`<p class="note">${
        hasTurf
          ? html`Patterns are made of what is on the shelf: put a product that carries nitrogen there first. <button class="plain" @click=${() => this.app.setView({ step: 'shelf' })}>To the shelf</button>`
          : html`Patterns need turf: draw it first. <button class="plain" @click=${() => this.app.setView({ step: 'measure' })}>To measuring</button>`
      }</p>`;
    }
    return html`${isFirst ? html`<h3>Begin from a pattern</h3>` : nothing}<div class="patterns">${patterns.map(
      ({
        id,
        programs,
      }) => html`<button class="pattern" @click=${() => this.addPattern(id)}><b>${PATTERN_WORDS[id]?.name}</b>
        <span>${PATTERN_WORDS[id]?.words} ${[...new Set(programs.flatMap((one) => one.doses.map((dose) => productName(yard.products.find((product) => product.id === dose.productId)))))].join(' and ')}.</span></button>`,
    )}</div>`;
  }

  private renderProgram(program: Program) {
    const { yard } = this.app;
    const isOpen = this.openId === program.id;
    const { dates, issues } = programDates(program, yard.programs);
    const last = dates.at(-1);
    const products = program.doses.map((dose) =>
      productName(yard.products.find((one) => one.id === dose.productId)),
    );
    return html`<li class=${isOpen ? 'chosen' : ''}>
      <button class="open" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => this.open(isOpen ? null : program.id)}>
        <span class="name">${programName(program)}</span>
        <span class="words">${products.join(', ') || 'no product yet'}; ${paceWords(program, yard.programs)}; ${choiceWords(yard, program.zones)}</span>
        <span class="words">${last && dates[0] ? html`${countWords(dates.length, program.doses.length > 0)}, ${dayWords(dates[0], true)} to ${dayWords(last, true)}` : 'no days yet'}</span>
      </button>
      ${isOpen ? this.renderOpen(program) : issueNotes(issues)}</li>`;
  }

  private renderOpen(program: Program) {
    return html`
      <div class="row acts">
        <button @click=${() => this.copy(program)}>Copy</button>
        <button @click=${() => {
          this.asking = program.id;
        }}>Make again</button>
        <button class="danger" @click=${() => this.removeNow(program)}>Remove</button>
        <button @click=${() => this.open(null)}>Close</button>
      </div>
      ${
        this.asking === program.id
          ? html`<div class="note warning" role="alert"><p>Visits of “${programName(program)}” that were moved, changed or removed by hand become again what the program says. What is done stays. Undo brings the changes back.</p>
              <div class="row"><button @click=${() => this.make([this.hostOf(program)])}>Make them again</button>
              <button @click=${() => {
                this.asking = null;
              }}>Leave them</button></div></div>`
          : nothing
      }
      <program-form .app=${this.app} .rev=${this.rev} .program=${program}></program-form>`;
  }

  private hostOf(program: Program): string {
    return programDates(program, this.app.yard.programs).hostId;
  }

  private open(id: string | null): void {
    this.asking = null;
    this.openId = id;
  }

  private make(anew: readonly string[]): void {
    const { app } = this;
    this.asking = null;
    const done = applyPrograms(app.yard, (prefix) => app.newId(prefix), anew);
    app.dispatch('Make visits', () => done.yard);
    const words = appliedWords(done)
      .replaceAll('to add', 'added')
      .replaceAll('to bring up to date', 'brought up to date')
      .replaceAll('to take away', 'taken away');
    app.note(
      'visits-made',
      `Visits: ${words.replace('nothing to change', 'nothing changed')}.`,
      undoStep(app),
    );
  }

  private readonly add = (): void => {
    const { app, year } = this;
    const zones = { classes: ['turf-low-cut' as const, 'turf-regular' as const], include: [], exclude: [] };
    const program: Program = {
      id: app.newId('program'),
      name: freeName(
        'Program',
        app.yard.programs.map((one) => one.name),
      ),
      ...programSpan(app.yard, year, zones, ['N']),
      pace: { kind: 'every', days: 14 },
      zones,
      doses: [],
      tankL: null,
    };
    app.dispatch('Add program', (yard) => addEntry(yard, 'programs', program));
    this.open(program.id);
    this.isNew = true;
  };

  private addPattern(id: string): void {
    const { app } = this;
    const found = programPatterns(app.yard, this.year, (prefix) => app.newId(prefix)).find(
      (one) => one.id === id,
    );
    if (!found) return;
    app.dispatch('Add programs of a pattern', (yard) =>
      found.programs.reduce((next, program) => addEntry(next, 'programs', program), yard),
    );
  }

  private copy(program: Program): void {
    const { app } = this;
    const copy: Program = {
      ...program,
      id: app.newId('program'),
      name: freeName(
        `${program.name}, copy`,
        app.yard.programs.map((one) => one.name),
      ),
      doses: program.doses.map((dose) => ({ ...dose, id: app.newId('dose') })),
      skips: [],
    };
    app.dispatch('Copy program', (yard) => addEntry(yard, 'programs', copy));
    this.open(copy.id);
  }

  private removeNow(program: Program): void {
    const { app } = this;
    app.dispatch('Remove program', (yard) => removeEntry(yard, 'programs', program.id));
    this.open(null);
    app.note(
      'program-removed',
      `“${programName(program)}” is removed; the visits it made stay.`,
      undoStep(app),
    );
  }
}

/** "15 visits"; of a program without a product they are days alone. */
function countWords(count: number, isMade: boolean): string {
  const one = isMade ? 'visit' : 'day';
  return count === 1 ? `one ${one}` : `${count} ${one}s`;
}

function faultsOf(derived: Derived): readonly ProgramFault[] {
  return programFaults(derived.yard, derived.season().entries, (visitId) => issuesOfVisit(derived, visitId));
}

declare global {
  interface HTMLElementTagNameMap {
    'program-list': ProgramList;
  }
}
