import { KG_PER_LB, M2_PER_SQFT } from '../units/factors';

/**
 * Lime or sulfur for a piece of ground by the lab's recommendation: rate times ground, over the share of
 * the product that works. "Actual liming material required = (soil test recommendation x 100) / CCE of
 * liming material", Penn State Agricultural Analytical Services Lab, Home Garden report notes.
 * @param rateKgPerM2 as the lab has it, kg/m² of pure effective material
 * @param areaM2 m²
 * @param effectivePct percent of the product that counts, more than 0; 100 for the pure material
 * @returns kg of product; null when a figure is not a number or the percent is not more than zero
 */
export function amendmentNeed(rateKgPerM2: number, areaM2: number, effectivePct = 100): number | null {
  const kg = (rateKgPerM2 * areaM2) / (effectivePct / 100);
  return effectivePct > 0 && rateKgPerM2 >= 0 && areaM2 >= 0 && Number.isFinite(kg) ? kg : null;
}

/**
 * In how many goes lime is put down, six months apart: 11 to 20 lb per 100 sq ft of pure lime in two, more
 * in three, Penn State Agricultural Analytical Services Lab, Home Garden report notes.
 * @param rateKgPerM2 as the lab has it, kg/m² of pure effective material
 */
export function limeParts(rateKgPerM2: number): 1 | 2 | 3 {
  const lbPer100Sqft = (rateKgPerM2 * M2_PER_SQFT * 100) / KG_PER_LB;
  // the source counts whole pounds
  const pounds = Math.round(lbPer100Sqft);
  return pounds > 20 ? 3 : pounds > 10 ? 2 : 1;
}
