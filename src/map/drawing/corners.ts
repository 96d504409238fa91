import { roundPosition } from '../../measure/corners';
import { type NodeParts, transformNodes } from '../../measure/outlineNodes';
import { turnClockwise } from '../../measure/turnClockwise';
import type { LocalPlane } from '../../measure/types';
import type { Position } from '../../yard/types';

/** Every corner and curve point through a change of place in the local plane, metres. */
export function transformParts(
  parts: NodeParts,
  plane: LocalPlane,
  change: (east: number, north: number) => readonly [number, number],
): NodeParts {
  return transformNodes(parts, (at) => {
    const [east, north] = plane.toPlane(at);
    return roundPosition(plane.toLonLat(change(east, north)));
  });
}

/** Turns the parts clockwise round a centre. @param turnDeg degrees, clockwise from above */
export function rotateParts(
  parts: NodeParts,
  plane: LocalPlane,
  centre: Position,
  turnDeg: number,
): NodeParts {
  const [cx, cy] = plane.toPlane(centre);
  const turn = turnClockwise(turnDeg);
  return transformParts(parts, plane, (x, y) => {
    const [east, north] = turn([x - cx, y - cy]);
    return [cx + east, cy + north];
  });
}

/** Moves the parts by what lies between two positions, metres alike at every corner. */
export function shiftParts(parts: NodeParts, plane: LocalPlane, from: Position, to: Position): NodeParts {
  const [fx, fy] = plane.toPlane(from);
  const [tx, ty] = plane.toPlane(to);
  return transformParts(parts, plane, (x, y) => [x + tx - fx, y + ty - fy]);
}

/** West, south, east, north of all corners, curves too, degrees. */
export function boxOfParts(parts: NodeParts): readonly [number, number, number, number] {
  let [west, south, east, north] = [180, 90, -180, -90];
  const corners = parts
    .flat()
    .flatMap((ring) => [...ring.nodes, ...ring.bends.flatMap((bend) => bend?.flat ?? [])]);
  for (const [lon, lat] of corners) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}
