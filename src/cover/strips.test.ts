import { describe, expect, it } from 'vitest';
import { areaOfPartsM2 } from '../measure/geodesic';
import { isInsideParts } from '../measure/isInsideParts';
import { emptyYard, newZone } from '../yard/defaults';
import type { Mark, Yard } from '../yard/types';
import { treatZone } from './strips';
import { boxRing, laidZone, testPlane } from './testGround';

const plane = testPlane();
const mark = (id: string, kind: Mark['kind'], at: readonly [number, number]): Mark => ({
  id,
  name: id,
  kind,
  position: plane.toLonLat(at),
  extra: {},
});
const yardWith = (marks: Mark[], strips = { stormDrainM: 3, wellM: 15, waterM: 4 }): Yard => {
  const yard = emptyYard('y', 'Yard');
  return { ...yard, marks, settings: { ...yard.settings, strips } };
};
const lawn = laidZone('lawn', 'turf', [[boxRing(0, 0, 20, 20)]], plane);
const treat = (yard: Yard, one = lawn): ReturnType<typeof treatZone> =>
  treatZone(one.measured, one.zone, yard, plane);

describe('treatZone', () => {
  it('leaves a zone as it is when nothing near asks for a strip', () => {
    const { treated, issues } = treat(
      yardWith([mark('far', 'storm-drain', [40, 40]), mark('tap', 'hose-bib', [5, 5])]),
    );
    expect(issues).toEqual([]);
    expect(treated.areaM2).toBe(lawn.measured.netM2);
    expect(treated.parts).toBe(lawn.measured.netParts);
    expect(treated.strips).toEqual([]);
  });

  it('tells of a zone that a strip cuts in two', () => {
    // a ditch across the lawn, 1 m wide, with 4 m left alone to either side
    const ditch = newZone(
      'ditch',
      'water',
      laidZone('ditch', 'water', [[boxRing(9, -1, 10, 21)]], plane).measured.netParts,
    );
    const { treated, issues } = treat({ ...yardWith([]), zones: [lawn.zone, ditch] });
    expect(treated.planeParts).toHaveLength(2);
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([['zone-cut-by-strips', 'note']]);
    expect(issues[0]?.message).toContain('“lawn” is left in 2 separate parts');
    expect(treat(yardWith([mark('drain', 'storm-drain', [10, 0])])).issues).toEqual([]);
  });

  it('takes a half disc off round a drain at the edge', () => {
    const { treated } = treat(yardWith([mark('drain', 'storm-drain', [10, 0])]));
    const half = (Math.PI * 9) / 2;
    // the round is drawn by lines outside the arc: a little more than the half disc
    expect(treated.stripM2 / half - 1).toBeGreaterThan(0);
    expect(treated.stripM2 / half - 1).toBeLessThan(5e-3);
    expect(treated.strips[0]).toMatchObject({
      sourceId: 'drain',
      sourceKind: 'storm-drain',
      widthM: 3,
      zoneId: 'lawn',
    });
    expect(Math.abs(areaOfPartsM2(treated.parts) - (400 - half))).toBeLessThan(0.1);
  });

  it('takes a band along water and round its corners', () => {
    const yard = yardWith([]);
    const water = newZone(
      'pond',
      'water',
      laidZone('pond', 'water', [[boxRing(-10, -5, 0, 25)]], plane).measured.netParts,
    );
    const { treated } = treat({ ...yard, zones: [lawn.zone, water] });
    expect(Math.abs(treated.stripM2 - 4 * 20)).toBeLessThan(0.01);
    expect(treated.strips.map((strip) => strip.sourceKind)).toEqual(['water']);
  });

  it('counts ground in two strips once', () => {
    const { treated } = treat(
      yardWith([mark('a', 'storm-drain', [10, 0]), mark('b', 'storm-drain', [11, 0])]),
    );
    const each = treated.strips.map((strip) => strip.areaM2);
    // two discs of radius 3, centres 1 m apart, halved: lens = 2 r² acos(d/2r) - d/2 sqrt(4r² - d²)
    const lens = 2 * 9 * Math.acos(1 / 6) - 0.5 * Math.sqrt(36 - 1);
    const once = (2 * Math.PI * 9 - lens) / 2;
    expect(Math.abs(treated.stripM2 / once - 1)).toBeLessThan(5e-3);
    expect((each[0] ?? 0) + (each[1] ?? 0)).toBeGreaterThan(treated.stripM2 + 5);
    expect(Math.abs(areaOfPartsM2(treated.parts) + treated.stripM2 - lawn.measured.netM2)).toBeLessThan(0.01);
  });

  it('asks for no strip where the width is 0', () => {
    const yard = yardWith([mark('drain', 'storm-drain', [10, 0])], { stormDrainM: 0, wellM: 15, waterM: 4 });
    expect(treat(yard).treated.stripM2).toBe(0);
  });

  it('says which strip holds a whole zone', () => {
    const patch = laidZone('Patch', 'turf', [[boxRing(1, 1, 3, 3)]], plane);
    const { treated, issues } = treat(yardWith([mark('Old well', 'well', [0, 0])]), patch);
    expect(treated.areaM2).toBe(0);
    expect(treated.stripM2).toBe(patch.measured.netM2);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({
      code: 'zone-inside-strip',
      severity: 'error',
      place: { zoneId: 'Patch' },
    });
    expect(issues[0]?.message).toContain('“Patch”');
    expect(issues[0]?.message).toContain('“Old well”');
  });

  it('warns when several strips together or other zones leave nothing', () => {
    const patch = laidZone('Patch', 'turf', [[boxRing(0, 0, 5, 1)]], plane);
    const two = treat(
      yardWith([mark('a', 'storm-drain', [0.5, 0.5]), mark('b', 'storm-drain', [4.5, 0.5])]),
      patch,
    );
    expect(two.issues.map((issue) => issue.code)).toEqual(['zone-nothing-left']);
    const none = {
      zone: patch.zone,
      measured: { ...patch.measured, netM2: 0, netParts: [], netPlaneParts: [] },
    };
    expect(treat(yardWith([]), none).issues.map((issue) => issue.code)).toEqual(['zone-nothing-left']);
  });

  it('treats no structure, water or hardscape', () => {
    const walk = laidZone('walk', 'hardscape', [[boxRing(0, 0, 1, 9)]], plane);
    const { treated, issues } = treat(yardWith([]), walk);
    expect(treated.areaM2).toBe(0);
    expect(issues.map((issue) => [issue.code, issue.severity])).toEqual([['zone-not-treatable', 'warning']]);
  });
});

