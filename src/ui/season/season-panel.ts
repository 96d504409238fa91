import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { dateOfVisit } from '../../plan/heldWith';
import { dayWords, visitName } from '../../words/seasonWords';
import { AppPart } from '../parts/app-part';
import { saveFile } from '../parts/save-file';
import { shared } from '../parts/shared';
import { WidthWatch } from '../parts/width-watch';
import { nextVisit, yearToBegin } from './calendar-model';
import { issuesOfVisit } from './judge-move';
import './season-calendar';

const VIEWS = ['calendar', 'programs', 'chart', 'ledger', 'rules'] as const;
type View = (typeof VIEWS)[number];
const VIEW_WORDS: Readonly<Record<View, string>> = {
  calendar: 'Calendar',
  programs: 'Programs',
  chart: 'Chart',
  ledger: 'Ledger',
  rules: 'Rules',
};
/** Views that are fetched when first opened. */
const LATE: Readonly<Partial<Record<View, () => Promise<unknown>>>> = {
  programs: () => import('./program-list'),
  chart: () => import('./season-chart'),
  ledger: () => import('../ledger/ledger-view'),
  rules: () => Promise.all([import('../ledger/rule-list'), import('../ledger/cap-fields')]),
};
/** Width from which the weeks of the calendar have room, px. */
const WIDE_PX = 560;

/** What was looked at last; of this session of the screen, not of the document. */
let last: { view: View; year: number | null; layout: 'weeks' | 'list' | null; yardId: string } = {
  view: 'calendar',
  year: null,
  layout: null,
  yardId: '',
};

