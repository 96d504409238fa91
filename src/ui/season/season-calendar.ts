import { html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { dateOfVisit } from '../../plan/heldWith';
import { productNeighbours } from '../../season/calendarNeighbours';
import {
  dayWords,
  firstWeekdayOf,
  leftWords,
  neighbourWords,
  sayIssues,
  visitName,
  WEEKDAY_WORDS,
} from '../../words/seasonWords';
import { addDays } from '../../yard/calendar';
import { removeVisit, replaceVisit } from '../../yard/edits';
import type { Visit } from '../../yard/types';
import { MONTH_NAMES, SHORT_MONTH_NAMES } from '../../yard/yearDay';
import { AppPart } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';
import { askBar, type BarActs, heldBar, KEYS_WORDS, pointedBar } from './calendar-bar';
import { calendarKey, causeMarks } from './calendar-key';
import { causesOn, dayClasses, visitsByDay, weeksToShow } from './calendar-model';
import { calendarStyles } from './calendar-styles';
import { issuesOfVisit, MoveJudge } from './judge-move';
import { type ChipModel, chipClasses, chipFace, chipLabel, chipStyles, groundPatterns } from './visit-chip';
import { placeBeside, VisitHold } from './visit-hold';

/** Up and down in the list: so many px are a day. */
const LIST_DAY_PX = 28;
const ARROWS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };

/** visit opened last from a calendar: it is brought back into view when the calendar is shown again. */
let lastOpened: string | null = null;

/** A visit on its way to another day. */
interface Held {
  readonly visitId: string;
  readonly from: string;
  /** null: over no day. */
  readonly date: string | null;
  readonly by: 'pointer' | 'keys';
}

/**
 * The visits of a year, as a sheet of weeks or as a list. A visit is moved by drag (a finger: long press), by the
 * arrow keys or by the buttons of the bar below; what would be wrong on the day it is held over is told before it
 * is let go. A move is one step of undo.
 */
@customElement('season-calendar')
export class SeasonCalendar extends AppPart {
  static override styles = [shared, chipStyles, calendarStyles];

  @property({ attribute: false }) year = 0;
  /** weeks in rows, or a list by date. */
  @property({ attribute: false }) layout: 'weeks' | 'list' = 'weeks';

  @state() private held: Held | null = null;
  /** visit whose removal is asked about. */
  @state() private asking: string | null = null;
  /** visit that has the focus or the mouse. */
  @state() private pointed: string | null = null;
  @state() private isWhole = false;
  /** what was just done, for the line that is read out. */
  @state() private told = '';
  @query('.bar') private bar?: HTMLElement;

  private readonly judge = new MoveJudge();
  /** chip to focus once it is drawn at its new place. */
  private focusNext: string | null = null;

  private readonly hold = new VisitHold(this, {
    canHold: (visitId) => this.visitOf(visitId)?.doneOn === null,
    dayAt: (visitId, x, y, dy) => {
      if (this.layout === 'list')
        return addDays(this.visitOf(visitId)?.date ?? this.app.today(), Math.round(dy / LIST_DAY_PX));
      const at = this.shadowRoot?.elementFromPoint(x, y)?.closest<HTMLElement>('[data-date]');
      return at?.dataset.date ?? null;
    },
    scrolls: () => this.layout === 'weeks',
    moved: () => this.placeGhost(),
    over: (visitId, date) => {
      const from = this.visitOf(visitId)?.date ?? this.app.today();
      this.held = { visitId, from, date, by: 'pointer' };
    },
    drop: (visitId, date) => this.putDown(visitId, date),
    cancel: (visitId) => this.putBack(visitId),
  });

  private visitOf(visitId: string | null): Visit | undefined {
    return this.app.yard.visits.find((visit) => visit.id === visitId);
  }

  protected override willUpdate(changed: PropertyValues): void {
    // gone by undo or in another place of the screen
    if (this.held && this.visitOf(this.held.visitId)?.doneOn !== null) this.held = null;
    if (this.asking && !this.visitOf(this.asking)) this.asking = null;
    if (changed.has('year')) this.isWhole = false;
    if (this.hasUpdated && (changed.has('year') || changed.has('layout'))) this.leaveHeld();
  }

  override disconnectedCallback(): void {
    this.leaveHeld();
    super.disconnectedCallback();
  }

