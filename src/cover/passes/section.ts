import type { XY } from '../../measure/types';

/** Ground of a slab between two places along it: how wide it is at both, and linear between. */
export interface Piece {
  readonly xa: number;
  readonly xb: number;
  readonly ha: number;
  readonly hb: number;
}

/** Widths under this are none, m. */
const NO_WIDTH_M = 1e-6;

/**
 * Width of the ground in the slab ya ≤ y ≤ yb, for each place x along it: exact for straight sides, so that
 * its integral is the area of ground in the slab. Rings are cut to the slab by the half-plane clipping of
 * Sutherland & Hodgman 1974, doi 10.1145/360767.360802, from memory; the width is the sum of their edges' heights by the
 * trapezoid rule with sign.
 * @param rings in the frame, ground on their left
 * @returns pieces in ascending x, without those of no width
 */
export function sectionOf(rings: readonly (readonly XY[])[], ya: number, yb: number): Piece[] {
  // at x: the sum of widths changes by (constant, slope)
  const events: { x: number; c: number; m: number }[] = [];
  for (const ring of rings) {
    const cut = cutAbove(cutAbove(ring, ya, 1), -yb, -1);
    for (let i = 1; i < cut.length; i++) {
      const [a, b] = [cut[i - 1] as XY, cut[i] as XY];
      const dx = b[0] - a[0];
      if (Math.abs(dx) < 1e-7) continue;
      // ground on the left: edges to the left bound it above, those to the right below
      const m = (b[1] - a[1]) / dx;
      const c = a[1] - ya - m * a[0];
      if (c === 0 && m === 0) continue;
      const sign = dx < 0 ? 1 : -1;
      const [from, to] = dx < 0 ? [b[0], a[0]] : [a[0], b[0]];
      events.push({ x: from, c: sign * c, m: sign * m }, { x: to, c: -sign * c, m: -sign * m });
    }
  }
  events.sort((a, b) => a.x - b.x);
  const pieces: Piece[] = [];
  let [c, m] = [0, 0];
  const width = (x: number) => Math.min(yb - ya, Math.max(0, c + m * x));
  for (let i = 0; i < events.length; i++) {
    const event = events[i] as (typeof events)[number];
    c += event.c;
    m += event.m;
    const next = events[i + 1];
    if (next === undefined || next.x - event.x < 1e-9) continue;
    const [ha, hb] = [width(event.x), width(next.x)];
    if (ha > NO_WIDTH_M || hb > NO_WIDTH_M) pieces.push({ xa: event.x, xb: next.x, ha, hb });
  }
  return pieces;
}

/** The part of a closed ring with sign · y ≥ least, closed along the cut. */
function cutAbove(ring: readonly XY[], least: number, sign: 1 | -1): readonly XY[] {
  let [above, below] = [false, false];
  for (const p of ring) {
    if (sign * p[1] >= least) above = true;
    else below = true;
  }
  if (!below) return ring;
  if (!above) return [];
  const kept: XY[] = [];
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
    const [da, db] = [sign * a[1] - least, sign * b[1] - least];
    if (da >= 0) kept.push(a);
    if (da >= 0 !== db >= 0) kept.push([a[0] + (da / (da - db)) * (b[0] - a[0]), sign * least]);
  }
  if (kept[0]) kept.push(kept[0]);
  return kept;
}

/** Area of pieces, m². */
export function areaOfPieces(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { xa, xb, ha, hb }) => sum + ((xb - xa) * (ha + hb)) / 2, 0);
}

/** Where a line along the slab crosses an outline. */
export interface Crossing {
  readonly x: number;
  readonly ring: number;
  /** the edge runs from corner `edge` to the next. */
  readonly edge: number;
}

/** All crossings of the line y with the rings, ascending: between the first and the second lies ground, and so on. */
export function crossingsAt(rings: readonly (readonly XY[])[], y: number): Crossing[] {
  const found: Crossing[] = [];
  rings.forEach((points, ring) => {
    for (let edge = 0; edge + 1 < points.length; edge++) {
      const [a, b] = [points[edge] as XY, points[edge + 1] as XY];
      if (a[1] > y === b[1] > y) continue;
      found.push({ x: a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]), ring, edge });
    }
  });
  return found.sort((p, q) => p.x - q.x);
}
