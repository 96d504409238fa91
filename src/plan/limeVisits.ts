import { limeParts } from '../soil/amendmentNeed';
import { newDose, newVisit } from '../yard/defaults';
import type { Product, SoilTest, Visit } from '../yard/types';
import { productRate } from './rate';

/**
 * Visits without a day that put down the lime a lab recommends, on the ground of its test: one, or two or
 * three where there is too much for one go (`limeParts`). Each lays its share of the recommendation over the
 * effective value of the product.
 * @param newId makes ids, by a prefix
 * @returns none when the test recommends no lime, or the product is no lime or has no rate by weight
 */
export function limeVisits(
  test: SoilTest,
  lime: Product,
  newId: (prefix: string) => string,
): readonly Visit[] {
  const { limeKgPerM2 } = test;
  const labelKgPerM2 = productRate(lime).rate?.kgPerM2 ?? 0;
  const pct = lime.limePct ?? 0;
  if (limeKgPerM2 === null || !(limeKgPerM2 > 0) || !(pct > 0) || !(labelKgPerM2 > 0)) return [];
  const parts = limeParts(limeKgPerM2);
  const rateFactor = limeKgPerM2 / (pct / 100) / labelKgPerM2 / parts;
  return Array.from({ length: parts }, (_, i) =>
    newVisit(newId('visit'), {
      name: parts === 1 ? 'Lime' : `Lime, ${i + 1} of ${parts}`,
      zones: test.zones,
      doses: [newDose(newId('dose'), lime.id, { rateFactor })],
    }),
  );
}
