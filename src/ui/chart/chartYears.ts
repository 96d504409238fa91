import type { LedgerEntry } from '../../season/types';

/** Years that can be shown, earliest first, and the one to begin with. */
export interface ChartYears {
  readonly years: readonly number[];
  readonly first: number;
}

/**
 * The years in which the ground gets nitrogen, and this one. Begun is with this year; where it has nothing
 * there, with the next that has, else the last that had.
 * @param today YYYY-MM-DD
 */
export function chartYears(
  entries: readonly LedgerEntry[],
  zoneIds: ReadonlySet<string>,
  today: string,
): ChartYears {
  const now = Number(today.slice(0, 4));
  const own = new Set(
    entries.flatMap(({ zoneId, date, nutrientKgPerM2 }) =>
      zoneIds.has(zoneId) && date !== null && nutrientKgPerM2.N > 0 ? [Number(date.slice(0, 4))] : [],
    ),
  );
  const years = [...new Set([...own, now])].sort((a, b) => a - b);
  const first = own.has(now)
    ? now
    : (years.find((year) => year > now) ?? Math.max(...own, Number.NEGATIVE_INFINITY));
  return { years, first: Number.isFinite(first) ? first : now };
}
