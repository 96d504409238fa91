import { labelMostFactor } from '../plan/largestDose';
import { productRate } from '../plan/rate';
import type { Product, Yard } from '../yard/types';
import { type GroundLaid, laidOfUse } from './programGround';

/**
 * The largest dose of a use beside what else lies on a zone that day, as a share of its label rate: what is left
 * of the label's most at once, of the yard's caps of one dose (N, soluble N, P2O5) and of the rules that are
 * on for one dose. Never less than 0; infinite where nothing holds it.
 * @param product as its use has it; @param others what other doses lay on the zone on that day
 */
export function roomOfDay(yard: Yard, product: Product, others: readonly GroundLaid[]): number {
  const own = laidOfUse(product, 1);
  const { rate } = productRate(product);
  if (own === null || rate === null) return 0;
  const sum = (of: (laid: GroundLaid) => number) => others.reduce((total, laid) => total + of(laid), 0);
  const { caps } = yard;
  const holds: [number | null, (laid: GroundLaid) => number][] = [
    [caps.totalNPerDose, (laid) => laid.N],
    [caps.solubleNPerDose, (laid) => laid.solubleN],
    [caps.p2o5PerDose, (laid) => laid.P2O5],
  ];
  for (const { isOn, terms } of yard.rules)
    if (isOn && terms.kind === 'cap' && terms.per === 'dose') {
      const { nutrient } = terms;
      const isSoluble = terms.isSolubleOnly && nutrient === 'N';
      holds.push([terms.maxKgPerM2, (laid) => (isSoluble ? laid.solubleN : laid[nutrient])]);
    }
  const rooms = holds.flatMap(([most, of]) =>
    most !== null && of(own) > 0 ? (most - sum(of)) / of(own) : [],
  );
  const label = labelMostFactor(product);
  if (label !== null) {
    const { unit, value } = rate.perM2;
    const same = others.filter((laid) => laid.productId === product.id);
    const laid = same.reduce((total, one) => total + ((unit === 'kg' ? one.kgPerM2 : one.lPerM2) ?? 0), 0);
    rooms.push(label - laid / value);
  }
  return Math.max(0, Math.min(Number.POSITIVE_INFINITY, ...rooms));
}
