import type { Amount, Product, Visit, VisitDose } from '../yard/types';
import { productOfDose } from './applyUse';
import { convertAmount, productRate } from './rate';

/** Ids of the zones that a dose of a visit treats. */
export type ZonesOfDose = (visit: Visit, dose: VisitDose) => readonly string[];

/** Ground that a dose of a visit treats, m². */
export type AreaOfDose = (visit: Visit, dose: VisitDose) => number;

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
 * shares of different label rates do not add up, amounts do. A dose that is done counts by what was really
 * used, where that and its ground are told. One whose use or label rate is gone counts as not known.
 * @param label the product as it stands on the shelf, with all its uses
 * @param areaOfDose null: done doses count as planned
 */
export function productByZone(
  label: Product,
  visit: Visit,
  zonesOfDose: ZonesOfDose,
  areaOfDose: AreaOfDose | null = null,
): ReadonlyMap<string, ZoneAmount> {
  const byZone = new Map<string, ZoneAmount>();
  for (const dose of visit.doses) {
    if (dose.productId !== label.id) continue;
    const amount = usedPerM2(label, visit, dose, areaOfDose) ?? plannedPerM2(label, dose);
    for (const id of zonesOfDose(visit, dose)) byZone.set(id, addAmounts(byZone.get(id) ?? NOTHING, amount));
  }
  return byZone;
}

function plannedPerM2(label: Product, dose: VisitDose): ZoneAmount {
  const product = productOfDose([label], dose);
  return (product && productRate(product, dose.rateFactor).rate) ?? { kgPerM2: null, lPerM2: null };
}

/** What was really used by area; null where it is not told. */
function usedPerM2(
  label: Product,
  visit: Visit,
  dose: VisitDose,
  areaOfDose: AreaOfDose | null,
): ZoneAmount | null {
  const { actual } = dose;
  if (visit.doneOn === null || actual === null || areaOfDose === null) return null;
  const areaM2 = areaOfDose(visit, dose);
  if (!(areaM2 > 0)) return null;
  const per = (unit: Amount['unit']) => {
    const amount = convertAmount(actual, unit, label.densityKgPerL);
    return amount && amount.value / areaM2;
  };
  return { kgPerM2: per('kg'), lPerM2: per('L') };
}
