const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A stretch of every year, first and last day (MM-DD); it may run over the new year. */
export interface YearSpan {
  readonly from: string;
  readonly to: string;
}

/**
 * The year in which the stretch that holds a day begins: of Nov 15 to Mar 1, both 2026-12-01 and 2027-02-01
 * lie in that of 2026.
 * @param date YYYY-MM-DD
 * @returns null for a day outside of it; both ends belong to it
 */
export function spanYearOf(date: string, { from, to }: YearSpan): number | null {
  const year = Number(date.slice(0, 4));
  const day = date.slice(5);
  if (from <= to) return day >= from && day <= to ? year : null;
  if (day >= from) return year;
  return day <= to ? year - 1 : null;
}

/** "Nov 15" for 11-15. */
export function yearDayWords(day: string): string {
  return `${MONTHS[Number(day.slice(0, 2)) - 1] ?? ''}\u00a0${Number(day.slice(3))}`;
}

/** "Nov 15 to Mar 1". */
export function spanWords({ from, to }: YearSpan): string {
  return `${yearDayWords(from)} to ${yearDayWords(to)}`;
}

/** The same day so many years on (Feb 29 gives Mar 1 in a common year). @param date YYYY-MM-DD @param years may be a fraction, read in days of 1/365.25 year */
export function yearsLater(date: string, years: number): string {
  const whole = Math.trunc(years);
  const [y, m, d] = date.split('-').map(Number);
  const ms =
    Date.UTC((y ?? 0) + whole, (m ?? 1) - 1, d ?? 1) + Math.round((years - whole) * 365.25) * 86_400_000;
  return new Date(ms).toISOString().slice(0, 10);
}
