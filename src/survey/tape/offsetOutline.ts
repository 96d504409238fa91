import type { XY } from '../../measure/types';
import { bendAt } from './offsetRules';

/** Which rule the outline follows: straight lines, or parabolas with the last odd interval straight or curved. */
export type OffsetRule = 'trapezoid' | 'simpson' | 'parabolic';

/** A chord strays from its parabola by this at most, m. */
const TOLERANCE_M = 0.01;
const MOST_PIECES = 16;

/** The bend (second derivative, 1/m) of the edge in each interval under a rule. */
export function bendsOf(stations: readonly number[], offsets: readonly number[], rule: OffsetRule): number[] {
  const last = stations.length - 1;
  return Array.from({ length: last }, (_, i) => {
    if (rule === 'trapezoid' || last < 2) return 0;
    const isOver = last % 2 === 1 && i === last - 1;
    if (isOver) return rule === 'simpson' ? 0 : bendAt(stations, offsets, last - 1);
    return bendAt(stations, offsets, i - (i % 2) + 1);
  });
}

/**
 * Places along an edge whose chords enclose, over the base line, just the area of the rule. The taped
 * offsets stand as they are; places between them lie on the parabola, moved out a little evenly.
 * @param pieces how many chords in each interval, the same for both sides of a line
 */
export function edgePlaces(
  stations: readonly number[],
  offsets: readonly number[],
  bends: readonly number[],
  pieces: readonly number[],
): XY[] {
  const places: XY[] = [];
  for (let i = 0; i < stations.length; i++) {
    const [x, y] = [stations[i] ?? 0, offsets[i] ?? 0];
    if (i > 0) {
      const [x0, y0] = [stations[i - 1] ?? 0, offsets[i - 1] ?? 0];
      const length = x - x0;
      const count = pieces[i - 1] ?? 1;
      const bend = bends[i - 1] ?? 0;
      const step = length / count;
      // chords of length `step` lose bend·step²/12 for each metre of line; count - 1 places make it good
      const lift = count > 1 ? (-bend * length * step) / (12 * (count - 1)) : 0;
      for (let k = 1; k < count; k++) {
        const along = k * step;
        const straight = y0 + ((y - y0) * along) / length;
        places.push([x0 + along, straight - (bend * along * (length - along)) / 2 + lift]);
      }
    }
    places.push([x, y]);
  }
  return places;
}

/** How many chords an interval needs for bends of either side. */
export function piecesFor(stations: readonly number[], ...bends: readonly (readonly number[])[]): number[] {
  return Array.from({ length: stations.length - 1 }, (_, i) => {
    const length = (stations[i + 1] ?? 0) - (stations[i] ?? 0);
    const most = Math.max(...bends.map((side) => Math.abs(side[i] ?? 0)));
    if (most === 0) return 1;
    return Math.min(MOST_PIECES, Math.max(2, Math.ceil(length * Math.sqrt(most / (8 * TOLERANCE_M)))));
  });
}
