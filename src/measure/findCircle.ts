import type { XY } from './types';

/** With fewer corners a ring is a polygon, however even. */
const LEAST_CORNERS = 12;
/** Corners of a circle lie this near to it, as a share of the radius. */
const EVEN_SHARE = 0.003;

/**
 * The circle that a ring draws, m.
 * @param ring closed, in the plane
 * @returns null when its corners do not lie on one circle, or are too few or too uneven to draw it
 */
export function findCircle(ring: readonly XY[]): { readonly middle: XY; readonly radiusM: number } | null {
  const open = ring.slice(0, -1);
  if (open.length < LEAST_CORNERS) return null;
  const xs = open.map((p) => p[0]);
  const ys = open.map((p) => p[1]);
  const middle: XY = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const radii = open.map((p) => Math.hypot(p[0] - middle[0], p[1] - middle[1]));
  const radiusM = radii.reduce((sum, r) => sum + r, 0) / radii.length;
  // a flattened circle's box may miss its rim by the sagitta of half a chord
  const isEven = radii.every((r) => Math.abs(r - radiusM) <= EVEN_SHARE * radiusM + 0.002);
  const isRound = ring.every((p, i) => {
    const q = ring[i + 1];
    return !q || Math.hypot(q[0] - p[0], q[1] - p[1]) <= radiusM;
  });
  return radiusM > 0 && isEven && isRound ? { middle, radiusM } : null;
}
