import { productOfDose } from '../plan/applyUse';
import { dateOfVisit } from '../plan/heldWith';
import { laidDose } from '../plan/laidDose';
import { nutrientRates, solubleNitrogen } from '../plan/nutrients';
import { productRate } from '../plan/rate';
import { visitZones } from '../yard/choose';
import type { Product, Visit, Yard } from '../yard/types';

/** What one dose lays on a square metre, kg, and L of product; null where the density is needed and not known. */
export interface GroundLaid {
  readonly productId: string;
  readonly kgPerM2: number | null;
  readonly lPerM2: number | null;
  readonly N: number;
  readonly solubleN: number;
  readonly P2O5: number;
  readonly K2O: number;
}

/** One dose on one zone and day. */
export interface GroundEntry {
  readonly zoneId: string;
  readonly date: string;
  readonly laid: GroundLaid;
}

/** What a use lays down at a multiple of its label rate; null where that is not known. */
export function laidOfUse(product: Product, factor: number): GroundLaid | null {
  const { rate } = productRate(product, factor);
  const nutrients = rate && nutrientRates(product, rate);
  if (!rate || !nutrients) return null;
  const { kgPerM2, lPerM2 } = rate;
  const solubleN = solubleNitrogen(product, nutrients.N);
  return { productId: product.id, kgPerM2, lPerM2, ...nutrients, solubleN };
}

/** What visits lay down that no program fills, each on the day it counts by: by its record once it is done, else by the label. */
export function laidOfVisits(yard: Yard, visits: readonly Visit[]): readonly GroundEntry[] {
  return visits.flatMap((visit) => {
    const date = dateOfVisit(visit);
    if (date === null) return [];
    return visit.doses.flatMap((dose): readonly GroundEntry[] => {
      const { productId } = dose;
      const kept = laidDose(visit, dose, null);
      if (kept !== null) {
        const { zones, rates, kgPerM2, lPerM2 } = kept;
        if (rates === null) return [];
        const laid = {
          productId,
          kgPerM2,
          lPerM2,
          ...rates.nutrientKgPerM2,
          solubleN: rates.solubleNKgPerM2,
        };
        return zones.map(({ zoneId }) => ({ zoneId, date, laid }));
      }
      const product = productOfDose(yard.products, dose);
      const laid = product && laidOfUse(product, dose.rateFactor);
      return laid ? visitZones(yard, visit, dose).map(({ id: zoneId }) => ({ zoneId, date, laid })) : [];
    });
  });
}
