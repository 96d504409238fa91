import type { Outline } from './outline';
import { pointAt, type Segment } from './segments';

/** Other hardscape nearer than this outside an edge adjoins: the edge is no edge of the ground. */
export const SEAM_M = 0.02;
/** Edges nearer than this are one line: ten steps of the set operations' grid. */
const SAME_M = 1e-5;
/** Sine of the greatest angle between two edges that still run side by side, about 3 degrees. */
const SEAM_SINE = 0.05;

/** Other hardscape near an edge. */
export interface OtherOutline {
  readonly outline: Outline;
  /** comes first in the document: an outer edge that both share counts for it. */
  readonly isBefore: boolean;
}

/** Where one side of an outline is a seam with other hardscape. */
export interface Seams {
  /** shares of the side, 0..1, at which that may change. */
  readonly cuts: readonly number[];
  /** @returns whether the side is a seam at this share; not asked at a cut. */
  holds(share: number): boolean;
}

/** A side of other hardscape seen from the edge: metres along it and outward from it. */
interface SeenSide {
  readonly from: readonly [along: number, out: number];
  readonly to: readonly [along: number, out: number];
  readonly isAlong: boolean;
}

const NONE: Seams = { cuts: [], holds: () => false };

/**
 * Seams of one side of a hardscape's outline: where other hardscape lies just outside it, either touching
 * it or beginning within SEAM_M along it; and where the outline of one earlier in the document is the
 * same line with its ground on the same side. Other hardscape that ends on this side's own ground, or
 * lies under it, makes no seam.
 * @param outward 1 when the hardscape's own ground lies right of the side's direction, -1 when left
 */
export function seamsOf(side: Segment, outward: 1 | -1, others: readonly OtherOutline[]): Seams {
  const [[ax, ay], [bx, by]] = side;
  const length = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  const [nx, ny] = [-uy * outward, ux * outward];
  const see = ([x, y]: Segment[0]): readonly [number, number] => [
    (x - ax) * ux + (y - ay) * uy,
    (x - ax) * nx + (y - ay) * ny,
  ];
  const seen = others.flatMap(({ outline, isBefore }) => {
    const sides = outline.sidesNear(side, SEAM_M).map(([c, d]): SeenSide => {
      const [from, to] = [see(c), see(d)];
      const rise = Math.abs(to[1] - from[1]);
      return { from, to, isAlong: rise <= SEAM_SINE * Math.hypot(to[0] - from[0], rise) };
    });
    const { minX, minY, maxX, maxY } = outline.box;
    const isWhollyBeside =
      Math.max(ax, bx) < minX - SEAM_M ||
      Math.min(ax, bx) > maxX + SEAM_M ||
      Math.max(ay, by) < minY - SEAM_M ||
      Math.min(ay, by) > maxY + SEAM_M;
    return isWhollyBeside ? [] : { outline, isBefore, sides };
  });
  if (seen.length === 0) return NONE;
  const cuts = seen.flatMap(({ sides }) => sides.flatMap(cutsOf)).map((along) => along / length);
  return {
    cuts: cuts.filter((share) => share > 0 && share < 1),
    holds(share) {
      const [x, y] = pointAt(side, share);
      return seen.some(({ outline, isBefore, sides }) => {
        if (outline.holds([x + nx * SAME_M, y + ny * SAME_M])) return true;
        return sides.some((one) => {
          const out = one.isAlong ? outAt(one, share * length) : null;
          return out !== null && out <= SEAM_M && (out > SAME_M || (isBefore && out >= -SAME_M));
        });
      });
    },
  };
}

/** Places along the edge where a side begins, ends, or passes a distance that matters. */
function cutsOf({ from, to }: SeenSide): number[] {
  const cuts = [from[0], to[0]];
  for (const level of [-SAME_M, SAME_M, SEAM_M]) {
    if (from[1] > level === to[1] > level) continue;
    cuts.push(from[0] + ((level - from[1]) / (to[1] - from[1])) * (to[0] - from[0]));
  }
  return cuts;
}

/** How far outward a side lies at a place along the edge; null where it does not lie there. */
function outAt({ from, to }: SeenSide, along: number): number | null {
  if (along < Math.min(from[0], to[0]) || along > Math.max(from[0], to[0])) return null;
  return from[1] + ((along - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}
