import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { swathOf } from '../../src/cover/passes/measurePasses';
import { planPasses } from '../../src/cover/passes/planPasses';
import { unreachableOf } from '../../src/cover/passes/unreachable';
import { makeWalkable, wayWithin } from '../../src/cover/passes/wayWithin';
import type { PassGround, PassOptions, ZonePasses } from '../../src/cover/passTypes';
import { planeAreaOf } from '../../src/measure/clip';
import { PER_M, toPaths } from '../../src/measure/clipPaths';
import { areaOfPaths, booleanOp, ClipType, FillRule } from '../../src/measure/clipper';
import { isInsideParts } from '../../src/measure/isInsideParts';
import type { PlaneRings, XY } from '../../src/measure/types';
import {
  chanceOf,
  closed,
  leastWidth,
  randomConvex,
  randomLawn,
  rectangle,
  regular,
  withStrips,
} from '../fixtures/passGrounds';

/*
 * Passes on random ground: what must hold on all of it, and how long the walk is against the shortest there
 * could be (area / spacing). Swaths are looked at by Clipper2, apart from the figures of the plan.
 */

const optionsOf = (fields: Partial<PassOptions> & { spacingM: number }): PassOptions => ({
  swathM: fields.spacingM,
  headerLaps: null,
  headingDeg: null,
  lapsFirst: true,
  ...fields,
});

const distance = (a: XY, b: XY) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const lengthOf = (line: readonly XY[]) =>
  line.reduce((sum, p, i) => sum + (i > 0 ? distance(p, line[i - 1] as XY) : 0), 0);
const areaM2 = (
  type: ClipType,
  a: PlaneRings[] | ReturnType<typeof toPaths>,
  b: ReturnType<typeof toPaths>,
) => areaOfPaths(booleanOp(type, a as ReturnType<typeof toPaths>, b, FillRule.NonZero)) / PER_M ** 2;

/** What holds for every plan. */
function expectSound(plan: ZonePasses, ground: PassGround, options: PassOptions): void {
  let lengthM = 0;
  let ownM2 = 0;
  for (const [i, leg] of plan.legs.entries()) {
    expect(leg.line.length).toBeGreaterThanOrEqual(2);
    expect(leg.lengthM).toBeCloseTo(lengthOf(leg.line), 6);
    lengthM += leg.lengthM;
    const before = plan.legs[i - 1]?.line.at(-1);
    if (before) expect(distance(before, leg.line[0] as XY)).toBeLessThan(1e-6);
    if (leg.kind === 'turn' || leg.kind === 'carry') {
      expect(leg.knots).toEqual([]);
      continue;
    }
    expect(leg.knots[0]).toEqual({ atM: 0, areaM2: 0 });
    expect(leg.knots.at(-1)?.atM).toBeCloseTo(leg.lengthM, 9);
    leg.knots.forEach((knot, k) => {
      const earlier = leg.knots[k - 1];
      if (!earlier) return;
      expect(knot.atM).toBeGreaterThan(earlier.atM);
      expect(knot.areaM2).toBeGreaterThanOrEqual(earlier.areaM2);
    });
    ownM2 += leg.knots.at(-1)?.areaM2 ?? 0;
  }
  expect(plan.lengthM).toBeCloseTo(lengthM, 6);
  const wholeM2 = planeAreaOf(ground.parts);
  expect(Math.abs(ownM2 / wholeM2 - 1)).toBeLessThan(1e-6);
  expect(plan.leastM).toBeCloseTo(wholeM2 / options.spacingM, 4);
  expect(plan.outsideM).toBeLessThanOrEqual(options.swathM / 2 + 0.01);
  expectKeptOff(plan, ground, options);
}

/** Neither swath nor walk on ground to be kept off: arcs and rings are drawn to millimetres. */
function expectKeptOff(plan: ZonePasses, { keepOff }: PassGround, { swathM }: PassOptions): void {
  if (keepOff.length === 0) return;
  const off = toPaths(keepOff);
  for (const leg of plan.legs) {
    if (leg.knots.length > 0)
      expect(areaM2(ClipType.Intersection, swathOf(leg, swathM), off)).toBeLessThan(0.01);
    for (let i = 1; i < leg.line.length; i++) {
      const [a, b] = [leg.line[i - 1] as XY, leg.line[i] as XY];
      for (let share = 0.02; share < 1; share += 0.06) {
        const at: XY = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
        if (isInsideParts(at, keepOff)) expect(depthIn(at, keepOff)).toBeLessThan(0.005);
      }
    }
  }
}

