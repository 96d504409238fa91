import {
  Clipper,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from 'clipper2-ts';
import type { PlaneRings, XY } from './types';

/** Grid of the set operations: one micrometre. Coordinates up to 1e3 km stay exact integers. */
const PER_M = 1e6;
/** Rounded corners of a buffer stray from the true arc by at most this, m. */
export const ARC_TOLERANCE_M = 0.005;

function toPaths(parts: readonly PlaneRings[]): Paths64 {
  const paths: Paths64 = [];
  for (const rings of parts) {
    rings.forEach((ring, i) => {
      const path = ring
        .slice(0, -1)
        .map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) }));
      if (path.length < 3) return;
      // Outer rings turn counter-clockwise and holes clockwise, so that the non-zero rule sees the holes.
      if (Clipper.area(path) > 0 !== (i === 0)) path.reverse();
      paths.push(path);
    });
  }
  return paths;
}

function close(path: { x: number; y: number }[]): XY[] {
  const ring = path.map((p): XY => [p.x / PER_M, p.y / PER_M]);
  const first = ring[0];
  if (first) ring.push(first);
  return ring;
}

function fromTree(tree: PolyTree64): PlaneRings[] {
  const parts: PlaneRings[] = [];
  const visitOuter = (node: PolyPath64): void => {
    const holes: XY[][] = [];
    for (let i = 0; i < node.count; i++) {
      const hole = node.child(i) as PolyPath64;
      if (hole.poly) holes.push(close(hole.poly));
      for (let k = 0; k < hole.count; k++) visitOuter(hole.child(k) as PolyPath64);
    }
    if (node.poly) parts.push([close(node.poly), ...holes]);
  };
  for (let i = 0; i < tree.count; i++) visitOuter(tree.child(i) as PolyPath64);
  return parts;
}

function operate(type: ClipType, subject: readonly PlaneRings[], clip: readonly PlaneRings[]): PlaneRings[] {
  const tree = new PolyTree64();
  Clipper.booleanOpWithPolyTree(type, toPaths(subject), toPaths(clip), tree, FillRule.NonZero);
  return fromTree(tree);
}

/**
 * Set operations on polygons with holes in the yard's plane, by the Clipper2 library on a grid of 1 µm:
 * every output corner is an input corner or a crossing, within 1 µm.
 * @param parts closed rings, outer first, any winding; not changed
 * @returns parts with holes; outer rings counter-clockwise; empty when nothing is left
 */
export function unionOf(parts: readonly PlaneRings[]): PlaneRings[] {
  return operate(ClipType.Union, parts, []);
}

/** Ground of `from` that is not in `take`. As unionOf. */
export function differenceOf(from: readonly PlaneRings[], take: readonly PlaneRings[]): PlaneRings[] {
  return take.length === 0 ? unionOf(from) : operate(ClipType.Difference, from, take);
}

/** Ground in both. As unionOf. */
export function intersectionOf(a: readonly PlaneRings[], b: readonly PlaneRings[]): PlaneRings[] {
  return a.length === 0 || b.length === 0 ? [] : operate(ClipType.Intersection, a, b);
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
    const clean = toPaths(unionOf(source.parts));
    grown =
      delta === 0 ? clean : Clipper.inflatePaths(clean, delta, JoinType.Round, EndType.Polygon, 2, tolerance);
  } else {
    if (distanceM <= 0) return [];
    const line = 'line' in source ? source.line : [source.point];
    grown = Clipper.inflatePaths([toPath(line)], delta, JoinType.Round, EndType.Round, 2, tolerance);
  }
  const tree = new PolyTree64();
  Clipper.booleanOpWithPolyTree(ClipType.Union, grown, null, tree, FillRule.NonZero);
  return fromTree(tree);
}

/**
 * Closing: grown by `distanceM` and shrunk again, so that gaps narrower than twice that fill up.
 * Corners turned inward keep their point (down to about 11°), so no fillets are made.
 */
export function closingOf(parts: readonly PlaneRings[], distanceM: number): PlaneRings[] {
  const grown = toPaths(bufferOf({ parts }, distanceM));
  const back = Clipper.inflatePaths(grown, -distanceM * PER_M, JoinType.Miter, EndType.Polygon, 10);
  const tree = new PolyTree64();
  Clipper.booleanOpWithPolyTree(ClipType.Union, back, null, tree, FillRule.NonZero);
  return fromTree(tree);
}

/** Planar area of parts, holes taken off, m² of the plane (not the ground: see geodesic.ts). */
export function planeAreaOf(parts: readonly PlaneRings[]): number {
  return parts.reduce(
    (sum, rings) =>
      sum + rings.reduce((s, ring, i) => s + (i === 0 ? 1 : -1) * Math.abs(signedArea(ring)), 0),
    0,
  );
}

function signedArea(ring: readonly XY[]): number {
  let twice = 0;
  for (let i = 1; i < ring.length; i++) {
    const a = ring[i - 1];
    const b = ring[i];
    if (a && b) twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice / 2;
}
