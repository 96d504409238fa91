import {
  areaOfPath,
  areaOfPaths,
  booleanOp,
  booleanOpWithPolyTree,
  type ClipType,
  FillRule,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from './clipper';
import type { PlaneRings, XY } from './types';

/** Grid of the set operations: one micrometre. Coordinates up to 1e3 km stay exact integers. */
export const PER_M = 1e6;

/** A turn or mirroring of the grid and its way back. */
interface Turn {
  to(x: number, y: number): readonly [number, number];
  back(x: number, y: number): readonly [number, number];
}

const turnBy = (angle: number): Turn => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    to: (x, y) => [Math.round(x * c - y * s), Math.round(x * s + y * c)],
    back: (x, y) => [Math.round(x * c + y * s), Math.round(y * c - x * s)],
  };
};

/** First as drawn, then those that keep the grid exactly, then oblique ones, good to 1 µm. */
export const TURNS: readonly Turn[] = [
  { to: (x, y) => [x, y], back: (x, y) => [x, y] },
  { to: (x, y) => [-y, x], back: (x, y) => [y, -x] },
  { to: (x, y) => [-x, -y], back: (x, y) => [-x, -y] },
  { to: (x, y) => [y, -x], back: (x, y) => [-y, x] },
  turnBy(0.7),
  turnBy(1.9),
  turnBy(2.6),
];

/** Rings on the grid; outer rings counter-clockwise and holes clockwise, so that the non-zero rule sees the holes. */
export function toPaths(parts: readonly PlaneRings[]): Paths64 {
  const paths: Paths64 = [];
  for (const rings of parts) {
    rings.forEach((ring, i) => {
      const path = ring
        .slice(0, -1)
        .map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) }));
      if (path.length < 3) return;
      if (areaOfPath(path) > 0 !== (i === 0)) path.reverse();
      paths.push(path);
    });
  }
  return paths;
}

/** Turned paths; they keep their winding. */
export function turnPaths(paths: Paths64, turn: Turn): Paths64 {
  return turn === TURNS[0]
    ? paths
    : paths.map((path) =>
        path.map((p) => {
          const [x, y] = turn.to(p.x, p.y);
          return { x, y };
        }),
      );
}

function close(path: { x: number; y: number }[], turn: Turn): XY[] {
  const ring = path.map((p): XY => {
    const [x, y] = turn.back(p.x, p.y);
    return [x / PER_M, y / PER_M];
  });
  const first = ring[0];
  if (first) ring.push(first);
  return ring;
}

/** The tree of an operation as parts with holes, turned back. */
export function fromTree(tree: PolyTree64, turn: Turn = TURNS[0] as Turn): PlaneRings[] {
  const parts: PlaneRings[] = [];
  const visitOuter = (node: PolyPath64): void => {
    const holes: XY[][] = [];
    for (let i = 0; i < node.count; i++) {
      const hole = node.child(i) as PolyPath64;
      if (hole.poly) holes.push(close(hole.poly, turn));
      for (let k = 0; k < hole.count; k++) visitOuter(hole.child(k) as PolyPath64);
    }
    if (node.poly) parts.push([close(node.poly, turn), ...holes]);
  };
  for (let i = 0; i < tree.count; i++) visitOuter(tree.child(i) as PolyPath64);
  return parts;
}

/** One run of the library. */
export function operate(type: ClipType, subject: Paths64, clip: Paths64 | null): PolyTree64 {
  const tree = new PolyTree64();
  booleanOpWithPolyTree(type, subject, clip, tree, FillRule.NonZero);
  return tree;
}

/** The area alone of what an operation gives, grid units squared. */
export function areaAfter(type: ClipType, subject: Paths64, clip: Paths64 | null): number {
  return areaOfPaths(booleanOp(type, subject, clip, FillRule.NonZero));
}

/** Length of all paths, grid units. */
export function lengthOf(paths: Paths64): number {
  let sum = 0;
  for (const path of paths) {
    let before = path.at(-1);
    for (const p of path) {
      if (before) sum += Math.hypot(p.x - before.x, p.y - before.y);
      before = p;
    }
  }
  return sum;
}
