import type { XY } from '../measure/types';
import { outwardOf } from './outerSides';
import type { Outline } from './outline';
import { areNear, distanceToSegment, pointAt, type Segment, type Span, spanInDisc } from './segments';

/** The eye stands this far inside the hardscape, m: off a wall that the edge may run along. */
const EYE_M = 1e-4;
/** Treated ground this near lies at the edge: nothing stands between, m. */
const TOUCH_M = 2e-3;
/** What is seen of treated outline counts from this length on, m. */
const LEAST_SEEN_M = 1e-4;
/** How near the end of what is seen is found, m. */
const END_M = 1e-4;
/** Places at which sight is asked for are at most this far apart, m. */
const MOST_STEP_M = 0.2;
const LEAST_STEP_M = 0.05;

/**
 * Of the spans of an edge within reach, what some treated ground within reach is seen from: product flies
 * straight, and a structure between hides it. Asked every eighth of the reach (5 to 20 cm), the ends then
 * found to 0.1 mm: a gap between two structures that lets through less than such a step may be missed.
 * @param edge side of the hardscape's outline
 * @param outward 1 when the hardscape's ground lies right of the side's direction, -1 when left
 * @param treated sides of treated ground on the outer side of the edge, see outerSides()
 * @param spans of the edge within `reachM` of these, in any order; may overlap
 * @returns spans in order that do not overlap; the same spans where no structure stands near
 */
export function seenSpans(
  edge: Segment,
  outward: 1 | -1,
  treated: readonly Segment[],
  spans: readonly Span[],
  reachM: number,
  structures: readonly Outline[],
): readonly Span[] {
  if (spans.length === 0) return spans;
  const walls = structures.flatMap((structure) => structure.sidesNear(edge, reachM));
  if (walls.length === 0) return spans;
  const lengthM = Math.hypot(edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]);
  const step = Math.min(MOST_STEP_M, Math.max(LEAST_STEP_M, reachM / 8)) / lengthM;
  const [nx, ny] = outwardOf(edge, outward);
  const sees = (share: number): boolean => {
    const at = pointAt(edge, share);
    if (treated.some((side) => distanceToSegment(at, side) <= TOUCH_M)) return true;
    const eye: XY = [at[0] - nx * EYE_M, at[1] - ny * EYE_M];
    const near = walls.filter((wall) => areNear([at, at], wall, reachM));
    return treated.some((side) => seesSide(eye, side, reachM + EYE_M, near));
  };
  return mergeSpans(spans).flatMap((span) => seenOfSpan(span, sees, step, END_M / lengthM));
}

function seenOfSpan(
  [from, to]: Span,
  sees: (share: number) => boolean,
  step: number,
  endShare: number,
): Span[] {
  const count = Math.max(1, Math.ceil((to - from) / step));
  const shareOf = (i: number): number => from + ((i + 0.5) / count) * (to - from);
  const seen: Span[] = [];
  let begun: number | null = sees(shareOf(0)) ? from : null;
  for (let i = 1; i < count; i += 1) {
    const isSeen = sees(shareOf(i));
    if (isSeen === (begun !== null)) continue;
    let [low, high] = [shareOf(i - 1), shareOf(i)];
    while (high - low > endShare) {
      const middle = (low + high) / 2;
      if (sees(middle) === isSeen) high = middle;
      else low = middle;
    }
    if (begun === null) begun = high;
    else {
      seen.push([begun, low]);
      begun = null;
    }
  }
  if (begun !== null) seen.push([begun, to]);
  return seen.filter(([start, end]) => end > start);
}

/** Spans in order, those that overlap or touch made one. */
function mergeSpans(spans: readonly Span[]): Span[] {
  const merged: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = merged.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else merged.push([from, to]);
  }
  return merged;
}

/** Whether some of a side within reach is seen from the eye past all walls. */
function seesSide(eye: XY, side: Segment, reachM: number, walls: readonly Segment[]): boolean {
  const disc = spanInDisc(side, eye, reachM);
  if (!disc) return false;
  const [from, to] = [Math.max(0, disc[0]), Math.min(1, disc[1])];
  const lengthM = Math.hypot(side[1][0] - side[0][0], side[1][1] - side[0][1]);
  const least = LEAST_SEEN_M / lengthM;
  if (to - from <= least) return false;
  const shadows = walls.map((wall) => shadowOf(eye, wall, side)).filter((span) => span !== null);
  let lit = from;
  for (const [start, end] of mergeSpans(shadows)) {
    if (start - lit > least) break;
    lit = Math.max(lit, end);
  }
  return to - lit > least;
}

/** The span of a side that a wall hides from the eye; shares that may pass 0..1; null: none. */
function shadowOf(eye: XY, wall: Segment, side: Segment): Span | null {
  const facing = cross(wall[0], wall[1], eye);
  if (facing === 0) return null;
  const [a, b] = facing > 0 ? wall : [wall[1], wall[0]];
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  // behind the wall, and between the two lines of sight past its ends: each is not more than 0
  for (const [p, q, sign] of [
    [a, b, 1],
    [eye, a, -1],
    [eye, b, 1],
  ] as const) {
    const start = sign * cross(p, q, side[0]);
    const change = sign * cross(p, q, side[1]) - start;
    if (change === 0) {
      if (start > 0) return null;
    } else if (change > 0) to = Math.min(to, -start / change);
    else from = Math.max(from, -start / change);
  }
  return from < to ? [from, to] : null;
}

/** More than 0 where r lies left of the line from p to q. */
function cross(p: XY, q: XY, r: XY): number {
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
}
