import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Ring, Yard, ZoneKind } from '../yard/types';
import { areaOfPartsM2, areaOfRingsM2 } from './geodesic';
import { measureYard } from './measureYard';
import { createPlane } from './plane';
import {
  cutHole,
  cutOut,
  joinZones,
  makeCircle,
  makeRectangle,
  makeRectangleFromCorner,
  moveZone,
  rotateZone,
  type ShapeResult,
  splitZone,
} from './shapes';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => plane.toLonLat([x, y]);
const ring = (...xys: [number, number][]): Ring => {
  const corners = xys.map(([x, y]) => at(x, y));
  return [...corners, corners[0] as Position];
};
const box = (x: number, y: number, w: number, h: number) =>
  ring([x, y], [x + w, y], [x + w, y + h], [x, y + h]);
const yardOf = (...zones: [string, ZoneKind, Ring[]][]): Yard => ({
  ...emptyYard('y', 'Yard'),
  zones: zones.map(([id, kind, rings]) => newZone(id, kind, [rings], { name: id })),
});
const done = (result: ShapeResult): Yard => {
  if (!result.ok) throw new Error(result.issue.message);
  return result.yard;
};
const codeOf = (result: ShapeResult) => (result.ok ? 'ok' : result.issue.code);
const areaOf = (yard: Yard, id: string) => areaOfPartsM2(yard.zones.find((z) => z.id === id)?.parts ?? []);
const keysOf = (yard: Yard, id: string) =>
  new Set(
    yard.zones
      .find((z) => z.id === id)
      ?.parts.flat(2)
      .map(String),
  );

describe('splitZone', () => {
  const yard = yardOf(
    ['lawn', 'turf', [box(0, 0, 20, 10), box(2, 2, 2, 2)]],
    ['walk', 'hardscape', [box(0, 10, 20, 2)]],
  );

  it('keeps the ground, shares new corners digit for digit, and matches the neighbour', () => {
    const split = done(splitZone(yard, 'lawn', [at(12, -1), at(13, 11)], 'new', plane));
    // by hand: the line x = 12 + (y + 1) / 12 leaves 20·10 - ∫(12 + (y+1)/12)dy = 200 - 125 = 75 m² at its right
    expect(areaOf(split, 'new')).toBeCloseTo(75, 2);
    expect(areaOf(split, 'lawn')).toBeCloseTo(125 - 4, 2);
    expect(areaOf(split, 'lawn') + areaOf(split, 'new')).toBeCloseTo(areaOf(yard, 'lawn'), 3);
    const both = [...keysOf(split, 'lawn')].filter((key) => keysOf(split, 'new').has(key));
    expect(both).toHaveLength(2);
    expect([...keysOf(split, 'walk')].filter((key) => both.includes(key))).toHaveLength(1);
    expect(split.zones.map((z) => z.id)).toEqual(['lawn', 'new', 'walk']);
  });

  it('goes through a hole and carries on a line that ends inside', () => {
    const split = done(splitZone(yard, 'lawn', [at(3, 1), at(3, 5)], 'new', plane));
    expect(areaOf(split, 'new')).toBeCloseTo(30 - 2, 2);
    expect(areaOf(split, 'lawn')).toBeCloseTo(170 - 2, 2);
  });

  it('refuses lines that do not divide, or would divide at a second place', () => {
    expect(codeOf(splitZone(yard, 'lawn', [at(30, 0), at(30, 9)], 'new', plane))).toBe('split-line-outside');
    const horseshoe = yardOf([
      'u',
      'turf',
      [ring([0, 0], [30, 0], [30, 20], [20, 20], [20, 5], [10, 5], [10, 20], [0, 20])],
    ]);
    expect(codeOf(splitZone(horseshoe, 'u', [at(-1, 15), at(15, 15)], 'n', plane))).toBe(
      'split-line-ambiguous',
    );
    expect(codeOf(splitZone(yard, 'gone', [at(0, 0), at(1, 1)], 'new', plane))).toBe('zone-not-found');
  });
});

