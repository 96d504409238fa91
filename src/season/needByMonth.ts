import { heldNeed } from '../need/flushHold';
import { monthlyNeed } from '../need/monthlyNeed';
import { needOfZone } from '../need/needOfZone';
import type { Yard } from '../yard/types';
import type { LedgerZone } from './ledgerSums';

/**
 * Nitrogen that ground wants month by month, January first, with what is held back in spring moved on: the mean
 * over all ground of the zones, kg/m². A zone without a need, or whose need cannot be shared out, counts as nought.
 * @param zones of the yard, with their net ground
 * @returns null where no zone has a need that can be shared out, or there is no ground
 */
export function needByMonth(yard: Yard, zones: readonly LedgerZone[]): readonly number[] | null {
  const whole = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  if (!(whole > 0)) return null;
  const sums = new Array<number>(12).fill(0);
  let isKnown = false;
  for (const { zoneId, areaM2 } of zones) {
    const zone = yard.zones.find((each) => each.id === zoneId);
    const need = zone && needOfZone(yard, zone);
    const months = need && monthlyNeed(need, yard.climate);
    if (!need || !months) continue;
    isKnown = true;
    heldNeed(months, need.hold).months.forEach((value, month) => {
      sums[month] = (sums[month] ?? 0) + (value * areaM2) / whole;
    });
  }
  return isKnown ? sums : null;
}
