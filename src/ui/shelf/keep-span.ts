/** Spans in which a person says how long something keeps. */
export const SPANS = ['days', 'months', 'years'] as const;
export type Span = (typeof SPANS)[number];

/** Mean days of each in the Gregorian calendar: 400 years have 146,097 days. */
const DAYS: Readonly<Record<Span, number>> = { days: 1, months: 146_097 / 4800, years: 146_097 / 400 };

/** Whole days of so many days, months or years. */
export function daysOf(count: number, span: Span): number {
  return Math.round(count * DAYS[span]);
}

/** Days as a number of a span, to a tenth; one that was typed in that span comes back as it was. */
export function countIn(days: number, span: Span): number {
  const near = Math.round(days / DAYS[span]);
  return daysOf(near, span) === Math.round(days) ? near : Number((days / DAYS[span]).toFixed(1));
}

/** The largest span in which days read as a whole number, months from two on; months for none. */
export function fittingSpan(days: number | null): Span {
  if (days === null) return 'months';
  const isWhole = (span: Span, least: number) => {
    const count = countIn(days, span);
    return Number.isInteger(count) && count >= least && daysOf(count, span) === days;
  };
  return isWhole('years', 1) ? 'years' : isWhole('months', 2) ? 'months' : 'days';
}
