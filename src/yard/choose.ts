import type { Visit, VisitDose, Yard, Zone, ZoneChoice, ZoneClass } from './types';

/**
 * The class a zone can be chosen by.
 * @returns null for structure, water and hardscape: they are never treated.
 */
export function zoneClass(zone: Zone): ZoneClass | null {
  switch (zone.kind) {
    case 'turf':
      return zone.mowing === 'low-cut' ? 'turf-low-cut' : 'turf-regular';
    case 'bed':
      return 'bed';
    case 'other':
      return 'other';
    default:
      return null;
  }
}

/**
 * Zones of the chosen classes, plus those named, minus those left out (leaving out wins).
 * Ids of zones that are gone are passed over.
 * @returns zones in document order, each once; never structure, water or hardscape.
 */
export function chosenZones(yard: Yard, choice: ZoneChoice): readonly Zone[] {
  return yard.zones.filter((zone) => isChosen(zone, choice));
}

/** Whether a choice takes in one zone (see `chosenZones`). */
export function isChosen(zone: Zone, choice: ZoneChoice): boolean {
  const own = zoneClass(zone);
  if (own === null || choice.exclude.includes(zone.id)) return false;
  return choice.classes.includes(own) || choice.include.includes(zone.id);
}

/** Every zone that can be treated, in document order. */
export function treatableZones(yard: Yard): readonly Zone[] {
  return yard.zones.filter((zone) => zoneClass(zone) !== null);
}

/** Zones that one dose of a visit treats: the dose's own choice if it has one, else the visit's. */
export function visitZones(yard: Yard, visit: Visit, dose: VisitDose): readonly Zone[] {
  return chosenZones(yard, dose.zones ?? visit.zones);
}

/** The choice without zones that are gone; the very choice when it names none of them. */
export function choiceWithout(choice: ZoneChoice, zoneIds: readonly string[]): ZoneChoice {
  const gone = (id: string) => zoneIds.includes(id);
  if (!choice.include.some(gone) && !choice.exclude.some(gone)) return choice;
  return {
    ...choice,
    include: choice.include.filter((id) => !gone(id)),
    exclude: choice.exclude.filter((id) => !gone(id)),
  };
}
