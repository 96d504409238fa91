import type { Curve, Position, Ring, Rings } from '../yard/types';
import { countSides, flattenCurve, isClosedCurve } from './flattenCurve';

export { arcThrough, countSides, flattenCurve, isClosedCurve } from './flattenCurve';

/** A curve and its corner in the ring agree within this, degrees (files keep 9 decimals or more). */
const SAME_DEG = 5e-9;
/** A further corner this near a side of the curve lies on it, degrees (about 20 µm and the rounding of a file). */
const ON_SIDE_DEG = 2e-9;

/** What has outlines with curves: a zone, or the parcel. */
export interface Curved {
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
}

/** Where a curve stands in a ring. */
export interface FoundCurve {
  /** the very entry of the list it was looked up from. */
  readonly curve: Curve;
  /** corner of the ring at its first point as the ring runs; the closing corner is corner 0. */
  readonly from: number;
  /** corner of the ring at its last; less than `from` when it runs over the ring's start. Equal: the whole ring. */
  readonly to: number;
  /** true: the ring runs through the curve's points from last to first. */
  readonly isTurned: boolean;
  /** corners of the ring on the curve that are not its own: a neighbour's corner lies on it. */
  readonly guests: readonly number[];
}

/** A curve, its place in a zone. */
export interface PlacedCurve extends FoundCurve {
  readonly part: number;
  readonly ring: number;
}

function near(a: Position | undefined, b: Position | undefined): boolean {
  return !!a && !!b && Math.abs(a[0] - b[0]) <= SAME_DEG && Math.abs(a[1] - b[1]) <= SAME_DEG;
}

function turned(curve: Curve): Curve {
  return { ...curve, points: [...curve.points].reverse() };
}

/** Whether p lies on the side from a to b, ends left out. Degrees; the slant of degrees does not matter here. */
function isOnSide(p: Position, a: Position, b: Position): boolean {
  const [ex, ey, px, py] = [b[0] - a[0], b[1] - a[1], p[0] - a[0], p[1] - a[1]];
  const length = Math.hypot(ex, ey);
  if (length === 0) return false;
  const along = (px * ex + py * ey) / length;
  return along > 0 && along < length && Math.abs(px * ey - py * ex) / length <= ON_SIDE_DEG;
}

/** Sides between the points of the curve that stand in the ring, from corner `from` on; null when one is not there. */
function countsInRing(open: Ring, from: number, curve: Curve): number[] | null {
  const { points } = curve;
  const stops = curve.kind === 'arc' ? [points.at(-1)] : points.slice(1);
  const counts: number[] = [];
  let walked = 0;
  for (const stop of stops) {
    let count = 1;
    while (walked + count <= open.length && !near(open[(from + walked + count) % open.length], stop)) count++;
    walked += count;
    if (walked > open.length) return null;
    counts.push(count);
  }
  return counts;
}

/** Runs along the ring and the curve's corners together. @returns how many sides of the ring, and the guests; null when they part */
function matchRun(open: Ring, from: number, corners: readonly Position[]) {
  const guests: number[] = [];
  let walked = 0;
  for (let i = 1; i < corners.length; i++) {
    const [before, next] = [corners[i - 1], corners[i]];
    for (;;) {
      walked += 1;
      if (walked > open.length) return null;
      const index = (from + walked) % open.length;
      const at = open[index];
      if (!at || !before || !next) return null;
      if (near(at, next)) break;
      if (!isOnSide(at, before, next)) return null;
      guests.push(index);
    }
  }
  return { walked, guests };
}

function findAt(
  open: Ring,
  from: number,
  curve: Curve,
): { walked: number; guests: readonly number[] } | null {
  const natural = countSides(curve);
  const counts = countsInRing(open, from, curve);
  const isLike = counts?.every((count, i) => Math.abs(count - (natural[i] ?? 1)) <= 1);
  // An arc of two sides or more is not its chord.
  const isChord = curve.kind === 'arc' && counts?.[0] === 1 && (natural[0] ?? 1) > 1;
  const exact = counts && isLike && !isChord ? matchRun(open, from, flattenCurve(curve, counts)) : null;
  return exact ?? matchRun(open, from, flattenCurve(curve, natural));
}

function findOne(open: Ring, curve: Curve, taken: readonly FoundCurve[]): FoundCurve | null {
  const n = open.length;
  for (const isTurned of [false, true]) {
    const run = isTurned ? turned(curve) : curve;
    for (let from = 0; from < n; from++) {
      if (!near(open[from], run.points[0])) continue;
      const match = findAt(open, from, run);
      if (!match || (match.walked === n && !isClosedCurve(curve))) continue;
      const to = (from + match.walked) % n;
      if (taken.some((one) => one.from === from && one.to === to)) continue;
      return { curve, from, to, isTurned, guests: match.guests };
    }
  }
  return null;
}

/**
 * Finds the curves that agree with a ring. A curve agrees when the ring holds its ends and, between
 * them, the corners of flattenCurve() within 2e-9 degree, in either direction; further corners on its
 * sides (a neighbour's) are let stand.
 * @param ring closed; it wraps @returns in the order of `curves`; those that do not agree are left out
 */
