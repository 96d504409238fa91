import type { Visit, VisitDose, ZoneChoice } from '../yard/types';

/** What a mark is made of. */
type Content = Pick<Visit, 'name' | 'zones' | 'tankL'> & {
  readonly doses: readonly Pick<VisitDose, 'productId' | 'useId' | 'rateFactor' | 'zones'>[];
} & Pick<Partial<Visit>, 'note'>;

/** The mark of what a program puts in a visit: 32-bit FNV-1a of name, ground, doses, tank and note. */
export function contentMark(visit: Content): string {
  const choice = (zones: ZoneChoice | null) =>
    zones && [zones.classes, zones.include, zones.exclude].map((list) => [...list].sort());
  const text = JSON.stringify([
    visit.name,
    choice(visit.zones),
    visit.doses.map((dose) => [dose.productId, dose.useId, dose.rateFactor, choice(dose.zones)]),
    visit.tankL,
    visit.note ?? '',
  ]);
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}

/** True where a visit no longer holds what its program put in it. */
export function wasEdited(visit: Visit): boolean {
  if (visit.program === null || visit.doses.some((dose) => dose.actual !== null || dose.taken !== null))
    return true;
  return contentMark(visit) !== visit.program.asMade;
}
