import { dayNumber } from '../plan/limits';

/*
 * Days of the calendar as text (YYYY-MM-DD), proleptic Gregorian, without clock and time zone. Text of
 * this form sorts by time.
 */

const DAY_MS = 86_400_000;

/** The day so many days after 1970-01-01. @throws RangeError outside the years 1 to 9999 */
export function dayOfNumber(number: number): string {
  const text = new Date(number * DAY_MS).toISOString();
  if (text.length !== 24) throw new RangeError(`No day of the years 1 to 9999 has the number ${number}.`);
  return text.slice(0, 10);
}

/** The day `days` later (earlier where negative); null when `date` is no day. */
export function addDays(date: string, days: number): string | null {
  const number = dayNumber(date);
  return number === null ? null : dayOfNumber(number + days);
}

/** Whole days from one day to another; null when either is no day. */
export function daysBetween(from: string, to: string): number | null {
  const [a, b] = [dayNumber(from), dayNumber(to)];
  return a === null || b === null ? null : b - a;
}

/** Day of the week by ISO 8601: 1 Monday to 7 Sunday (1970-01-01 was a Thursday). @param number as of `dayNumber` */
export function weekdayOf(number: number): number {
  return ((((number + 3) % 7) + 7) % 7) + 1;
}

/** The same day and month of another year; 29 February gives 28 February where there is none. */
export function sameDayOfYear(date: string, year: number): string {
  const moved = `${String(year).padStart(4, '0')}${date.slice(4)}`;
  return dayNumber(moved) === null ? `${moved.slice(0, 8)}28` : moved;
}

/**
 * The whole weeks that cover a year, each seven days from its first weekday.
 * @param firstWeekday 1 Monday to 7 Sunday
 */
export function weeksOfYear(year: number, firstWeekday: 1 | 7): readonly (readonly string[])[] {
  const start = dayNumber(`${year}-01-01`);
  const end = dayNumber(`${year}-12-31`);
  if (start === null || end === null) return [];
  const first = start - ((weekdayOf(start) - firstWeekday + 7) % 7);
  const weeks: string[][] = [];
  for (let number = first; number <= end; number += 7)
    weeks.push(Array.from({ length: 7 }, (_, i) => dayOfNumber(number + i)));
  return weeks;
}

/** True when a day lies in a stretch of the year (MM-DD, both ends in it), which may run over the new year. */
export function isInStretch(date: string, from: string, to: string): boolean {
  const day = date.slice(5);
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}
