import type { XY } from '../measure/types';
import { keptCorners } from '../survey/keptCorners';

/**
 * Leaves out corners of a ring that lie within a tolerance of the straight line between those kept.
 * Source: Douglas & Peucker 1973, doi 10.3138/FM57-6770-U75U-7727. No corner left out is further than
 * `toleranceM` from the ring that remains.
 * @param ring closed, in a plane, metres; @returns closed, at least 4 positions where the ring has them
 */
export function thinRing(ring: readonly XY[], toleranceM: number): XY[] {
  const last = ring.length - 1;
  const start = ring[0];
  if (last < 4 || !start) return [...ring];
  // a ring is two lines: to the corner furthest from the first, and back
  let far = 1;
  for (let i = 2; i < last; i++) if (distance(ring[i], start) > distance(ring[far], start)) far = i;
  const out = keptCorners(ring.slice(0, far + 1), toleranceM);
  const back = keptCorners(ring.slice(far), toleranceM).map((i) => far + i);
  return [...out, ...back.slice(1)].map((i) => ring[i] as XY);
}

function distance(p: XY | undefined, q: XY): number {
  return p ? Math.hypot(p[0] - q[0], p[1] - q[1]) : 0;
}
