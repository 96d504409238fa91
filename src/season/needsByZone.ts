import { needOfZone } from '../need/needOfZone';
import type { NutrientNeed, Yard } from '../yard/types';

/** The need that each zone goes by, by zone id; zones without one are left out. */
export function needsByZone(yard: Yard): ReadonlyMap<string, NutrientNeed> {
  return new Map(
    yard.zones.flatMap((zone) => {
      const need = needOfZone(yard, zone);
      return need ? [[zone.id, need] as const] : [];
    }),
  );
}
