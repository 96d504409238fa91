import type { VisitFigures } from '../plan/types';
import type { Issue, Yard } from '../yard/types';
import { capIssues } from './capIssues';
import { productName, visitIssue } from './issueWords';
import { ledgerEntries } from './ledgerEntries';
import { needsByZone } from './needsByZone';
import { overNeedIssues } from './overNeedIssues';
import { asksForDay, ruleIssues } from './ruleIssues';
import type { LedgerEntry, SeasonFigures } from './types';

/**
 * The ledger of the yard, and what speaks against it: caps of the year, need and spring hold, rules of the
 * place. Planned and done count together.
 * @param visits figures of every visit of the yard
 */
export function seasonFigures(yard: Yard, visits: readonly VisitFigures[]): SeasonFigures {
  const entries = ledgerEntries(visits);
  return {
    entries,
    issues: [
      ...ruleIssues(yard, entries),
      ...capIssues(yard, entries),
      ...overNeedIssues(yard, entries),
      ...dayIssues(yard, entries),
      ...useIssues(visits),
    ],
  };
}

/** `season-no-day` (note): visits without a day that caps of a year, holds or rules would be held against. */
function dayIssues(yard: Yard, entries: readonly LedgerEntry[]): readonly Issue[] {
  const needs = needsByZone(yard);
  const { caps } = yard;
  const isAsked = (entry: LedgerEntry): boolean => {
    const { N, P2O5, K2O } = entry.nutrientKgPerM2;
    const byCap =
      (caps.nPerYear !== null && N > 0) ||
      (caps.p2o5PerYear !== null && P2O5 > 0) ||
      (caps.k2oPerYear !== null && K2O > 0);
    return byCap || (N > 0 && needs.has(entry.zoneId)) || yard.rules.some((rule) => asksForDay(rule, entry));
  };
  const undated = entries.filter((entry) => entry.date === null && isAsked(entry));
  return [...new Set(undated.map((entry) => entry.visitId))].map((visitId) =>
    visitIssue(
      'season-no-day',
      'note',
      'This visit has no date, so caps of a year, the spring hold and rules with dates leave it out.',
      visitId,
    ),
  );
}

/** `use-no-density` (warning): a real amount in the other measure that no density turns round. */
function useIssues(visits: readonly VisitFigures[]): readonly Issue[] {
  return visits.flatMap(({ visit, laid }) =>
    laid
      .filter((dose) => dose.isUseUnread)
      .map((dose) => {
        const { doseId, productId } = dose;
        const isVolume = visit.doses.find(({ id }) => id === doseId)?.actual?.unit === 'L';
        const [told, other] = isVolume ? ['volume', 'weight'] : ['weight', 'volume'];
        return visitIssue(
          'use-no-density',
          'warning',
          `${productName(dose)}: what was really used is told by ${told}, and without a density it cannot be turned round; where it is counted by ${other} it counts as planned.`,
          visit.id,
          { doseId, productId },
        );
      }),
  );
}