function depthIn(at: XY, parts: readonly PlaneRings[]): number {
  return makeWalkable(parts, []).nearest(at)?.distanceM ?? 0;
}

const seeds = fc.integer({ min: 0, max: 1e6 });

/** An L, or a U. */
function angled(chance: () => number, isU: boolean): XY[][] {
  const [a, b] = [40 + 20 * chance(), 40 + 20 * chance()];
  const [u, v] = [a * (0.3 + 0.1 * chance()), b * (0.3 + 0.2 * chance())];
  return isU
    ? [closed([0, 0], [a, 0], [a, b], [a - u, b], [a - u, v], [u, v], [u, b], [0, b])]
    : [closed([0, 0], [a, 0], [a, v], [u, v], [u, b], [0, b])];
}

function withHoles(chance: () => number): XY[][] {
  const [a, b] = [40 + 20 * chance(), 40 + 20 * chance()];
  return [
    rectangle(0, 0, a, b),
    regular(a * 0.25, b * 0.3, 1.5 + 2 * chance(), 24),
    regular(a * 0.7, b * 0.65, 1.5 + 2 * chance(), 24),
    rectangle(a * 0.55, b * 0.15, 3 + 3 * chance(), 2 + 2 * chance()),
  ];
}

/** Figures over fixed shapes, made from the seeds 1 to `count`. */
function expectNearShortest(
  count: number,
  make: (chance: () => number) => XY[][],
  { aim, most, double }: { aim: number; most: number; double: number },
  spacingOf: (ring: readonly XY[], chance: () => number, seed: number) => number,
): void {
  const ratios: number[] = [];
  for (let seed = 1; seed <= count; seed++) {
    const chance = chanceOf(seed);
    const rings = make(chance);
    const spacingM = spacingOf(rings[0] as XY[], chance, seed);
    const plan = planPasses({ parts: [rings], keepOff: [] }, optionsOf({ spacingM }), null, null);
    ratios.push(plan.lengthM / plan.leastM);
    expect(plan.missedM2 / plan.areaM2).toBeLessThanOrEqual(0.005);
    expect(plan.doubleM2 / plan.areaM2).toBeLessThanOrEqual(double);
  }
  ratios.sort((a, b) => a - b);
  expect(ratios[Math.floor(0.9 * count)]).toBeLessThanOrEqual(aim);
  expect(ratios.at(-1)).toBeLessThanOrEqual(most);
}