describe('joinZones', () => {
  it('undoes a split', () => {
    const yard = yardOf(['lawn', 'turf', [box(0, 0, 20, 10)]]);
    const split = done(splitZone(yard, 'lawn', [at(7, -1), at(6, 4), at(9, 11)], 'new', plane));
    const joined = done(joinZones(split, ['lawn', 'new'], plane));
    expect(joined.zones).toHaveLength(1);
    expect(joined.zones[0]?.parts).toHaveLength(1);
    expect(areaOf(joined, 'lawn')).toBeCloseTo(areaOf(yard, 'lawn'), 3);
  });

  it('joins along a border without matching corners and leaves no crack', () => {
    const yard = yardOf(
      ['a', 'turf', [box(0, 0, 10, 7)]],
      ['b', 'turf', [ring([3.3, 7], [9.1, 7], [8, 12])]],
    );
    const joined = done(joinZones(yard, ['a', 'b'], plane));
    expect(joined.zones[0]?.parts.map((rings) => rings.length)).toEqual([1]);
    expect(areaOf(joined, 'a')).toBeCloseTo(70 + (5.8 * 5) / 2, 2);
  });

  it('refuses other kinds, and zones apart or touching at a corner only', () => {
    const yard = yardOf(
      ['a', 'turf', [box(0, 0, 5, 5)]],
      ['corner', 'turf', [box(5, 5, 5, 5)]],
      ['far', 'turf', [box(50, 0, 5, 5)]],
      ['bed', 'bed', [box(5, 0, 5, 5)]],
    );
    expect(codeOf(joinZones(yard, ['a', 'far'], plane))).toBe('join-apart');
    expect(codeOf(joinZones(yard, ['a', 'corner'], plane))).toBe('join-apart');
    expect(codeOf(joinZones(yard, ['a', 'bed'], plane))).toBe('join-kinds-differ');
  });
});

describe('cutHole and cutOut', () => {
  const yard = yardOf(['lawn', 'turf', [box(0, 0, 20, 10)]]);
  it('takes a ring out, and refuses one beside the zone or over all of it', () => {
    const cut = done(cutHole(yard, 'lawn', box(2, 2, 3, 3), plane));
    expect(cut.zones[0]?.parts[0]).toHaveLength(2);
    expect(areaOf(cut, 'lawn')).toBeCloseTo(191, 2);
    expect(codeOf(cutHole(yard, 'lawn', box(30, 2, 3, 3), plane))).toBe('cut-outside');
    expect(codeOf(cutHole(yard, 'lawn', box(-1, -1, 40, 40), plane))).toBe('cut-all');
    expect(codeOf(cutHole(yard, 'lawn', ring([1, 1], [5, 5], [5, 1], [1, 5]), plane))).toBe(
      'ring-self-crossing',
    );
  });

  it('lets a bed lie on turf, and takes turf out of turf', () => {
    const hole = box(2, 2, 3, 3);
    const bed = done(cutOut(yard, 'lawn', hole, newZone('n', 'bed', [[hole]]), plane));
    expect(bed.zones[0]).toBe(yard.zones[0]);
    expect(measureYard(bed).zones.get('lawn')?.netM2).toBeCloseTo(191, 2);
    const turf = done(cutOut(yard, 'lawn', hole, newZone('n', 'turf', [[hole]]), plane));
    expect(areaOf(turf, 'lawn')).toBeCloseTo(191, 2);
    expect(areaOf(turf, 'n')).toBeCloseTo(9, 3);
  });
});

describe('moving', () => {
  const yard = yardOf(['a', 'turf', [box(0, 0, 20, 10)]], ['b', 'bed', [box(20, 0, 5, 10)]]);
  it('moves and turns without a change of size', () => {
    const moved = done(moveZone(yard, 'a', [300, -400], plane));
    expect(areaOf(moved, 'a')).toBeCloseTo(areaOf(yard, 'a'), 4);
    const turned = done(rotateZone(yard, 'a', 33, plane));
    expect(areaOf(turned, 'a')).toBeCloseTo(areaOf(yard, 'a'), 4);
    // a quarter turn clockwise round (10, 5) takes the corner (0, 0) to (5, 15)
    const quarter = done(rotateZone(yard, 'a', 90, plane)).zones[0]?.parts[0]?.[0]?.[0];
    const [x, y] = plane.toPlane(quarter as Position);
    expect(x).toBeCloseTo(5, 3);
    expect(y).toBeCloseTo(15, 3);
  });
});

describe('makers', () => {
  it('make shapes of the textbook areas at several latitudes', () => {
    for (const lat of [-70, -33, 0, 40, 64]) {
      const middle: Position = [12, lat];
      expect(areaOfRingsM2([makeRectangle(middle, 18, 7, 25)])).toBeCloseTo(126, 2);
      expect(areaOfRingsM2([makeRectangleFromCorner(middle, 18, 7, 25)]) / 126).toBeCloseTo(1, 4);
      expect(areaOfRingsM2([makeCircle(middle, 6)])).toBeCloseTo(Math.PI * 36, 2);
    }
  });
});
