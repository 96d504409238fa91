import type { LedgerEntry } from '../../season/types';

/** Years that can be shown, earliest first, and the one to begin with. */
export interface ChartYears {
  readonly years: readonly number[];
  readonly first: number;
}

/**
 * The years in which the ground gets nitrogen, this one, and the one that the season is planned for. Begun is with
 * this year; where it has nothing there, with the next that has, else the last that had, else the season's.
 * @param today YYYY-MM-DD
 * @param seasonYear the year that the season opens at
 */
export function chartYears(
  entries: readonly LedgerEntry[],
  zoneIds: ReadonlySet<string>,
  today: string,
  seasonYear: number,
): ChartYears {
  const now = Number(today.slice(0, 4));
  const own = new Set(
    entries.flatMap(({ zoneId, date, nutrientKgPerM2 }) =>
      zoneIds.has(zoneId) && date !== null && nutrientKgPerM2.N > 0 ? [Number(date.slice(0, 4))] : [],
    ),
  );
  const had = [...own].sort((a, b) => a - b);
  const years = [...new Set([...own, now, seasonYear])].sort((a, b) => a - b);
  const first = own.has(now) ? now : (had.find((year) => year > now) ?? had.at(-1) ?? seasonYear);
  return { years, first };
}
