import type { VisitFigures } from '../plan/types';
import type { Product, Yard } from '../yard/types';
import { planPurchase } from './planPurchase';
import { isInSpan, productNeeds } from './productNeeds';
import { shelfBefore } from './shelfBefore';
import type { BuySpan, ProductPurchase, SpokenFor } from './types';

/** What to buy of one product. */
export interface Purchase extends ProductPurchase {
  /** as on the shelf. */
  readonly product: Product;
  /** the same with what is left for the span on the shelf: what the purchase was worked out with. */
  readonly atHand: Product;
  /** what earlier visits still to do take first; null: nothing. */
  readonly spokenFor: SpokenFor | null;
}

/** What a span of visits is bought for. */
export interface SpanPurchase {
  readonly purchases: readonly Purchase[];
  /** visits of the span that are still to be done, in their order. */
  readonly visitIds: readonly string[];
  /** visits still to be done that have no day and are left out for it. */
  readonly undatedLeftOut: number;
  /** doses of the span that cannot be planned, and so are not bought for. */
  readonly unplanned: number;
}

/**
 * The purchase of every product that the visits of a span take, in the order in which they are needed. What
 * earlier visits still to do take comes off the shelf first.
 * @param visits figures of all visits of the yard
 */
export function purchasesOf(yard: Yard, visits: readonly VisitFigures[], span: BuySpan): SpanPurchase {
  const own = visits.filter(({ visit }) => isInSpan(visit, span));
  const purchases = productNeeds(own, span).flatMap((need): Purchase[] => {
    const product = yard.products.find((each) => each.id === need.productId);
    if (!product) return [];
    const shelf = shelfBefore(product, visits, span, need);
    return [{ product, ...shelf, ...planPurchase(shelf.atHand, need) }];
  });
  const toDo = visits.filter(({ visit }) => visit.doneOn === null && visit.date === null);
  return {
    purchases,
    visitIds: own.map(({ visit }) => visit.id),
    undatedLeftOut: span.visitId === null && !span.withUndated ? toDo.length : 0,
    unplanned: own.reduce((sum, { visit, doses }) => sum + visit.doses.length - doses.length, 0),
  };
}
