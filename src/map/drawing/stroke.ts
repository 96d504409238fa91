import { lineString, simplify } from '@turf/turf';
import type { Spot } from './sides';
import { crossingOfSides } from './sides';

/** Corners that lie nearer than this to the straight line are left out, px of the screen. */
export const STROKE_TOLERANCE_PX = 1;
/** Most that leaving corners out may change the area: three thousandths. */
const AREA_SHARE = 0.003;
/** Where the ends overshoot each other, no more than this share of the stroke is cut off. */
const TAIL_SHARE = 0.2;
/** An end that comes this near the start has closed the shape, px. */
const CLOSE_PX = 15;
/** A turn back on itself this near the ends is a slip of the hand or the finger lifting, px. */
const HOOK_PX = 12;

/** Area of a closed outline given without its closing corner (shoelace formula), px². */
export function areaOfSpots(spots: readonly Spot[]): number {
  let twice = 0;
  let before = spots[spots.length - 1];
  for (const spot of spots) {
    if (before) twice += before.x * spot.y - spot.x * before.y;
    before = spot;
  }
  return Math.abs(twice / 2);
}

/**
 * The loop of a stroke whose ends overshoot each other: cut where the end crosses the beginning, and
 * freed of hooks at both ends.
 * @param stroke px, in the order drawn; not closed
 * @returns what stays, not closed; the stroke itself when nothing is to be cut
 */
export function trimStroke(stroke: readonly Spot[]): readonly Spot[] {
  return dropHooks(cutTails(endAtStart(stroke)));
}

/** An end that went past the start is cut back to where it came nearest. */
function endAtStart(stroke: readonly Spot[]): readonly Spot[] {
  const [first] = stroke;
  if (!first) return stroke;
  const from = Math.ceil(stroke.length * (1 - TAIL_SHARE));
  let nearest = stroke.length - 1;
  for (let i = from; i < stroke.length; i++) {
    if (away(first, stroke[i] as Spot) < away(first, stroke[nearest] as Spot)) nearest = i;
  }
  const isPast = nearest < stroke.length - 1 && away(first, stroke[nearest] as Spot) <= CLOSE_PX;
  if (!isPast) return stroke;
  const isOnStart = away(first, stroke[nearest] as Spot) < 1;
  return stroke.slice(0, isOnStart ? nearest : nearest + 1);
}

function cutTails(stroke: readonly Spot[]): readonly Spot[] {
  const upTo = [0];
  for (let i = 1; i < stroke.length; i++)
    upTo.push((upTo[i - 1] ?? 0) + away(stroke[i - 1] as Spot, stroke[i] as Spot));
  const whole = upTo[upTo.length - 1] ?? 0;
  const most = whole * TAIL_SHARE;
  for (let i = 1; i < stroke.length && (upTo[i - 1] ?? 0) <= most; i++) {
    for (let j = stroke.length - 1; j > i + 1 && whole - (upTo[j] ?? 0) <= most; j--) {
      const [a, b, c, d] = [stroke[i - 1], stroke[i], stroke[j - 1], stroke[j]] as [Spot, Spot, Spot, Spot];
      const hit = crossingOfSides(a, b, c, d);
      const cut = (upTo[i - 1] ?? 0) + whole - (upTo[j] ?? 0);
      if (hit && cut <= most) return [hit, ...stroke.slice(i, j)];
    }
  }
  return stroke;
}

function dropHooks(stroke: readonly Spot[]): readonly Spot[] {
  let spots = [...stroke];
  for (const isStart of [true, false]) {
    if (isStart) spots.reverse();
    for (let cut = 0; spots.length > 4; ) {
      const [before, end] = spots.slice(-2) as [Spot, Spot];
      const next = spots[0] as Spot;
      const turn = turnDeg(before, end, next);
      const gone = away(before, end);
      if (turn < 120 || cut + gone > HOOK_PX) break;
      cut += gone;
      spots = spots.slice(0, -1);
    }
    if (isStart) spots.reverse();
  }
  return spots;
}

