import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../tests/bench/benchYard';
import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Ring, Yard, ZoneKind } from '../yard/types';
import { intersectionOf, planeAreaOf } from './clip';
import { areaOfPartsM2 } from './geodesic';
import { measureYard } from './measureYard';
import { createPlane, ringsToPlane } from './plane';
import { findSlips, mendSlip } from './slips';
import type { Slip } from './types';

const plane = createPlane([-83, 40]);
const box = (x: number, y: number, w: number, h: number): Ring =>
  [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
    [x, y],
  ].map(([a = 0, b = 0]): Position => plane.toLonLat([a, b]));
const yardOf = (...zones: [string, ZoneKind, Ring][]): Yard => ({
  ...emptyYard('y', 'Yard'),
  zones: zones.map(([id, kind, ring]) => newZone(id, kind, [[ring]], { name: id })),
});
const done = (result: ReturnType<typeof mendSlip>): Yard => {
  if (!result.ok) throw new Error(result.issue.message);
  return result.yard;
};
const slipsOf = (yard: Yard) => findSlips(yard, measureYard(yard));
const areaOf = (yard: Yard, id: string) => areaOfPartsM2(yard.zones.find((z) => z.id === id)?.parts ?? []);

describe('overlaps', () => {
  const yard = yardOf(
    ['a', 'turf', box(0, 0, 10, 10)],
    ['b', 'turf', box(9, 0, 10, 10)],
    ['bed', 'bed', box(0, 9, 5, 5)],
  );
  it('lists same-kind overlaps only, and the later zone keeps the ground', () => {
    const slips = slipsOf(yard);
    expect(slips).toMatchObject([{ type: 'overlap', zoneIds: ['a', 'b'] }]);
    expect(slips[0]?.areaM2).toBeCloseTo(10, 2);
    const mended = done(mendSlip(yard, slips[0] as Slip, measureYard(yard)));
    expect(areaOf(mended, 'a')).toBeCloseTo(90, 2);
    expect(areaOf(mended, 'b')).toBeCloseTo(100, 2);
    expect(slipsOf(mended)).toEqual([]);
  });

  it('is silent where the later zone cuts its kind', () => {
    const zones = yard.zones.map((zone) => ({ ...zone, cutsSameKind: zone.id === 'b' }));
    expect(slipsOf({ ...yard, zones })).toEqual([]);
  });
});

describe('gaps', () => {
  it('finds the sliver between neighbours and gives it to the lawn, not the walk', () => {
    const yard = yardOf(['walk', 'hardscape', box(0, 0, 2, 10)], ['lawn', 'turf', box(2.3, 0, 10, 10)]);
    const slips = slipsOf(yard);
    expect(slips).toMatchObject([{ type: 'gap', zoneIds: ['walk', 'lawn'] }]);
    expect(slips[0]?.areaM2).toBeCloseTo(3, 1);
    const mended = done(mendSlip(yard, slips[0] as Slip, measureYard(yard)));
    expect(areaOf(mended, 'lawn')).toBeCloseTo(103, 1);
    expect(areaOf(mended, 'walk')).toBeCloseTo(20, 3);
    expect(slipsOf(mended)).toEqual([]);
  });

  it('measures a gap of 10 m by 0.3 m between two lawns as 3 m², and its mend is a plain rectangle', () => {
    const yard = yardOf(['a', 'turf', box(0, 0, 10, 10)], ['b', 'turf', box(10.3, 0, 10, 10)]);
    const slips = slipsOf(yard);
    expect(slips).toMatchObject([{ type: 'gap', zoneIds: ['a', 'b'] }]);
    expect(slips[0]?.areaM2).toBeCloseTo(3, 3);
    const mended = done(mendSlip(yard, slips[0] as Slip, measureYard(yard)));
    const ring = (mended.zones[0]?.parts[0]?.[0] ?? []).map((p) => plane.toPlane(p));
    // its four corners, at most the two old ones in line with them, and the first again
    expect(ring.length).toBeLessThanOrEqual(7);
    for (const [x, y] of ring) {
      expect(Math.min(Math.abs(y), Math.abs(y - 10))).toBeLessThan(1e-5);
      expect(Math.min(...[0, 10, 10.3].map((at) => Math.abs(x - at)))).toBeLessThan(1e-5);
    }
    expect(areaOf(mended, 'a')).toBeCloseTo(103, 2);
  });

  it('ends a gap straight at the last corner where one neighbour is longer, at any turn of the yard', () => {
    for (const degrees of [0, 17, 45, 72, 123]) {
      const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
      const turned = (ring: Ring): Ring =>
        ring.map((p) => {
          const [x, y] = plane.toPlane(p);
          return plane.toLonLat([x * cos - y * sin, x * sin + y * cos]);
        });
      const yard = yardOf(
        ['short', 'turf', turned(box(0, 0, 6, 4))],
        ['long', 'bed', turned(box(-3, 4.2, 20, 5))],
      );
      const slips = slipsOf(yard);
      expect(slips).toHaveLength(1);
      expect(slips[0]?.areaM2).toBeCloseTo(6 * 0.2, 3);
    }
  });

  it('never lie on a zone, where many zones abut', () => {
    const random = seededRandom(11);
    let count = 0;
    for (let n = 0; n < 6; n++) {
      const at = (x: number, y: number): Position =>
        plane.toLonLat([x * 4 + 0.3 * random(), y * 4 + 0.3 * random()]);
      const grid = Array.from({ length: 5 }, (_, y) => Array.from({ length: 5 }, (_, x) => at(x, y)));
      const near = (p: Position | undefined): Position => {
        const [x, y] = plane.toPlane(p ?? [0, 0]);
        return random() < 0.5 ? (p ?? [0, 0]) : plane.toLonLat([x + 0.2 * random(), y + 0.2 * random()]);
      };
      const yard = yardOf(
        ...Array.from({ length: 16 }, (_, i): [string, ZoneKind, Ring] => {
          const [x, y] = [i % 4, Math.floor(i / 4)];
          const corners = [grid[y]?.[x], grid[y]?.[x + 1], grid[y + 1]?.[x + 1], grid[y + 1]?.[x]].map(near);
          return [`z${i}`, i % 3 === 0 ? 'bed' : 'turf', [...corners, corners[0] as Position]];
        }),
      );
      const gaps = slipsOf(yard).filter((slip) => slip.type === 'gap');
      const grounds = yard.zones.map((zone) => zone.parts.map((rings) => ringsToPlane(rings, plane)));
      count += gaps.length;
      for (const gap of gaps) {
        const ground = gap.parts.map((rings) => ringsToPlane(rings, plane));
        for (const zone of grounds) expect(planeAreaOf(intersectionOf(ground, zone))).toBeLessThan(1e-4);
      }
    }
    expect(count).toBeGreaterThan(10);
  }, 30_000);

  it('is found and mended across 180° as elsewhere', () => {
    const there = createPlane([180, -17]);
    const across = (x: number, width: number): Ring =>
      box(x, 0, width, 10).map((p): Position => {
        const [lon, lat] = there.toLonLat(plane.toPlane(p));
        return [lon > 180 ? lon - 360 : lon, lat];
      });
    const yard = yardOf(['a', 'turf', across(-8, 10)], ['b', 'turf', across(2.2, 10)]);
    const slips = slipsOf(yard);
    expect(slips).toMatchObject([{ type: 'gap', zoneIds: ['a', 'b'] }]);
    expect(slips[0]?.areaM2).toBeCloseTo(2, 3);
    const mended = done(mendSlip(yard, slips[0] as Slip, measureYard(yard)));
    expect(areaOf(mended, 'a')).toBeCloseTo(102, 2);
    expect(measureYard(mended).issues).toEqual([]);
    expect(slipsOf(mended)).toEqual([]);
  });

  it('leaves wider gaps, inner corners and a notch of one zone alone', () => {
    expect(slipsOf(yardOf(['a', 'turf', box(0, 0, 5, 5)], ['b', 'bed', box(5.6, 0, 5, 5)]))).toEqual([]);
    expect(slipsOf(yardOf(['a', 'turf', box(0, 0, 10, 3)], ['b', 'bed', box(0, 3, 3, 8)]))).toEqual([]);
  });
});

