import { laidDose } from '../plan/laidDose';
import type { LaidDose, VisitFigures } from '../plan/types';
import type { Amount } from '../yard/types';

/** Product that a dose puts on a square metre, in one measure for both, kg or L. */
export interface DoseAmounts {
  readonly planned: Amount;
  /** really used; null: not done, or told in a measure that no density turns into this one. */
  readonly used: Amount | null;
}

/**
 * How much of each product goes on a square metre of its ground, as planned and as really used, by dose id: in the
 * measure of the plan. Doses that cannot be planned and have no record are left out.
 */
export function doseAmounts(visits: readonly VisitFigures[]): ReadonlyMap<string, DoseAmounts> {
  const amounts = new Map<string, DoseAmounts>();
  for (const { visit, doses, laid } of visits) {
    for (const dose of visit.doses) {
      const own = doses.find((each) => each.dose.id === dose.id) ?? null;
      const unit = (visit.doneOn === null ? null : dose.laid?.planned.unit) ?? own?.amount.unit;
      const planned = laidDose(visit, dose, own, false);
      if (unit === undefined || planned === null) continue;
      const value = perM2(planned, unit);
      if (value === null) continue;
      const real = laid.find(({ doseId }) => doseId === dose.id);
      const isRead = visit.doneOn !== null && real !== undefined && !real.isUseUnread;
      const used = isRead ? perM2(real, unit) : null;
      amounts.set(dose.id, {
        planned: { unit, value },
        used: used === null ? null : { unit, value: used },
      });
    }
  }
  return amounts;
}

const perM2 = ({ kgPerM2, lPerM2 }: LaidDose, unit: Amount['unit']) => (unit === 'kg' ? kgPerM2 : lPerM2);
