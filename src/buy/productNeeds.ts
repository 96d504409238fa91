import { convertAmount } from '../plan/rate';
import type { VisitFigures } from '../plan/types';
import { dayNumber } from '../yard/calendar';
import type { Visit } from '../yard/types';
import type { BuySpan, NeedLine, ProductNeed } from './types';

/**
 * What the visits of a span take of each product, in the order in which products are first needed; within
 * a product by day, visits without a day last. Visits that are done and doses on no ground are left out.
 * Amounts are L or kg as the product is measured out (that of its first dose where uses differ).
 */
export function productNeeds(visits: readonly VisitFigures[], span: BuySpan): readonly ProductNeed[] {
  const needs = new Map<string, { unit: ProductNeed['unit']; lines: NeedLine[]; unreadDoseIds: string[] }>();
  for (const { visit, doses } of inOrder(visits.filter((each) => isInSpan(each.visit, span)))) {
    for (const { dose, product, amount, areaM2, areaSigmaM2 } of doses) {
      if (!(amount.value > 0)) continue;
      const need = needs.get(product.id) ?? { unit: amount.unit, lines: [], unreadDoseIds: [] };
      needs.set(product.id, need);
      const own = convertAmount(amount, need.unit, product.densityKgPerL);
      if (own === null) {
        need.unreadDoseIds.push(dose.id);
        continue;
      }
      const { id: doseId, useId } = dose;
      const at = { visitId: visit.id, doseId, useId, date: visit.date };
      need.lines.push({ ...at, amount: own.value, areaM2, areaSigmaM2 });
    }
  }
  return [...needs].map(([productId, need]) => ({ productId, ...need }));
}

/** Whether a visit that is still to be done lies in the span. */
export function isInSpan(visit: Visit, span: BuySpan): boolean {
  if (visit.doneOn !== null) return false;
  if (span.visitId !== null) return visit.id === span.visitId;
  if (dayNumber(visit.date) === null || visit.date === null) return span.withUndated;
  return (span.from === null || visit.date >= span.from) && (span.to === null || visit.date <= span.to);
}

/** By day; those without one after the others, in the order they came. */
function inOrder(visits: readonly VisitFigures[]): readonly VisitFigures[] {
  const day = ({ visit }: VisitFigures) => dayNumber(visit.date) ?? Number.POSITIVE_INFINITY;
  return visits.toSorted((a, b) => (day(a) === day(b) ? 0 : day(a) - day(b)));
}