  /** A move by keys or buttons that was not put down comes to nothing, and that is told. */
  private leaveHeld(): void {
    const { held, app } = this;
    const visit = this.visitOf(held?.visitId ?? null);
    this.held = null;
    if (!held || !visit || held.by !== 'keys' || !held.date || held.date === held.from) return;
    const words = leftWords(visit, held.date);
    queueMicrotask(() => app.note('move-left', words));
  }

  protected override firstUpdated(): void {
    if (lastOpened !== null) this.chipOf(lastOpened)?.scrollIntoView({ block: 'center' });
    lastOpened = null;
  }

  private chipOf(visitId: string): HTMLElement | null {
    return this.renderRoot.querySelector(`[data-visit="${CSS.escape(visitId)}"]`);
  }

  protected override updated(): void {
    this.placeGhost();
    const id = this.focusNext;
    this.focusNext = null;
    if (id === null) return;
    const chip = this.chipOf(id);
    chip?.focus({ preventScroll: true });
    chip?.scrollIntoView({ block: 'nearest' });
  }

  protected override render() {
    const { app, year } = this;
    const isDark = app.theme === 'dark';
    const undated = app.yard.visits.filter(
      (visit) => dateOfVisit(visit) === null && visit.id !== this.held?.visitId,
    );
    return html`
      ${groundPatterns(isDark)}
      <p class="visually-hidden" id="how">${KEYS_WORDS}</p>
      ${calendarKey(app.yard, isDark, this.layout === 'weeks')}
      ${
        undated.length > 0
          ? html`<section aria-label="Visits without a day"><h3>Without a day</h3><div class="undated">${undated.map((visit) => this.renderChip(visit))}</div></section>`
          : nothing
      }
      ${this.layout === 'weeks' ? this.renderWeeks(year) : this.renderList(year)}
      <div class=${this.held || this.asking ? 'bar' : 'bar pointed'} ?hidden=${this.barIsEmpty}>${this.renderBar()}</div>
      <p class="visually-hidden" role="status" aria-live="polite">${this.liveWords()}</p>
      ${this.renderGhost(isDark)}
    `;
  }

  private get shownMove(): { visitId: string; date: string } | null {
    const { held } = this;
    return held?.date && held.by === 'keys' ? { visitId: held.visitId, date: held.date } : null;
  }

  private renderWeeks(year: number) {
    const { visits } = this.app.yard;
    const byDay = visitsByDay(visits, this.shownMove);
    const first = firstWeekdayOf(this.app.units);
    const days = visits.flatMap((visit) => dateOfVisit(visit) ?? []);
    const moved = this.shownMove?.date;
    const weeks = weeksToShow(year, first, moved ? [...days, moved] : days, this.isWhole);
    const heads = first === 7 ? [WEEKDAY_WORDS[6], ...WEEKDAY_WORDS.slice(0, 6)] : WEEKDAY_WORDS;
    return html`
      <div class="ground-of-weeks"><table class="weeks">
        <caption class="visually-hidden">Visits of ${year}, a week in each row</caption>
        <thead><tr><th scope="col"><span class="visually-hidden">Month</span></th>${heads.map((word) => html`<th scope="col">${word}</th>`)}</tr></thead>
        <tbody>${weeks.map((week) => this.renderWeek(week, year, byDay))}</tbody>
      </table></div>
      ${
        weeks.length < 52
          ? html`<button class="plain" @click=${() => {
              this.isWhole = true;
            }}>Show the whole year</button>`
          : nothing
      }
    `;
  }

  private renderWeek(week: readonly string[], year: number, byDay: ReadonlyMap<string, readonly Visit[]>) {
    const start = week.find((date) => date.endsWith('-01'));
    const words = (date: string) => SHORT_MONTH_NAMES[Number(date.slice(5, 7)) - 1] ?? '';
    return html`<tr>
      <th scope="row">${start ? words(start) : html`<span class="visually-hidden">Week of ${dayWords(week[0] ?? '')}</span>`}</th>
      ${week.map((date) => this.renderDay(date, year, byDay.get(date) ?? []))}
    </tr>`;
  }

  private renderDay(date: string, year: number, visits: readonly Visit[]) {
    const causes = causesOn(this.app.yard, date);
    const classes = dayClasses(date, year, this.app.today(), this.held?.date ?? null);
    return html`<td class=${classes} data-date=${date} title=${causes.map((cause) => cause.words).join('; ') || nothing}>
      <span class="day">${Number(date.slice(8))}${date === this.app.today() ? html`<span class="visually-hidden"> today</span>` : nothing}${causeMarks(causes)}</span>
      ${visits.map((visit) => this.renderChip(visit))}
    </td>`;
  }

