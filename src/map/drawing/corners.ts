import type { LocalPlane } from '../../measure/types';
import type { Position, Rings } from '../../yard/types';

/** Which corner: part, ring (0 is the outer one), place in the ring. */
export interface CornerPath {
  readonly part: number;
  readonly ring: number;
  readonly corner: number;
}

/** Rings with the closing position left off, so that each corner stands once. */
export type OpenParts = readonly (readonly (readonly Position[])[])[];

export function openParts(parts: readonly Rings[]): OpenParts {
  return parts.map((rings) => rings.map((ring) => ring.slice(0, -1)));
}

export function closeParts(parts: OpenParts): Rings[] {
  return parts.map((rings) => rings.map((ring) => (ring[0] ? [...ring, ring[0]] : [])));
}

function withRing(
  parts: OpenParts,
  path: CornerPath,
  change: (ring: readonly Position[]) => readonly Position[],
): OpenParts {
  return parts.map((rings, p) =>
    p !== path.part ? rings : rings.map((ring, r) => (r === path.ring ? change(ring) : ring)),
  );
}

/** The parts with one corner elsewhere; everything else is shared with the input. */
export function moveCorner(parts: OpenParts, path: CornerPath, to: Position): OpenParts {
  return withRing(parts, path, (ring) => ring.map((at, i) => (i === path.corner ? to : at)));
}

/** A new corner after the one named. */
export function insertCorner(parts: OpenParts, path: CornerPath, at: Position): OpenParts {
  return withRing(parts, path, (ring) => [
    ...ring.slice(0, path.corner + 1),
    at,
    ...ring.slice(path.corner + 1),
  ]);
}

/**
 * The parts without one corner. A hole or further part of three corners goes as a whole.
 * @returns null when the corner is one of the last three of the only part's outline
 */
export function deleteCorner(parts: OpenParts, path: CornerPath): OpenParts | null {
  const ring = parts[path.part]?.[path.ring];
  if (!ring) return null;
  if (ring.length > 3) return withRing(parts, path, (old) => old.filter((_, i) => i !== path.corner));
  if (path.ring > 0) {
    return parts.map((rings, p) => (p === path.part ? rings.filter((_, r) => r !== path.ring) : rings));
  }
  return parts.length > 1 ? parts.filter((_, p) => p !== path.part) : null;
}

/** Every corner through a change of place in the local plane, metres. */
export function transformParts(
  parts: OpenParts,
  plane: LocalPlane,
  change: (east: number, north: number) => readonly [number, number],
): OpenParts {
  const move = (at: Position): Position => {
    const [east, north] = plane.toPlane(at);
    const [lon, lat] = plane.toLonLat(change(east, north));
    return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
  };
  return parts.map((rings) => rings.map((ring) => ring.map(move)));
}

/** Turns the parts clockwise round a centre. @param turnDeg degrees, clockwise from above */
export function rotateParts(
  parts: OpenParts,
  plane: LocalPlane,
  centre: Position,
  turnDeg: number,
): OpenParts {
  const [cx, cy] = plane.toPlane(centre);
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  return transformParts(parts, plane, (x, y) => [
    cx + (x - cx) * cos + (y - cy) * sin,
    cy - (x - cx) * sin + (y - cy) * cos,
  ]);
}

/** Moves the parts by what lies between two positions, metres alike at every corner. */
export function shiftParts(parts: OpenParts, plane: LocalPlane, from: Position, to: Position): OpenParts {
  const [fx, fy] = plane.toPlane(from);
  const [tx, ty] = plane.toPlane(to);
  return transformParts(parts, plane, (x, y) => [x + tx - fx, y + ty - fy]);
}

/** West, south, east, north of all corners, degrees. */
export function boxOfParts(parts: OpenParts): readonly [number, number, number, number] {
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const [lon, lat] of parts.flat(2)) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}

/** Corners, for every ring: same shape of lists means handles can stay where they are. */
export function countsOf(parts: OpenParts): string {
  return JSON.stringify(parts.map((rings) => rings.map((ring) => ring.length)));
}
