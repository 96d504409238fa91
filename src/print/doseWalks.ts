import { secondsOfWalks } from '../cover/marks/secondsOfWalks';
import { type WalkTimeline, walkTimeline } from '../cover/marks/walkTimeline';
import type { VisitCoverage } from '../cover/passTypes';
import { paceOfDose } from '../pace/paceOfDose';
import type { DosePace } from '../pace/types';
import { spacingOf } from '../pace/usual';
import { equipmentOfDose } from '../plan/equipmentOfDose';
import type { DoseFigures } from '../plan/types';
import type { Derived, DerivedVisit } from '../session/types';
import { dosedName } from '../words/productWords';
import type { Equipment } from '../yard/types';
import type { PrintedWalk } from './mapFrame';

/** A dose with its walk, as maps and tables of the sheet need it. */
export interface DoseWalk extends Omit<PrintedWalk, 'coat'> {
  readonly figures: DoseFigures;
  readonly equipment: Equipment;
  /** true: the equipment is usual figures of the trade, none of the yard's own. */
  readonly isAssumed: boolean;
  readonly pace: DosePace;
  readonly timeline: WalkTimeline;
}

/**
 * The doses of a visit that are walked, in its order; those without a single leg are left out.
 * @param doseId one of them alone; null: all
 */
export function doseWalks(
  { yard, measured }: Derived,
  visit: DerivedVisit,
  coverage: VisitCoverage,
  doseId: string | null,
): readonly DoseWalk[] {
  return visit.figures.doses.flatMap((figures): DoseWalk | [] => {
    const dose = coverage.doses.find((each) => each.doseId === figures.dose.id);
    if (!dose || dose.legs.length === 0 || (doseId !== null && dose.doseId !== doseId)) return [];
    const { equipment, isAssumed } = equipmentOfDose(yard, figures.dose, figures.product);
    const pace = paceOfDose(figures, equipment, yard.settings, isAssumed);
    const timeline = walkTimeline(dose, figures.zones, pace, spacingOf(equipment));
    const { lengthM } = yard.settings.hose;
    const bibs = dose.hose && lengthM !== null ? yard.marks.filter(({ kind }) => kind === 'hose-bib') : [];
    return {
      dose,
      coats: dose.legs.some(({ coat }) => coat === 2) ? 2 : 1,
      swathM: equipment.swathM,
      seconds: secondsOfWalks(timeline),
      way: { product: figures.product, applicator: equipment.applicator, coats: figures.dose.passes.coats },
      name: dosedName(figures.product),
      hose: bibs.map(({ position }) => ({ at: measured.plane.toPlane(position), lengthM: lengthM ?? 0 })),
      figures,
      equipment,
      isAssumed,
      pace,
      timeline,
    };
  });
}

/** One page a coat: two coats drawn on each other cannot be read. */
export function pagesOf(walk: DoseWalk): readonly PrintedWalk[] {
  return walk.coats === 2 ? [1, 2].map((coat) => ({ ...walk, coat: coat as 1 | 2 })) : [{ ...walk, coat: 1 }];
}
