import { needOfZone } from '../../need/needOfZone';
import { KG_PER_M2_OF_LB_PER_1000_SQFT } from '../../units/factors';
import { formatNutrientRate } from '../../units/format';
import { chosenZones } from '../../yard/choose';
import type { Yard, ZoneChoice } from '../../yard/types';
import { zoneNames } from '../../yard/zoneNames';

/** 1 lb of N per 1,000 sq ft, where no need is set. */
const USUAL_N = KG_PER_M2_OF_LB_PER_1000_SQFT;

/**
 * The nitrogen of a year that chosen ground wants, kg/m²: its need, the least where its zones go by several,
 * as in programs; a pound per 1,000 sq ft where none is set. With the words that tell where it comes from.
 */
export function wantedNitrogen(
  yard: Yard,
  choice: ZoneChoice,
): { readonly nKgPerM2: number; readonly words: string } {
  const zonesByNeed = new Map<number, string[]>();
  const without: string[] = [];
  for (const zone of chosenZones(yard, choice)) {
    const need = needOfZone(yard, zone)?.nKgPerM2 ?? 0;
    if (!(need > 0)) without.push(zone.id);
    else zonesByNeed.set(need, [...(zonesByNeed.get(need) ?? []), zone.id]);
  }
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  if (zonesByNeed.size === 0) {
    const words = `No need is set for this ground: ${show(USUAL_N)} stands in for it. Set needs under Need, or type what is wanted.`;
    return { nKgPerM2: USUAL_N, words };
  }
  const rest =
    without.length === 0 ? '' : `; ${zoneNames(yard, without)} ${without.length === 1 ? 'has' : 'have'} none`;
  const nKgPerM2 = Math.min(...zonesByNeed.keys());
  if (zonesByNeed.size === 1) {
    const ids = [...zonesByNeed.values()].flat();
    return {
      nKgPerM2,
      words: `The need of a year of ${rest ? zoneNames(yard, ids) : 'this ground'}${rest}.`,
    };
  }
  const each = [...zonesByNeed].map(([need, ids]) => `${show(need)} on ${zoneNames(yard, ids)}`);
  return {
    nKgPerM2,
    words: `The least of the needs of a year of this ground, so that none gets too much: ${each.join('; ')}${rest}.`,
  };
}
