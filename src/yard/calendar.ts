/*
 * Days of the calendar as text (YYYY-MM-DD), proleptic Gregorian, without clock and time zone. Text of
 * this form sorts by time.
 */

const DAY_MS = 86_400_000;
/** Mean length of a year of the Julian calendar, days: parts of a year are read in days of it. */
const MEAN_YEAR_DAYS = 365.25;

/** Days since 1970-01-01 of a YYYY-MM-DD date (POSIX.1-2017, 4.16); null for none or an impossible one. */
export function dayNumber(date: string | null): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date ?? '');
  if (match === null) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const ms = timeOf(year, month, day);
  const back = new Date(ms);
  return back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? ms / DAY_MS : null;
}

/** Milliseconds since 1970 of a day that may run over its month; `Date.UTC` takes the years 0 to 99 for 1900 to 1999. */
function timeOf(year: number, month: number, day: number): number {
  return new Date(0).setUTCFullYear(year, month - 1, day);
}

/** The day so many days after 1970-01-01. @throws RangeError outside the years 0 to 9999 */
export function dayOfNumber(number: number): string {
  const text = new Date(number * DAY_MS).toISOString();
  if (text.length !== 24) throw new RangeError(`No day of the years 0 to 9999 has the number ${number}.`);
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
 * The same day so many years on (Feb 29 gives Mar 1 in a common year).
 * @param date YYYY-MM-DD @param years may be a fraction, read in days of 1/365.25 year
 */
export function yearsLater(date: string, years: number): string {
  const whole = Math.trunc(years);
  const [y, m, d] = date.split('-').map(Number);
  const start = timeOf((y ?? 0) + whole, m ?? 1, d ?? 1);
  return dayOfNumber(start / DAY_MS + Math.round((years - whole) * MEAN_YEAR_DAYS));
}
