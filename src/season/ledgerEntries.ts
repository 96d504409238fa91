import { dateOfVisit } from '../plan/heldWith';
import { laidDose } from '../plan/laidDose';
import type { LaidDose, VisitFigures } from '../plan/types';
import type { Visit } from '../yard/types';
import type { LedgerEntry } from './types';

const kept = new WeakMap<readonly LaidDose[], readonly LedgerEntry[]>();

/**
 * What the doses of all visits lay on each zone, kg/m². A dose that is done counts by its record and what was
 * really used, spread over its zones by area, whichever measure it was told in; doses of unknown density or on
 * no ground are left out (they carry an issue of their own). Worked out once for each visit's doses.
 */
export function ledgerEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return visits.flatMap(({ visit, laid }) => {
    const known = kept.get(laid);
    if (known) return known;
    const made = entriesOf(visit, laid, dateOfVisit(visit), visit.doneOn !== null);
    kept.set(laid, made);
    return made;
  });
}

/** What the doses of all visits were to lay down by the plan, done or not: each on its planned day, none done. */
export function plannedEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return visits.flatMap(({ visit, doses }) => {
    const planned = visit.doses.flatMap((dose) => {
      const figures = doses.find((each) => each.dose.id === dose.id) ?? null;
      return laidDose(visit, dose, figures, false) ?? [];
    });
    return entriesOf(visit, planned, visit.date ?? visit.doneOn, false);
  });
}

function entriesOf(
  { id: visitId }: Visit,
  laid: readonly LaidDose[],
  date: string | null,
  isDone: boolean,
): readonly LedgerEntry[] {
  return laid.flatMap(({ doseId, productId, productName, zones, rates, isSilentOnSlow }) =>
    rates === null
      ? []
      : zones.map(
          ({ zoneId, name: zoneName, areaM2 }): LedgerEntry => ({
            visitId,
            doseId,
            productId,
            productName,
            zoneId,
            zoneName,
            date,
            isDone,
            areaM2,
            ...rates,
            isSilentOnSlow,
          }),
        ),
  );
}
