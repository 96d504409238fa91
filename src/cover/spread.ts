import type { Equipment, Product } from '../yard/types';

/**
 * What a guard or deflector leaves of the distance where it was not measured; common practice, no source.
 * City codes let a deflector come to 3 ft of water where a spreader without one must keep 10 ft (such as
 * Boynton Beach, Ordinance 19-019), a share of 0.3 of a setback.
 */
export const GUARDED_SHARE = 0.25;

/**
 * How far beyond the edge that it is aimed at product lands, m: as the equipment was measured, else as the
 * label's use has it. With the guard down what was measured so, or a quarter of it; never more than without.
 * Equipment without a guard spreads as ever.
 * @param product as the dose's use has it (see `applyUse`)
 * @returns 0 or more
 */
export function spreadOf(product: Product, equipment: Equipment, isGuarded: boolean): number {
  const openM = equipment.spreadDistanceM ?? product.spreadDistanceM;
  if (!isGuarded || !equipment.hasEdgeGuard) return openM;
  return Math.min(openM, equipment.guardedSpreadM ?? GUARDED_SHARE * openM);
}
