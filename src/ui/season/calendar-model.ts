import { dateOfVisit } from '../../plan/heldWith';
import { weeksOfYear } from '../../season/weeksOfYear';
import { addDays, daysBetween } from '../../yard/calendar';
import type { Visit, Yard } from '../../yard/types';
import { isInStretch } from '../../yard/yearDay';

/** Visits by their day. @param moved a visit shown on another day than its own */
export function visitsByDay(
  visits: readonly Visit[],
  moved: { readonly visitId: string; readonly date: string } | null,
): ReadonlyMap<string, readonly Visit[]> {
  const days = new Map<string, Visit[]>();
  for (const visit of visits) {
    const date = moved?.visitId === visit.id ? moved.date : dateOfVisit(visit);
    if (date !== null) days.set(date, [...(days.get(date) ?? []), visit]);
  }
  return days;
}

/** Weeks shown before the first and after the last visit of the year. */
const MARGIN_DAYS = 21;

/**
 * The weeks of a year that are worth showing: three before the first visit to three after the last, all of them
 * where there is none or all are asked for. @param days days that must be in
 */
export function weeksToShow(
  year: number,
  firstWeekday: 1 | 7,
  days: readonly string[],
  isAll: boolean,
): readonly (readonly string[])[] {
  const weeks = weeksOfYear(year, firstWeekday);
  const inYear = days.filter((day) => weeks.some((week) => week.includes(day))).toSorted();
  const [first, last] = [inYear[0], inYear.at(-1)];
  if (isAll || first === undefined || last === undefined) return weeks;
  const from = addDays(first, -MARGIN_DAYS) ?? first;
  const to = addDays(last, MARGIN_DAYS) ?? last;
  return weeks.filter((week) => (week[6] ?? '') >= from && (week[0] ?? '') <= to);
}

/** Why a day is marked on the calendar: by a rule that is on, or held back before the spring flush. */
export interface DayCause {
  readonly kind: 'barred' | 'held';
  readonly words: string;
}

/** Everything a day is marked for; empty: it is not. */
export function causesOn(yard: Yard, date: string): readonly DayCause[] {
  const rules = yard.rules.flatMap(({ isOn, name, terms }): readonly DayCause[] =>
    isOn && terms.kind === 'blackout' && isInStretch(date, terms.from, terms.to)
      ? [{ kind: 'barred', words: name || 'Rule of the place' }]
      : [],
  );
  const holds = yard.needs.flatMap(({ name, hold }): readonly DayCause[] =>
    hold && isInStretch(date, hold.from, hold.to)
      ? [{ kind: 'held', words: `Nitrogen held back${name ? `: ${name}` : ''}` }]
      : [],
  );
  return [...rules, ...holds];
}

/** The next visit that is planned for today or later and not done; null: none. */
export function nextVisit(yard: Yard, today: string): Visit | null {
  const coming = yard.visits.filter(
    (visit) => visit.doneOn === null && visit.date !== null && visit.date >= today,
  );
  return coming.toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1))[0] ?? null;
}

/** After this day (MM-DD) the next season is the one to plan; common practice, no source. */
const SEASON_END = '10-15';

/**
 * The year to begin with: that of the next planned visit, else this year where it has visits, else the nearest
 * with visits or programs; the season at hand or coming where there is none.
 */
export function yearToBegin(yard: Yard, today: string): number {
  const now = Number(today.slice(0, 4));
  const coming = nextVisit(yard, today)?.date;
  if (coming) return Number(coming.slice(0, 4));
  const dates = [...yard.visits.map(dateOfVisit), ...yard.programs.map((program) => program.from)];
  const years = dates.flatMap((date) => (date ? [Number(date.slice(0, 4))] : []));
  if (years.length === 0) return today.slice(5) > SEASON_END ? now + 1 : now;
  const far = (year: number) => Math.abs(year - now);
  return years.reduce((best, year) => (far(year) < far(best) ? year : best), years[0] ?? now);
}

/** ", 3 days later", ", a week earlier"; empty for the same day. */
export function shiftWords(from: string, to: string): string {
  const days = daysBetween(from, to) ?? 0;
  if (days === 0) return '';
  const count = Math.abs(days);
  const words =
    count === 1 ? 'a day' : count === 7 ? 'a week' : count % 7 === 0 ? `${count / 7} weeks` : `${count} days`;
  return `, ${words} ${days > 0 ? 'later' : 'earlier'}`;
}

/** Classes of a day in the sheet of weeks. @param over the day a visit is held over */
export function dayClasses(date: string, year: number, today: string, over: string | null): string {
  return [
    Number(date.slice(5, 7)) % 2 === 0 ? 'even' : 'odd',
    Number(date.slice(8)) <= 7 ? 'top' : '',
    date.endsWith('-01') ? 'first' : '',
    Number(date.slice(0, 4)) !== year ? 'outside' : '',
    date === today ? 'today' : '',
    date === over ? 'over' : '',
  ].join(' ');
}
