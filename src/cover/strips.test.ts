import { describe, expect, it } from 'vitest';
import { areaOfPartsM2 } from '../measure/geodesic';
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

  it('takes a half disc off round a drain at the edge', () => {
    const { treated } = treat(yardWith([mark('drain', 'storm-drain', [10, 0])]));
    const half = (Math.PI * 9) / 2;
    // the round is drawn by chords: a little less than the disc
    expect(Math.abs(treated.stripM2 / half - 1)).toBeLessThan(5e-3);
    expect(treated.strips[0]).toMatchObject({
      sourceId: 'drain',
      sourceKind: 'storm-drain',
      widthM: 3,
      zoneId: 'lawn',
    });
    expect(Math.abs(areaOfPartsM2(treated.parts) - (400 - half))).toBeLessThan(0.1);
    expect(treated.areaSigmaM2).toBeCloseTo(lawn.measured.netSigmaM2 * Math.sqrt(treated.areaM2 / 400), 3);
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
