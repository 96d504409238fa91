import type { Amount, Product } from '../yard/types';
import { convertAmount } from './rate';
import type { ProductRate, TankLoads, TankMix } from './types';

/** A leftover smaller than this share of a load is rounding, not a load. */
const SLACK = 1e-9;

/** Finished spray and the water in it, L/m². */
export interface SprayRate {
  readonly totalLPerM2: number;
  readonly waterLPerM2: number;
}

/**
 * Spray per m²: the carrier figure is the whole spray (product included) or the water added to it, as
 * the label has it. Product sold by mass is taken to add no volume when dissolved.
 * @returns null when the product takes no carrier
 */
export function sprayRate(product: Product, rate: ProductRate): SprayRate | null {
  const { carrierLPerM2 } = product;
  if (carrierLPerM2 === null || !(carrierLPerM2 > 0)) return null;
  const productLPerM2 = rate.perM2.unit === 'L' ? rate.perM2.value : 0;
  return product.carrierIsTotal
    ? {
        totalLPerM2: Math.max(carrierLPerM2, productLPerM2),
        waterLPerM2: Math.max(0, carrierLPerM2 - productLPerM2),
      }
    : { totalLPerM2: carrierLPerM2 + productLPerM2, waterLPerM2: carrierLPerM2 };
}

/**
 * Full loads and the exact last one, each with its mix.
 * @param tankL what the tank holds, more than 0; @param areaM2 area to treat, 0 or more
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

/** A load's product in the other reading, for a mix card that offers both; null without a density. */
export function mixProductAs(
  mix: TankMix,
  unit: Amount['unit'],
  densityKgPerL: number | null,
): Amount | null {
  return convertAmount(mix.product, unit, densityKgPerL);
}
