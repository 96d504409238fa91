import { laidRates } from '../plan/laidRates';
import type { VisitFigures } from '../plan/types';
import type { LedgerEntry } from './types';

/**
 * What the doses of all visits lay on each zone, kg/m². A dose that is done counts by what was really used,
 * spread over its zones by area, whichever measure it was told in; doses of unknown density or on no ground
 * are left out (they carry an issue of their own).
 */
export function ledgerEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return entriesOf(visits, true);
}

/** What the doses of all visits were to lay down by the plan, done or not: each on its planned day, none done. */
export function plannedEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return entriesOf(visits, false);
}

function entriesOf(visits: readonly VisitFigures[], isReal: boolean): readonly LedgerEntry[] {
  return visits.flatMap(({ visit, doses }) =>
    doses.flatMap((figures) => {
      const isDone = isReal && visit.doneOn !== null;
      const rates = laidRates(figures, isDone);
      if (rates === null) return [];
      const { id: doseId, productId } = figures.dose;
      const date = isReal ? (visit.doneOn ?? visit.date) : (visit.date ?? visit.doneOn);
      return figures.zones.flatMap(({ zoneId, areaM2 }): LedgerEntry | [] =>
        areaM2 > 0 ? { visitId: visit.id, doseId, productId, zoneId, date, isDone, areaM2, ...rates } : [],
      );
    }),
  );
}
