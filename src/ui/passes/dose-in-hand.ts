import { paceOfDose } from '../../pace/paceOfDose';
import type { DosePace } from '../../pace/types';
import { type DoseEquipment, equipmentOfDose } from '../../plan/equipmentOfDose';
import type { DoseFigures } from '../../plan/types';
import type { Visit, VisitDose } from '../../yard/types';
import type { AppController } from '../app-controller';
import type { LaidWalk } from './coverage-desk';

/** The dose whose passes are shown, with all that is known of it. */
export interface DoseInHand {
  readonly visit: Visit;
  readonly dose: VisitDose;
  /** null: it cannot be planned; the visit tells why. */
  readonly figures: DoseFigures | null;
  readonly equipment: DoseEquipment | null;
  /** null: not laid out (yet). */
  readonly walk: LaidWalk | null;
  readonly pace: DosePace | null;
}

let kept: { readonly from: readonly unknown[]; readonly to: DoseInHand } | null = null;

/** @returns null when there is no visit, or nothing goes out at it; the same object while all it comes from is. */
export function doseInHand(app: AppController): DoseInHand | null {
  const { yard, view } = app;
  const visit = yard.visits.find((each) => each.id === view.visitId);
  const dose = visit?.doses.find((each) => each.id === view.doseId) ?? visit?.doses[0];
  if (!visit || !dose) return null;
  const walk = app.walks.desk?.walkOf(dose.id) ?? null;
  const from = [visit, dose, app.visit, yard.equipment, yard.settings, walk?.dose];
  if (kept && from.every((each, i) => each === kept?.from[i])) return kept.to;
  const figures = app.visit?.figures.doses.find((each) => each.dose.id === dose.id) ?? null;
  const equipment = figures && equipmentOfDose(yard, dose, figures.product);
  const pace =
    figures && equipment && paceOfDose(figures, equipment.equipment, yard.settings, equipment.isAssumed);
  const to = { visit, dose, figures, equipment, walk, pace };
  kept = { from, to };
  return to;
}
