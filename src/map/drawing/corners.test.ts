import { describe, expect, it } from 'vitest';
import { collapseParts, expandParts } from '../../measure/outlineNodes';
import { createPlane } from '../../measure/plane';
import type { Position } from '../../yard/types';
import { boxOfParts, rotateParts, shiftParts } from './corners';
import { circleArcs } from './planeShapes';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => plane.toLonLat([x, y]);
const square = [at(0, 0), at(4, 0), at(4, 4), at(0, 4), at(0, 0)];
const parts = collapseParts({ parts: [[square]], curves: [] });

describe('corners', () => {
  it('turns clockwise: what was north comes to the east', () => {
    const turned = rotateParts(
      collapseParts({ parts: [[[at(0, 1), at(1, 0), at(-1, 0), at(0, 1)]]], curves: [] }),
      plane,
      at(0, 0),
      90,
    );
    const [x, y] = plane.toPlane(turned[0]?.[0]?.nodes[0] ?? [0, 0]);
    expect(x).toBeCloseTo(1, 5);
    expect(y).toBeCloseTo(0, 5);
  });
  it('shifts every corner alike', () => {
    const [west, south] = boxOfParts(shiftParts(parts, plane, at(0, 0), at(1, -1)));
    const [x, y] = plane.toPlane([west, south]);
    expect(x).toBeCloseTo(1, 5);
    expect(y).toBeCloseTo(-1, 5);
  });
  it('keeps curves as curves, and counts them in the box', () => {
    const { ring, curves } = circleArcs(plane, at(0, 0), 5);
    const circle = collapseParts({ parts: [[ring]], curves });
    expect(plane.toPlane([boxOfParts(circle)[0], boxOfParts(circle)[3]])[1]).toBeCloseTo(5, 2);
    const turned = expandParts(rotateParts(circle, plane, at(20, 0), 40));
    expect(turned.curves).toHaveLength(2);
    expect(collapseParts(turned)[0]?.[0]?.nodes).toHaveLength(2);
  });
});
