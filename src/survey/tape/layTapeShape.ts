import { roundPosition } from '../../measure/corners';
import { flattenCurve } from '../../measure/curves';
import { createPlane } from '../../measure/plane';
import { boxOf, middleOfBox } from '../../measure/planeBox';
import { ringFromCorners } from '../../measure/shapes';
import { turnClockwise } from '../../measure/turnClockwise';
import type { XY } from '../../measure/types';
import type { Curve, Position, Rings, Survey } from '../../yard/types';
import { areaSigmaPerMetre } from '../areaSigmaPerMetre';
import type { TapeError, TapeShape } from './types';

/** An outline on the ground, as a zone takes it. */
export interface LaidShape {
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
}

/**
 * Lays a shape on the ground, the middle of its box at a place. Its arcs become curves that stay editable.
 * @param at degrees; [0, 0] for a shape without a place
 * @param headingDeg bearing of its first side (base line), degrees clockwise from north; 90: as on the sketch
 */
export function layTapeShape(shape: TapeShape, at: Position, headingDeg: number): LaidShape {
  const plane = createPlane(at);
  const [mx, my] = middleOfBox(boxOf([[shape.ring]]));
  const turn = turnClockwise(headingDeg - 90);
  const lay = ([x, y]: XY): Position => roundPosition(plane.toLonLat(turn([x - mx, y - my])));
  const corners = shape.ring.slice(0, -1).map(lay);
  const curves: Curve[] = [];
  const ring: Position[] = [];
  for (let i = 0; i < corners.length; i++) {
    const start = corners[i];
    if (!start) continue;
    const arc = shape.arcs.find((each) => each.from === i);
    const end = arc && corners[arc.to % corners.length];
    if (!arc || !end) {
      ring.push(start);
      continue;
    }
    const curve: Curve = { kind: 'arc', points: [start, lay(arc.via), end] };
    curves.push(curve);
    ring.push(...flattenCurve(curve).slice(0, -1));
    i = arc.to - 1;
  }
  return { parts: [[ringFromCorners(ring)]], curves };
}

/**
 * The survey of a zone that was taped: its corner error is the one by which the outline's area has the
 * same error as the readings give, so that the zone and the form it came from say the same.
 * @param source what it was taped with, in words
 */
export function surveyOfTape(shape: TapeShape, laid: LaidShape, error: TapeError, source: string): Survey {
  const perMetre = areaSigmaPerMetre(laid);
  const vertexSigmaM = perMetre > 0 ? shape.randomSigmaM2 / perMetre : error.readingSigmaM;
  return { method: 'tape', vertexSigmaM, scaleSigma: error.scaleSigma, source };
}
