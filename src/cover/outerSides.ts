import type { Outline } from './outline';
import { pointAt, type Segment } from './segments';

/** Sides this near to the line of an edge lie in it, m: ten steps of the set operations' grid. */
const IN_LINE_M = 1e-5;
/** Ground is felt for this far from a side, m. */
const FEEL_M = 1e-3;

/** Unit vector away from the hardscape. @param outward 1 when its ground lies right of the side's direction, -1 when left */
export function outwardOf([[ax, ay], [bx, by]]: Segment, outward: 1 | -1): readonly [number, number] {
  const length = Math.hypot(bx - ax, by - ay);
  return [(-(by - ay) / length) * outward, ((bx - ax) / length) * outward];
}

/**
 * The outline of treated ground that lies on the outer side of one side of a hardscape: product that comes
 * from there crosses the edge on its way in. What lies behind it, across the hardscape's own ground, is left
 * out, and so is ground that ends on the edge's line without lying before it.
 * @param side of the hardscape's outline, of some length
 * @param outward 1 when the hardscape's ground lies right of the side's direction, -1 when left
 * @returns sides within `reachM` of the box of `side`, cut off at its line
 */
export function outerSides(side: Segment, outward: 1 | -1, treated: Outline, reachM: number): Segment[] {
  const [nx, ny] = outwardOf(side, outward);
  const [ax, ay] = side[0];
  const outOf = ([x, y]: Segment[0]): number => (x - ax) * nx + (y - ay) * ny;
  return treated.sidesNear(side, reachM).flatMap((one): Segment[] => {
    const [from, to] = [outOf(one[0]), outOf(one[1])];
    if (Math.max(from, to) <= IN_LINE_M) {
      if (Math.min(from, to) < -IN_LINE_M) return [];
      const [x, y] = pointAt(one, 0.5);
      return treated.holds([x + nx * FEEL_M, y + ny * FEEL_M]) ? [one] : [];
    }
    if (Math.min(from, to) >= -IN_LINE_M) return [one];
    const cut = pointAt(one, (-IN_LINE_M - from) / (to - from));
    return [from < to ? [cut, one[1]] : [one[0], cut]];
  });
}
