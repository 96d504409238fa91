import type { Curve, Position } from '../yard/types';
import { roundPosition } from './corners';
import { createPlane } from './plane';
import type { XY } from './types';

/** Most that a side may stray from its curve, m. */
const STRAY_M = 0.002;
/** Widest turn of an arc in one side. */
const WIDEST_STEP = (5 * Math.PI) / 180;
/** Most sides of one arc, and of one span of a smooth line. */
const MOST_ARC_SIDES = 360;
const MOST_SPAN_SIDES = 32;
/** Three points this near a line lie on it, m. */
const ON_LINE_M = 1e-6;
/** An arc that bows less than this is a straight side, m. */
const LEAST_BOW_M = 0.0005;

/** Circle through the points of an arc, in the plane of its first point. */
export interface ArcFigure {
  readonly middle: XY;
  readonly radiusM: number;
  /** from the start, counter-clockwise positive, radians; not 0. */
  readonly sweep: number;
  readonly startAngle: number;
}

/**
 * Circle through three points by the crossing of their chords' bisectors (school geometry), and the
 * sweep from a over b to c. A full circle is two arcs. Plane metres.
 * @returns null when the three lie on a line, or bow less than half a millimetre
 */
export function arcThrough(a: XY, b: XY, c: XY): ArcFigure | null {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const cross = bx * cy - by * cx;
  const chord = Math.hypot(cx, cy);
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  if (!(Math.abs(cross) > ON_LINE_M * chord) || chord === 0) return null;
  const [mx, my] = [(cy * bb - by * cc) / (2 * cross), (bx * cc - cx * bb) / (2 * cross)];
  const radiusM = Math.hypot(mx, my);
  const angle = (x: number, y: number) => Math.atan2(y - my, x - mx);
  const startAngle = angle(0, 0);
  const whole = 2 * Math.PI;
  const turn = (((angle(cx, cy) - startAngle) % whole) + whole) % whole;
  const sweep = cross > 0 ? turn : turn - whole;
  const bow = 2 * radiusM * Math.sin(sweep / 4) ** 2;
  if (!(bow >= LEAST_BOW_M)) return null;
  return { middle: [a[0] + mx, a[1] + my], radiusM, sweep, startAngle };
}

/** Sides that keep an arc within 2 mm and 5 degrees a side. */
function arcSides(arc: ArcFigure | null): number {
  if (!arc) return 1;
  const fine = arc.radiusM > STRAY_M ? 2 * Math.acos(1 - STRAY_M / arc.radiusM) : WIDEST_STEP;
  const wanted = Math.ceil(Math.abs(arc.sweep) / Math.min(fine, WIDEST_STEP));
  return Math.min(MOST_ARC_SIDES, Math.max(2, wanted));
}

/**
 * How far the corners between the ends of an arc stand outside the circle, as a share k of its radius, so
 * that n sides of φ each enclose the sector's own area: sin φ ((n-2) k² + 2k) = n φ.
 * @param count n, 2 or more @param step φ, radians; either sign
 */
export function outsetOfArc(count: number, step: number): number {
  const sum = (count * step) / Math.sin(step);
  return count === 2 ? sum / 2 : (Math.sqrt(1 + (count - 2) * sum) - 1) / (count - 2);
}

/** Corners of an arc, ends as given; those between stand out by `outsetOfArc`. */
function arcCorners(a: XY, b: XY, c: XY, count: number): XY[] {
  const arc = arcThrough(a, b, c);
  if (!arc || count < 2) return [a, c];
  const step = arc.sweep / count;
  const reach = arc.radiusM * outsetOfArc(count, step);
  const between = Array.from({ length: count - 1 }, (_, i): XY => {
    const angle = arc.startAngle + (i + 1) * step;
    return [arc.middle[0] + reach * Math.cos(angle), arc.middle[1] + reach * Math.sin(angle)];
  });
  return [a, ...between, c];
}

/** One span of a smooth line: its ends, and the points before and after. */
type Span = readonly [XY, XY, XY, XY];

/** Spans of a smooth line; a closed one (last point is the first) runs on over its joint. */
function spansOf(points: readonly XY[], isClosed: boolean): Span[] {
  const at = (i: number): XY => {
    const n = points.length - 1;
    const p = points[isClosed ? (i + n) % n : i];
    if (p) return p;
    // beyond an open end: the next point mirrored at the end
    const [end, next] = i < 0 ? [points[0], points[1]] : [points[n], points[n - 1]];
    return end && next ? [2 * end[0] - next[0], 2 * end[1] - next[1]] : [0, 0];
  };
  return points.slice(1).map((_, i): Span => [at(i - 1), at(i), at(i + 1), at(i + 2)]);
}

/**
 * Point of a centripetal Catmull-Rom span at share t of it, by the pyramid of Barry and Goldman 1988;
 * knots apart by the root of the chords, which makes neither cusps nor loops within a span.
 * Source: Yuksel, Schaefer & Keyser 2011, "Parameterization and applications of Catmull-Rom curves",
 * doi 10.1016/j.cad.2010.08.008.
 */
