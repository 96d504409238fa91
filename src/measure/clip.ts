import { areaAfter, fromTree, lengthOf, operate, PER_M, TURNS, toPaths, turnPaths } from './clipPaths';
import { areaOfPaths, ClipType, EndType, inflatePaths, JoinType, type Paths64 } from './clipper';
import { boxesNear, boxOf } from './planeBox';
import { signedArea } from './signedArea';
import type { PlaneRings, XY } from './types';

/** Rounded corners of a buffer stray from the true arc by at most this, m. */
export const ARC_TOLERANCE_M = 0.005;
/** Areas that ought to agree may differ by this for each metre of outline, m: half a step of the grid. */
const ROUNDING_M = 5e-7;
/** and by this besides, m². */
const ROUNDING_M2 = 1e-5;
/** Mitred corners reach at most so many times the distance: corners down to about 39° keep their point. */
const MITRE_LIMIT = 3;

/** Boxes further from each other than this do not touch, m. */
const APART_M = 1e-4;
/** Pieces grown by this overlap where they abutted, steps of the grid. */
const OVERLAP = 5;

/*
 * Clipper2 errs at times (about 1 in 1,000 cases of six polygons cut by each other, by 1 m² or more)
 * where edges lie on each other within the rounding of the grid: it loses a piece, or nests it as a
 * hole. So no result is taken unproved: what an operation takes and what it leaves must make up the
 * whole, and a union must have the summed area of its pieces or, where they overlap, that of the
 * union of pieces grown by a few steps, which abut no longer. One that fails is done again with the grid turned, which meets other roundings.
 */

function slackOf(...all: Paths64[]): number {
  const length = all.reduce((sum, paths) => sum + lengthOf(paths), 0);
  return ROUNDING_M * PER_M * length + ROUNDING_M2 * PER_M * PER_M;
}

/** Ground of `from` inside or outside `by`. `from` covers each square metre once. */
function parted(
  type: ClipType.Intersection | ClipType.Difference,
  from: readonly PlaneRings[],
  by: readonly PlaneRings[],
): PlaneRings[] {
  // Pieces that touch could be misread alike in what is taken and in what is left.
  const [subject, clip] = [toPaths(from), toPaths(areApart(by) ? by : unionOf(by))];
  const [whole, taker] = [areaOfPaths(subject), areaOfPaths(clip)];
  const slack = slackOf(subject) + (clip.length > 1 ? slackOf(clip) : 0);
  const isOutside = type === ClipType.Difference;
  let best: { miss: number; parts: PlaneRings[] } | undefined;
  for (const turn of TURNS) {
    const [s, c] = [turnPaths(subject, turn), turnPaths(clip, turn)];
    const parts = fromTree(operate(type, s, c), turn);
    const [own, other] = [
      gridAreaOf(parts),
      areaAfter(isOutside ? ClipType.Intersection : ClipType.Difference, s, c),
    ];
    let miss = Math.abs(own + other - whole);
    if (clip.length > 1) {
      const beyond = areaAfter(ClipType.Difference, c, s);
      miss += Math.abs((isOutside ? other : own) + beyond - taker);
    }
    if (!best || miss < best.miss) best = { miss, parts };
    if (miss <= slack) break;
  }
  return best?.parts ?? [];
}

/**
 * Set operations on polygons with holes in the yard's plane, by the Clipper2 library on a grid of 1 µm:
 * every output corner is an input corner or a crossing, within 2 µm. Each result is proved by areas.
 * @param parts closed rings, outer first, any winding; not changed
 * @returns parts with holes; outer rings counter-clockwise; empty when nothing is left
 */
export function unionOf(parts: readonly PlaneRings[]): PlaneRings[] {
  const paths = toPaths(parts);
  const slack = slackOf(paths);
  const sum = areaOfPaths(paths);
  let best: { miss: number; parts: PlaneRings[] } | undefined;
  for (const turn of TURNS) {
    const turned = turnPaths(paths, turn);
    const made = fromTree(operate(ClipType.Union, turned, null), turn);
    if (Math.abs(gridAreaOf(made) - sum) <= slack) return made;
    // Inflating puts the grown pieces together by itself.
    const grown = inflatePaths(turned, OVERLAP, JoinType.Miter, EndType.Polygon, MITRE_LIMIT);
    const miss = Math.abs(gridAreaOf(made) - areaOfPaths(grown) + OVERLAP * lengthOf(grown));
    if (!best || miss < best.miss) best = { miss, parts: made };
    if (miss <= slack) break;
  }
  return best?.parts ?? [];
}

