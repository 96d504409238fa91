import type { PlaneRings, XY } from './types';

/** Outlines count as lying on each other within this, m: ten steps of the set operations' grid. */
export const ON_M = 1e-5;

/** A stretch of edge p->q, from t0 to t1 of its length, that lies on an edge a->b. */
export interface Stretch {
  readonly t0: number;
  readonly t1: number;
}

/** The part of p->q (as shares of its length, t0 < t1) that lies on a->b, either way round; null when none. */
export function stretchOn(p: XY, q: XY, a: XY, b: XY): Stretch | null {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const length = Math.hypot(dx, dy);
  if (length < ON_M) return null;
  const [ux, uy] = [dx / length, dy / length];
  const along = (o: XY) => (o[0] - p[0]) * ux + (o[1] - p[1]) * uy;
  const off = (o: XY) => (o[0] - p[0]) * uy - (o[1] - p[1]) * ux;
  const [sa, sb] = [along(a), along(b)];
  const s0 = Math.max(0, Math.min(sa, sb));
  const s1 = Math.min(length, Math.max(sa, sb));
  if (s1 - s0 < ON_M) return null;
  const [oa, ob] = [off(a), off(b)];
  const offAt = (s: number) => oa + ((s - sa) / (sb - sa)) * (ob - oa);
  if (Math.abs(offAt(s0)) > ON_M || Math.abs(offAt(s1)) > ON_M) return null;
  return { t0: s0 / length, t1: s1 / length };
}

/** Length of the outline of `a` that lies on the outline of `b`, m; holes included. */
export function sharedLengthM(a: readonly PlaneRings[], b: readonly PlaneRings[]): number {
  let sum = 0;
  for (const ring of b.flat()) {
    for (let j = 1; j < ring.length; j++) {
      const [c, d] = [ring[j - 1], ring[j]];
      if (!c || !d) continue;
      for (const own of a.flat()) {
        for (let i = 1; i < own.length; i++) {
          const [p, q] = [own[i - 1], own[i]];
          if (!p || !q || !edgesNear(p, q, c, d)) continue;
          const on = stretchOn(p, q, c, d);
          if (on) sum += (on.t1 - on.t0) * Math.hypot(q[0] - p[0], q[1] - p[1]);
        }
      }
    }
  }
  return sum;
}

/** Whether the boxes of two edges meet, within ON_M. */
export function edgesNear(p: XY, q: XY, a: XY, b: XY): boolean {
  return (
    Math.min(p[0], q[0]) <= Math.max(a[0], b[0]) + ON_M &&
    Math.min(a[0], b[0]) <= Math.max(p[0], q[0]) + ON_M &&
    Math.min(p[1], q[1]) <= Math.max(a[1], b[1]) + ON_M &&
    Math.min(a[1], b[1]) <= Math.max(p[1], q[1]) + ON_M
  );
}
