import type { XY } from '../measure/types';

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
  const kept = new Set([0, far, last]);
  const runs: [number, number][] = [
    [0, far],
    [far, last],
  ];
  for (let run = runs.pop(); run; run = runs.pop()) {
    const [a, b] = run;
    let worst = -1;
    let worstM = toleranceM;
    for (let i = a + 1; i < b; i++) {
      const off = offLine(ring[i], ring[a], ring[b]);
      if (off > worstM) {
        worst = i;
        worstM = off;
      }
    }
    if (worst < 0) continue;
    kept.add(worst);
    runs.push([a, worst], [worst, b]);
  }
  return [...kept].sort((a, b) => a - b).map((i) => ring[i] as XY);
}

function distance(p: XY | undefined, q: XY): number {
  return p ? Math.hypot(p[0] - q[0], p[1] - q[1]) : 0;
}

/** Distance of p from the stretch a to b. */
function offLine(p: XY | undefined, a: XY | undefined, b: XY | undefined): number {
  if (!p || !a || !b) return 0;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}