/** Season: the visits of a year on a calendar, the programs that make them, and what they come to. */
@customElement('season-panel')
export class SeasonPanel extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .head { display: flex; flex-wrap: wrap; align-items: center; justify-content: space-between; gap: 0.25rem 0.75rem; margin-bottom: 0.5rem; }
      h2 { margin: 0; }
      .year:not([hidden]) { display: flex; align-items: center; }
      .year b { min-width: 3.25rem; text-align: center; font-size: 1.15rem; }
      .year button { padding: 0; border-color: transparent; background: none; font-size: 1.25rem; }
      nav { display: grid; grid-template-columns: repeat(5, auto); border-bottom: 2px solid var(--ink); margin-bottom: 0.75rem; }
      nav button { padding: 0 0.2rem; min-width: 0; border: 0; border-bottom: 4px solid transparent; background: none; font-size: var(--text-small); }
      nav button[aria-current='true'] { border-bottom-color: var(--accent); font-weight: 700; }
      .bar { justify-content: space-between; margin-bottom: 0.5rem; align-items: center; }
      .next { padding: 0; text-align: left; }
      .layouts { display: flex; border: 0; margin: 0; padding: 0; }
      .layouts button + button { border-left: 0; }
    `,
  ];

  @state() private view: View = last.view;
  @state() private chosenYear: number | null = last.year;
  @state() private chosenLayout: 'weeks' | 'list' | null = last.layout;
  @state() private loaded: ReadonlySet<View> = new Set<View>(['calendar']);
  @state() private failed: View | null = null;
  @state() private width = 0;
  private copied: { readonly year: number; readonly back: number } | null = null;
  protected readonly widthWatch = new WidthWatch(this, (widthPx) => {
    this.width = widthPx;
  });

  private get year(): number {
    return this.chosenYear ?? yearToBegin(this.app.yard, this.app.today());
  }

  protected override willUpdate(): void {
    // another yard begins with its own year
    if (last.yardId !== this.app.yard.id) {
      last = { ...last, yardId: this.app.yard.id, year: null };
      this.chosenYear = null;
    }
    const { copied } = this;
    if (copied !== null && !this.hasDays(copied.year)) {
      this.copied = null;
      if (this.chosenYear === copied.year) this.setYear(copied.back);
    }
    const load = LATE[this.view];
    const { view } = this;
    if (!load || this.loaded.has(view) || this.failed === view) return;
    load()
      .then(() => {
        this.loaded = new Set([...this.loaded, view]);
      })
      .catch(() => {
        this.failed = view;
      });
  }

  protected override render() {
    const { year, view } = this;
    return html`
      <div class="head"><h2>Season</h2>
        <div class="year" ?hidden=${view === 'ledger' || view === 'rules'} role="group" aria-label="Year">
          <button aria-label=${`Show ${year - 1}`} @click=${() => this.setYear(year - 1)}>‹</button>
          <b aria-live="polite">${year}</b>
          <button aria-label=${`Show ${year + 1}`} @click=${() => this.setYear(year + 1)}>›</button></div></div>
      <nav aria-label="Views of the season">${VIEWS.map(
        (each) =>
          html`<button aria-current=${view === each ? 'true' : nothing} @click=${() => this.show(each)}>${VIEW_WORDS[each]}</button>`,
      )}</nav>
      <div @year-chosen=${(event: CustomEvent<number>) => this.showCopied(event.detail)}>${this.renderView(view, year)}</div>`;
  }

  private renderView(view: View, year: number) {
    const { app, rev } = this;
    if (!this.loaded.has(view))
      return html`<p>${this.failed === view ? 'This part could not be loaded. Check the connection and open it again.' : 'Loading…'}</p>`;
    switch (view) {
      case 'calendar':
        return this.renderCalendar(year);
      case 'programs':
        return html`<program-list .app=${app} .rev=${rev} .year=${year}></program-list>`;
      case 'chart':
        return html`<season-chart .app=${app} .rev=${rev} .year=${year}></season-chart>`;
      case 'ledger':
        return html`<ledger-view .app=${app} .rev=${rev} .year=${year}></ledger-view>`;
      case 'rules':
        return html`<rule-list .app=${app} .rev=${rev}></rule-list><cap-fields .app=${app} .rev=${rev}></cap-fields>`;
    }
  }

  private renderCalendar(year: number) {
    const { app, rev } = this;
    const { visits, zones, products } = app.yard;
    if (visits.length === 0) {
      const first =
        zones.length === 0
          ? {
              words: 'Measure some ground first.',
              label: 'To measuring',
              run: () => app.setView({ step: 'measure' as const }),
            }
          : products.length === 0
            ? {
                words: 'Put a product on the shelf first.',
                label: 'To the shelf',
                run: () => app.setView({ step: 'shelf' as const }),
              }
            : {
                words: 'A program makes them by a rule; a single one is added under Visit.',
                label: 'To the programs',
                run: () => this.show('programs'),
              };
      return html`<p>No visits are planned yet. ${first.words}</p><button class="primary" @click=${first.run}>${first.label}</button>`;
    }
    const layout = this.chosenLayout ?? (this.width >= WIDE_PX ? 'weeks' : 'list');
    const choose = (each: 'weeks' | 'list', words: string) =>
      html`<button aria-pressed=${layout === each ? 'true' : 'false'} @click=${() => {
        this.chosenLayout = each;
        last = { ...last, layout: each };
      }}>${words}</button>`;
    const next = nextVisit(app.yard, app.today());
    const inYear = visits.filter((visit) => dateOfVisit(visit)?.startsWith(String(year))).length;
    return html`
      <div class="row bar">
        <div class="layouts" role="group" aria-label="How the year is shown">${choose('weeks', 'Weeks')}${choose('list', 'List')}</div>
        <button @click=${() => void this.exportCalendar(year)} ?disabled=${inYear === 0}>Export for a calendar (.ics)</button></div>
      ${next?.date?.startsWith(String(year)) ? html`<button class="plain next" @click=${() => app.setView({ step: 'visit', visitId: next.id })}>Next: ${visitName(next)}, ${dayWords(next.date ?? '')}</button>` : nothing}
      ${inYear === 0 ? html`<p class="quiet">No visits in ${year}.</p>` : nothing}
      <season-calendar .app=${app} .rev=${rev} .year=${year} .layout=${layout}></season-calendar>`;
  }

  private async exportCalendar(year: number): Promise<void> {
    const { app } = this;
    const [{ writeCalendar }, { eventWords }] = await Promise.all([
      import('../../io/writeCalendar'),
      import('../../words/eventWords'),
    ]);
    const { yard, derived } = app.session;
    const figures = yard.visits
      .filter((visit) => dateOfVisit(visit)?.startsWith(String(year)))
      .flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
    const stamp = `${app.services.now().toISOString().replace(/[-:]/g, '').slice(0, 15)}Z`;
    const name =
      yard.name
        .trim()
        .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
        .toLowerCase() || 'yard';
    const text = writeCalendar(yard, figures, stamp, (each) =>
      eventWords(each, issuesOfVisit(derived, each.visit.id), yard.settings.units),
    );
    saveFile(`${name}-${year}.ics`, 'text/calendar', text);
  }

  private show(view: View): void {
    this.failed = null;
    this.view = view;
    last = { ...last, view };
  }

  private hasDays(year: number): boolean {
    const { visits, programs } = this.app.yard;
    const days = [...visits.map(dateOfVisit), ...programs.map((program) => program.from)];
    return days.some((day) => day?.startsWith(String(year)));
  }

  /** A year that was just copied to; undone, the year before comes back. */
  private showCopied(year: number): void {
    if (this.hasDays(year)) this.copied = { year, back: this.year };
    this.setYear(year);
  }

  private setYear(year: number): void {
    this.chosenYear = year;
    last = { ...last, year };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'season-panel': SeasonPanel;
  }
}
