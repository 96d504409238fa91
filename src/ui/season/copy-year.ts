import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { dateOfVisit } from '../../plan/heldWith';
import { copySeason, type SeasonCopy, shiftDay, weeksBetweenYears } from '../../season/copySeason';
import { dayWords } from '../../words/seasonWords';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';

type Shift = 'weeks' | 'week-more' | 'same-day';
const VISIT_WORDS = { all: 'all visits', done: 'only those done', none: 'no visits' } as const;

/** Takes a year's visits and programs over to another year. */
@customElement('copy-year')
export class CopyYear extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.5rem; align-items: end; margin-bottom: 0.5rem; }
      .days { grid-column: span 2; }
    `,
  ];

  /** the year shown: copied to unless told otherwise. */
  @property({ attribute: false }) year = 0;
  @state() private fromYear: number | null = null;
  @state() private toYear: number | null = null;
  @state() private shift: Shift = 'weeks';
  @state() private visits: SeasonCopy['visits'] = 'all';
  @state() private withPrograms = true;

  private get years(): readonly number[] {
    const { visits, programs } = this.app.yard;
    const dates = [...visits.map(dateOfVisit), ...programs.map((one) => one.from)];
    return [...new Set(dates.flatMap((date) => (date ? [Number(date.slice(0, 4))] : [])))].sort(
      (a, b) => a - b,
    );
  }

  private get order(): SeasonCopy {
    const { years, year } = this;
    // the year shown where it is empty, else the one after it
    const fromYear =
      this.fromYear ??
      (years.includes(year) ? year : (years.findLast((one) => one < year) ?? years.at(-1) ?? year));
    const toYear = this.toYear ?? (fromYear === year ? year + 1 : year);
    const weeks = weeksBetweenYears(fromYear, toYear);
    return {
      fromYear,
      toYear,
      shift:
        this.shift === 'same-day'
          ? { kind: 'same-day' }
          : { kind: 'weeks', weeks: this.shift === 'weeks' ? weeks : weeks + 1 },
      visits: this.visits,
      withPrograms: this.withPrograms,
    };
  }

  protected override render() {
    const { order, years } = this;
    const weeks = weeksBetweenYears(order.fromYear, order.toYear);
    const shifts = {
      weeks: `${weeks} weeks on, same weekday`,
      'week-more': `${weeks + 1} weeks on, same weekday`,
      'same-day': 'same day and month',
    };
    return html`
      <div class="fields">
        <label>From the year<select @change=${(event: Event) => {
          this.fromYear = Number(fieldValue(event));
        }}>${years.map((one) => html`<option value=${one} .selected=${one === order.fromYear}>${one}</option>`)}</select></label>
        <number-field label="To the year" whole .value=${order.toYear} .min=${1900} .max=${2200} @number-change=${(
          event: CustomEvent<NumberChange>,
        ) => {
          this.toYear = event.detail.value;
        }}></number-field>
        <div class="days">${selectField(
          'Days',
          this.shift,
          ['weeks', 'week-more', 'same-day'],
          shifts,
          (shift) => {
            this.shift = shift;
          },
        )}</div>
        ${selectField('Visits', this.visits, ['all', 'done', 'none'], VISIT_WORDS, (visits) => {
          this.visits = visits;
        })}
      </div>
      <label class="check"><input type="checkbox" .checked=${this.withPrograms} @change=${(event: Event) => {
        this.withPrograms = isTicked(event);
      }} />Programs too</label>
      ${this.renderOutlook(order)}
    `;
  }

  private renderOutlook(order: SeasonCopy) {
    const { yard } = this.app;
    let count = 0;
    const next = copySeason(yard, order, (prefix) => `${prefix}-trial-${count++}`);
    const [visits, programs] = [
      next.visits.slice(yard.visits.length),
      next.programs.length - yard.programs.length,
    ];
    const first = yard.visits
      .map(dateOfVisit)
      .flatMap((date) => (date?.startsWith(String(order.fromYear)) ? date : []))
      .toSorted()[0];
    const there = yard.visits.filter((visit) => dateOfVisit(visit)?.startsWith(String(order.toYear))).length;
    return html`
      <p class="quiet">${visits.length} visits and ${programs} programs are copied.${
        first ? html` ${dayWords(first, true)} becomes ${dayWords(shiftDay(first, order), true)}.` : ''
      }${there > 0 ? html` <b>${order.toYear} has ${there} visits already; they stay beside the copies.</b>` : ''}</p>
      <button ?disabled=${next === yard || order.fromYear === order.toYear} @click=${() => this.run(order)}>Copy ${order.fromYear} to ${order.toYear}</button>`;
  }

  private run(order: SeasonCopy): void {
    const { app } = this;
    app.dispatch('Copy a year', (yard) => copySeason(yard, order, (prefix) => app.newId(prefix)));
    app.note('year-copied', `${order.fromYear} is copied to ${order.toYear}.`, undoStep(app));
    this.dispatchEvent(
      new CustomEvent<number>('year-chosen', { detail: order.toYear, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'copy-year': CopyYear;
  }
}
