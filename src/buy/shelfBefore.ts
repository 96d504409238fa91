import { convertAmount } from '../plan/rate';
import { stockLess, takeFromStock } from '../plan/takeFromStock';
import type { VisitFigures } from '../plan/types';
import { visitsByDay } from '../plan/visitsByDay';
import type { Product } from '../yard/types';
import { isInSpan } from './productNeeds';
import type { BuySpan, ProductNeed, SpokenFor } from './types';
import { usableOnShelf } from './useGroups';

/** A product with what is left of it on the shelf for a span, and what was taken off before. */
export interface ShelfForSpan {
  readonly atHand: Product;
  /** null: no visit before the span takes any. */
  readonly spokenFor: SpokenFor | null;
}

/**
 * What of the shelf a span can draw on: visits still to do before its first visit that takes the product draw
 * first, dose by dose as `takeFromStock` does. What they lack is not bought here, so nothing of it is left over
 * for the span either.
 * @param visits figures of all visits of the yard
 */
export function shelfBefore(
  product: Product,
  visits: readonly VisitFigures[],
  span: BuySpan,
  need: ProductNeed,
): ShelfForSpan {
  let { onHand } = product;
  let short = 0;
  let isTaken = false;
  for (const figures of visitsBefore(visits, span, need)) {
    for (const dose of figures.doses) {
      if (dose.product.id !== product.id || !(dose.amount.value > 0)) continue;
      const drawn = takeFromStock({ ...dose.product, onHand }, dose.amount);
      onHand = stockLess(onHand, drawn.taken);
      short += convertAmount(drawn.short, need.unit, product.densityKgPerL)?.value ?? 0;
      isTaken = true;
    }
  }
  if (!isTaken) return { atHand: product, spokenFor: null };
  const atHand = { ...product, onHand };
  const amount = Math.max(0, usableOnShelf(product, need) - usableOnShelf(atHand, need));
  const first = need.lines[0]?.date ?? null;
  const before = span.visitId === null ? (span.from ?? first) : first;
  return { atHand, spokenFor: { amount, short, before } };
}

/** Visits still to do, not of the span, that come before its first with this product; by day. */
function visitsBefore(
  visits: readonly VisitFigures[],
  span: BuySpan,
  { lines }: ProductNeed,
): readonly VisitFigures[] {
  const byId = new Map(visits.map((figures) => [figures.visit.id, figures]));
  const toDo = visitsByDay(visits.map(({ visit }) => visit)).filter(({ doneOn }) => doneOn === null);
  const first = toDo.findIndex(({ id }) => lines.some((line) => line.visitId === id));
  return toDo
    .slice(0, Math.max(0, first))
    .flatMap((visit) => (isInSpan(visit, span) ? [] : (byId.get(visit.id) ?? [])));
}
