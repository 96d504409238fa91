import { SHORT_MONTH_NAMES, type YearSpan } from '../yard/yearDay';

/** "Nov 15" for 11-15. */
export function yearDayWords(day: string): string {
  return `${SHORT_MONTH_NAMES[Number(day.slice(0, 2)) - 1] ?? ''}\u00a0${Number(day.slice(3))}`;
}

/** "Nov 15 to Mar 1". */
export function spanWords({ from, to }: YearSpan): string {
  return `${yearDayWords(from)} to ${yearDayWords(to)}`;
}
