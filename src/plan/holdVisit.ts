import type { Issue, Yard } from '../yard/types';
import { guideIssues } from './guides';
import { labelLimitIssues } from './limits';
import type { VisitFigures } from './types';

/**
 * Adds what is held over visits together: the label's limits, once for each product of the visit over all ground
 * it goes on, and the yard's caps for all that goes on a zone in one day.
 * @param own of `planVisit`
 * @param others other visits of `planVisit`, those of `visitsHeldWith` at least
 */
export function holdVisit(yard: Yard, own: VisitFigures, others: readonly VisitFigures[]): VisitFigures {
  const products = new Set(own.laid.map((dose) => dose.productId));
  const issues: readonly Issue[] = [
    ...[...products].flatMap((id) => labelLimitIssues(yard, own, others, id)),
    ...guideIssues(yard, own, others),
  ];
  return issues.length === 0 ? own : { ...own, issues: [...own.issues, ...issues] };
}
