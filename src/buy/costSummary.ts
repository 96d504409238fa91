import type { Purchase } from './purchases';
import type { PurchasePlan } from './types';
import { sizedPacks } from './useGroups';

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
 * What the purchase comes to and what of it goes out: of each container drawn on, bought or from the
 * shelf, the part that is taken at the price of its pack.
 * @param taken each product with the plan taken for the order; null: it has none
 */
export function costSummary(
  taken: readonly {
    readonly purchase: Pick<Purchase, 'product' | 'need'>;
    readonly plan: PurchasePlan | null;
  }[],
): CostSummary {
  const products = taken.map(({ purchase, plan }): ProductCost => {
    const goesOut = plan && priceOfDraws(purchase, plan);
    return { productId: purchase.product.id, paid: plan?.cost ?? null, goesOut };
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

/** null when a pack that is drawn on has no price. */
function priceOfDraws(
  { product, need }: Pick<Purchase, 'product' | 'need'>,
  plan: PurchasePlan,
): number | null {
  const packs = sizedPacks(product, need.unit);
  const prices = new Map(
    packs.map(({ pack, content }) => [pack.id, pack.price === null ? null : pack.price / content]),
  );
  let sum = 0;
  for (const { packId, taken } of plan.openings.flatMap((opening) => opening.draws)) {
    const price = prices.get(packId) ?? null;
    if (price === null) return null;
    sum += price * taken;
  }
  return sum;
}
