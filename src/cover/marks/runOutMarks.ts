import { RELATIVE_SLACK } from '../../plan/containers';
import type { Leg, RunOutMark, Vessel } from '../passTypes';
import { pointAlong } from './alongLine';
import { type DoseGround, placeWhereDone, walkProgress } from './walkProgress';

/** Shares of a full vessel that are marked, as they come; 0: it runs out. */
const LEVELS = [0.75, 0.5, 0.25, 0] as const;

/**
 * Where along the walk each vessel stands at three quarters, one half and one quarter of its full content and
 * where it runs out, in walking order. A vessel that begins lower, or ends higher, has the fewer marks.
 * What a vessel does is taken to go down evenly with its ground.
 * @param legs of one dose, in walking order
 * @param zones ground that the dose counts, m² (see `walkProgress`)
 * @param coats 2: each coat at half the rate
 * @param vessels in the order they are used up; ground beyond the walk (no place on the map) has no marks
 */
export function runOutMarks(
  legs: readonly Leg[],
  zones: readonly DoseGround[],
  coats: 1 | 2,
  vessels: readonly Vessel[],
): readonly RunOutMark[] {
  const progress = walkProgress(legs, zones, coats);
  const marks: RunOutMark[] = [];
  let beforeM2 = 0;
  vessels.forEach((vessel, index) => {
    for (const left of LEVELS) {
      const within = areaToLevel(vessel, left);
      if (within === null) continue;
      const doneM2 = beforeM2 + within;
      const place = placeWhereDone(progress, doneM2);
      const leg = place && legs[place.legIndex];
      if (!leg || leg.zoneId === null) continue;
      marks.push({
        vessel: index,
        kind: vessel.kind,
        number: vessel.number,
        left,
        at: pointAlong(leg.line, leg.lengthM > 0 ? place.alongM / leg.lengthM : 0).at,
        ...place,
        zoneId: leg.zoneId,
        doneM2,
      });
    }
    beforeM2 += vessel.areaM2;
  });
  return marks;
}

/** m² that a vessel does until it stands at a level; null where it does not come by it. */
function areaToLevel({ full, start, taken, areaM2 }: Vessel, left: number): number | null {
  if (!(full.value > 0) || !(taken.value > 0)) return null;
  const [first, last] = [start.value / full.value, (start.value - taken.value) / full.value];
  if (left >= first - RELATIVE_SLACK || left < last - RELATIVE_SLACK) return null;
  return areaM2 * Math.min(1, (first - left) / (first - last));
}
