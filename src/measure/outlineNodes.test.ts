import { describe, expect, it } from 'vitest';
import type { Curve, Position } from '../yard/types';
import { flattenCurve } from './curves';
import {
  bendBetween,
  collapseParts,
  deleteBendPoint,
  deleteNode,
  expandParts,
  insertBendPoint,
  insertNode,
  moveBendPoint,
  moveNode,
} from './outlineNodes';
import { createPlane } from './plane';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => {
  const [lon, lat] = plane.toLonLat([x, y]);
  return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
};
const arc: Curve = { kind: 'arc', points: [at(10, 0), at(12, 5), at(10, 10)] };
const ring = [at(0, 0), ...flattenCurve(arc), at(0, 10), at(0, 0)];
const hole = [at(2, 2), at(4, 2), at(3, 4), at(2, 2)];
const zone = { parts: [[ring, hole]], curves: [arc] };
const path = (node: number, r = 0) => ({ part: 0, ring: r, node });

describe('nodes of an outline', () => {
  it('are its plain corners and the ends of its curves; nothing is lost on the way and back', () => {
    const nodes = collapseParts(zone);
    expect(nodes[0]?.[0]?.nodes).toEqual([at(0, 0), at(10, 0), at(10, 10), at(0, 10)]);
    expect(nodes[0]?.[0]?.bends.map((bend) => bend?.kind ?? null)).toEqual([null, 'arc', null, null]);
    expect(expandParts(nodes)).toEqual(zone);
    const turned = { parts: [[ring.toReversed(), hole]], curves: [arc] };
    expect(expandParts(collapseParts(turned)).parts).toEqual(turned.parts);
  });

  it('a moved node takes the ends of its curves along; a moved point bends them', () => {
    const moved = expandParts(moveNode(collapseParts(zone), path(1), at(11, -1)));
    expect(moved.curves).toEqual([{ kind: 'arc', points: [at(11, -1), at(12, 5), at(10, 10)] }]);
    expect(collapseParts(moved)[0]?.[0]?.nodes).toHaveLength(4);
    const bent = expandParts(moveBendPoint(collapseParts(zone), path(1), 0, at(15, 5)));
    expect(bent.curves[0]?.points[1]).toEqual(at(15, 5));
    expect(bent.parts[0]?.[1]).toEqual(hole);
  });

  it('nodes are put in after the one named, the last too', () => {
    const more = insertNode(collapseParts(zone), path(3), at(0, 5));
    expect(more[0]?.[0]?.nodes[4]).toEqual(at(0, 5));
    expect(more[0]?.[0]?.bends).toHaveLength(5);
  });

  it('a node taken out lets its curve run on to the next; two arcs become a smooth line', () => {
    const fewer = deleteNode(collapseParts(zone), path(1));
    expect(fewer && expandParts(fewer).curves).toEqual([
      { kind: 'arc', points: [at(0, 0), at(12, 5), at(10, 10)] },
    ]);
    const [e, n, w, s] = [at(5, 0), at(0, 5), at(-5, 0), at(0, -5)];
    const arcs: Curve[] = [
      { kind: 'arc', points: [e, n, w] },
      { kind: 'arc', points: [w, s, e] },
    ];
    const circle = { parts: [[[...arcs.flatMap((one) => flattenCurve(one).slice(0, -1)), e]]], curves: arcs };
    const smooth = deleteNode(collapseParts(circle), path(1));
    expect(smooth && expandParts(smooth).curves).toEqual([{ kind: 'smooth', points: [e, n, s, e] }]);
  });

  it('a point taken out of an arc leaves a straight side; smooth lines take and lose points', () => {
    expect(expandParts(deleteBendPoint(collapseParts(zone), path(1), 0)).curves).toEqual([]);
    const bend = bendBetween(at(10, 0), [at(12, 3), at(9, 7)], at(10, 10), 'smooth');
    const nodes = collapseParts({
      parts: [[[at(0, 0), at(10, 0), ...(bend?.flat ?? []), at(10, 10), at(0, 0)]]],
      curves: [{ kind: 'smooth', points: [at(10, 0), at(12, 3), at(9, 7), at(10, 10)] }],
    });
    const more = insertBendPoint(nodes, path(1), 1, at(11, 5));
    expect(expandParts(more).curves[0]?.points[2]).toEqual(at(11, 5));
    expect(expandParts(deleteBendPoint(more, path(1), 0)).curves[0]?.points).toHaveLength(4);
  });

  it('a hole goes with its third corner; the only outline never does', () => {
    expect(deleteNode(collapseParts(zone), path(0, 1))?.[0]).toHaveLength(1);
    const three = collapseParts({ parts: [[hole]], curves: [] });
    expect(deleteNode(three, path(0))).toBeNull();
    const two = collapseParts({ parts: [[hole], [hole]], curves: [] });
    expect(deleteNode(two, path(0))).toHaveLength(1);
  });
});
