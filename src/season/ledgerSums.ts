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

/** A calendar year of one zone, or the mean over the ground of several. */
export interface LedgerYear {
  /** January first. */
  readonly months: readonly LaidDown[];
  readonly year: LaidDown;
}

/** A calendar year of one zone with the doses it is summed from, in order of days. */
export interface ZoneYear extends LedgerYear {
  readonly zoneId: string;
  /** the zone's net ground, m². */
  readonly areaM2: number;
  readonly entries: readonly LedgerEntry[];
}

/** A zone and its net ground, m². */
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

/**
 * The share of a rate that counts in the mean over zones: the ground an entry lies on against the ground of all.
 * What strips spare counts as nought, and an entry lies on no more than its zone has now. A zone by itself is
 * told by the ground treated, the whole rate.
 * @returns 0 for an entry of none of the zones, and where they have no ground
 */
export function shareOfGround(zones: readonly LedgerZone[]): (entry: LedgerEntry) => number {
  const whole = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  const areas = new Map(zones.map((zone) => [zone.zoneId, zone.areaM2]));
  return ({ zoneId, areaM2 }) => {
    const own = areas.get(zoneId);
    if (own === undefined || !(whole > 0)) return 0;
    return zones.length === 1 ? 1 : Math.min(areaM2, own) / whole;
  };
}

/** Means of the months and the year over all ground of the zones (see `shareOfGround`); nought for no ground. */
export function meanOfZones(zones: readonly ZoneYear[]): LedgerYear {
  return sumYear(
    zones.flatMap((zone) => zone.entries),
    shareOfGround(zones),
  );
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

/** Sums of entries by month and over the year, each times its weight, kg/m². */
function sumYear(
  entries: readonly LedgerEntry[],
  weightOf: (entry: LedgerEntry) => number = () => 1,
): LedgerYear {
  const months: LedgerEntry[][] = Array.from({ length: 12 }, () => []);
  for (const entry of entries) months[Number((entry.date ?? '').slice(5, 7)) - 1]?.push(entry);
  return { months: months.map((month) => sumUp(month, weightOf)), year: sumUp(entries, weightOf) };
}

function sumUp(entries: readonly LedgerEntry[], weightOf: (entry: LedgerEntry) => number): LaidDown {
  const done: Partial<Record<LedgerItem, number>> = {};
  const toCome: Partial<Record<LedgerItem, number>> = {};
  const total: Partial<Record<LedgerItem, number>> = {};
  for (const entry of entries) {
    const weight = weightOf(entry);
    if (weight === 0) continue;
    const laid = laidBy(entry);
    add(entry.isDone ? done : toCome, laid, weight);
    add(total, laid, weight);
  }
  return { done, toCome, total };
}

function add(sums: Partial<Record<LedgerItem, number>>, laid: Laid, weight: number): void {
  for (const [item, value] of Object.entries(laid)) {
    const key = item as LedgerItem;
    sums[key] = (sums[key] ?? 0) + weight * value;
  }
}