  private renderList(year: number) {
    const { visits } = this.app.yard;
    const days = [...visitsByDay(visits, this.shownMove)]
      .filter(([date]) => Number(date.slice(0, 4)) === year)
      .sort(([a], [b]) => (a < b ? -1 : 1));
    const months = [...new Set(days.map(([date]) => date.slice(0, 7)))];
    return months.map(
      (month) => html`<section aria-label=${`${MONTH_NAMES[Number(month.slice(5)) - 1]} ${year}`}>
        <h3 class="month">${MONTH_NAMES[Number(month.slice(5)) - 1]}</h3>
        <ol>${days
          .filter(([date]) => date.startsWith(month))
          .map(
            ([date, own]) => html`<li>
              <span class="when">${dayWords(date).replace(/, .*/, '')}<b>${Number(date.slice(8))}</b></span>
              <span class="rows">${own.map((visit) => this.renderRow(visit))}</span></li>`,
          )}</ol></section>`,
    );
  }

  private renderRow(visit: Visit) {
    const issues = issuesOfVisit(this.app.session.derived, visit.id);
    const isHeld = this.held?.visitId === visit.id;
    return html`<span class="row-line">${this.renderChip(visit)}${
      visit.doneOn === null && !isHeld
        ? html`<button class="move" aria-label=${`Move ${visitName(visit)}`} @click=${() => this.holdByKeys(visit, 0)}>Move</button>`
        : nothing
    }</span>${isHeld ? nothing : issueNotes(issues)}`;
  }

  /** @param isThere as it would be on the day it is held over, not where it stands */
  private modelOf(visit: Visit, isThere: boolean): ChipModel {
    const { held } = this;
    return {
      visit,
      issues:
        isThere && held?.visitId === visit.id && held.date
          ? this.judge.judge(this.app.session.derived, visit.id, held.date)
          : issuesOfVisit(this.app.session.derived, visit.id),
      isHeld: held?.visitId === visit.id,
      isDone: visit.doneOn !== null,
    };
  }

  private renderChip(visit: Visit) {
    const { app, held } = this;
    const model = this.modelOf(visit, held?.by === 'keys');
    return html`<button class=${chipClasses(model, held?.by === 'pointer')} data-visit=${visit.id} aria-label=${chipLabel(app.yard, model)}
      aria-describedby=${model.isDone ? nothing : 'how'} @pointerdown=${(event: PointerEvent) => this.hold.press(event, visit.id)}
      @click=${() => this.open(visit)} @keydown=${(event: KeyboardEvent) => this.onKey(event, visit)}
      @focus=${() => this.point(visit.id)} @pointerenter=${() => this.point(visit.id)}>${chipFace(app.yard, model, app.theme === 'dark')}</button>`;
  }

  private point(visitId: string): void {
    if (!this.held) this.pointed = visitId;
  }

  private get barIsEmpty(): boolean {
    // in the list each visit has its words beside it
    const isPointed = this.layout === 'weeks' && this.visitOf(this.pointed) !== undefined;
    return !this.held && !this.asking && !isPointed;
  }

  /** The line below: what would be so on the day a visit is held over; else what is told of the one pointed at. */
  private renderBar() {
    const { app, held } = this;
    const asked = this.visitOf(this.asking);
    if (asked) return askBar(asked, { remove: () => this.removeNow(asked), keep: () => this.keep(asked) });
    const visit = this.visitOf(held?.visitId ?? this.pointed);
    if (!visit) return nothing;
    const { derived } = app.session;
    if (!held) return pointedBar(app.yard, visit, issuesOfVisit(derived, visit.id), () => this.open(visit));
    const { date, from } = held;
    const issues = date ? this.judge.judge(derived, visit.id, date) : [];
    const acts: BarActs = {
      step: (days) => this.holdByKeys(visit, days),
      putDown: () => this.putDown(visit.id, date ?? from),
      putBack: () => this.putBack(visit.id),
    };
    return heldBar(visit, from, date, issues, this.nearWords(visit, date), held.by === 'keys' ? acts : null);
  }

  /** Where else the products of a held visit go on the same ground, whether or not the label limits it. */
  private nearWords(visit: Visit, date: string | null): readonly string[] {
    const { yard } = this.app;
    return date === null ? [] : productNeighbours(yard, visit, date).map((one) => neighbourWords(yard, one));
  }

