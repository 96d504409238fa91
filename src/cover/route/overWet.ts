import Flatbush from 'flatbush';
import type { XY } from '../../measure/types';
import type { Leg } from '../passTypes';
import { pointAt, type Segment } from '../segments';

/** Steps at which a way is looked at, m. */
const STEP_M = 0.2;
/** The very ends and sides of a swath do not count, m. */
const EDGE_M = 0.05;

interface Wetted {
  readonly side: Segment;
  readonly leg: number;
  readonly coat: 1 | 2;
}

/** Whether nothing goes out on a leg. */
export function isShut({ kind }: Leg): boolean {
  return kind === 'turn' || kind === 'carry';
}

/**
 * How much of the ways and turns of a dose goes over ground that was wetted before, m: swaths of earlier laps and
 * passes of the same coat (the first coat is taken to be dry when the second goes on). Looked at every 0.2 m.
 * @param legs in walking order
 */
export function overWet(legs: readonly Leg[], swathM: number): number {
  const wetted: Wetted[] = [];
  legs.forEach((leg, index) => {
    if (isShut(leg)) return;
    for (let i = 1; i < leg.line.length; i += 1)
      wetted.push({ side: [leg.line[i - 1] as XY, leg.line[i] as XY], leg: index, coat: leg.coat });
  });
  if (wetted.length === 0) return 0;
  const index = new Flatbush(wetted.length);
  for (const { side } of wetted) {
    const [a, b] = side;
    index.add(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]));
  }
  index.finish();
  const half = swathM / 2 - EDGE_M;
  const isWet = (place: XY, leg: number, coat: 1 | 2): boolean =>
    index.search(place[0] - half, place[1] - half, place[0] + half, place[1] + half).some((i) => {
      const each = wetted[i] as Wetted;
      return each.leg < leg && each.coat === coat && isInSwath(place, each.side, half);
    });
  let sum = 0;
  legs.forEach((leg, at) => {
    if (!isShut(leg)) return;
    for (let i = 1; i < leg.line.length; i += 1) {
      const side: Segment = [leg.line[i - 1] as XY, leg.line[i] as XY];
      const length = Math.hypot(side[1][0] - side[0][0], side[1][1] - side[0][1]);
      const steps = Math.ceil(length / STEP_M);
      for (let k = 0; k < steps; k += 1)
        if (isWet(pointAt(side, (k + 0.5) / steps), at, leg.coat)) sum += length / steps;
    }
  });
  return sum;
}

function isInSwath([x, y]: XY, [a, b]: Segment, half: number): boolean {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return false;
  const along = ((x - a[0]) * dx + (y - a[1]) * dy) / length;
  const across = Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / length;
  return across < half && along > EDGE_M && along < length - EDGE_M;
}
