import { newEquipment } from '../yard/defaults';
import type { Applicator, Equipment, Product, VisitDose, Yard } from '../yard/types';

/** The equipment a dose goes out with. */
export interface DoseEquipment {
  readonly equipment: Equipment;
  /** true: the yard has none that fits; usual figures of the trade stand in. */
  readonly isAssumed: boolean;
}

/** What a form is put out with when its label does not say; common practice, no source. */
function usualApplicator({ form }: Product): Applicator {
  if (form === 'ready-to-use') return 'hose-end';
  if (form === 'liquid-concentrate' || form === 'soluble-powder') return 'tank-sprayer';
  return form === 'mulch' || form === 'topdressing' ? 'by-hand' : 'broadcast-spreader';
}

/**
 * The equipment that a dose names; else the first of the yard's with the applicator of its use; else usual
 * figures of that applicator.
 * @param product as the dose's use has it (see `applyUse`)
 */
export function equipmentOfDose(yard: Yard, dose: VisitDose, product: Product): DoseEquipment {
  const named = yard.equipment.find((each) => each.id === dose.passes.equipmentId);
  if (named) return { equipment: named, isAssumed: false };
  const applicator = product.applicator ?? usualApplicator(product);
  const own = yard.equipment.find((each) => each.applicator === applicator);
  if (own) return { equipment: own, isAssumed: false };
  return { equipment: newEquipment(`usual-${applicator}`, applicator), isAssumed: true };
}
