import { roundPosition } from '../../measure/corners';
import { flattenCurve } from '../../measure/curves';
import { createPlane } from '../../measure/plane';
import { boxOf, middleOfBox } from '../../measure/planeBox';
import { ringFromCorners } from '../../measure/shapes';
import { turnClockwise } from '../../measure/turnClockwise';
import type { LocalPlane, XY } from '../../measure/types';
import type { Curve, Position, Rings } from '../../yard/types';
import { computeTraverse } from './traverse';
import type { ArcCall, PlatCall } from './types';

/** Calls that end this near their beginning end in it, m; a straight side over less is no side. */
export const CLOSED_M = 0.005;

/** An outline on the ground, as a zone or the parcel takes it. */
export interface LaidPlat {
  readonly parts: readonly Rings[];
  /** one for each arc, so that they stay editable. */
  readonly curves: readonly Curve[];
  /** where each call begins, the point of beginning first, and last where the last one ends. */
  readonly corners: readonly Position[];
}

/**
 * Lays calls on the ground. The gap between their end and their beginning, where there is one over 5 mm,
 * is closed by a straight side. Lengths hold in the plane of the outline's middle; on the ellipsoid they
 * err by r·tan|lat|/R at r from it (see `createPlane`): 2e-5, or 6 mm in 300 m, at the edges of a parcel of
 * 300 m at latitude 41. North and south of the middle the errors are opposite, so that the area hardly feels them.
 * @param pob point of beginning, degrees
 * @param northDeg direction of the plat's north on the ground, degrees clockwise from true north
 * @throws RangeError when the point of beginning is no position
 */
export function placeTraverse(calls: readonly PlatCall[], pob: Position, northDeg: number): LaidPlat {
  const { points, closure } = computeTraverse(calls);
  const turn = turnClockwise(northDeg);
  const { plane, shift } = planeOfMiddle(points.map(turn), pob);
  const lay = (point: XY): Position => {
    const [x, y] = turn(point);
    return roundPosition(plane.toLonLat([x + shift[0], y + shift[1]]));
  };
  const corners = [pob, ...points.slice(1).map(lay)];
  if (closure.gapM <= CLOSED_M) corners[corners.length - 1] = pob;
  const curves: Curve[] = [];
  const ring: Position[] = [];
  for (const [i, call] of calls.entries()) {
    const [start, end, from] = [corners[i], corners[i + 1], points[i]];
    if (!start || !end || !from) continue;
    if (call.kind === 'line') {
      ring.push(start);
      continue;
    }
    const curve: Curve = { kind: 'arc', points: [start, lay(middleOfArc(call, from)), end] };
    curves.push(curve);
    ring.push(...flattenCurve(curve).slice(0, -1));
  }
  const last = corners.at(-1);
  if (last && closure.gapM > CLOSED_M) ring.push(last);
  return { parts: [[ringFromCorners(ring)]], curves, corners };
}

/** The point half way along an arc. @param from where it begins, plane metres */
export function middleOfArc(arc: ArcCall, from: XY): XY {
  const half: ArcCall = { ...arc, deltaDeg: arc.deltaDeg / 2 };
  const end = computeTraverse([half]).points[1] ?? [0, 0];
  return [from[0] + end[0], from[1] + end[1]];
}

/** The plane round the middle of an outline whose first point is known in degrees, and that point in it. */
function planeOfMiddle(points: readonly XY[], pob: Position): { plane: LocalPlane; shift: XY } {
  const plane = createPlane(createPlane(pob).toLonLat(middleOfBox(boxOf([[points]]))));
  return { plane, shift: plane.toPlane(pob) };
}
