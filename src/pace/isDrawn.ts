import type { Equipment } from '../yard/types';

/**
 * Whether product is drawn into the water on its way out: from the bottle of a hose-end sprayer, or by any sprayer whose
 * share of product was measured. What runs out is then the product itself, and its pace counts product alone; from a tank
 * without such a share what is mixed goes out as it is, and finished spray counts. One rule for pace, meaning and vessels.
 */
export function isDrawn({
  applicator,
  productShare,
}: Pick<Equipment, 'applicator' | 'productShare'>): boolean {
  return applicator === 'hose-end' || (applicator === 'tank-sprayer' && productShare !== null);
}