describe('no strip is narrower than asked', () => {
  const around = (at: readonly [number, number], radiusM: number) =>
    Array.from({ length: 360 }, (_, i): readonly [number, number] => {
      const turn = (i * Math.PI) / 180 + 0.001;
      return [at[0] + radiusM * Math.cos(turn), at[1] + radiusM * Math.sin(turn)];
    });

  it('round a drain, all the way round, and at most 6 mm wider', () => {
    const { treated } = treat(yardWith([mark('drain', 'storm-drain', [10, 10])]));
    for (const p of around([10, 10], 2.9999)) expect(isInsideParts(p, treated.planeParts)).toBe(false);
    for (const p of around([10, 10], 3.006)) expect(isInsideParts(p, treated.planeParts)).toBe(true);
    expect(treated.stripM2).toBeGreaterThan(9 * Math.PI);
  });

  it('round the corners of water, and no wider along its sides', () => {
    const basin = laidZone('basin', 'water', [[boxRing(9, 9, 11, 11)]], plane).zone;
    const { treated } = treat({ ...yardWith([]), zones: [lawn.zone, basin] });
    const corners = [
      [9, 9],
      [9, 11],
      [11, 9],
      [11, 11],
    ] as const;
    for (const p of corners.flatMap((at) => around(at, 3.9999))) {
      expect(isInsideParts(p, treated.planeParts)).toBe(false);
    }
    // this lawn is not cut by the basin: 2·2 m² of it, 4 m on each side, and quarter discs at the corners
    const exact = 2 * 2 + 4 * 2 * 4 + Math.PI * 16;
    expect(treated.stripM2).toBeGreaterThan(exact);
    expect(treated.stripM2).toBeLessThan(exact + 2 * Math.PI * 4 * 0.006);
    expect(isInsideParts([10, 11 + 4.0001], treated.planeParts)).toBe(true);
  });
});

describe('the sigma of what is left comes from the sides that are left', () => {
  const { zone } = lawn;
  const surveyed = { ...lawn, zone: { ...zone, survey: { ...zone.survey, vertexSigmaM: 0.2 } } };

  it('a well in the midst takes no side: all of the lawn’s error stays', () => {
    const strips = { stormDrainM: 3, wellM: 9.9, waterM: 4 };
    const { treated } = treat(yardWith([mark('well', 'well', [10, 10])], strips), surveyed);
    // by hand: each corner pulls half the diagonal of its neighbours, (10, 10): 0.2·√(4·200)
    expect(treated.areaSigmaM2).toBeCloseTo(0.2 * Math.sqrt(800), 2);
  });

  it('a drain on a side takes that stretch of it', () => {
    const { treated } = treat(yardWith([mark('drain', 'storm-drain', [10, 0])]), surveyed);
    // by hand: x 0..7 and 13..20 of the south side pull 7·(1 - 3.5/20) + 7·(1 - 16.5/20) = 7 on either end
    expect(treated.areaSigmaM2).toBeCloseTo(0.2 * Math.sqrt(2 * (100 + 49) + 2 * 200), 2);
  });

  it('water along the east leaves the west side and a little of two others', () => {
    const pond = laidZone('pond', 'water', [[boxRing(20, -30, 40, 50)]], plane).zone;
    const strips = { stormDrainM: 3, wellM: 15, waterM: 19 };
    const { treated } = treat({ ...yardWith([], strips), zones: [zone, pond] }, surveyed);
    expect(treated.areaM2).toBeCloseTo(20, 1);
    // by hand: west 10 on either corner; 1 m of 20 m pulls 0.975 on the west corner, 0.025 on the east one
    expect(treated.areaSigmaM2).toBeCloseTo(0.2 * Math.sqrt(2 * (100 + 0.975 ** 2 + 0.025 ** 2)), 2);
  });
});
