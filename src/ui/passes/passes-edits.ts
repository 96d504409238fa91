import { replaceVisit } from '../../yard/edits';
import type { PassChoice, Visit, Yard } from '../../yard/types';

/** How the passes of one dose are laid, changed; the same yard when there is no such dose. */
export function changePasses(yard: Yard, visitId: string, doseId: string, change: Partial<PassChoice>): Yard {
  const visit = yard.visits.find((each) => each.id === visitId);
  if (!visit?.doses.some((dose) => dose.id === doseId)) return yard;
  const doses = visit.doses.map((dose) =>
    dose.id === doseId ? { ...dose, passes: { ...dose.passes, ...change } } : dose,
  );
  return replaceVisit(yard, { ...visit, doses });
}

/**
 * A heading for zones of a dose.
 * @param headingDeg degrees clockwise from north, any turn and either way along; null: the shortest walk
 */
export function setHeadings(
  yard: Yard,
  visitId: string,
  doseId: string,
  zoneIds: readonly string[],
  headingDeg: number | null,
): Yard {
  const dose = yard.visits.find((each) => each.id === visitId)?.doses.find((each) => each.id === doseId);
  if (!dose) return yard;
  const headings = Object.fromEntries(
    Object.entries(dose.passes.headings).filter(([zoneId]) => !zoneIds.includes(zoneId)),
  );
  if (headingDeg !== null) for (const zoneId of zoneIds) headings[zoneId] = halfTurn(headingDeg);
  return changePasses(yard, visitId, doseId, { headings });
}

/** Where the walk of a visit begins or ends. @param markId null: wherever it is shortest */
export function setWalkEnd(
  yard: Yard,
  visitId: string,
  end: keyof Pick<Visit, 'startMarkId' | 'endMarkId'>,
  markId: string | null,
): Yard {
  const visit = yard.visits.find((each) => each.id === visitId);
  return visit ? replaceVisit(yard, { ...visit, [end]: markId }) : yard;
}

/** A heading of a line walked both ways, 0 to <180. */
export function halfTurn(degrees: number): number {
  const turned = ((degrees % 180) + 180) % 180;
  return turned >= 180 ? 0 : turned;
}
