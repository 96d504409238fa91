import type { Amount, Pack } from '../yard/types';
import type { ContainerCount } from './types';

/**
 * A need that misses a whole number of packs by less than this share is that whole number. Corners are
 * stored to 1e-11 degrees, 1e-6 m: a typed rectangle of 12 m measures to about 1e-7 of its area.
 */
export const RELATIVE_SLACK = 3e-7;

/**
 * Packs to open so that they hold at least `need`: exactly 3,200 sq ft from a 3,200 sq ft bottle is one.
 * @param exact packs used, 0 or more
 */
export function wholePacks(exact: number): number {
  if (!(exact > RELATIVE_SLACK)) return 0;
  return Math.ceil(exact - Math.max(1, exact) * RELATIVE_SLACK);
}

/**
 * How many packs of one size a need opens, how full the last stays, and whether the count would change
 * inside ±2 sigma of the area.
 * @param need of product, in the pack's unit
 * @param areaM2 the area treated; @param areaSigmaM2 its standard deviation
 * @throws RangeError when the units differ or the pack holds nothing (check the product first)
 */
export function countContainers(
  need: Amount,
  pack: Pack,
  areaM2: number,
  areaSigmaM2: number,
): ContainerCount {
  if (need.unit !== pack.content.unit || !(pack.content.value > 0)) {
    throw new RangeError(
      `A pack of ${pack.content.value} ${pack.content.unit} cannot hold a need in ${need.unit}.`,
    );
  }
  const exact = need.value / pack.content.value;
  const open = wholePacks(exact);
  const relative = areaM2 > 0 ? (2 * areaSigmaM2) / areaM2 : 0;
  const openLow = wholePacks(exact * Math.max(0, 1 - relative));
  const openHigh = wholePacks(exact * (1 + relative));
  return {
    packId: pack.id,
    packContent: pack.content,
    open,
    lastLeft: open === 0 ? 0 : Math.min(1, Math.max(0, open - exact)),
    exact,
    openLow,
    openHigh,
    changesAt: nearestChange(exact, open, openLow, openHigh),
  };
}

/**
 * The smaller of the two relative changes of area at which the count moves, signed; null when neither is
 * inside. No ground at all, where the last pack would stay shut, is no change to tell of.
 */
function nearestChange(exact: number, open: number, low: number, high: number): number | null {
  const up = high > open ? Math.max(0, open / exact - 1) : null;
  const down = low < open && open > 1 ? (open - 1) / exact - 1 : null;
  if (up === null) return down;
  if (down === null) return up;
  return up <= -down ? up : down;
}
