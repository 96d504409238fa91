import { replaceProduct } from '../yard/edits';
import type { Product, Yard } from '../yard/types';
import type { BuyGoal, ProductPurchase, PurchasePlan } from './types';

/** One line of an order: packs of one size of one product. */
export interface OrderLine {
  readonly productId: string;
  readonly packId: string;
  readonly count: number;
  /** price of one; null when not known. */
  readonly price: number | null;
  /** have it by this day (YYYY-MM-DD); null where visits have no days. */
  readonly by: string | null;
  /** true: a later order, since what is bought now would not keep. */
  readonly isLater: boolean;
}

/** What is ordered, and what it comes to in the yard's currency. */
export interface OrderList {
  readonly lines: readonly OrderLine[];
  readonly packs: number;
  /** of the lines with a price. */
  readonly total: number;
  /** lines without a price. */
  readonly unpriced: number;
}

/** The plan taken for the order: the one chosen, else least cost, else least left over. */
export function takenPlan(
  { plans }: Pick<ProductPurchase, 'plans'>,
  goal: BuyGoal | undefined,
): PurchasePlan | null {
  return (goal && plans[goal]) ?? plans.cost ?? plans.left ?? plans.packs;
}

/** The order that the plans taken come to, in the order of the products and of the days. */
export function orderList(
  products: readonly Product[],
  taken: readonly { readonly productId: string; readonly plan: PurchasePlan }[],
): OrderList {
  const lines = taken.flatMap(({ productId, plan }) => {
    const packs = products.find((product) => product.id === productId)?.packs ?? [];
    const first = plan.orders[0]?.by ?? null;
    return plan.orders.flatMap(({ by, packs: counts }) =>
      counts.map(({ packId, count }): OrderLine => {
        const price = packs.find((pack) => pack.id === packId)?.price ?? null;
        return { productId, packId, count, price, by, isLater: by !== first };
      }),
    );
  });
  return {
    lines,
    packs: lines.reduce((sum, line) => sum + line.count, 0),
    total: lines.reduce((sum, line) => sum + line.count * (line.price ?? 0), 0),
    unpriced: lines.filter((line) => line.price === null).length,
  };
}

/** Adds the packs of an order to what is on hand. Lines whose product or pack is gone are passed over. */
export function shelveOrder(yard: Yard, lines: readonly OrderLine[]): Yard {
  return lines.reduce((now, { productId, packId, count }) => {
    const product = now.products.find((each) => each.id === productId);
    if (!product?.packs.some((pack) => pack.id === packId)) return now;
    const onHand = { ...product.onHand, [packId]: (product.onHand[packId] ?? 0) + count };
    return replaceProduct(now, { ...product, onHand });
  }, yard);
}
