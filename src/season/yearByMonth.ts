import { type LedgerItem, type LedgerZone, laidBy, shareOfGround, yearOf } from './ledgerSums';
import type { LedgerEntry } from './types';

/** What one product lays down over a year, kg/m² by month, January first. */
export interface ProductYear {
  readonly productId: string;
  /** as recorded where it is done. */
  readonly productName: string;
  /** not done yet. */
  readonly planned: readonly number[];
  readonly done: readonly number[];
}

/**
 * What each product lays down month by month in a calendar year on a class of zones: the mean over all their
 * ground, kg/m² (see `shareOfGround`); what is not treated counts as nought.
 * @param item what is counted; nitrogen unless said otherwise
 * @returns products in the order they are first met; none for no ground
 */
export function yearByMonth(
  entries: readonly LedgerEntry[],
  zones: readonly LedgerZone[],
  year: number,
  item: LedgerItem = 'N',
): readonly ProductYear[] {
  const shareOf = shareOfGround(zones);
  const products = new Map<string, { productName: string; planned: number[]; done: number[] }>();
  for (const entry of entries) {
    const share = shareOf(entry);
    if (share === 0 || yearOf(entry) !== year) continue;
    const own = products.get(entry.productId) ?? {
      productName: entry.productName,
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
