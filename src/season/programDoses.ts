import { applyUse } from '../plan/applyUse';
import { chosenZones } from '../yard/choose';
import type { Issue, Product, Program, ProgramDose, Yard, Zone } from '../yard/types';
import { type GroundLaid, laidOfUse } from './programGround';
import type { ZoneNeed } from './programNeed';

/** What a dose of a program is reckoned from: its use, what it lays down at the label rate, its ground with the need of each zone. */
export interface ReadDose {
  readonly product: Product;
  /** at the label rate; null where that is not known (only of a dose by the label). */
  readonly laid: GroundLaid | null;
  readonly zones: readonly Zone[];
}

/** An issue of one dose of a program. */
export function doseIssue(
  program: Program,
  dose: ProgramDose,
  code: string,
  severity: Issue['severity'],
  message: string,
): Issue {
  const path = `doses[${program.doses.indexOf(dose)}]`;
  return {
    code,
    severity,
    message: `${program.name || 'A program without a name'}: ${message}`,
    place: { programId: program.id, productId: dose.productId, path },
  };
}

/**
 * Reads a dose of a program.
 * @returns the dose, or why it lays nothing down: `program-product-missing` and, by need, `program-rate`,
 * `program-no-nitrogen`, `program-no-ground`, `program-no-need`, `program-no-climate` (errors)
 */
export function readDose(
  yard: Yard,
  program: Program,
  dose: ProgramDose,
  needs: ReadonlyMap<string, ZoneNeed>,
): ReadDose | Issue {
  const none = (code: string, message: string) => doseIssue(program, dose, code, 'error', message);
  const label = yard.products.find((one) => one.id === dose.productId);
  const product = label ? applyUse(label, dose.useId) : null;
  if (product === null)
    return none('program-product-missing', 'a dose names a product or a use that is gone; choose another.');
  const laid = laidOfUse(product, 1);
  const zones = chosenZones(yard, dose.zones ?? program.zones);
  if (dose.amount.kind === 'label') return { product, laid, zones };
  if (laid === null)
    return none(
      'program-rate',
      `${product.name} has no label rate in weight yet, so no need can set its amount.`,
    );
  if (!(laid.N > 0))
    return none(
      'program-no-nitrogen',
      `${product.name} carries no nitrogen, so the need cannot set its amount.`,
    );
  if (zones.length === 0) return none('program-no-ground', `no ground is chosen for ${product.name}.`);
  for (const zone of zones) {
    const own = needs.get(zone.id);
    if (own === undefined)
      return none(
        'program-no-need',
        `no need is set for ${zone.name || 'a zone without a name'}; set it under Need.`,
      );
    if (own.held === null)
      return none(
        'program-no-climate',
        'the need is split by growth, which takes the monthly mean temperatures; set them under Need.',
      );
  }
  return { product, laid, zones };
}
