import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planeAreaOf, unionOf } from '../../src/measure/clip';
import { checkRing } from '../../src/measure/crossings';
import { findAllCurves, flattenCurve } from '../../src/measure/curves';
import {
  bendBetween,
  collapseParts,
  deleteNode,
  expandParts,
  insertNode,
  moveBendPoint,
  moveNode,
  type NodeParts,
  withNodes,
  withRing,
} from '../../src/measure/outlineNodes';
import { createPlane, ringsToPlane } from '../../src/measure/plane';
import { createCarrier } from '../../src/measure/sharedEdges';
import { newZone } from '../../src/yard/defaults';
import type { Curve, Position, Zone } from '../../src/yard/types';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => {
  const [lon, lat] = plane.toLonLat([x, y]);
  return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
};
const zone = (id: string, corners: [number, number][], more: Partial<Zone> = {}): Zone => {
  const open = corners.map(([x, y]) => at(x, y));
  return newZone(id, 'turf', [[[...open, open[0] as Position]]], { name: id, ...more });
};
const areaOf = (zones: readonly Zone[]) =>
  planeAreaOf(unionOf(zones.flatMap((one) => one.parts.map((rings) => ringsToPlane(rings, plane)))));
const sumOf = (zones: readonly Zone[]) => zones.reduce((sum, one) => sum + areaOf([one]), 0);

/**
 * A frame of 40 by 40 m laid out without gap or overlap round the zone in hand (10 to 20 each way).
 * Its neighbours meet it in corners of its own, in T's along its sides, and with sides that run on past its corners.
 */
const frame = (): Zone[] => [
  zone('own', [
    [10, 10],
    [20, 10],
    [20, 20],
    [10, 20],
  ]),
  zone('east-1', [
    [20, 0],
    [40, 0],
    [40, 14],
    [20, 14],
  ]),
  zone('east-2', [
    [20, 14],
    [40, 14],
    [40, 40],
    [20, 40],
  ]),
  zone('north-1', [
    [0, 20],
    [13, 20],
    [13, 40],
    [0, 40],
  ]),
  zone('north-2', [
    [13, 20],
    [20, 20],
    [20, 40],
    [13, 40],
  ]),
  zone('west', [
    [0, 0],
    [10, 0],
    [10, 20],
    [0, 20],
  ]),
  zone('south', [
    [10, 0],
    [20, 0],
    [20, 10],
    [10, 10],
  ]),
];

/** The zones with the zone in hand and all that goes along as they come out. */
function carried(zones: readonly Zone[], id: string, change: (parts: NodeParts) => NodeParts | null) {
  const carrier = createCarrier(zones, id, plane);
  const own = zones.find((one) => one.id === id) as Zone;
  const after = change(collapseParts(own));
  if (!after) return null;
  const { outlines, issues } = carrier.settle(after);
  const made = zones.map((one) => {
    const found = outlines.find((each) => each.zoneId === one.id);
    if (one.id === id) return { ...one, ...expandParts(after) };
    return found ? { ...one, parts: found.parts, curves: found.curves } : one;
  });
  return { made, issues, quick: carrier.follow(after) };
}

function expectTight(before: readonly Zone[], after: readonly Zone[]): void {
  const whole = areaOf(before);
  expect(Math.abs(sumOf(before) - whole)).toBeLessThan(1e-3);
  expect(Math.abs(areaOf(after) - whole)).toBeLessThan(2e-3);
  expect(Math.abs(sumOf(after) - whole)).toBeLessThan(2e-3);
}
const isSound = (zones: readonly Zone[]) =>
  zones.every((one) => one.parts.flat().every((ring) => checkRing(ring).length === 0));

const shift = fc.tuple(
  fc.double({ min: -2.5, max: 2.5, noNaN: true }),
  fc.double({ min: -2.5, max: 2.5, noNaN: true }),
);
const bowOf = fc
  .tuple(fc.boolean(), fc.double({ min: 0.1, max: 2.5, noNaN: true }))
  .map(([isOut, d]) => (isOut ? d : -d));
const path = (node: number) => ({ part: 0, ring: 0, node });
const movedBy = (p: Position, [dx, dy]: readonly [number, number]): Position => {
  const [x, y] = plane.toPlane(p);
  return at(x + dx, y + dy);
};
const nodeAt = (parts: NodeParts, node: number) => parts[0]?.[0]?.nodes[node] as Position;

