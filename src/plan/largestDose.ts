import type { NutrientCaps, Product } from '../yard/types';
import { nutrientRates, solubleNitrogen } from './nutrients';
import { convertAmount, productRate } from './rate';

/** What holds a dose down; `asked`: nothing does. */
export type DoseHold = 'asked' | 'label-most' | 'total-n-cap' | 'soluble-n-cap' | 'p2o5-cap';

/** The largest dose of a use that nothing speaks against, as a share of its label rate. */
export interface LargestDose {
  readonly factor: number;
  readonly hold: DoseHold;
}

/** The label's most at once as a share of its rate; null where it gives none, or none that can be read. */
export function labelMostFactor(product: Product): number | null {
  const { rate } = productRate(product);
  const { maxPerDose } = product.limits;
  const most = rate && maxPerDose && convertAmount(maxPerDose, rate.perM2.unit, product.densityKgPerL);
  return most ? most.value / rate.perM2.value : null;
}

/**
 * The largest single dose up to what is asked for, held to the label's most at once and to the caps of
 * total N, soluble N and P2O5 per dose.
 * @param product as its use has it; @param asked times the label rate, 0 or more, may be infinite
 * @returns null when rate or nutrients cannot be told (no density)
 */
export function largestDose(product: Product, caps: NutrientCaps, asked: number): LargestDose | null {
  const { rate } = productRate(product);
  const nutrients = rate && nutrientRates(product, rate);
  if (!nutrients) return null;
  const share = (cap: number | null, laid: number) => (cap !== null && laid > 0 ? cap / laid : null);
  const holds: readonly (readonly [DoseHold, number | null])[] = [
    ['label-most', labelMostFactor(product)],
    ['total-n-cap', share(caps.totalNPerDose, nutrients.N)],
    ['soluble-n-cap', share(caps.solubleNPerDose, solubleNitrogen(product, nutrients.N))],
    ['p2o5-cap', share(caps.p2o5PerDose, nutrients.P2O5)],
  ];
  return holds.reduce<LargestDose>(
    (best, [hold, factor]) => (factor !== null && factor < best.factor ? { factor, hold } : best),
    { factor: asked, hold: 'asked' },
  );
}
