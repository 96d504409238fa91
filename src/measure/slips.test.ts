import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Ring, Yard, ZoneKind } from '../yard/types';
import { areaOfPartsM2 } from './geodesic';
import { measureYard } from './measureYard';
import { createPlane } from './plane';
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

  it('leaves wider gaps, inner corners and a notch of one zone alone', () => {
    expect(slipsOf(yardOf(['a', 'turf', box(0, 0, 5, 5)], ['b', 'bed', box(5.6, 0, 5, 5)]))).toEqual([]);
    expect(slipsOf(yardOf(['a', 'turf', box(0, 0, 10, 3)], ['b', 'bed', box(0, 3, 3, 8)]))).toEqual([]);
  });
});

describe('mends that cannot be made', () => {
  const yard = yardOf(['a', 'turf', box(0, 0, 10, 10)], ['b', 'turf', box(9, 0, 10, 10)]);
  const slip = slipsOf(yard)[0] as Slip;
  const codeOf = (result: ReturnType<typeof mendSlip>) => (result.ok ? 'ok' : result.issue.code);

  it('a slip that was mended already gave the same document without a word', () => {
    const mended = done(mendSlip(yard, slip, measureYard(yard)));
    expect(codeOf(mendSlip(mended, slip, measureYard(mended)))).toBe('slip-gone');
    const without = { ...yard, zones: yard.zones.slice(1) };
    expect(codeOf(mendSlip(without, slip, measureYard(without)))).toBe('slip-gone');
  });

  it('a gap that was filled already was filled again', () => {
    const apart = yardOf(['walk', 'hardscape', box(0, 0, 2, 10)], ['lawn', 'turf', box(2.3, 0, 10, 10)]);
    const gap = slipsOf(apart)[0] as Slip;
    const mended = done(mendSlip(apart, gap, measureYard(apart)));
    expect(codeOf(mendSlip(mended, gap, measureYard(mended)))).toBe('slip-gone');
  });

  it('a zone under another of its kind vanished, and visits still named it', () => {
    const under = yardOf(['a', 'turf', box(2, 2, 3, 3)], ['b', 'turf', box(0, 0, 10, 10)]);
    const result = mendSlip(under, slipsOf(under)[0] as Slip, measureYard(under));
    expect(codeOf(result)).toBe('mend-zone-covered');
    expect(result.ok ? '' : result.issue.message).toMatch(/“b” covers all of “a”/);
  });
});
