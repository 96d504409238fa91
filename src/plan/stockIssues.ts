import { formatAmount } from '../units/format';
import type { Amount, Issue, Product, Yard } from '../yard/types';
import { convertAmount, isBulk } from './rate';
import type { DoseFigures } from './types';

/** A lack smaller than this share of the need is rounding: the same slack as in counting packs. */
const RELATIVE_SLACK = 3e-7;

/**
 * What the packs on hand hold together, in one unit.
 * @returns null when nothing is stated to be on hand (a count of 0 is no statement), or when a pack is in
 * the other measure and the density is not known
 */
export function stockOf(product: Product, unit: Amount['unit']): Amount | null {
  let value = 0;
  for (const pack of product.packs) {
    const count = product.onHand[pack.id] ?? 0;
    if (!(count > 0)) continue;
    const content = convertAmount(pack.content, unit, product.densityKgPerL);
    if (content === null) return null;
    value += count * content.value;
  }
  return value > 0 ? { unit, value } : null;
}

/**
 * Notes `stock-short` at each dose that needs more than is on the shelf, less what the doses before it in
 * this visit take of the same product. Other visits are not counted: what they use is known only when they are done.
 */
export function stockIssues(yard: Yard, visitId: string, doses: readonly DoseFigures[]): readonly Issue[] {
  const taken = new Map<string, number>();
  return doses.flatMap(({ dose, product, amount }): Issue[] => {
    const before = taken.get(product.id) ?? 0;
    taken.set(product.id, before + amount.value);
    const stock = stockOf(product, amount.unit);
    if (stock === null) return [];
    const short = amount.value - Math.max(0, stock.value - before);
    if (!(short > amount.value * RELATIVE_SLACK)) return [];
    const show = (value: number) =>
      formatAmount({ unit: amount.unit, value }, yard.settings.units, isBulk(product));
    const share = before < stock.value ? `${show(before)} of it` : 'all of it';
    const earlier = before > 0 ? ` (${share} goes to earlier doses of this visit)` : '';
    const message = `${product.name}: on the shelf: ${show(stock.value)}${earlier}; this needs ${show(amount.value)}; short by ${show(short)}.`;
    const place = { visitId, doseId: dose.id, productId: product.id };
    return [{ code: 'stock-short', severity: 'note', message, place }];
  });
}
