import type { Amount, Product, Visit, VisitDose } from '../yard/types';
import { productOfDose } from './applyUse';
import { productRate } from './rate';

/** Ids of the zones that a dose of a visit treats. */
export type ZonesOfDose = (visit: Visit, dose: VisitDose) => readonly string[];

/** What one visit lays of a product on one zone, per m²; null where a dose of it cannot be read in that measure. */
export interface ZoneAmount {
  readonly kgPerM2: number | null;
  readonly lPerM2: number | null;
}

/** Nothing laid down. */
export const NOTHING: ZoneAmount = { kgPerM2: 0, lPerM2: 0 };

/** Two amounts on the same ground together. */
export function addAmounts(a: ZoneAmount, b: ZoneAmount): ZoneAmount {
  const sum = (x: number | null, y: number | null) => (x === null || y === null ? null : x + y);
  return { kgPerM2: sum(a.kgPerM2, b.kgPerM2), lPerM2: sum(a.lPerM2, b.lPerM2) };
}

/** The amount in one measure, per m²; null when it cannot be told. */
export function readAmount(amount: ZoneAmount, unit: Amount['unit']): number | null {
  return unit === 'kg' ? amount.kgPerM2 : amount.lPerM2;
}

/**
 * What a visit lays of one product on each zone, over all its doses, each at the rate of its own use:
 * shares of different label rates do not add up, amounts do. A dose whose use or label rate is gone
 * counts as not known.
 * @param label the product as it stands on the shelf, with all its uses
 */
export function productByZone(
  label: Product,
  visit: Visit,
  zonesOfDose: ZonesOfDose,
): ReadonlyMap<string, ZoneAmount> {
  const byZone = new Map<string, ZoneAmount>();
  for (const dose of visit.doses) {
    if (dose.productId !== label.id) continue;
    const product = productOfDose([label], dose);
    const rate = product && productRate(product, dose.rateFactor).rate;
    const amount: ZoneAmount = rate ?? { kgPerM2: null, lPerM2: null };
    for (const id of zonesOfDose(visit, dose)) byZone.set(id, addAmounts(byZone.get(id) ?? NOTHING, amount));
  }
  return byZone;
}
