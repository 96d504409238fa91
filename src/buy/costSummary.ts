import type { Purchase } from './purchases';
import type { PurchasePlan } from './types';
import { sizedPacks, useGroups } from './useGroups';

/** What a product costs over a span, in the yard's currency; null where a price is not known. */
export interface ProductCost {
  readonly productId: string;
  /** packs to buy. */
  readonly paid: number | null;
  /** what the visits take, from the shelf too, without what is left over. */
  readonly goesOut: number | null;
}

/** The same of all products; sums leave out what is not known. */
export interface CostSummary {
  readonly products: readonly ProductCost[];
  readonly paid: number;
  readonly goesOut: number;
  /** products of which one of the two is not known. */
  readonly unknown: number;
}

/**
 * What the purchase comes to and what of it goes out. What goes out counts at the price by the L or kg of
 * the packs bought; where none is, at the lowest of the packs that its uses can draw on.
 * @param taken each product with the plan taken for the order; null: it has none
 */
export function costSummary(
  taken: readonly { readonly purchase: Purchase; readonly plan: PurchasePlan | null }[],
): CostSummary {
  const products = taken.map(({ purchase, plan }): ProductCost => {
    const perUnit = plan && unitPrice(purchase, plan);
    return {
      productId: purchase.product.id,
      paid: plan?.cost ?? null,
      goesOut: perUnit === null ? null : perUnit * purchase.needed,
    };
  });
  const sum = (of: (cost: ProductCost) => number | null) =>
    products.reduce((so, each) => so + (of(each) ?? 0), 0);
  return {
    products,
    paid: sum((each) => each.paid),
    goesOut: sum((each) => each.goesOut),
    unknown: products.filter(({ paid, goesOut }) => paid === null || goesOut === null).length,
  };
}

/** Price of a L or kg; null when it is not known. */
function unitPrice({ product, need }: Purchase, plan: PurchasePlan): number | null {
  if (plan.bought > 0) return plan.cost === null ? null : plan.cost / plan.bought;
  const packs = sizedPacks(product, need.unit);
  const usable = new Set(useGroups(product, need.lines, packs).flatMap((group) => group.packs));
  const prices = packs.flatMap(({ pack, content }, i) =>
    usable.has(i) && pack.price !== null ? [pack.price / content] : [],
  );
  return prices.length > 0 ? Math.min(...prices) : null;
}
