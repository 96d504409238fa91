import type { LocalPlane } from '../../measure/types';
import type { Position, Ring } from '../../yard/types';

export const CIRCLE_CORNERS = 64;

function ringFrom(plane: LocalPlane, corners: readonly (readonly [number, number])[]): Ring {
  const places = corners.map((corner): Position => {
    const [lon, lat] = plane.toLonLat(corner);
    return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
  });
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
 * Circle on the ground as a ring of 64 corners that encloses the circle's own area, pi r squared:
 * the corners stand 0.08 % outside it.
 */
export function circleRing(plane: LocalPlane, centre: Position, radiusM: number): Ring {
  const [cx, cy] = plane.toPlane(centre);
  const turn = (2 * Math.PI) / CIRCLE_CORNERS;
  const reach = radiusM * Math.sqrt(turn / Math.sin(turn));
  const corners = Array.from({ length: CIRCLE_CORNERS }, (_, i): readonly [number, number] => [
    cx + reach * Math.cos(i * turn),
    cy + reach * Math.sin(i * turn),
  ]);
  return ringFrom(plane, corners);
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
