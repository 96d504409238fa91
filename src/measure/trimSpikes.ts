import { signedArea } from './signedArea';
import type { PlaneRings, XY } from './types';

/** A spike narrower than this is left of edges that lie on each other but for their rounding, m. */
const SPIKE_M = 2e-5;
/** Rings of less ground go with their spikes, m². */
const LEAST_M2 = 1e-4;

/**
 * Takes hairline spikes off outlines: corners where the line turns back on itself within 20 µm, and
 * corners that fall on the one before. Such spikes are left where edges of two outlines ought to be one.
 * @returns parts whose outer ring still has ground
 */
export function trimSpikes(parts: readonly PlaneRings[]): PlaneRings[] {
  return parts.flatMap((rings) => {
    const [outer, ...holes] = rings
      .map(trimRing)
      .map((ring) => (Math.abs(signedArea(ring)) >= LEAST_M2 ? ring : []));
    return outer && outer.length > 0 ? [[outer, ...holes.filter((hole) => hole.length > 0)]] : [];
  });
}

function trimRing(ring: readonly XY[]): readonly XY[] {
  const open = ring.slice(0, -1);
  for (let i = 0; i < open.length && open.length >= 3; ) {
    const n = open.length;
    const [a, b, c] = [open[(i + n - 1) % n], open[i], open[(i + 1) % n]];
    if (a && b && c && isSpike(a, b, c)) {
      open.splice(i, 1);
      // what stood beside the tip may be one now
      i = Math.max(0, i - 2);
    } else i += 1;
  }
  const [first] = open;
  if (!first || open.length < 3) return [];
  return open.length === ring.length - 1 ? ring : [...open, first];
}

/** Whether the way over b goes out and back, or nowhere. */
function isSpike(a: XY, b: XY, c: XY): boolean {
  const [ux, uy, vx, vy] = [a[0] - b[0], a[1] - b[1], c[0] - b[0], c[1] - b[1]];
  const [u, v] = [Math.hypot(ux, uy), Math.hypot(vx, vy)];
  if (u < SPIKE_M || v < SPIKE_M) return true;
  if (ux * vx + uy * vy <= 0) return false;
  return Math.abs(ux * vy - uy * vx) / Math.max(u, v) < SPIKE_M;
}
