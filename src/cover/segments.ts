import type { PlaneRings, XY } from '../measure/types';

export type Segment = readonly [XY, XY];
/** Part of a segment, as shares of its length: 0 <= from < to <= 1. */
export type Span = readonly [from: number, to: number];

/** @returns the sides of closed rings; sides of no length are left out. */
export function sidesOf(parts: readonly PlaneRings[]): Segment[] {
  const sides: Segment[] = [];
  for (const rings of parts) {
    for (const ring of rings) {
      for (let i = 1; i < ring.length; i += 1) {
        const a = ring[i - 1] as XY;
        const b = ring[i] as XY;
        if (a[0] !== b[0] || a[1] !== b[1]) sides.push([a, b]);
      }
    }
  }
  return sides;
}

/** @returns the point at share t of a segment. */
export function pointAt(segment: Segment, t: number): XY {
  const [a, b] = segment;
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** @returns distance from a point to a segment, in the plane's unit. */
export function distanceToSegment(p: XY, [a, b]: Segment): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared;
  const held = Math.min(1, Math.max(0, t));
  return Math.hypot(p[0] - a[0] - held * dx, p[1] - a[1] - held * dy);
}

/** @returns least distance between two segments; 0 where they cross. */
export function distanceBetween(first: Segment, second: Segment): number {
  if (crossingShare(first, second) !== null) return 0;
  return Math.min(
    distanceToSegment(first[0], second),
    distanceToSegment(first[1], second),
    distanceToSegment(second[0], first),
    distanceToSegment(second[1], first),
  );
}

/** @returns where `first` crosses `second`, as a share of `first`; null when they do not or run parallel. */
export function crossingShare([a, b]: Segment, [c, d]: Segment): number | null {
  const rx = b[0] - a[0];
  const ry = b[1] - a[1];
  const sx = d[0] - c[0];
  const sy = d[1] - c[1];
  const cross = rx * sy - ry * sx;
  if (cross === 0) return null;
  const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross;
  const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? t : null;
}

/** @returns false when the boxes round two segments are further apart than `reach`: a quick no. */
export function areNear([a, b]: Segment, [c, d]: Segment, reach: number): boolean {
  return (
    Math.min(a[0], b[0]) <= Math.max(c[0], d[0]) + reach &&
    Math.max(a[0], b[0]) >= Math.min(c[0], d[0]) - reach &&
    Math.min(a[1], b[1]) <= Math.max(c[1], d[1]) + reach &&
    Math.max(a[1], b[1]) >= Math.min(c[1], d[1]) - reach
  );
}

/**
 * The span of a segment no further than `reach` from another one, exactly: the ground within reach of
 * a segment is convex (a rectangle with a disc at each end), so one span at most.
 * @returns null when none is within reach, or the segments only touch it in a point
 */
export function spanWithin(segment: Segment, other: Segment, reach: number): Span | null {
  if (!areNear(segment, other, reach)) return null;
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  const take = (span: Span | null): void => {
    if (!span) return;
    from = Math.min(from, span[0]);
    to = Math.max(to, span[1]);
  };
  take(spanInDisc(segment, other[0], reach));
  take(spanInDisc(segment, other[1], reach));
  take(spanInBand(segment, other, reach));
  from = Math.max(0, from);
  to = Math.min(1, to);
  return from < to ? [from, to] : null;
}

/** The span of a segment inside a disc; shares that may pass 0..1; null when there is none. */
export function spanInDisc([a, b]: Segment, centre: XY, radius: number): Span | null {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return null;
  const middle = ((centre[0] - a[0]) * dx + (centre[1] - a[1]) * dy) / squared;
  const away = ((centre[0] - a[0]) * dy - (centre[1] - a[1]) * dx) ** 2 / squared;
  const half = radius * radius - away;
  if (half <= 0) return null;
  const share = Math.sqrt(half / squared);
  return [middle - share, middle + share];
}

/**
 * The span inside the rectangle of half width `reach` round another segment, its ends cut square.
 * @returns shares that may pass 0..1; null when there is none
 */
export function spanInBand([a, b]: Segment, [c, d]: Segment, reach: number): Span | null {
  const length = Math.hypot(d[0] - c[0], d[1] - c[1]);
  if (length === 0) return null;
  const ux = (d[0] - c[0]) / length;
  const uy = (d[1] - c[1]) / length;
  const along = (p: XY): number => (p[0] - c[0]) * ux + (p[1] - c[1]) * uy;
  const across = (p: XY): number => (p[1] - c[1]) * ux - (p[0] - c[0]) * uy;
  const first = spanBetween(along(a), along(b), 0, length);
  const second = spanBetween(across(a), across(b), -reach, reach);
  if (!first || !second) return null;
  const span: Span = [Math.max(first[0], second[0]), Math.min(first[1], second[1])];
  return span[0] < span[1] ? span : null;
}

/** Shares t for which start + t (end - start) lies in low..high, unbounded when it does not change. */
function spanBetween(start: number, end: number, low: number, high: number): Span | null {
  const change = end - start;
  if (change === 0)
    return start >= low && start <= high ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : null;
  const one = (low - start) / change;
  const two = (high - start) / change;
  return [Math.min(one, two), Math.max(one, two)];
}