/** Whether no two parts come near each other, by their boxes. */
function areApart(parts: readonly PlaneRings[]): boolean {
  const boxes = parts.map((rings) => boxOf([rings]));
  return boxes.every((box, i) => boxes.every((other, j) => j <= i || !boxesNear(box, other, APART_M)));
}

function gridAreaOf(parts: readonly PlaneRings[]): number {
  return planeAreaOf(parts) * PER_M * PER_M;
}

/** Ground of `from`, which covers each square metre once, that is not in `take`. As unionOf. */
export function differenceOf(from: readonly PlaneRings[], take: readonly PlaneRings[]): PlaneRings[] {
  return take.length === 0 ? [...from] : parted(ClipType.Difference, from, take);
}

/** The same without proof: only for a caller that proves the result itself. */
export function quickDifferenceOf(from: readonly PlaneRings[], take: readonly PlaneRings[]): PlaneRings[] {
  return fromTree(operate(ClipType.Difference, toPaths(from), toPaths(take)));
}

/** Ground of `a`, which covers each square metre once, that is also in `b`. As unionOf. */
export function intersectionOf(a: readonly PlaneRings[], b: readonly PlaneRings[]): PlaneRings[] {
  return a.length === 0 || b.length === 0 ? [] : parted(ClipType.Intersection, a, b);
}

/** What to buffer: areas, open lines, or single points. */
export type BufferSource =
  | { readonly parts: readonly PlaneRings[] }
  | { readonly line: readonly XY[] }
  | { readonly point: XY };

/**
 * All ground within `distanceM` of areas, a line or a point; corners round within ARC_TOLERANCE_M.
 * A negative distance shrinks areas. @param source in the yard's plane
 */
export function bufferOf(source: BufferSource, distanceM: number): PlaneRings[] {
  const tolerance = ARC_TOLERANCE_M * PER_M;
  const delta = distanceM * PER_M;
  const toPath = (line: readonly XY[]) =>
    line.map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) }));
  let grown: Paths64;
  if ('parts' in source) {
    if (delta === 0) return unionOf(source.parts);
    // Grown pieces overlap where they abutted. Before shrinking they are grown by a few steps, so that no
    // crack of the grid's rounding opens between them.
    const paths = toPaths(source.parts);
    const whole = delta < 0 ? inflatePaths(paths, OVERLAP, JoinType.Miter, EndType.Polygon, 2) : paths;
    const by = delta < 0 ? delta - OVERLAP : delta;
    grown = inflatePaths(whole, by, JoinType.Round, EndType.Polygon, 2, tolerance);
  } else {
    if (distanceM <= 0) return [];
    const line = 'line' in source ? source.line : [source.point];
    grown = inflatePaths([toPath(line)], delta, JoinType.Round, EndType.Round, 2, tolerance);
  }
  return fromTree(operate(ClipType.Union, grown, null));
}

/**
 * All ground within `distanceM` of areas, and never less: straight along their sides, round at corners
 * by lines that pass the true arc by at most ARC_TOLERANCE_M, where bufferOf stays inside it.
 * @param distanceM more than 0
 */
export function coverWithin(parts: readonly PlaneRings[], distanceM: number): PlaneRings[] {
  // Both hold the true ground: one is exact along sides, the other near enough at corners.
  const straight = inflatePaths(
    toPaths(parts),
    distanceM * PER_M,
    JoinType.Miter,
    EndType.Polygon,
    MITRE_LIMIT,
  );
  return intersectionOf(
    fromTree(operate(ClipType.Union, straight, null)),
    bufferOf({ parts }, distanceM + ARC_TOLERANCE_M),
  );
}

/**
 * Closing: grown by `distanceM` and shrunk again, both with pointed corners, so that gaps narrower than
 * twice that fill up to straight ends. Wedges that open by more than about 11° stay open.
 */
export function closingOf(parts: readonly PlaneRings[], distanceM: number): PlaneRings[] {
  const by = distanceM * PER_M;
  const grown = inflatePaths(toPaths(parts), by, JoinType.Miter, EndType.Polygon, MITRE_LIMIT);
  const back = inflatePaths(grown, -by, JoinType.Miter, EndType.Polygon, 10);
  return fromTree(operate(ClipType.Union, back, null));
}

/** Planar area of parts, holes taken off, m² of the plane (not the ground: see geodesic.ts). */
export function planeAreaOf(parts: readonly PlaneRings[]): number {
  return parts.reduce(
    (sum, rings) =>
      sum + rings.reduce((s, ring, i) => s + (i === 0 ? 1 : -1) * Math.abs(signedArea(ring)), 0),
    0,
  );
}
