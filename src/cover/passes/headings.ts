import type { XY } from '../../measure/types';
import { countPasses } from './cells';

/** Directions nearer to each other than this are one, degrees. */
const SAME_DEG = 0.5;
/** Of the sides' directions, those of most length are tried. */
const MOST_SIDES = 24;
/** and a fan of directions this far apart, degrees. */
const FAN_DEG = 7.5;

/** A heading with the walk it is estimated to take, m. */
export interface Tried {
  readonly degrees: number;
  readonly costM: number;
}

/**
 * Headings worth trying, those of the shortest estimated walk first: along the sides (the least sum of
 * altitudes of a line sweep lies across a side: Huang 2001, doi 10.1109/ROBOT.2001.932525, from memory) and a regular fan.
 *
 * The estimate sums over the sides of the ground what the ends of passes cost there: a side that rises dy across the
 * passes and runs dx along them meets dy / spacing ends; each needs half a turn beside it and half a
 * spacing times dx / dy more to cover its slant.
 * @param pieces connected pieces of ground, by their rings
 */
export function headingsToTry(
  pieces: readonly (readonly (readonly XY[])[])[],
  spacingM: number,
  count: number,
): Tried[] {
  const sides = sidesOf(pieces);
  const tried = [...directionsOf(sides)];
  for (let degrees = 0; degrees < 180; degrees += FAN_DEG) tried.push(degrees);
  const distinct: number[] = [];
  for (const degrees of tried)
    if (!distinct.some((other) => apart(degrees, other) < SAME_DEG)) distinct.push(degrees);
  return distinct
    .map((degrees) => ({ degrees, costM: estimateOf(pieces, degrees, spacingM) }))
    .sort((a, b) => a.costM - b.costM)
    .slice(0, count);
}

const apart = (a: number, b: number): number => {
  const d = Math.abs(a - b) % 180;
  return Math.min(d, 180 - d);
};

type Side = readonly [number, number];

function sidesOf(pieces: readonly (readonly (readonly XY[])[])[]): Side[] {
  return pieces.flatMap((rings) =>
    rings.flatMap((ring) =>
      ring.slice(1).map((p, i): Side => {
        const before = ring[i] as XY;
        return [p[0] - before[0], p[1] - before[1]];
      }),
    ),
  );
}

/** Directions of the sides, longest together first, degrees clockwise from north. */
function directionsOf(sides: readonly Side[]): number[] {
  const lengths = new Map<number, { lengthM: number; sum: number }>();
  for (const [dx, dy] of sides) {
    const lengthM = Math.hypot(dx, dy);
    if (lengthM === 0) continue;
    const degrees = ((Math.atan2(dx, dy) * 180) / Math.PI + 360) % 180;
    const key = Math.round(degrees / SAME_DEG);
    const known = lengths.get(key) ?? { lengthM: 0, sum: 0 };
    known.lengthM += lengthM;
    known.sum += lengthM * degrees;
    lengths.set(key, known);
  }
  return [...lengths.values()]
    .sort((a, b) => b.lengthM - a.lengthM)
    .slice(0, MOST_SIDES)
    .map(({ lengthM, sum }) => (sum / lengthM) % 180);
}

/** Estimated walk for one heading, m. */
export function estimateOf(
  pieces: readonly (readonly (readonly XY[])[])[],
  headingDeg: number,
  spacingM: number,
): number {
  const angle = (headingDeg * Math.PI) / 180;
  const [ux, uy] = [Math.sin(angle), Math.cos(angle)];
  let total = 0;
  for (const rings of pieces) {
    let [low, high, twice, ends] = [Infinity, -Infinity, 0, 0];
    for (const ring of rings) {
      for (let i = 1; i < ring.length; i++) {
        const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
        const [ax, ay] = [a[0] * ux + a[1] * uy, -a[0] * uy + a[1] * ux];
        const [bx, by] = [b[0] * ux + b[1] * uy, -b[0] * uy + b[1] * ux];
        twice += ax * by - bx * ay;
        low = Math.min(low, ay);
        high = Math.max(high, ay);
        const [dx, dy] = [Math.abs(bx - ax), Math.abs(by - ay)];
        ends += (Math.min(1, dy / spacingM) * (Math.hypot(dx, dy) + dx)) / 2;
      }
    }
    const width = Math.max(high - low, 1e-9);
    // passes closer than the spacing lengthen the walk by their share
    const closer = (countPasses(width, spacingM) * spacingM) / width;
    total += (Math.abs(twice / 2) / spacingM) * Math.max(1, closer) + ends;
  }
  return total;
}
