import { distanceToSegment } from '../../cover/segments';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';
import { halfTurn } from './passes-edits';

/** A straight stretch of a zone's outline. */
export interface ZoneEdge {
  readonly from: XY;
  readonly to: XY;
  readonly lengthM: number;
  /** degrees clockwise from north, 0 to <180. */
  readonly headingDeg: number;
  /** direction in which it faces out of the ground, degrees clockwise from north, 0 to <360. */
  readonly facesDeg: number;
}

/** Corners that turn less than this do not end an edge, degrees: a side drawn in several clicks is one. */
const STRAIGHT_DEG = 4;

/** Edges of a zone's ground, the longest first. @param parts in the plane, m; outer rings and holes of any winding */
export function longestEdges(parts: readonly PlaneRings[]): readonly ZoneEdge[] {
  return parts
    .flatMap((rings) => rings.flatMap((ring, i) => edgesOfRing(ring, i > 0)))
    .sort((a, b) => b.lengthM - a.lengthM);
}

/** The edge nearest to a place; null where there is no ground. */
export function nearestEdge(parts: readonly PlaneRings[], place: XY): ZoneEdge | null {
  let [best, least]: [ZoneEdge | null, number] = [null, Number.POSITIVE_INFINITY];
  for (const edge of longestEdges(parts)) {
    const distance = distanceToSegment(place, [edge.from, edge.to]);
    if (distance < least) [best, least] = [edge, distance];
  }
  return best;
}

function edgesOfRing(ring: readonly XY[], isHole: boolean): readonly ZoneEdge[] {
  const corners = ring.filter((p, i) => i === 0 || !isSame(p, ring[i - 1] as XY));
  if (corners.length > 1 && isSame(corners[0] as XY, corners[corners.length - 1] as XY)) corners.pop();
  const count = corners.length;
  if (count < 3) return [];
  const at = (i: number) => corners[((i % count) + count) % count] as XY;
  const first = corners.findIndex((_, i) => turnAt(at(i - 1), at(i), at(i + 1)) >= STRAIGHT_DEG);
  // a circle of many small sides has no corner to begin at
  const start = Math.max(0, first);
  const isLeft = signedArea([...corners, at(0)]) > 0;
  const edges: ZoneEdge[] = [];
  let from = start;
  for (let i = start + 1; i <= start + count; i++) {
    const isEnd = i === start + count;
    // the turn is held against the whole edge so far: many small turns of a bend add up
    const turn = turnAt(at(from), at(i), at(i + 1));
    const firstTurn = turnAt(at(i - 1), at(i), at(i + 1));
    if (!isEnd && turn < STRAIGHT_DEG && firstTurn < STRAIGHT_DEG) continue;
    edges.push(edgeOf(at(from), at(i), isLeft === isHole));
    from = i;
  }
  return edges;
}

/** @param isGroundRight ground lies at the right of the way from one end to the other */
function edgeOf(from: XY, to: XY, isGroundRight: boolean): ZoneEdge {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const bearing = (Math.atan2(dx, dy) * 180) / Math.PI;
  const facesDeg = (((bearing + (isGroundRight ? -90 : 90)) % 360) + 360) % 360;
  return { from, to, lengthM: Math.hypot(dx, dy), headingDeg: halfTurn(bearing), facesDeg };
}

/** How far the way a, b, c turns at b, degrees, 0 to 180. */
function turnAt(a: XY, b: XY, c: XY): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return Math.abs((Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * 180) / Math.PI);
}

function isSame(a: XY, b: XY): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
