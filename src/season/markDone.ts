import { applyUse } from '../plan/applyUse';
import { doneRecord } from '../plan/laidDose';
import { stockLess, takeFromStock } from '../plan/takeFromStock';
import type { VisitFigures } from '../plan/types';
import { replaceProduct, replaceVisit } from '../yard/edits';
import type { Amount, Visit, VisitDose, Yard } from '../yard/types';

const NOTHING_USED: Amount = { unit: 'kg', value: 0 };

/**
 * Marks a visit done. Each dose keeps a record of what it was laid down by: what becomes of the label, the zones
 * or the plan later does not change it. With `fromShelf` the product of each dose (what was really used, else the plan) is taken
 * off what is on hand, opened packs first; each dose keeps what it took, so that it can be put back.
 * @param doneOn YYYY-MM-DD
 * Of a visit that is done already the doses without a record get one.
 * @param figures of this visit, as planned; a dose that the plan leaves out (refused, or not to be planned) counts as not put down
 * @returns the very yard when there is no such visit
 */
export function markDone(yard: Yard, figures: VisitFigures, doneOn: string, fromShelf: boolean): Yard {
  const visit = visitOf(yard, figures.visit.id);
  if (visit === undefined) return yard;
  let next = yard;
  const doses = visit.doses.map((each) => {
    const isPlanned = figures.doses.some(({ dose }) => dose.id === each.id);
    const laid = each.laid ?? recordIn(figures, each);
    const dose = { ...each, laid, actual: isPlanned || laid ? each.actual : (each.actual ?? NOTHING_USED) };
    if (!fromShelf || dose.taken !== null) return dose;
    const [after, taken] = takeOff(next, dose, usedAmount(dose, figures));
    next = after;
    return { ...dose, taken };
  });
  return replaceVisit(next, { ...visit, doneOn, doses });
}

/** Sets what was really used; null: as planned. A dose that took from the shelf puts it back and takes that instead. */
export function changeActual(yard: Yard, figures: VisitFigures, doseId: string, actual: Amount | null): Yard {
  const visit = visitOf(yard, figures.visit.id);
  const before = visit?.doses.find((dose) => dose.id === doseId);
  if (visit === undefined || before === undefined) return yard;
  const laid = visit.doneOn === null ? before.laid : (before.laid ?? recordIn(figures, before));
  const changed: VisitDose = { ...before, actual, laid };
  const [after, taken] =
    before.taken === null
      ? [yard, null]
      : takeOff(putBack(yard, before), changed, usedAmount(changed, figures));
  const doses = visit.doses.map((dose) => (dose.id === doseId ? { ...changed, taken } : dose));
  return replaceVisit(after, { ...visit, doses });
}

/**
 * Puts on record every done dose of a product that has no record yet, as when the product is to leave the shelf.
 * @param figuresOf figures of a visit by today's plan; null where there are none
 */
export function recordAll(
  yard: Yard,
  figuresOf: (visitId: string) => VisitFigures | null,
  productId: string,
): Yard {
  return yard.visits.reduce((next, visit) => {
    const isBare = visit.doses.some((dose) => dose.productId === productId && dose.laid === null);
    const figures = visit.doneOn !== null && isBare ? figuresOf(visit.id) : null;
    if (figures === null || visit.doneOn === null) return next;
    return markDone(next, figures, visit.doneOn, false);
  }, yard);
}

/** Takes the mark off: planned again, what was taken is back on the shelf, and no real amounts and records are kept. */
export function unmarkDone(yard: Yard, visitId: string): Yard {
  const visit = visitOf(yard, visitId);
  if (visit === undefined || visit.doneOn === null) return yard;
  const next = visit.doses.reduce(putBack, yard);
  const doses = visit.doses.map((dose) => ({ ...dose, actual: null, taken: null, laid: null }));
  return replaceVisit(next, { ...visit, doneOn: null, doses });
}

/** What a dose used: the real amount, else the planned one, as recorded where it is done; null when neither is known. */
export function usedAmount(dose: VisitDose, figures: VisitFigures): Amount | null {
  return dose.actual ?? dose.laid?.planned ?? recordIn(figures, dose)?.planned ?? null;
}

function recordIn(figures: VisitFigures, { id }: VisitDose): VisitDose['laid'] {
  const own = figures.doses.find((each) => each.dose.id === id);
  return own ? doneRecord(own) : null;
}

function visitOf(yard: Yard, visitId: string): Visit | undefined {
  return yard.visits.find((visit) => visit.id === visitId);
}

function takeOff(yard: Yard, dose: VisitDose, amount: Amount | null): readonly [Yard, VisitDose['taken']] {
  const product = yard.products.find((each) => each.id === dose.productId);
  const asUsed = product && applyUse(product, dose.useId);
  if (!product || !asUsed || amount === null) return [yard, {}];
  const { taken } = takeFromStock(asUsed, amount);
  const onHand = stockLess(product.onHand, taken);
  return [replaceProduct(yard, { ...product, onHand }), taken];
}

function putBack(yard: Yard, { productId, taken }: VisitDose): Yard {
  const product = yard.products.find((each) => each.id === productId);
  if (!product || taken === null) return yard;
  return replaceProduct(yard, { ...product, onHand: stockLess(product.onHand, taken, -1) });
}
