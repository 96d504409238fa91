import type { XY } from '../measure/types';
import type { Zone } from '../yard/types';
import { distanceBetween, pointAt, type Segment } from './segments';
import { type StripSource, sidesOfSource } from './sources';
import type { NearSource } from './types';

/** How far down the fall a drain, a well or water is looked for, m (about 100 ft); common practice, no source. */
export const FALL_REACH_M = 30;
/** So far to either side of the straight way down counts as on it, m; common practice, no source. */
const ASIDE_M = 2;
/** Ways down are laid at most this far apart, m: no more than twice what counts as on them. */
const MOST_APART_M = 2;

/** Unit vector in the plane down the fall of a zone's ground; null where it is level or its fall is not told. */
export function fallOf({ slope, downhillDeg }: Pick<Zone, 'slope' | 'downhillDeg'>): XY | null {
  if (slope === null || slope <= 0 || downhillDeg === null) return null;
  const angle = (downhillDeg * Math.PI) / 180;
  return [Math.sin(angle), Math.cos(angle)];
}

/**
 * The nearest drain, well or water that lies down the fall from bits of an edge: within FALL_REACH_M and no
 * more than 2 m beside the straight way down. What stands or rises between is not looked at, which errs to
 * the safe side.
 * @param falls bits of the edge with the unit vector of the fall of the ground beside each
 * @returns its distance from the edge, m of the plane, no more than 5 cm over the least; null: none
 */
export function leadsTo(
  falls: readonly { readonly bit: Segment; readonly fall: XY }[],
  sources: readonly StripSource[],
): NearSource | null {
  let found: NearSource | null = null;
  for (const { bit, fall } of falls) {
    const lengthM = Math.hypot(bit[1][0] - bit[0][0], bit[1][1] - bit[0][1]);
    const count = Math.max(1, Math.ceil(lengthM / MOST_APART_M));
    for (let i = 0; i <= count; i += 1) {
      const from = pointAt(bit, i / count);
      const way: Segment = [from, [from[0] + FALL_REACH_M * fall[0], from[1] + FALL_REACH_M * fall[1]]];
      for (const source of sources) {
        for (const side of sidesOfSource(source, way, ASIDE_M)) {
          if (distanceBetween(way, side) > ASIDE_M) continue;
          const distanceM = distanceBetween([from, from], side);
          if (distanceM >= (found?.distanceM ?? Number.POSITIVE_INFINITY)) continue;
          found = { sourceId: source.sourceId, sourceKind: source.sourceKind, distanceM };
        }
      }
    }
  }
  return found;
}
