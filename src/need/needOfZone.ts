import { chosenZones, isChosen } from '../yard/choose';
import type { NutrientNeed, Yard, Zone } from '../yard/types';

/** The need that a zone goes by: the first of the yard's list that covers it; null when none does. */
export function needOfZone(yard: Yard, zone: Zone): NutrientNeed | null {
  return yard.needs.find((need) => isChosen(zone, need.zones)) ?? null;
}

/** The zones that go by a need, in document order: those it covers and no earlier need does. */
export function zonesOfNeed(yard: Yard, need: NutrientNeed): readonly Zone[] {
  return chosenZones(yard, need.zones).filter((zone) => needOfZone(yard, zone) === need);
}

/** Turf that no need covers, in document order. Beds and other ground may go without. */
export function turfWithoutNeed(yard: Yard): readonly Zone[] {
  return yard.zones.filter((zone) => zone.kind === 'turf' && needOfZone(yard, zone) === null);
}
