import type { XY } from '../../measure/types';
import type { Outline } from '../outline';
import { distanceToSegment, pointAt, type Segment } from '../segments';

/** A line that dips into a shape by less than this runs beside it, m. */
const DEPTH_M = 1e-3;

/** Whether a point lies in shapes, deeper than their very edge. */
export function isWellInside(p: XY, outline: Outline): boolean {
  if (!outline.holds(p)) return false;
  return outline.sidesNear([p, p], DEPTH_M).every((side) => distanceToSegment(p, side) > DEPTH_M);
}

/**
 * How much of a straight line lies in shapes, m. What runs along a side or touches a corner is not in them.
 * @param atMost the count may end once it is more than this, m
 */
export function metresInside(line: Segment, outline: Outline, atMost = Number.POSITIVE_INFINITY): number {
  const [a, b] = line;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return 0;
  const sides = outline.sidesNear(line, DEPTH_M);
  if (sides.length === 0) return outline.holds(a) ? length : 0;
  const shares = sharesCut(line, sides, length);
  let inside = 0;
  for (let i = 1; i < shares.length; i += 1) {
    const [from, to] = [shares[i - 1] as number, shares[i] as number];
    if ((to - from) * length <= DEPTH_M) continue;
    const middle = pointAt(line, (from + to) / 2);
    if (!outline.holds(middle)) continue;
    if (sides.some((side) => distanceToSegment(middle, side) <= DEPTH_M)) continue;
    inside += (to - from) * length;
    if (inside > atMost) return inside;
  }
  return inside;
}

/** Shares of a line at which it may enter or leave, ascending, with 0 and 1: where sides cross it and where they end upon it. */
function sharesCut([a, b]: Segment, sides: readonly Segment[], length: number): number[] {
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const shares = [0, 1];
  for (const [c, d] of sides) {
    const [offC, offD] = [(c[1] - a[1]) * ux - (c[0] - a[0]) * uy, (d[1] - a[1]) * ux - (d[0] - a[0]) * uy];
    if ((offC > DEPTH_M && offD > DEPTH_M) || (offC < -DEPTH_M && offD < -DEPTH_M)) continue;
    const [alongC, alongD] = [
      (c[0] - a[0]) * ux + (c[1] - a[1]) * uy,
      (d[0] - a[0]) * ux + (d[1] - a[1]) * uy,
    ];
    const add = (along: number): void => {
      if (along > 0 && along < length) shares.push(along / length);
    };
    if (offC > 0 !== offD > 0) add(alongC + ((alongD - alongC) * offC) / (offC - offD));
    if (Math.abs(offC) <= DEPTH_M) add(alongC);
    if (Math.abs(offD) <= DEPTH_M) add(alongD);
  }
  return shares.sort((x, y) => x - y);
}
