import type { Curve, Position, Ring, Zone } from '../yard/types';
import { findAllCurves, type PlacedCurve } from './curves';
import { flattenCurve } from './flattenCurve';
import { createPlane } from './plane';

/** How a corner moves with a point that it hangs on: [dx, dy] of the corner = [[xx, xy], [yx, yy]] · [dx, dy] of the point. */
export interface Pull {
  /** the point's corner key. */
  readonly key: string;
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

/** Step of the differences, m: large against the rounding of corners (1 µm), small against any bend. */
const STEP_M = 0.005;

const known = new WeakMap<Curve, readonly (readonly Pull[])[]>();

/**
 * How each corner of flattenCurve(curve) follows the curve's points, by central differences; the number
 * of sides is held. Ends follow themselves alone. Kept for the curve.
 */
function pullsOfCurve(curve: Curve, count: number): readonly (readonly Pull[])[] | null {
  const kept = known.get(curve);
  if (kept) return kept.length === count ? kept : null;
  const base = flattenCurve(curve);
  const counts = sidesBySpan(curve, base);
  if (!counts || base.length !== count) return null;
  const made: Pull[][] = base.map(() => []);
  curve.points.forEach((point, index) => {
    // a closed curve's last point is its first
    if (index > 0 && keyOf(point) === keyOf(curve.points[0] ?? point)) return;
    const plane = createPlane(point);
    const moved = (x: number, y: number) => {
      const to = plane.toLonLat([x, y]);
      const points = curve.points.map((p) => (keyOf(p) === keyOf(point) ? to : p));
      return flattenCurve({ ...curve, points }, counts).map((p) => plane.toPlane(p));
    };
    const [east, west] = [moved(STEP_M, 0), moved(-STEP_M, 0)];
    const [north, south] = [moved(0, STEP_M), moved(0, -STEP_M)];
    base.forEach((_, i) => {
      const [e, w, n, s] = [east[i], west[i], north[i], south[i]];
      if (!e || !w || !n || !s) return;
      const pull: Pull = {
        key: keyOf(point),
        xx: (e[0] - w[0]) / (2 * STEP_M),
        xy: (n[0] - s[0]) / (2 * STEP_M),
        yx: (e[1] - w[1]) / (2 * STEP_M),
        yy: (n[1] - s[1]) / (2 * STEP_M),
      };
      if (Math.max(...[pull.xx, pull.xy, pull.yx, pull.yy].map(Math.abs)) > 1e-3) made[i]?.push(pull);
    });
  });
  known.set(curve, made);
  return made;
}

/** Sides of each span between points that are corners: those of flattenCurve() itself. */
function sidesBySpan(curve: Curve, corners: readonly Position[]): number[] | null {
  if (curve.kind === 'arc') return [corners.length - 1];
  const counts: number[] = [];
  let at = 0;
  for (const stop of curve.points.slice(1)) {
    const next = corners.findIndex((p, i) => i > at && keyOf(p) === keyOf(stop));
    if (next < 0) return null;
    counts.push(next - at);
    at = next;
  }
  return counts;
}

function keyOf(p: Position): string {
  return `${p[0]},${p[1]}`;
}

/**
 * Corners of a zone that stand on a curve, by ring and index in it, with the curve's points that they
 * hang on. A corner on the curve that is not its own (a neighbour's) follows the two beside it. Curves
 * whose sides are not those of flattenCurve() are passed over: their corners stand for themselves.
 */
export function findPulls(
  zone: Pick<Zone, 'parts' | 'curves'>,
): ReadonlyMap<Ring, ReadonlyMap<number, readonly Pull[]>> {
  const byRing = new Map<Ring, Map<number, readonly Pull[]>>();
  for (const found of findAllCurves(zone).found) {
    const ring = zone.parts[found.part]?.[found.ring];
    if (!ring) continue;
    const pulls = byRing.get(ring) ?? new Map<number, readonly Pull[]>();
    byRing.set(ring, pulls);
    addPulls(pulls, ring, found);
  }
  return byRing;
}

function addPulls(pulls: Map<number, readonly Pull[]>, ring: Ring, found: PlacedCurve): void {
  const { curve, from, to, isTurned, guests } = found;
  const n = ring.length - 1;
  const steps = (to - from + n) % n || n;
  const run = Array.from({ length: steps + 1 }, (_, i) => (from + i) % n);
  const own = run.filter((index, i) => i === 0 || i === steps || !guests.includes(index));
  const known = pullsOfCurve(curve, own.length);
  if (!known) return;
  const inOrder = isTurned ? known.toReversed() : known;
  const at = (index: number, place: number) => ({ index, place, pulls: inOrder[place] ?? [] });
  const placed = own.map(at);
  placed.slice(1, -1).forEach((one) => {
    pulls.set(one.index, one.pulls);
  });
  for (const guest of guests) {
    const step = run.indexOf(guest, 1);
    const before = placed.findLast((one, i) => i < placed.length - 1 && run.indexOf(one.index) < step);
    const after = before && placed[before.place + 1];
    const [p, a, b] = [ring[guest], before && ring[before.index], after && ring[after.index]];
    if (!before || !after || !p || !a || !b) continue;
    const whole = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const t = whole > 0 ? Math.hypot(p[0] - a[0], p[1] - a[1]) / whole : 0;
    pulls.set(guest, [
      ...before.pulls.map((one) => times(one, 1 - t)),
      ...after.pulls.map((one) => times(one, t)),
    ]);
  }
}

function times({ key, xx, xy, yx, yy }: Pull, by: number): Pull {
  return { key, xx: xx * by, xy: xy * by, yx: yx * by, yy: yy * by };
}
