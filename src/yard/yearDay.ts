/*
 * Months, and days of every year (MM-DD) with the stretches between two of them. A year of no special number:
 * February has 28 days there. A 29 February of a rule stands for the last day of February.
 */

/** Names of the months, January first. */
export const MONTH_NAMES: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** "Jan" to "Dec", as tables of the weather and captions of a chart have them. */
export const SHORT_MONTH_NAMES: readonly string[] = MONTH_NAMES.map((name) => name.slice(0, 3));

/** Days of each month, January first. */
export const DAYS_IN_MONTH: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
export const DAYS_IN_YEAR = 365;

/** First day of each month as a day of the year, 0 for 1 January. */
const FIRST_DAYS: readonly number[] = DAYS_IN_MONTH.map((_, month) =>
  DAYS_IN_MONTH.slice(0, month).reduce((sum, days) => sum + days, 0),
);

/** A stretch of every year, first and last day (MM-DD), both in it; it may run over the new year. */
export interface YearSpan {
  readonly from: string;
  readonly to: string;
}

/** Day of the year (0 for 1 January) in the middle of a month. @param month 0 to 11 */
export function middleOfMonth(month: number): number {
  return (FIRST_DAYS[month] ?? 0) + ((DAYS_IN_MONTH[month] ?? 0) - 1) / 2;
}

/** @param yearDay MM-DD @returns day of the year, 0 for 1 January; null for what is no such day */
export function dayOfYear(yearDay: string): number | null {
  const match = /^(\d\d)-(\d\d)$/.exec(yearDay);
  const month = Number(match?.[1]) - 1;
  const day = Number(match?.[2]);
  const days = DAYS_IN_MONTH[month];
  if (match === null || days === undefined || day < 1 || day > (month === 1 ? 29 : days)) return null;
  return (FIRST_DAYS[month] ?? 0) + Math.min(day, days) - 1;
}

/** @param day day of the year, 0 for 1 January; taken round the year @returns MM-DD */
export function yearDayOf(day: number): string {
  const whole = ((Math.round(day) % DAYS_IN_YEAR) + DAYS_IN_YEAR) % DAYS_IN_YEAR;
  const month = FIRST_DAYS.findLastIndex((first) => first <= whole);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(month + 1)}-${two(whole - (FIRST_DAYS[month] ?? 0) + 1)}`;
}

/**
 * The year in which the stretch that holds a day begins: of Nov 15 to Mar 1, both 2026-12-01 and 2027-02-01
 * lie in that of 2026.
 * @param date YYYY-MM-DD
 * @returns null for a day outside of it; both ends belong to it
 */
export function spanYearOf(date: string, span: YearSpan): number | null {
  const year = Number(date.slice(0, 4));
  const day = date.slice(5);
  if (!isWithin(day, span.from, span.to)) return null;
  return span.from > span.to && day <= span.to ? year - 1 : year;
}

/** True when a day (YYYY-MM-DD) lies in a stretch of the year (MM-DD, both ends in it), which may run over the new year. */
export function isInStretch(date: string, from: string, to: string): boolean {
  return spanYearOf(date, { from, to }) !== null;
}

/**
 * How much of each month lies within a stretch of the year, both days counted; it may run over the new year.
 * @param from, to days of the year, 0 for 1 January
 * @returns twelve shares, 0 to 1
 */
export function sharesWithin(from: number, to: number): readonly number[] {
  return DAYS_IN_MONTH.map((days, month) => {
    let count = 0;
    for (let i = 0; i < days; i++) if (isWithin((FIRST_DAYS[month] ?? 0) + i, from, to)) count++;
    return count / days;
  });
}

/** The one rule of a stretch: both ends in it; where the last comes before the first it runs over the new year. */
function isWithin<T extends string | number>(day: T, from: T, to: T): boolean {
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}
