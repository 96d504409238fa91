import { planeAreaOf } from '../measure/clip';
import { fromTree, PER_M } from '../measure/clipPaths';
import { booleanOp, booleanOpWithPolyTree, ClipType, FillRule, PolyTree64 } from '../measure/clipper';
import type { PlaneRings } from '../measure/types';
import type { FillChoice } from './importTypes';

/** Pieces smaller than this are left by the rounding of the grid, m². */
const NOISE_M2 = 1e-4;

/**
 * Makes sound parts of rings that cross themselves, by a union in Clipper2 on a grid of 1 µm.
 * `non-zero`: all ground the outline goes round counts once, however often it goes round it.
 * `even-odd`: ground gone round twice is left out.
 * @param rings of one polygon in a plane, metres, closed; the outer ring first, then holes, each filled by the rule
 * @returns parts with holes; empty when no ground is left
 */
export function mendRings(rings: PlaneRings, fill: FillChoice): PlaneRings[] {
  const rule = fill === 'non-zero' ? FillRule.NonZero : FillRule.EvenOdd;
  const [outer, ...holes] = rings.map((ring) =>
    ring.slice(0, -1).map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) })),
  );
  if (!outer) return [];
  const filled = (paths: (typeof outer)[]) => booleanOp(ClipType.Union, paths, null, rule);
  const ground = filled([outer]);
  const taken = holes.flatMap((hole) => filled([hole]));
  const tree = new PolyTree64();
  booleanOpWithPolyTree(ClipType.Difference, ground, taken, tree, FillRule.NonZero);
  return fromTree(tree).filter((part) => planeAreaOf([part]) >= NOISE_M2);
}
