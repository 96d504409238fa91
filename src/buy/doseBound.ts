import { nutrientRates, solubleNitrogen } from '../plan/nutrients';
import { convertAmount, productRate } from '../plan/rate';
import type { NutrientCaps, Product } from '../yard/types';
import type { CompareDose, DoseBound } from './compareTypes';

/** The largest dose of a use that nothing speaks against, as a share of its label rate. */
export interface LargestDose {
  readonly factor: number;
  readonly bound: DoseBound;
}

/**
 * The largest single dose: the label rate, or the label's most at once, held to the caps of total N,
 * soluble N and P2O5 per dose. The label's most holds in either case.
 * @param product as its use has it; its label rate must be one that `productRate` can read
 * @returns null when rate or nutrients cannot be told (no density)
 */
export function largestDose(product: Product, dose: CompareDose, caps: NutrientCaps): LargestDose | null {
  const { rate } = productRate(product);
  const nutrients = rate && nutrientRates(product, rate);
  if (!rate || !nutrients) return null;
  const { maxPerDose } = product.limits;
  const most = maxPerDose && convertAmount(maxPerDose, rate.perM2.unit, product.densityKgPerL);
  const labelMost = most ? most.value / rate.perM2.value : null;
  let best: LargestDose =
    dose === 'label-most' && labelMost !== null
      ? { factor: labelMost, bound: 'label-most' }
      : { factor: 1, bound: 'label-rate' };
  const hold = (factor: number | null, bound: DoseBound) => {
    if (factor !== null && factor < best.factor) best = { factor, bound };
  };
  const share = (cap: number | null, laid: number) => (cap !== null && laid > 0 ? cap / laid : null);
  hold(labelMost, 'label-most');
  hold(share(caps.totalNPerDose, nutrients.N), 'total-n-cap');
  hold(share(caps.solubleNPerDose, solubleNitrogen(product, nutrients.N)), 'soluble-n-cap');
  hold(share(caps.p2o5PerDose, nutrients.P2O5), 'p2o5-cap');
  return best;
}
