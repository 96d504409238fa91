import type { Product } from '../yard/types';
import type { ProductRate } from './types';

/*
 * Salt index: the rise of osmotic pressure a fertilizer makes in the soil solution over that of the same
 * weight of sodium nitrate, which is set at 100 (Rader, White and Whittaker, Soil Science 55:201-218,
 * 1943). It compares doses; it does not say at which one a leaf burns.
 */

/**
 * Salt of one dose as the sodium nitrate that would act alike, kg/m²: product times salt index / 100.
 * @returns null when the salt index, or the density that turns volume into weight, is not known
 */
export function saltLoad(product: Product, rate: ProductRate): number | null {
  const { saltIndex } = product;
  return saltIndex === null || rate.kgPerM2 === null ? null : (rate.kgPerM2 * saltIndex) / 100;
}

/**
 * Salt index for each unit of nutrient (a unit is 1 % of a ton, 20 lb): salt index over percent of it.
 * Comparing sources by what they feed, a low-analysis salt is the harsher one (ammonium sulfate, 88.3 at
 * 21 % N, 4.2; urea, 74.4 at 46 % N, 1.6).
 * @param nutrientPct percent by weight of the nutrients counted; more than 0, else null is given back
 */
export function saltPerUnit(saltIndex: number, nutrientPct: number): number | null {
  return nutrientPct > 0 ? saltIndex / nutrientPct : null;
}
