import { ClipType, FillRule, type Paths64, PathType } from 'clipper2-ts/dist/Core.js';
import { Clipper64, type PolyPath64, PolyTree64 } from 'clipper2-ts/dist/Engine.js';
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts/dist/Offset.js';

/*
 * What we use of Clipper2, from its own files: its front (`Clipper`) draws in triangulation and more that
 * nothing here calls, a tenth of what the page loads first.
 */
export { ClipType, EndType, FillRule, JoinType, type Paths64, type PolyPath64, PolyTree64 };

/** One set operation of closed paths of whole numbers. @param clip null: none, for a union of `subject` */
export function booleanOp(
  type: ClipType,
  subject: Paths64,
  clip: Paths64 | null,
  fillRule: FillRule,
): Paths64 {
  const solution: Paths64 = [];
  engineOf(subject, clip).execute(type, fillRule, solution);
  return solution;
}

/** The same with holes nested in their outer paths, added to `tree`. */
export function booleanOpWithPolyTree(
  type: ClipType,
  subject: Paths64,
  clip: Paths64 | null,
  tree: PolyTree64,
  fillRule: FillRule,
): void {
  engineOf(subject, clip).execute(type, fillRule, tree);
}

function engineOf(subject: Paths64, clip: Paths64 | null): Clipper64 {
  const engine = new Clipper64();
  engine.addPaths(subject, PathType.Subject);
  if (clip !== null) engine.addPaths(clip, PathType.Clip);
  return engine;
}

/** Paths grown (or, by less than 0, shrunk) by a width in units of the grid. */
export function inflatePaths(
  paths: Paths64,
  delta: number,
  joinType: JoinType,
  endType: EndType,
  miterLimit = 2,
  arcTolerance = 0,
): Paths64 {
  const offset = new ClipperOffset(miterLimit, arcTolerance);
  offset.addPaths(paths, joinType, endType);
  const solution: Paths64 = [];
  offset.execute(delta, solution);
  return solution;
}

/** Signed area of a path, more than 0 when it runs counter-clockwise with y up (shoelace). */
export function areaOfPath(path: Paths64[number]): number {
  let twice = 0;
  let before = path[path.length - 1];
  for (const point of path) {
    if (before) twice += (before.y + point.y) * (before.x - point.x);
    before = point;
  }
  return path.length < 3 ? 0 : twice / 2;
}

/** Sum of the signed areas. */
export function areaOfPaths(paths: Paths64): number {
  return paths.reduce((sum, path) => sum + areaOfPath(path), 0);
}