function spanPoint([p0, p1, p2, p3]: Span, share: number): XY {
  const gap = (a: XY, b: XY) => Math.sqrt(Math.hypot(b[0] - a[0], b[1] - a[1])) || 1e-6;
  const t1 = gap(p0, p1);
  const t2 = t1 + gap(p1, p2);
  const t3 = t2 + gap(p2, p3);
  const t = t1 + (t2 - t1) * share;
  const mix = (a: XY, b: XY, from: number, to: number): XY => {
    const s = (t - from) / (to - from);
    return [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s];
  };
  const [a1, a2, a3] = [mix(p0, p1, 0, t1), mix(p1, p2, t1, t2), mix(p2, p3, t2, t3)];
  return mix(mix(a1, a2, 0, t2), mix(a2, a3, t1, t3), t1, t2);
}

/** Sides that keep a span within about 2 mm: by the bow of its halves, which falls with the square of their number. */
function spanSides(span: Span): number {
  const [, a, b] = span;
  let bow = 0;
  for (const [from, to] of [
    [0, 0.5],
    [0.5, 1],
  ] as const) {
    const [p, q, m] = [
      from === 0 ? a : spanPoint(span, from),
      to === 1 ? b : spanPoint(span, to),
      spanPoint(span, (from + to) / 2),
    ];
    bow = Math.max(bow, Math.hypot(m[0] - (p[0] + q[0]) / 2, m[1] - (p[1] + q[1]) / 2));
  }
  return Math.min(MOST_SPAN_SIDES, Math.max(2, Math.ceil(2 * Math.sqrt(bow / STRAY_M))));
}

/** Points of the curve in the plane of its first, run from its lesser end so that both directions agree. */
function layCurve(curve: Curve): { points: XY[]; toLonLat: (p: XY) => Position; isTurned: boolean } | null {
  const [first, last] = [curve.points[0], curve.points.at(-1)];
  if (!first || !last || curve.points.length < 3) return null;
  const second = curve.points[1] ?? last;
  const before = curve.points.at(-2) ?? first;
  const [a, b] = samePlace(first, last) ? [second, before] : [first, last];
  const isTurned = a[0] > b[0] || (a[0] === b[0] && a[1] > b[1]);
  const ordered = isTurned ? [...curve.points].reverse() : curve.points;
  const plane = createPlane(ordered[0] ?? first);
  return { points: ordered.map((p) => plane.toPlane(p)), toLonLat: plane.toLonLat, isTurned };
}

export function samePlace(a: Position, b: Position): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Sides of each span of the curve (an arc is one span). Empty for a curve of fewer than three points. */
export function countSides(curve: Curve): number[] {
  const laid = layCurve(curve);
  if (!laid) return [];
  const { points } = laid;
  const [a, b, c] = points;
  if (curve.kind === 'arc') return a && b && c ? [arcSides(arcThrough(a, b, c))] : [];
  const counts = spansOf(points, isClosedCurve(curve)).map(spanSides);
  return laid.isTurned ? counts.reverse() : counts;
}

/** Whether a smooth line comes back to its first point: a ring with no other corner. */
export function isClosedCurve({ kind, points }: Curve): boolean {
  const [first, last] = [points[0], points.at(-1)];
  return kind === 'smooth' && points.length > 3 && !!first && !!last && samePlace(first, last);
}

/**
 * Corners that stand for a curve in a ring, from its first point to its last, those two digit for
 * digit. An arc keeps the area of its circle's segment; a smooth line passes through all its points.
 * The same corners come out when the points are given in the opposite order. Three points of an arc
 * on a line give its two ends.
 * @param counts sides of each span, when not those of countSides()
 * @returns degrees, 11 decimals; two or more
 */
export function flattenCurve(curve: Curve, counts: readonly number[] = countSides(curve)): Position[] {
  const laid = layCurve(curve);
  const ends = [curve.points[0], curve.points.at(-1)].filter((p): p is Position => p !== undefined);
  if (!laid) return ends;
  const { points, toLonLat, isTurned } = laid;
  const [a, b, c] = points;
  const sides = isTurned ? [...counts].reverse() : counts;
  const known = isTurned ? [...curve.points].reverse() : curve.points;
  let made: Position[];
  if (curve.kind === 'arc') {
    if (!a || !b || !c) return ends;
    const corners = arcCorners(a, b, c, sides[0] ?? 1).slice(1, -1);
    made = [known[0], ...corners.map((p) => roundPosition(toLonLat(p))), known[2]].filter(
      (p) => p !== undefined,
    );
  } else {
    made = spansOf(points, isClosedCurve(curve)).flatMap((span, i) => {
      const count = sides[i] ?? 1;
      const start = known[i];
      const inner = Array.from({ length: count - 1 }, (_, j) =>
        roundPosition(toLonLat(spanPoint(span, (j + 1) / count))),
      );
      return start ? [start, ...inner] : inner;
    });
    const last = known.at(-1);
    if (last) made.push(last);
  }
  return isTurned ? made.reverse() : made;
}