  private liveWords(): string {
    const { held } = this;
    const visit = this.visitOf(held?.visitId ?? null);
    if (!held || !visit) return this.told;
    if (!held.date) return `${visitName(visit)} is over no day.`;
    const issues = this.judge.judge(this.app.session.derived, visit.id, held.date);
    return `${visitName(visit)} would stand on ${dayWords(held.date, true)}. ${[sayIssues(issues), ...this.nearWords(visit, held.date)].join(' ')}${held.by === 'keys' ? ' Enter puts it there, Escape puts it back.' : ''}`;
  }

  private placeGhost(): void {
    const { ghost } = this.hold;
    const element = ghost && this.renderRoot.querySelector<HTMLElement>('.ghost');
    if (element) placeBeside(element, ghost.x, ghost.y);
  }

  private renderGhost(isDark: boolean) {
    const { ghost } = this.hold;
    const visit = this.visitOf(ghost?.visitId ?? null);
    if (!ghost || !visit || !this.held) return nothing;
    return html`<div class="ghost chip held" aria-hidden="true">${chipFace(this.app.yard, this.modelOf(visit, true), isDark)}</div>`;
  }

  private onKey(event: KeyboardEvent, visit: Visit): void {
    const { held } = this;
    const isHeld = held?.visitId === visit.id && held.by === 'keys';
    const arrow = ARROWS[event.key];
    if (arrow !== undefined && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      if (visit.doneOn !== null) {
        this.told = `${visitName(visit)} is done: it stays on its day.`;
        return;
      }
      this.holdByKeys(visit, event.shiftKey ? Math.sign(arrow) * 7 : arrow);
    } else if (isHeld && (event.key === 'Enter' || event.key === ' ')) {
      event.preventDefault();
      this.putDown(visit.id, held.date ?? held.from);
    } else if (isHeld && event.key === 'Escape') {
      event.preventDefault();
      this.putBack(visit.id);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault();
      this.leaveHeld();
      this.asking = visit.id;
      void this.updateComplete.then(() => this.bar?.querySelector<HTMLElement>('#remove')?.focus());
    }
  }

  /** Takes hold of a visit, or takes it on by so many days. */
  private holdByKeys(visit: Visit, days: number): void {
    if (this.held && this.held.visitId !== visit.id) this.leaveHeld();
    const from = visit.date ?? this.app.today();
    const now = this.held?.visitId === visit.id ? (this.held.date ?? from) : from;
    const date = addDays(now, days) ?? now;
    this.asking = null;
    this.told = '';
    const isByChip = this.shadowRoot?.activeElement?.matches('.chip') ?? false;
    this.held = { visitId: visit.id, from, date, by: 'keys' };
    if (isByChip || days === 0) this.focusNext = visit.id;
  }

  private putDown(visitId: string, date: string): void {
    const visit = this.visitOf(visitId);
    this.held = null;
    this.pointed = visitId;
    this.focusNext = visitId;
    if (!visit || visit.date === date) return;
    const issues = this.judge.judge(this.app.session.derived, visitId, date);
    this.told = `${visitName(visit)} moved to ${dayWords(date, true)}. ${sayIssues(issues)}`;
    this.app.dispatch('Move visit', (yard) => {
      const now = yard.visits.find((one) => one.id === visitId);
      return now ? replaceVisit(yard, { ...now, date }) : yard;
    });
  }

  private putBack(visitId: string): void {
    const visit = this.visitOf(visitId);
    this.held = null;
    this.focusNext = visitId;
    if (visit) this.told = `${visitName(visit)} is back on its day.`;
  }

  private open(visit: Visit): void {
    if (this.hold.takesClick() || this.held?.visitId === visit.id) return;
    lastOpened = visit.id;
    this.app.setView({ step: 'visit', visitId: visit.id });
  }

  private keep(visit: Visit): void {
    this.asking = null;
    this.focusNext = visit.id;
  }

  private removeNow(visit: Visit): void {
    const { app } = this;
    this.asking = null;
    this.pointed = null;
    this.told = `${visitName(visit)} is removed.`;
    app.dispatch('Remove visit', (yard) => removeVisit(yard, visit.id));
    app.note('visit-removed', `“${visitName(visit)}” is removed.`, undoStep(app));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'season-calendar': SeasonCalendar;
  }
}
