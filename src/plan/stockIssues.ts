import { formatAmount } from '../units/format';
import type { Amount, Issue, Pack, Product, Yard } from '../yard/types';
import { packsToDrawOn } from './applyUse';
import { RELATIVE_SLACK } from './containers';
import { convertAmount, isBulk } from './rate';
import type { DoseFigures } from './types';

/**
 * What the packs on hand that a use can draw on hold together, in one unit.
 * @param product as the use has it
 * @returns null when nothing is stated to be on hand (a count of 0 is no statement), or when a pack is in
 * the other measure and the density is not known
 */
export function stockOf(product: Product, unit: Amount['unit']): Amount | null {
  let value = 0;
  for (const pack of packsToDrawOn(product)) {
    const content = onHandOf(product, pack, unit);
    if (content === null) return null;
    value += content;
  }
  return value > 0 ? { unit, value } : null;
}

/** What is on hand of one pack size; null where the density is needed and not known. */
function onHandOf(product: Product, pack: Pack, unit: Amount['unit']): number | null {
  const count = product.onHand[pack.id] ?? 0;
  if (!(count > 0)) return 0;
  const content = convertAmount(pack.content, unit, product.densityKgPerL);
  return content && count * content.value;
}

/**
 * Notes `stock-none` at a dose of which nothing is on a shelf that states its stock, and `stock-short` at each dose that needs more than is on the shelf, less what the doses before it in
 * this visit take of the same packs. A dose takes first what no later dose of its product can use. Other
 * visits are not counted: what they use is known only when they are done.
 */
export function stockIssues(yard: Yard, visitId: string, doses: readonly DoseFigures[]): readonly Issue[] {
  /** by product and pack: litres or kilograms, as the doses that took it are measured, already spoken for. */
  const spoken = new Map<string, Amount>();
  return doses.flatMap(({ dose, product, amount }, index): Issue[] => {
    const { unit } = amount;
    const show = (value: number) => formatAmount({ unit, value }, yard.settings.units, isBulk(product));
    const stock = stockOf(product, unit);
    const packs = packsToDrawOn(product);
    const later = doses.slice(index + 1).filter((each) => each.product.id === product.id);
    const laterPacks = new Set(later.flatMap((each) => packsToDrawOn(each.product).map((pack) => pack.id)));
    const takenOf = (pack: Pack): number => {
      const taken = spoken.get(`${product.id} ${pack.id}`);
      return (taken && convertAmount(taken, unit, product.densityKgPerL)?.value) ?? 0;
    };
    const before = packs.reduce((sum, pack) => sum + takenOf(pack), 0);
    let need = amount.value;
    for (const pack of [...packs].sort(
      (a, b) => Number(laterPacks.has(a.id)) - Number(laterPacks.has(b.id)),
    )) {
      const taken = takenOf(pack);
      const free = Math.max(0, (onHandOf(product, pack, unit) ?? 0) - taken);
      const take = Math.min(free, need);
      need -= take;
      spoken.set(`${product.id} ${pack.id}`, { unit, value: taken + take });
    }
    const place = { visitId, doseId: dose.id, productId: product.id };
    const severity = 'note';
    if (isNoneLeft(yard, product)) {
      const isOther = product.packs.some((pack) => (product.onHand[pack.id] ?? 0) > 0);
      const what = isOther ? 'nothing that this use can draw on' : 'nothing of it';
      const message = `${product.name}: ${what} is on the shelf; this needs ${show(amount.value)}.`;
      return [{ code: 'stock-none', severity, message, place }];
    }
    if (stock === null || !(need > amount.value * RELATIVE_SLACK)) return [];
    const share = before < stock.value * (1 - RELATIVE_SLACK) ? `${show(before)} of it` : 'all of it';
    const earlier = before > 0 ? ` (${share} goes to earlier doses of this visit)` : '';
    const message = `${product.name}: on the shelf: ${show(stock.value)}${earlier}; this needs ${show(amount.value)}; short by ${show(need)}.`;
    return [{ code: 'stock-short', severity, message, place }];
  });
}

/** Whether the yard states what is on its shelf, of any product; else an empty count is no statement. */
export function statesStock({ products }: Pick<Yard, 'products'>): boolean {
  return products.some((product) => Object.values(product.onHand).some((count) => count > 0));
}

/** Whether nothing is on hand that the use can draw on, on a shelf that states what is. */
function isNoneLeft(yard: Yard, product: Product): boolean {
  return statesStock(yard) && packsToDrawOn(product).every((pack) => !((product.onHand[pack.id] ?? 0) > 0));
}
