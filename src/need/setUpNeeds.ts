import { zoneClass } from '../yard/choose';
import type {
  Climate,
  GrassSeason,
  MowingClass,
  NitrogenSplit,
  NutrientNeed,
  Yard,
  ZoneClass,
} from '../yard/types';
import { suggestHold } from './flushHold';
import { growthPotentials } from './growthPotential';
import { guidesFor } from './nitrogenGuides';
import { findSpecies } from './species';

/** Classes of turf that a need is made for, with the name it gets. */
const TURF: readonly (readonly [MowingClass, ZoneClass, string])[] = [
  ['low-cut', 'turf-low-cut', 'Low-cut turf'],
  ['regular', 'turf-regular', 'Regular turf'],
];

/** Months of an even split: warm-season as NC State and Kansas State print; cool-season common practice, no source. */
const USUAL_MONTHS: Readonly<Record<GrassSeason, NitrogenSplit>> = {
  'cool-season': { kind: 'even', fromMonth: 4, toMonth: 10 },
  'warm-season': { kind: 'even', fromMonth: 5, toMonth: 8 },
};

/** The split to begin with: by growth where the climate is known, else even over the usual months. */
export function usualSplit(season: GrassSeason, climate: Climate): NitrogenSplit {
  return growthPotentials(climate, season) === null ? USUAL_MONTHS[season] : { kind: 'growth' };
}

/**
 * A need with the middle of the grass's first published range (a range for its mowing first; never a trial's),
 * the usual split and the suggested hold. A grass that is not known, or has no range, begins with nothing and no
 * guide.
 * @param id stable id, made by the caller
 */
export function newNeed(
  id: string,
  speciesId: string,
  climate: Climate,
  mowing: MowingClass | null,
  fields: Partial<Omit<NutrientNeed, 'id' | 'speciesId'>> = {},
): NutrientNeed {
  const guide = guidesFor(speciesId, mowing).find(({ source }) => !source.isTrial);
  const season = fields.season ?? findSpecies(speciesId)?.season ?? 'cool-season';
  return {
    id,
    name: '',
    zones: { classes: [], include: [], exclude: [] },
    speciesId,
    season,
    guideId: guide?.id ?? '',
    nKgPerM2: guide ? (guide.minKgPerM2 + guide.maxKgPerM2) / 2 : 0,
    split: usualSplit(season, climate),
    hold: suggestHold(season, climate).hold,
    ...fields,
  };
}

/**
 * One need for each class of turf the yard has and no need names yet.
 * @param makeId called once for each need
 */
export function setUpNeeds(yard: Yard, speciesId: string, makeId: () => string): readonly NutrientNeed[] {
  const present = new Set(yard.zones.map(zoneClass));
  const named = new Set(yard.needs.flatMap((need) => need.zones.classes));
  return TURF.flatMap(([mowing, own, name]) =>
    present.has(own) && !named.has(own)
      ? newNeed(makeId(), speciesId, yard.climate, mowing, {
          name,
          zones: { classes: [own], include: [], exclude: [] },
        })
      : [],
  );
}
