import { emptyYard, newZone } from '../yard/defaults';
import type { Climate, MowingClass, NutrientNeed, Yard, Zone } from '../yard/types';

/** Monthly means of no place in particular: a cold winter, a warm summer. °C. */
export const CONTINENTAL: Climate = {
  monthlyMeanC: [-5, -2.5, 4, 10.5, 16.5, 22, 24.5, 23.5, 19, 12, 4, -2.5],
  source: 'invented',
};

export const NO_ZONES = { classes: [], include: [], exclude: [] } as const;

export function testNeed(fields: Partial<NutrientNeed> = {}): NutrientNeed {
  return {
    id: 'need-1',
    name: 'Front and back',
    zones: NO_ZONES,
    speciesId: '',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: 0.012,
    split: { kind: 'even', fromMonth: 4, toMonth: 10 },
    hold: null,
    ...fields,
  };
}

export function testTurf(id: string, mowing: MowingClass = 'regular'): Zone {
  const ring = [
    [0, 0],
    [0.0001, 0],
    [0.0001, 0.0001],
    [0, 0],
  ] as const;
  return newZone(id, 'turf', [[ring]], { name: id, mowing });
}

export function yardWith(
  zones: readonly Zone[],
  needs: readonly NutrientNeed[],
  fields: Partial<Yard> = {},
): Yard {
  return { ...emptyYard('yard-1', 'Trial'), zones, needs, ...fields };
}