describe('mends that cannot be made', () => {
  const yard = yardOf(['a', 'turf', box(0, 0, 10, 10)], ['b', 'turf', box(9, 0, 10, 10)]);
  const slip = slipsOf(yard)[0] as Slip;
  const codeOf = (result: ReturnType<typeof mendSlip>) => (result.ok ? 'ok' : result.issue.code);

  it('a slip that was mended already, or whose zone is gone, is said to be gone', () => {
    const mended = done(mendSlip(yard, slip, measureYard(yard)));
    expect(codeOf(mendSlip(mended, slip, measureYard(mended)))).toBe('slip-gone');
    const without = { ...yard, zones: yard.zones.slice(1) };
    expect(codeOf(mendSlip(without, slip, measureYard(without)))).toBe('slip-gone');
  });

  it('a gap that was filled already is not filled again', () => {
    const apart = yardOf(['walk', 'hardscape', box(0, 0, 2, 10)], ['lawn', 'turf', box(2.3, 0, 10, 10)]);
    const gap = slipsOf(apart)[0] as Slip;
    const mended = done(mendSlip(apart, gap, measureYard(apart)));
    expect(codeOf(mendSlip(mended, gap, measureYard(mended)))).toBe('slip-gone');
  });

  it('a zone wholly under another of its kind stays, and the person is told what to do', () => {
    const under = yardOf(['a', 'turf', box(2, 2, 3, 3)], ['b', 'turf', box(0, 0, 10, 10)]);
    const result = mendSlip(under, slipsOf(under)[0] as Slip, measureYard(under));
    expect(codeOf(result)).toBe('mend-zone-covered');
    expect(result.ok ? '' : result.issue.message).toMatch(/“b” covers all of “a”/);
  });

  it('a locked zone gives nothing away and takes nothing', () => {
    const lock = (of: Yard, ...ids: string[]): Yard => ({
      ...of,
      zones: of.zones.map((zone) => ({ ...zone, isLocked: ids.includes(zone.id) })),
    });
    const held = lock(yard, 'a');
    expect(codeOf(mendSlip(held, slip, measureYard(held)))).toBe('zone-locked');
    expect(codeOf(mendSlip(lock(yard, 'b'), slip, measureYard(yard)))).toBe('ok');
    const apart = yardOf(['walk', 'hardscape', box(0, 0, 2, 10)], ['lawn', 'turf', box(2.3, 0, 10, 10)]);
    const gap = slipsOf(apart)[0] as Slip;
    const grown = done(mendSlip(lock(apart, 'lawn'), gap, measureYard(apart)));
    expect(areaOf(grown, 'walk')).toBeCloseTo(23, 2);
    const both = lock(apart, 'lawn', 'walk');
    expect(codeOf(mendSlip(both, gap, measureYard(both)))).toBe('zone-locked');
  });
});
