import { type LedgerItem, type LedgerZone, laidBy, yearOf } from './ledgerSums';
import type { LedgerEntry } from './types';

/** What one product lays down over a year, kg/m² by month, January first. */
export interface ProductYear {
  readonly productId: string;
  /** not done yet. */
  readonly planned: readonly number[];
  readonly done: readonly number[];
}

/**
 * What each product lays down month by month in a calendar year on a class of zones: the mean over the
 * zones weighted by their ground, kg/m²; a zone that is not treated counts as nought.
 * @param item what is counted; nitrogen unless said otherwise
 * @returns products in the order they are first met; none for no ground
 */
export function yearByMonth(
  entries: readonly LedgerEntry[],
  zones: readonly LedgerZone[],
  year: number,
  item: LedgerItem = 'N',
): readonly ProductYear[] {
  const areaM2 = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  if (!(areaM2 > 0)) return [];
  const shares = new Map(zones.map((zone) => [zone.zoneId, zone.areaM2 / areaM2]));
  const products = new Map<string, { planned: number[]; done: number[] }>();
  for (const entry of entries) {
    const share = shares.get(entry.zoneId);
    if (share === undefined || yearOf(entry) !== year) continue;
    const own = products.get(entry.productId) ?? {
      planned: new Array<number>(12).fill(0),
      done: new Array<number>(12).fill(0),
    };
    products.set(entry.productId, own);
    const months = entry.isDone ? own.done : own.planned;
    const month = Number((entry.date ?? '').slice(5, 7)) - 1;
    months[month] = (months[month] ?? 0) + share * (laidBy(entry)[item] ?? 0);
  }
  return [...products].map(([productId, months]) => ({ productId, ...months }));
}
