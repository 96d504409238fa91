import type { Product } from '../yard/types';
import { packsOfUse } from './applyUse';
import { wholePacks } from './containers';
import { convertAmount } from './rate';
import { stockLess, takeFromStock } from './takeFromStock';
import type { DoseFigures, VisitFigures } from './types';
import { visitsByDay } from './visitsByDay';

/** What is on hand of a product when a dose's turn comes, in packs by pack id. */
export interface StockAtDose {
  readonly onHand: Product['onHand'];
  /** true: a visit before this one, still to do, takes some of it. */
  readonly isAfterVisits: boolean;
}

/**
 * What is on hand when a dose's turn comes: what is on the shelf, less what visits still to do before it and
 * doses before it in its own visit take of the product. Where that is more than there is, a new pack is
 * opened and what is left of it stays, if the use opens one size; of several nobody knows which will be bought.
 * @param visits figures of all visits of the yard
 */
export function stockAtDose(
  visits: readonly VisitFigures[],
  visitId: string,
  { dose, product }: DoseFigures,
): StockAtDose {
  const order = visitsByDay(visits.map(({ visit }) => visit)).map(({ id }) => id);
  const before = order.slice(0, Math.max(0, order.indexOf(visitId)));
  let onHand = product.onHand;
  let isAfterVisits = false;
  for (const id of [...before, visitId]) {
    const figures = visits.find(({ visit }) => visit.id === id);
    if (!figures || figures.visit.doneOn !== null) continue;
    for (const each of figures.doses) {
      if (each.dose.id === dose.id && id === visitId) break;
      if (each.product.id !== product.id) continue;
      onHand = afterDose(onHand, each);
      if (id !== visitId) isAfterVisits = true;
    }
  }
  return { onHand, isAfterVisits };
}

function afterDose(onHand: Product['onHand'], { product, amount }: DoseFigures): Product['onHand'] {
  const { taken, short } = takeFromStock({ ...product, onHand }, amount);
  const left = stockLess(onHand, taken);
  const [pack, another] = packsOfUse(product);
  if (!pack || another || !(short.value > 0)) return left;
  const need = convertAmount(short, pack.content.unit, product.densityKgPerL);
  if (!need || !(pack.content.value > 0)) return left;
  const exact = need.value / pack.content.value;
  return stockLess(left, { [pack.id]: wholePacks(exact) - exact }, -1);
}
