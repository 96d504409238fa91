import { describe, expect, it } from 'vitest';
import { rinseEdges } from '../../src/cover/rinse';
import { rinseWater } from '../../src/cover/rinseWater';
import { treatZone } from '../../src/cover/strips';
import { boxRing, laidGround, laidZone, testPlane } from '../../src/cover/testGround';
import type { XY } from '../../src/measure/types';
import { L_PER_GAL, M_PER_FT, M2_PER_SQFT } from '../../src/units/factors';
import { emptyYard } from '../../src/yard/defaults';
import { stripRule } from '../../src/yard/stripWidths';
import type { LocalRule, Yard } from '../../src/yard/types';

/** Edges, splash bands and strips held against published rules, formulas and worked examples. */
const plane = testPlane();

describe('splash band by Steiner’s formula', () => {
  /*
   * The ground within r of a convex shape of perimeter L, without the shape itself, is L r + π r²
   * (J. Steiner 1840, as quoted with its source in public notes of integral geometry). A bed in the midst of
   * paving: its whole outline is the edge, what is within reach of it the splash band.
   */
  const regular = (corners: number, radiusM: number): XY[] =>
    Array.from({ length: corners + 1 }, (_, i) => {
      const angle = (2 * Math.PI * (i % corners)) / corners;
      return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)];
    });
  const lengthOf = (ring: readonly XY[]): number =>
    ring.slice(1).reduce((sum, [x, y], i) => {
      const [px, py] = ring[i] as XY;
      return sum + Math.hypot(x - px, y - py);
    }, 0);

  it.each([
    ['a rectangle of 6 m by 4 m', boxRing(-3, -2, 3, 2), 0.5],
    ['the same, wider reach', boxRing(-3, -2, 3, 2), 2],
    ['an equal-sided triangle', regular(3, 4), 1],
    ['a hexagon', regular(6, 5), 1.5],
    ['a round of 64 corners', regular(64, 3), 0.8],
  ] as const)('%s', (_, ring, reachM) => {
    const paving = laidZone('paving', 'hardscape', [[boxRing(-12, -12, 12, 12), [...ring]]], plane);
    const [edge, ...more] = rinseEdges({
      treated: [
        {
          zone: laidGround('bed', [[[...ring]]], plane),
          spreadM: reachM,
          treatment: 'rinse-toward-turf',
          stains: false,
        },
      ],
      hardscapes: [paving],
      sources: [],
      plane,
    });
    expect(more).toEqual([]);
    const perimeterM = lengthOf(ring);
    expect(edge?.lengthM).toBeCloseTo(perimeterM, 3);
    const bandM2 = perimeterM * reachM + Math.PI * reachM ** 2;
    // arcs are drawn by lines that stray by 5 mm at most, within the reach: never more than the true band
    expect(edge?.bandM2).toBeLessThanOrEqual(bandM2 + 1e-4);
    expect(edge?.bandM2).toBeGreaterThan(bandM2 - 0.005 * 2 * Math.PI * reachM);
  });
});

describe('water over the splash band', () => {
  it('1 inch on 200 sq ft is 124 gallons, the example of the Purdue Landscape Report, What is an inch of water?', () => {
    // printed with 0.62 gallons to the square foot, cut from 144 / 231; what is rinsed with stands 1 mm high,
    // 25.4 times as much an inch
    const { litres } = rinseWater(1, 200 * M2_PER_SQFT, L_PER_GAL / 20);
    expect(Math.abs((25.4 * litres) / L_PER_GAL - 124)).toBeLessThan(1);
  });

  it('at 3 gallons a minute, the hose of its second example, 1 mm on 200 sq ft takes 98 s', () => {
    // a gallon in 20 s is 3 gallons a minute, as printed; by hand: 124 gal / 25.4 / 3 gal/min is 1.63 min
    const flowLPerS = L_PER_GAL / 20;
    const { seconds, litres } = rinseWater(1, 200 * M2_PER_SQFT, flowLPerS);
    expect(Math.abs(seconds / 60 - 1.63)).toBeLessThan(0.02);
    expect(litres / L_PER_GAL).toBeCloseTo((3 * seconds) / 60, 9);
  });
});

describe('strips by published widths along a straight shore of 100 ft', () => {
  const ft = (x: number): number => x * M_PER_FT;
  const lawn = laidZone('lawn', 'turf', [[boxRing(0, 0, ft(100), ft(60))]], plane);
  const pond = laidZone('pond', 'water', [[boxRing(ft(-20), ft(-40), ft(120), 0)]], plane);
  const rule = (name: string, widthM: number): LocalRule => ({
    id: name,
    name,
    isOn: true,
    terms: { kind: 'buffer', round: 'water', widthM },
    source: '',
    readOn: null,
  });
  const yardWith = (...rules: LocalRule[]): Yard => {
    const yard = emptyYard('y', 'Yard');
    const strips = { ...yard.settings.strips, waterM: 0 };
    return { ...yard, zones: [lawn.zone, pond.zone], rules, settings: { ...yard.settings, strips } };
  };

  it.each([
    // Boynton Beach, Ordinance 19-019, with a deflector or drop spreader, and without
    ['with a deflector', 3, 300],
    ['without', 10, 1000],
    // Lake Mary, Florida, Ordinance 1569
    ['another city', 15, 1500],
    // New York, Environmental Conservation Law 17-2103(3)(c)
    ['a state', 20, 2000],
    // Lady Lake, Florida, as its notice tells
    ['a third city', 25, 2500],
  ])('%s: %s ft take %s sq ft off', (name, widthFt, areaSqFt) => {
    const yard = yardWith(rule('narrow', ft(1)), rule(name, ft(widthFt)));
    const { treated } = treatZone(lawn.measured, lawn.zone, yard, plane);
    expect(treated.strips).toHaveLength(1);
    // by hand: 100 ft by the width
    expect(treated.stripM2 / M2_PER_SQFT).toBeCloseTo(areaSqFt, 0);
    expect(treated.areaM2 + treated.stripM2).toBeCloseTo(lawn.measured.netM2, 9);
    expect(stripRule(yard, 'water')?.name).toBe(name);
  });
});