export function findCurves(ring: Ring, curves: readonly Curve[]): FoundCurve[] {
  const open = ring.slice(0, -1);
  const found: FoundCurve[] = [];
  for (const curve of curves) {
    const one = findOne(open, curve, found);
    if (one) found.push(one);
  }
  return found;
}

/** The curves of one outline by their place, and those that agree with no ring of it. */
export interface CurveList {
  readonly found: readonly PlacedCurve[];
  readonly stale: readonly Curve[];
}

const NONE: CurveList = { found: [], stale: [] };
const known = new WeakMap<readonly Rings[], { curves: readonly Curve[]; list: CurveList }>();

/** The curves of a zone by their place, and those that no longer agree; kept while both lists are the same objects. */
export function findAllCurves({ parts, curves }: Curved): CurveList {
  if (curves.length === 0) return NONE;
  const kept = known.get(parts);
  if (kept?.curves === curves) return kept.list;
  const list = searchCurves(parts, curves);
  known.set(parts, { curves, list });
  return list;
}

function searchCurves(parts: readonly Rings[], curves: readonly Curve[]): CurveList {
  const found: PlacedCurve[] = [];
  for (const [part, rings] of parts.entries()) {
    for (const [ring, corners] of rings.entries()) {
      const left = curves.filter((curve) => !found.some((one) => one.curve === curve));
      found.push(...findCurves(corners, left).map((one) => ({ ...one, part, ring })));
    }
  }
  return { found, stale: curves.filter((curve) => !found.some((one) => one.curve === curve)) };
}

/** The zone with only the curves that agree with its rings; plain corners are left of the others. The same object when all agree. */
export function dropStaleCurves<T extends Curved>(zone: T): T {
  if (zone.curves.length === 0) return zone;
  const { stale } = findAllCurves(zone);
  return stale.length === 0
    ? zone
    : { ...zone, curves: zone.curves.filter((curve) => !stale.includes(curve)) };
}

/** Share of the curve's length, 0 to 1, at which each guest lies, to be put back on the curve's new course. */
function guestShares(open: Ring, { from, to, guests }: FoundCurve): number[] {
  const count = (to - from + open.length) % open.length || open.length;
  const run = Array.from({ length: count + 1 }, (_, i) => (from + i) % open.length);
  const lengths = run.slice(1).map((index, i) => {
    const [a, b] = [open[run[i] ?? 0], open[index]];
    return a && b ? Math.hypot((b[0] - a[0]) * Math.cos((a[1] * Math.PI) / 180), b[1] - a[1]) : 0;
  });
  const whole = lengths.reduce((sum, one) => sum + one, 0) || 1;
  return guests.map((guest) => {
    const steps = run.indexOf(guest, 1);
    return lengths.slice(0, steps).reduce((sum, one) => sum + one, 0) / whole;
  });
}

/**
 * The ring with other corners between the ends of a found curve: those of `next`, whose ends may have
 * moved. Guests keep their share of the way.
 * @param next runs as `found.curve` does @returns closed ring
 */
export function layCurveInRing(ring: Ring, found: FoundCurve, next: Curve): Ring {
  const open = ring.slice(0, -1);
  const corners = flattenCurve(found.isTurned ? turned(next) : next);
  const withGuests = putGuests(corners, guestShares(open, found));
  return replaceRun(ring, found.from, found.to, withGuests);
}

function putGuests(corners: readonly Position[], shares: readonly number[]): Position[] {
  if (shares.length === 0) return [...corners];
  const steps = corners.slice(1).map((b, i) => {
    const a = corners[i] ?? b;
    return Math.hypot((b[0] - a[0]) * Math.cos((a[1] * Math.PI) / 180), b[1] - a[1]);
  });
  const whole = steps.reduce((sum, one) => sum + one, 0);
  const left = [...shares].sort((a, b) => a - b);
  const made: Position[] = [];
  let walked = 0;
  corners.forEach((corner, i) => {
    made.push(corner);
    const [step, next] = [steps[i], corners[i + 1]];
    if (step === undefined || !next) return;
    while (left[0] !== undefined && left[0] * whole < walked + step) {
      const t = ((left.shift() ?? 0) * whole - walked) / (step || 1);
      if (t <= 1e-6 || t >= 1 - 1e-6) continue;
      made.push([corner[0] + (next[0] - corner[0]) * t, corner[1] + (next[1] - corner[1]) * t]);
    }
    walked += step;
  });
  return made;
}

/**
 * The ring with other corners from corner `from` on to corner `to`, both replaced.
 * @param to less than or equal to `from`: over the ring's start @returns closed ring that begins at the run when it wrapped
 */
function replaceRun(ring: Ring, from: number, to: number, run: readonly Position[]): Ring {
  const open = ring.slice(0, -1);
  const [first, last] = [run[0], run.at(-1)];
  if (!first || !last) return ring;
  if (from === to) return [...run.slice(0, -1), first];
  if (from < to) {
    const made = [...open.slice(0, from), ...run, ...open.slice(to + 1)];
    return made[0] ? [...made, made[0]] : ring;
  }
  return [...run, ...open.slice(to + 1, from), first];
}
