import { ELEMENTS, type LabelElement, NUTRIENTS, type Nutrient } from '../yard/types';
import { inOrderOfDays } from './ledgerExcess';
import type { LedgerEntry } from './types';

/** What the ledger counts: the nutrients of a label, soluble nitrogen (a part of N), other elements. */
export const LEDGER_ITEMS = ['N', 'solubleN', 'P2O5', 'K2O', ...ELEMENTS] as const;
/** One of them. */
export type LedgerItem = Nutrient | 'solubleN' | LabelElement;

/** kg/m² by what is counted; what is not named is nought. */
export type Laid = Readonly<Partial<Record<LedgerItem, number>>>;

/** What is laid down in a stretch of time, kg/m²; `total` is done and to come together. */
export interface LaidDown {
  readonly done: Laid;
  readonly toCome: Laid;
  readonly total: Laid;
}

/** A calendar year of one zone, or the mean of several weighted by area. */
export interface LedgerYear {
  /** January first. */
  readonly months: readonly LaidDown[];
  readonly year: LaidDown;
}

/** A calendar year of one zone with the doses it is summed from, in order of days. */
export interface ZoneYear extends LedgerYear {
  readonly zoneId: string;
  /** the zone's ground, m². */
  readonly areaM2: number;
  readonly entries: readonly LedgerEntry[];
}

/** A zone and its ground, m². */
export interface LedgerZone {
  readonly zoneId: string;
  readonly areaM2: number;
}

/** What one entry lays down, kg/m² of the ground treated. */
export function laidBy({ nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 }: LedgerEntry): Laid {
  return { ...nutrientKgPerM2, solubleN: solubleNKgPerM2, ...elementKgPerM2 };
}

/** Calendar year of an entry; null for none. */
export function yearOf({ date }: LedgerEntry): number | null {
  return date === null ? null : Number(date.slice(0, 4));
}

/**
 * The ledger of a calendar year, zone by zone: every dose, its sums by month and over the year, done and to
 * come, kg/m² of the ground treated. Entries without a day belong to no year.
 * @returns one for each of `zones`, in their order; nought where nothing was or will be put down
 */
export function ledgerSums(
  entries: readonly LedgerEntry[],
  zones: readonly LedgerZone[],
  year: number,
): readonly ZoneYear[] {
  const byZone = new Map<string, LedgerEntry[]>(zones.map(({ zoneId }) => [zoneId, []]));
  for (const entry of entries) if (yearOf(entry) === year) byZone.get(entry.zoneId)?.push(entry);
  return zones.map(({ zoneId, areaM2 }) => {
    const own = inOrderOfDays(byZone.get(zoneId) ?? []);
    return { zoneId, areaM2, entries: own, ...sumYear(own) };
  });
}

/** Means of the months and the year over zones, weighted by their ground; nought for no ground. */
export function meanOfZones(zones: readonly ZoneYear[]): LedgerYear {
  const area = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  const mean = (of: (zone: ZoneYear) => Laid): Laid => {
    const sums: Partial<Record<LedgerItem, number>> = {};
    for (const zone of zones) if (area > 0) add(sums, of(zone), zone.areaM2 / area);
    return sums;
  };
  const meanDown = (of: (zone: ZoneYear) => LaidDown | undefined): LaidDown => ({
    done: mean((zone) => of(zone)?.done ?? {}),
    toCome: mean((zone) => of(zone)?.toCome ?? {}),
    total: mean((zone) => of(zone)?.total ?? {}),
  });
  return {
    months: Array.from({ length: 12 }, (_, month) => meanDown((zone) => zone.months[month])),
    year: meanDown((zone) => zone.year),
  };
}

/** Calendar years in which something is laid down, rising. */
export function ledgerYears(entries: readonly LedgerEntry[]): readonly number[] {
  return [...new Set(entries.flatMap((entry) => yearOf(entry) ?? []))].sort((a, b) => a - b);
}

/** What of `LEDGER_ITEMS` anything is laid down of, in that order; N, P2O5 and K2O always. */
export function itemsLaid(entries: readonly LedgerEntry[]): readonly LedgerItem[] {
  const found = new Set<LedgerItem>(NUTRIENTS);
  for (const entry of entries) {
    for (const [item, value] of Object.entries(laidBy(entry))) if (value > 0) found.add(item as LedgerItem);
  }
  return LEDGER_ITEMS.filter((item) => found.has(item));
}

function sumYear(entries: readonly LedgerEntry[]): LedgerYear {
  const monthOf = ({ date }: LedgerEntry) => Number((date ?? '').slice(5, 7)) - 1;
  return {
    months: Array.from({ length: 12 }, (_, month) => sumUp(entries.filter((one) => monthOf(one) === month))),
    year: sumUp(entries),
  };
}

/** Sums of entries of one zone, kg/m². */
function sumUp(entries: readonly LedgerEntry[]): LaidDown {
  const done: Partial<Record<LedgerItem, number>> = {};
  const toCome: Partial<Record<LedgerItem, number>> = {};
  const total: Partial<Record<LedgerItem, number>> = {};
  for (const entry of entries) {
    const laid = laidBy(entry);
    add(entry.isDone ? done : toCome, laid, 1);
    add(total, laid, 1);
  }
  return { done, toCome, total };
}

function add(sums: Partial<Record<LedgerItem, number>>, laid: Laid, weight: number): void {
  for (const [item, value] of Object.entries(laid)) {
    const key = item as LedgerItem;
    sums[key] = (sums[key] ?? 0) + weight * value;
  }
}
