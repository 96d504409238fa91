import type { Amount } from '../yard/types';
import type { SprayRate } from './sprayRate';
import type { ProductRate, TankLoads, TankMix } from './types';

/** A leftover smaller than this share of a load is rounding, not a load. */
const SLACK = 1e-9;

/**
 * Full loads and the exact last one, each with its mix.
 * @param rate product per m²; @param spray finished spray and water, L/m², total more than 0
 * @param tankL what the tank holds, L, more than 0; @param areaM2 area to treat, 0 or more
 */
export function tankLoads(rate: ProductRate, spray: SprayRate, tankL: number, areaM2: number): TankLoads {
  const totalL = spray.totalLPerM2 * areaM2;
  const fullLoads = Math.floor(totalL / tankL + SLACK);
  const restM2 = areaM2 - (fullLoads * tankL) / spray.totalLPerM2;
  const hasRest = restM2 * spray.totalLPerM2 > tankL * SLACK;
  return {
    tankL,
    totalL,
    fullLoads,
    full: fullLoads > 0 ? mixFor(rate, spray, tankL / spray.totalLPerM2) : null,
    last: hasRest ? mixFor(rate, spray, restM2) : null,
  };
}

function mixFor(rate: ProductRate, spray: SprayRate, areaM2: number): TankMix {
  const product: Amount = { unit: rate.perM2.unit, value: rate.perM2.value * areaM2 };
  return { product, waterL: spray.waterLPerM2 * areaM2, totalL: spray.totalLPerM2 * areaM2, areaM2 };
}