describe('shared borders', () => {
  it('open no gap and make no overlap when a corner moves, several times over', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(3), shift), { minLength: 1, maxLength: 4 }), (moves) => {
        const start = frame();
        let zones: Zone[] = start;
        for (const [node, by] of moves) {
          const done = carried(zones, 'own', (parts) => {
            const i = node % (parts[0]?.[0]?.nodes.length ?? 1);
            return moveNode(parts, path(i), movedBy(nodeAt(parts, i), by));
          });
          if (!done || done.issues.length > 0 || !isSound(done.made)) return;
          zones = done.made;
          expectTight(start, zones);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('nor when a whole side moves, a corner is put in, or taken out', () => {
    fc.assert(
      fc.property(fc.nat(3), shift, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (side, by, t) => {
        const start = frame();
        const moved = carried(start, 'own', (parts) =>
          withRing(parts, { part: 0, ring: 0 }, (ring) => {
            const j = (side + 1) % 4;
            return withNodes(
              ring,
              new Map([
                [side, movedBy(nodeAt(parts, side), by)],
                [j, movedBy(nodeAt(parts, j), by)],
              ]),
            );
          }),
        );
        if (moved && moved.issues.length === 0) expectTight(start, moved.made);
        const put = carried(start, 'own', (parts) => {
          const [a, b] = [nodeAt(parts, side), nodeAt(parts, (side + 1) % 4)].map((p) =>
            plane.toPlane(p),
          ) as [[number, number], [number, number]];
          return insertNode(
            parts,
            path(side),
            at(a[0] + (b[0] - a[0]) * t + by[0] / 2, a[1] + (b[1] - a[1]) * t + by[1] / 2),
          );
        });
        if (!put || put.issues.length > 0) return;
        expectTight(start, put.made);
        const taken = carried(put.made, 'own', (parts) => deleteNode(parts, path(side + 1)));
        if (taken && taken.issues.length === 0) expectTight(start, taken.made);
      }),
      { numRuns: 40 },
    );
  });

  it('nor when a side is bent to an arc, the arc is bent further, and its ends move; the neighbour along the whole side gets the curve', () => {
    fc.assert(
      fc.property(fc.nat(3), bowOf, bowOf, shift, (side, bow, next, by) => {
        const start = frame();
        const normal = (
          [
            [0, -1],
            [1, 0],
            [0, 1],
            [-1, 0],
          ] as const
        )[side] as readonly [number, number];
        const middle = (
          [
            [15, 10],
            [20, 15],
            [15, 20],
            [10, 15],
          ] as const
        )[side] as readonly [number, number];
        const through = (d: number) => at(middle[0] + normal[0] * d, middle[1] + normal[1] * d);
        const bent = carried(start, 'own', (parts) =>
          withRing(parts, { part: 0, ring: 0 }, (ring) => ({
            ...ring,
            bends: ring.bends.map((bend, i) =>
              i === side
                ? bendBetween(nodeAt(parts, side), [through(bow)], nodeAt(parts, (side + 1) % 4), 'arc')
                : bend,
            ),
          })),
        );
        expect(bent?.issues).toEqual([]);
        if (!bent) return;
        expectTight(start, bent.made);
        if (side === 0) expect(bent.made.find((one) => one.id === 'south')?.curves).toHaveLength(1);
        const again = carried(bent.made, 'own', (parts) =>
          moveBendPoint(parts, path(side), 0, through(next)),
        );
        expect(again?.issues).toEqual([]);
        if (!again) return;
        expectTight(start, again.made);
        if (side === 0) {
          const south = again.made.find((one) => one.id === 'south') as Zone;
          expect(south.curves).toHaveLength(1);
          expect(findAllCurves(south).stale).toEqual([]);
        }
        const end = carried(again.made, 'own', (parts) =>
          moveNode(parts, path(side), movedBy(nodeAt(parts, side), by)),
        );
        if (end && end.issues.length === 0 && isSound(end.made)) expectTight(start, end.made);
      }),
      { numRuns: 60 },
    );
  });

  it('a round bed and the hole it fills move as one when a point of the circle moves', () => {
    const [e, n, w, s] = [at(18, 15), at(15, 18), at(12, 15), at(15, 12)];
    const curves: Curve[] = [
      { kind: 'arc', points: [e, n, w] },
      { kind: 'arc', points: [w, s, e] },
    ];
    const open = curves.flatMap((curve) => flattenCurve(curve).slice(0, -1));
    const circle = [...open, open[0] as Position];
    const [own] = frame() as [Zone];
    const lawn = { ...own, id: 'lawn', parts: [[...(own.parts[0] ?? []), circle.toReversed()]], curves };
    const bed = { ...newZone('bed', 'turf', [[circle]]), curves };
    const start = [lawn, bed];
    fc.assert(
      fc.property(fc.nat(1), fc.boolean(), shift, (which, isNode, [dx, dy]) => {
        // kept within the lawn
        const by = [dx * 0.6, dy * 0.6] as const;
        const done = carried(start, 'bed', (parts) =>
          isNode
            ? moveNode(parts, path(which), movedBy(nodeAt(parts, which), by))
            : moveBendPoint(parts, path(which), 0, movedBy([n, s][which] as Position, by)),
        );
        if (!done || !isSound(done.made) || done.issues.length > 0) return;
        expectTight(start, done.made);
        expect(done.made[0]?.curves).toHaveLength(2);
        expect(findAllCurves(done.made[0] as Zone).stale).toEqual([]);
      }),
    );
  });

  it('locked neighbours stay and are told; far ones are the same objects', () => {
    const zones = frame().map((one) => (one.id === 'south' ? { ...one, isLocked: true } : one));
    const far = zone('far', [
      [100, 100],
      [110, 100],
      [110, 110],
    ]);
    const done = carried([...zones, far], 'own', (parts) => moveNode(parts, path(0), at(9, 9)));
    expect(done?.issues.map((issue) => [issue.code, issue.place.zoneId])).toEqual([
      ['neighbour-stays', 'south'],
    ]);
    expect(done?.made.find((one) => one.id === 'south')).toBe(zones.at(-1));
    expect(done?.made.at(-1)).toBe(far);
    expect(done?.made.find((one) => one.id === 'west')?.parts.flat(2)).toContainEqual(at(9, 9));
    expect(done?.quick.map((one) => one.zoneId)).toEqual(['west']);
  });

  it('a neighbour that would cross itself stays and is told', () => {
    const zones = [
      zone('own', [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ]),
      zone('thin', [
        [10, 0],
        [11, 5],
        [10, 10],
        [10.5, 5],
      ]),
    ];
    const done = carried(zones, 'own', (parts) => moveNode(parts, path(1), at(10.8, 8)));
    expect(done?.issues[0]?.code).toBe('neighbour-stays');
    expect(done?.made[1]).toBe(zones[1]);
  });
});
