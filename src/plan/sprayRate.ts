import type { Applicator, Product } from '../yard/types';
import { isLiquid } from './rate';
import type { ProductRate } from './types';

/** Finished spray and the water in it, L/m². */
export interface SprayRate {
  readonly totalLPerM2: number;
  readonly waterLPerM2: number;
}

/** Applicators that mix no water in: a hose-end bottle draws its own, a spreader takes none. */
const WITHOUT_CARRIER: readonly Applicator[] = ['hose-end', 'broadcast-spreader', 'drop-spreader'];

/**
 * Volume the product itself takes up in the spray, L/m²: of a liquid however it is packed, where its
 * density is known or it is measured by volume; of anything else only when it is measured by volume.
 * What is weighed out and no liquid is taken to add no volume when dissolved (common practice, no source).
 */
export function productVolume(product: Product, rate: ProductRate): number {
  if (isLiquid(product)) return rate.lPerM2 ?? 0;
  return rate.perM2.unit === 'L' ? rate.perM2.value : 0;
}

/** True for what goes out wet by its use: what is poured, or mixed with water, or put out by a sprayer. */
export function isSprayed(product: Product): boolean {
  const { applicator, carrierLPerM2, rate } = product;
  if (isLiquid(product)) return true;
  if (rate.basis === 'depth') return false;
  return applicator === null
    ? carrierLPerM2 !== null && carrierLPerM2 > 0
    : applicator === 'tank-sprayer' || applicator === 'hose-end';
}

/**
 * Spray per m²: the carrier figure is the whole spray (product included) or the water added to it, as
 * the label has it.
 * @param product as its use has it
 * @returns null when the use mixes no carrier in: none is given, or a hose-end bottle or a spreader puts it out
 */
export function sprayRate(product: Product, rate: ProductRate): SprayRate | null {
  const { carrierLPerM2, applicator } = product;
  if (carrierLPerM2 === null || !(carrierLPerM2 > 0)) return null;
  if (applicator !== null && WITHOUT_CARRIER.includes(applicator)) return null;
  const productLPerM2 = productVolume(product, rate);
  return product.carrierIsTotal
    ? {
        totalLPerM2: Math.max(carrierLPerM2, productLPerM2),
        waterLPerM2: Math.max(0, carrierLPerM2 - productLPerM2),
      }
    : { totalLPerM2: carrierLPerM2 + productLPerM2, waterLPerM2: carrierLPerM2 };
}
