import { convertAmount, nutrientPct } from '../plan/rate';
import { type Amount, NUTRIENTS, type Nutrient, type Pack, type Product } from '../yard/types';
import type { UnitCosts } from './types';

/**
 * What a pack's price comes to for each unit of product and each kg of nutrient in it: price / (content ·
 * percent / 100), P and K by the oxide convention. Each nutrient bears the whole price by itself, as in
 * USGA Green Section Record 60(05), 2022 (urea 46-0-0 at $50 for 50 lb: $2.17 a lb of N).
 * @returns null when the pack has no price or holds nothing
 */
export function unitCostsOfPack(product: Product, pack: Pack): UnitCosts | null {
  if (pack.price === null || !(pack.content.value > 0)) return null;
  return unitCosts(product, pack.price, pack.content);
}

/** The same of a sum paid for an amount of product, L or kg; null when nothing is bought. */
export function unitCosts(product: Product, paid: number, amount: Amount): UnitCosts | null {
  if (!(amount.value > 0)) return null;
  const massKg = convertAmount(amount, 'kg', product.densityKgPerL)?.value ?? null;
  const of = (nutrient: Nutrient) => {
    const pct = nutrientPct(product, nutrient);
    return massKg !== null && pct > 0 ? paid / (massKg * (pct / 100)) : null;
  };
  const perKg = Object.fromEntries(NUTRIENTS.map((each) => [each, of(each)])) as UnitCosts['perKg'];
  return { perUnit: paid / amount.value, perKg };
}
