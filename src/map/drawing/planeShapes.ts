import { roundPosition } from '../../measure/corners';
import { flattenCurve } from '../../measure/curves';
import type { LocalPlane } from '../../measure/types';
import type { Curve, Position, Ring } from '../../yard/types';

/** Corners of a circle under way. */
export const CIRCLE_CORNERS = 64;

function ringFrom(plane: LocalPlane, corners: readonly (readonly [number, number])[]): Ring {
  const places = corners.map((corner) => roundPosition(plane.toLonLat(corner)));
  return places[0] ? [...places, places[0]] : [];
}

/**
 * Rectangle on the ground from one side and a point its far side passes through. The web map's own
 * right angles are those of a sphere, off by up to 0.2 degrees on the ellipsoid; these are square.
 * @returns closed ring of 4 corners; both ends of the side keep their coordinates
 */
export function rectangleRing(plane: LocalPlane, from: Position, to: Position, through: Position): Ring {
  const [ax, ay] = plane.toPlane(from);
  const [bx, by] = plane.toPlane(to);
  const [px, py] = plane.toPlane(through);
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return [];
  const nx = -(by - ay) / length;
  const ny = (bx - ax) / length;
  const depth = (px - bx) * nx + (py - by) * ny;
  const ring = ringFrom(plane, [
    [bx + nx * depth, by + ny * depth],
    [ax + nx * depth, ay + ny * depth],
  ]);
  const [far, near] = ring;
  return far && near ? [from, to, far, near, from] : [];
}

/**
 * Rectangle on the ground with sides north and east, from two opposite corners.
 * @returns closed ring of 4 corners; both corners given keep their coordinates
 */
export function uprightRing(plane: LocalPlane, from: Position, to: Position): Ring {
  const [ax, ay] = plane.toPlane(from);
  const [bx, by] = plane.toPlane(to);
  const [low, high] = ringFrom(plane, [
    [bx, ay],
    [ax, by],
  ]);
  return low && high && ax !== bx && ay !== by ? [from, low, to, high, from] : [];
}

/**
 * Circle on the ground as two arcs, east over north to west and back over south, so that it stays
 * editable; the ring encloses the circle's own area, pi r squared.
 */
export function circleArcs(
  plane: LocalPlane,
  centre: Position,
  radiusM: number,
): { ring: Ring; curves: Curve[] } {
  const [cx, cy] = plane.toPlane(centre);
  const [east, north, west, south] = ringFrom(plane, [
    [cx + radiusM, cy],
    [cx, cy + radiusM],
    [cx - radiusM, cy],
    [cx, cy - radiusM],
  ]);
  if (!east || !north || !west || !south || !(radiusM > 0)) return { ring: [], curves: [] };
  const curves: Curve[] = [
    { kind: 'arc', points: [east, north, west] },
    { kind: 'arc', points: [west, south, east] },
  ];
  return { ring: [...curves.flatMap((curve) => flattenCurve(curve).slice(0, -1)), east], curves };
}

/** Centre and mean radius of a ring that is a circle drawn by eye. Plane metres inside. */
export function circleOfRing(plane: LocalPlane, ring: Ring): { centre: Position; radiusM: number } {
  const corners = ring.slice(0, -1).map((position) => plane.toPlane(position));
  const count = corners.length || 1;
  const x = corners.reduce((sum, corner) => sum + corner[0], 0) / count;
  const y = corners.reduce((sum, corner) => sum + corner[1], 0) / count;
  const radiusM = corners.reduce((sum, corner) => sum + Math.hypot(corner[0] - x, corner[1] - y), 0) / count;
  return { centre: plane.toLonLat([x, y]), radiusM };
}
