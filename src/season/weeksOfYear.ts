import { dayNumber, dayOfNumber, weekdayOf } from '../yard/calendar';

/**
 * The whole weeks that cover a year, each seven days (YYYY-MM-DD) from its first weekday.
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
