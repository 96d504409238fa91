import type { Position, Rings } from '../yard/types';
import { ARC_TOLERANCE_M } from './clip';
import { fromTree, operate, PER_M } from './clipPaths';
import { ClipType, EndType, inflatePaths, JoinType, type Paths64 } from './clipper';
import { roundPosition } from './corners';
import { ringsToLonLat } from './plane';
import type { LocalPlane, PlaneRings, XY } from './types';

/** Mitred bends sharper than about 29° are cut off square. */
const MITRE_LIMIT = 4;

/** How a ribbon goes round a bend. */
export type Joint = 'round' | 'mitred';

/**
 * Ground within half a width of a line, square across at its ends; where it meets itself it is one. A line
 * that ends at its first point is closed. By the Clipper2 library, as all set operations here.
 * @param line plane metres, two or more different points @param widthM more than 0
 */
export function ribbonOf(line: readonly XY[], widthM: number, joint: Joint): PlaneRings[] {
  const [first, last] = [line[0], line.at(-1)];
  const isClosed = line.length > 3 && !!first && !!last && first[0] === last[0] && first[1] === last[1];
  const path = (isClosed ? line.slice(0, -1) : line).map(([x, y]) => ({
    x: Math.round(x * PER_M),
    y: Math.round(y * PER_M),
  }));
  const grown: Paths64 = inflatePaths(
    [path],
    (widthM / 2) * PER_M,
    joint === 'round' ? JoinType.Round : JoinType.Miter,
    isClosed ? EndType.Joined : EndType.Butt,
    MITRE_LIMIT,
    ARC_TOLERANCE_M * PER_M,
  );
  return fromTree(operate(ClipType.Union, grown, null));
}

/**
 * A band of ground along a middle line, such as a walk. @param line degrees @param widthM more than 0
 * @returns parts in degrees; empty when the line has no length
 */
export function makeBand(
  line: readonly Position[],
  widthM: number,
  joint: Joint,
  plane: LocalPlane,
): Rings[] {
  if (!(widthM > 0) || line.length < 2) return [];
  const parts = ribbonOf(
    line.map((p) => plane.toPlane(p)),
    widthM,
    joint,
  );
  return parts.map((rings) => ringsToLonLat(rings, plane).map((ring) => ring.map(roundPosition)));
}