describe('passes on random ground', () => {
  it('cover it once, are connected, and keep off strips', () => {
    const spacings = fc.constantFrom(1.2, 1.8, 3);
    fc.assert(
      fc.property(
        seeds,
        fc.integer({ min: 4, max: 14 }),
        fc.integer({ min: 0, max: 4 }),
        spacings,
        fc.constantFrom(1, 1.25),
        fc.boolean(),
        fc.boolean(),
        (seed, corners, holes, spacingM, wider, hasStrips, lapsFirst) => {
          const lawn = randomLawn(seed, corners, holes, 22);
          const ground = hasStrips ? withStrips(lawn, seed, 22) : { parts: lawn, keepOff: [] };
          if (planeAreaOf(ground.parts) < 1) return;
          const options = optionsOf({ spacingM, swathM: wider * spacingM, lapsFirst });
          const plan = planPasses(ground, options, [30, 30], [-30, 0]);
          expectSound(plan, ground, options);
          // by hand: what no swath reaches
          const swaths = plan.legs
            .filter((leg) => leg.knots.length > 0)
            .flatMap((leg) => swathOf(leg, options.swathM));
          const left = areaM2(ClipType.Difference, toPaths(ground.parts), swaths);
          expect(plan.missedM2).toBeCloseTo(left, 3);
        },
      ),
      { numRuns: 8 },
    );
  }, 60_000);

  it('keep to a chosen heading and count of laps', () => {
    fc.assert(
      fc.property(
        seeds,
        fc.integer({ min: 0, max: 179 }),
        fc.integer({ min: 0, max: 2 }),
        (seed, headingDeg, headerLaps) => {
          const ground = { parts: randomLawn(seed, 7, 1, 20), keepOff: [] };
          const options = optionsOf({ spacingM: 1.8, headingDeg, headerLaps });
          const plan = planPasses(ground, options, null, null);
          expectSound(plan, ground, options);
          if (headerLaps === 0) expect(plan.legs.filter((leg) => leg.kind === 'lap')).toEqual([]);
          const straight = plan.legs.filter(
            (leg) => leg.kind === 'pass' && leg.line.length === 2 && leg.lengthM > 4,
          );
          const isAlong = straight.filter(({ line }) => {
            const [a, b] = [line[0] as XY, line[1] as XY];
            const degrees = (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI;
            return Math.abs(((((degrees - headingDeg) % 180) + 270) % 180) - 90) < 0.01;
          });
          expect(isAlong.length).toBeGreaterThanOrEqual(0.9 * straight.length);
          if (plan.headingDeg !== null) expect(plan.headingDeg).toBe(headingDeg);
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);

  /*
   * The same shapes at each run. What is asked of all of them: missed at most 0.5 %. Of walk over the shortest and of ground done
   * twice the aims (1.08 on convex shapes, 1.20 on others; 5 %) are asked of nine in ten, and a bound of all: where the
   * width is just over a whole count of passes, or corners are sharp, a walk may be a little over.
   */
  it.each<[string, number, (chance: () => number) => XY[][], { aim: number; most: number; double: number }]>([
    [
      'rectangles',
      40,
      (c) => [rectangle(0, 0, 30, 30 * (1 + 2 * c()))],
      { aim: 1.08, most: 1.1, double: 0.05 },
    ],
    ['hexagons', 20, (c) => [regular(0, 0, 20, 6, c())], { aim: 1.08, most: 1.08, double: 0.05 }],
    [
      'discs',
      20,
      (c) => [regular(0, 0, 20, 48 + Math.floor(32 * c()))],
      { aim: 1.08, most: 1.08, double: 0.05 },
    ],
    [
      'convex shapes',
      40,
      (c) => [randomConvex(Math.floor(1e6 * c()), 6 + Math.floor(8 * c()), 25)],
      { aim: 1.08, most: 1.15, double: 0.055 },
    ],
  ])('walks over %s of 12 passes or more are near the shortest', (_, count, make, bounds) => {
    expectNearShortest(count, make, bounds, (ring, chance) => leastWidth(ring) / (12 + 10 * chance()));
  });

  it.each<[string, number, (chance: () => number) => XY[][], { aim: number; most: number; double: number }]>([
    ['L', 20, (c) => angled(c, false), { aim: 1.2, most: 1.2, double: 0.065 }],
    ['U', 20, (c) => angled(c, true), { aim: 1.2, most: 1.2, double: 0.1 }],
    ['three holes', 12, withHoles, { aim: 1.2, most: 1.2, double: 0.055 }],
  ])('walks over shapes of %s are within a fifth of the shortest', (_, count, make, bounds) => {
    expectNearShortest(count, make, bounds, (_ring, _chance, seed) => (seed % 2 === 1 ? 1.8 : 3));
  });

  it('beside strips what a swath can reach without touching them is reached, but for few lawns', () => {
    const missed: number[] = [];
    for (let seed = 1; seed <= 14; seed++) {
      const ground = withStrips(randomLawn(seed, 4 + (seed % 11), seed % 5, 22), seed, 22);
      const spacingM = [1.2, 1.8, 3][seed % 3] as number;
      const options = optionsOf({ spacingM, swathM: spacingM * (seed % 2 === 1 ? 1 : 1.25) });
      const plan = planPasses(ground, options, null, null);
      if (plan.areaM2 < 1) continue;
      const cannotM2 = unreachableOf(ground.parts, ground.keepOff, options.swathM);
      missed.push((plan.missedM2 - cannotM2) / plan.areaM2);
      expectSound(plan, ground, options);
    }
    missed.sort((a, b) => a - b);
    expect(missed[Math.floor(0.8 * missed.length)]).toBeLessThanOrEqual(0.006);
    expect(missed.at(-1)).toBeLessThanOrEqual(0.015);
  }, 60_000);

  it('knots tell the ground that is done: what the swaths of the first legs reach', () => {
    const parts: PlaneRings[] = [[rectangle(0, 0, 40, 30), regular(20, 15, 4, 32)]];
    const options = optionsOf({ spacingM: 2, headerLaps: 0, headingDeg: 90 });
    const plan = planPasses({ parts, keepOff: [] }, options, [0, 0], null);
    let ownM2 = 0;
    for (const leg of plan.legs) {
      if (leg.knots.length === 0) continue;
      ownM2 += leg.knots.at(-1)?.areaM2 ?? 0;
      const sofar = plan.legs.slice(0, plan.legs.indexOf(leg) + 1).filter((one) => one.knots.length > 0);
      const reached = areaM2(
        ClipType.Intersection,
        sofar.flatMap((one) => swathOf(one, 2)),
        toPaths(parts),
      );
      // a pass round the hole reaches a little beside its slab
      expect(Math.abs(ownM2 - reached)).toBeLessThan(0.01 * plan.areaM2);
    }
  });
});

describe('odd ground', () => {
  it.each<[string, PlaneRings[]]>([
    ['none', []],
    [
      'a ring of two corners',
      [
        [
          [
            [0, 0],
            [1, 1],
            [0, 0],
          ],
        ],
      ],
    ],
    ['a ring without area', [[closed([0, 0], [5, 0], [10, 0])]]],
    ['a zone smaller than a swath', [[rectangle(0, 0, 0.4, 0.3)]]],
    ['a sliver', [[rectangle(0, 0, 0.05, 40)]]],
    ['a needle', [[closed([0, 0], [40, 0.3], [0, 0.6])]]],
    ['a ring round a house', [[regular(0, 0, 10, 40), regular(0, 0, 9.2, 40)]]],
    [
      'two lawns with a neck',
      [
        [
          closed(
            [0, 0],
            [15, 0],
            [15, 7],
            [30, 7],
            [30, 0],
            [45, 0],
            [45, 15],
            [30, 15],
            [30, 8],
            [15, 8],
            [15, 15],
            [0, 15],
          ),
        ],
      ],
    ],
    ['parts', [[rectangle(0, 0, 12, 9)], [rectangle(20, 3, 0.8, 12)], [regular(-15, 4, 5, 20)]]],
    [
      'five thousand corners',
      [
        [
          closed(
            ...Array.from({ length: 5000 }, (_, i): XY => {
              const r = 20 + 1.5 * Math.sin(i) * Math.cos(17 * i);
              return [r * Math.cos((2 * Math.PI * i) / 5000), r * Math.sin((2 * Math.PI * i) / 5000)];
            }),
          ),
        ],
      ],
    ],
  ])(
    '%s',
    (_, parts) => {
      const isLong = parts.flat(2).length > 1000;
      for (const headerLaps of isLong ? [null] : [null, 0, 1, 50]) {
        const options = optionsOf({ spacingM: 1.8, headerLaps });
        const plan = planPasses({ parts, keepOff: [] }, options, null, [3, 3]);
        if (plan.areaM2 === 0) {
          expect(plan.issues.map((issue) => issue.code)).toEqual(['passes-nothing']);
          continue;
        }
        expect(plan.legs.length).toBeGreaterThan(0);
        const own = plan.legs.reduce((sum, leg) => sum + (leg.knots.at(-1)?.areaM2 ?? 0), 0);
        expect(Math.abs(own / plan.areaM2 - 1)).toBeLessThan(1e-6);
        expect(plan.missedM2 / plan.areaM2).toBeLessThan(headerLaps === 0 ? 0.25 : 0.1);
      }
    },
    60_000,
  );
});

describe('ways on walkable ground', () => {
  it('stay on it and are no shorter than straight, nor longer than along the outline', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const parts = randomLawn(seed, 11, 4, 20);
        const walkable = makeWalkable(parts, []);
        const chance = chanceOf(seed + 1);
        const place = (): XY => {
          for (let tries = 0; tries < 500; tries++) {
            const at: XY = [40 * chance() - 20, 40 * chance() - 20];
            if (parts[0] && isInsideParts(at, [parts[0]])) return at;
          }
          return parts[0]?.[0]?.[0] as XY;
        };
        const [a, b] = [place(), place()];
        const line = wayWithin(walkable, a, b);
        expect([line[0], line.at(-1)]).toEqual([a, b]);
        expect(lengthOf(line)).toBeGreaterThanOrEqual(distance(a, b) - 1e-9);
        for (let i = 1; i < line.length; i++) {
          const [p, q] = [line[i - 1] as XY, line[i] as XY];
          for (let share = 0.05; share < 1; share += 0.1) {
            const at: XY = [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
            if (!walkable.isFree(at)) expect(walkable.nearest(at)?.distanceM ?? 0).toBeLessThan(0.005);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});