function away(a: Spot, b: Spot): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** How far the way a, b, c turns at b: 0 straight on, 180 back. A way of no length turns not. */
function turnDeg(a: Spot, b: Spot, c: Spot): number {
  if (away(a, b) === 0 || away(b, c) === 0) return 0;
  const turn = Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x);
  return Math.abs((Math.atan2(Math.sin(turn), Math.cos(turn)) * 180) / Math.PI);
}

/** Sharper turns than this are corners that were meant, degrees. */
const CORNER_DEG = 60;
const ROUND_STEP_PX = 4;

/**
 * The curve between reported places: a quick hand is heard at few places, and straight lines between them
 * would cut every curve short. Each stretch between two soft turns is a cubic Hermite curve whose tangents
 * follow the neighbours; stretches at corners stay straight.
 * @param stroke px, not closed; @returns px, not closed, with places about 4 px apart where it bends
 */
export function roundStroke(stroke: readonly Spot[]): readonly Spot[] {
  const count = stroke.length;
  if (count < 5) return stroke;
  const at = (i: number) => stroke[(i + count) % count] as Spot;
  const turns = stroke.map((spot, i) => turnDeg(at(i - 1), spot, at(i + 1)));
  const isSoft = (i: number) => (turns[i % count] ?? 0) <= CORNER_DEG;
  return stroke.flatMap((from, i) => {
    const to = at(i + 1);
    const length = away(from, to);
    if (length < ROUND_STEP_PX || !isSoft(i) || !isSoft(i + 1)) return [from];
    const out = tangent(at(i - 1), to, length);
    const into = tangent(from, at(i + 2), length);
    const steps = Math.ceil(length / ROUND_STEP_PX);
    return Array.from({ length: steps }, (_, k) => hermite(from, out, to, into, k / steps));
  });
}

function tangent(before: Spot, after: Spot, length: number): Spot {
  const whole = away(before, after) || 1;
  return { x: ((after.x - before.x) * length) / whole, y: ((after.y - before.y) * length) / whole };
}

function hermite(from: Spot, out: Spot, to: Spot, into: Spot, t: number): Spot {
  const [t2, t3] = [t * t, t * t * t];
  const mix = (a: number, m: number, b: number, n: number) =>
    (2 * t3 - 3 * t2 + 1) * a + (t3 - 2 * t2 + t) * m + (3 * t2 - 2 * t3) * b + (t3 - t2) * n;
  return { x: mix(from.x, out.x, to.x, into.x), y: mix(from.y, out.y, to.y, into.y) };
}

/**
 * Fewer corners for a closed stroke: Douglas and Peucker (1973) with a tolerance of 1 px, made finer
 * until the area enclosed changes by no more than 0.3 %, since cutting curves short always loses area.
 * @param stroke px, not closed; @returns px, not closed; the stroke itself when nothing can go
 */
export function simplifyStroke(stroke: readonly Spot[]): readonly Spot[] {
  const [first] = stroke;
  if (!first || stroke.length < 5) return stroke;
  const area = areaOfSpots(stroke);
  const closed = [...stroke, first];
  for (let tolerance = STROKE_TOLERANCE_PX; tolerance > 0.02; tolerance /= 1.5) {
    const kept = simplifyClosed(closed, tolerance);
    if (kept.length >= 3 && Math.abs(areaOfSpots(kept) - area) <= AREA_SHARE * area) return kept;
  }
  return stroke;
}

/** In two halves, from the first corner to the one farthest from it and back. */
function simplifyClosed(closed: readonly Spot[], tolerance: number): readonly Spot[] {
  const first = closed[0] as Spot;
  let far = 0;
  for (const [i, spot] of closed.entries()) if (away(first, spot) > away(first, closed[far] as Spot)) far = i;
  const there = simplifyLine(closed.slice(0, far + 1), tolerance);
  const back = simplifyLine(closed.slice(far), tolerance);
  return [...there.slice(0, -1), ...back.slice(0, -1)];
}

/** The library's way works in any square field, px as well as degrees. */
function simplifyLine(spots: readonly Spot[], tolerance: number): readonly Spot[] {
  if (spots.length < 3) return spots;
  const line = lineString(spots.map(({ x, y }) => [x, y]));
  return simplify(line, { tolerance, highQuality: true }).geometry.coordinates.map(([x = 0, y = 0]) => ({
    x,
    y,
  }));
}
