import { USUAL_SWATH_M } from '../yard/defaults';
import type { Applicator, Equipment, Product } from '../yard/types';

/**
 * How far product lands beyond the aimed edge where neither equipment nor label says, as a share of the
 * swath. Broadcast: the edge of the effective swath lies where half of the middle's rate falls (Ohio State
 * University Extension Bulletin 817); a pattern that falls off evenly from its middle then ends half a swath
 * further. The others are common practice, no source.
 */
const USUAL_SHARE: Readonly<Record<Applicator, number>> = {
  'hose-end': 0.5,
  'tank-sprayer': 0.25,
  'broadcast-spreader': 0.5,
  'drop-spreader': 0.1,
  'by-hand': 0.5,
};

/**
 * What a guard or deflector leaves of the distance where it was not measured; common practice, no source.
 * City codes let a deflector come to 3 ft of water where a spreader without one must keep 10 ft (such as
 * Boynton Beach, Ordinance 19-019), a share of 0.3 of a setback.
 */
export const GUARDED_SHARE = 0.25;

/**
 * How far beyond the edge that it is aimed at an applicator throws where nothing else is known, m.
 * @param swathM of the equipment, m; absent: a usual one
 */
export function usualSpreadM(applicator: Applicator, swathM = USUAL_SWATH_M[applicator]): number {
  return USUAL_SHARE[applicator] * swathM;
}

/**
 * How far beyond the edge that it is aimed at product lands, m: as the equipment was measured, else as the
 * label's use has it, else what is usual with that applicator. With the guard down what was measured so, or
 * a quarter of it; never more than without. Equipment without a guard spreads as ever.
 * @param product as the dose's use has it (see `applyUse`)
 * @returns 0 or more
 */
export function spreadOf(product: Product, equipment: Equipment, isGuarded: boolean): number {
  const openM = firstDistance(
    equipment.spreadDistanceM,
    product.spreadDistanceM,
    usualSpreadM(equipment.applicator, equipment.swathM),
  );
  if (!isGuarded || !equipment.hasEdgeGuard) return openM;
  return Math.min(openM, firstDistance(equipment.guardedSpreadM, GUARDED_SHARE * openM));
}

function firstDistance(...distancesM: readonly (number | null)[]): number {
  for (const distanceM of distancesM)
    if (distanceM !== null && Number.isFinite(distanceM) && distanceM >= 0) return distanceM;
  return 0;
}
