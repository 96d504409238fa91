import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { outlineOf } from '../../src/cover/outline';
import type { DoseCoverage, Leg } from '../../src/cover/passTypes';
import { createCarryGround } from '../../src/cover/route/carryGround';
import { coverDose } from '../../src/cover/route/coverDose';
import { fakePasses, partOf, type TestBox } from '../../src/cover/route/fakePasses';
import { metresInside } from '../../src/cover/route/metresInside';
import { orderStops, type Stop } from '../../src/cover/route/orderStops';
import { testDose, testSite, testZone } from '../../src/cover/route/testDoses';
import { createWays } from '../../src/cover/route/ways';
import { unionOf } from '../../src/measure/clip';
import type { PlaneRings, XY } from '../../src/measure/types';

const RUNS = 30;
/** ms for each test, however busy the machine. */
const PATIENCE = 30_000;
vi.setConfig({ testTimeout: PATIENCE });

const gap = (a: XY, b: XY): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Boxes each in a cell of its own of a grid of 20 m, so that none touches another. */
const boxes = (min: number, max: number) =>
  fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: min, maxLength: max }).chain((cells) =>
    fc.tuple(
      ...cells.map((cell) =>
        fc
          .tuple(
            fc.integer({ min: 0, max: 8 }),
            fc.integer({ min: 0, max: 8 }),
            fc.integer({ min: 2, max: 10 }),
            fc.integer({ min: 2, max: 10 }),
          )
          .map(([x, y, w, h]): TestBox => {
            const [x0, y0] = [20 * (cell % 6) + x, 20 * Math.floor(cell / 6) + y];
            return [x0, y0, x0 + w, y0 + h];
          }),
      ),
    ),
  );
const place = fc.tuple(fc.integer({ min: -10, max: 130 }), fc.integer({ min: -10, max: 130 }));
const scene = fc.record({
  all: boxes(2, 12),
  walls: fc.integer({ min: 0, max: 4 }),
  strips: fc.integer({ min: 0, max: 2 }),
  start: fc.option(place),
  end: fc.option(place),
  staysWet: fc.boolean(),
  coats: fc.constantFrom(1 as const, 2 as const),
});
type Scene = typeof scene extends fc.Arbitrary<infer T> ? T : never;

/** Zones, houses and strips out of the boxes of a scene: at least one zone. */
function split({ all, walls, strips }: Scene) {
  const houses = all.slice(0, Math.min(walls, all.length - 1));
  const spared = all.slice(houses.length, Math.min(houses.length + strips, all.length - 1));
  const zones = all
    .slice(houses.length + spared.length)
    .map((box, i) => testZone(`zone-${i}`, [box], i === 0 ? spared : []));
  return { houses: houses.map(partOf), spared: spared.map(partOf), zones };
}

function coverOf(each: Scene): DoseCoverage {
  const { houses, zones } = split(each);
  const { start, end, staysWet, coats } = each;
  return coverDose(
    testDose(zones, { staysWet, coats }),
    testSite({ obstacles: houses, start, end }),
    fakePasses,
  );
}

const isIn = ([x, y]: XY, parts: readonly PlaneRings[]): boolean =>
  parts.length > 0 && outlineOf(parts).holds([x, y]);
const metresOf = ({ line }: Leg, parts: readonly PlaneRings[]): number =>
  parts.length === 0
    ? 0
    : line.slice(1).reduce((sum, b, i) => sum + metresInside([line[i] as XY, b], outlineOf(parts)), 0);

describe('the walk of a dose on random ground', () => {
  it('is one joined walk from start to end, its lengths those of its lines', () => {
    fc.assert(
      fc.property(scene, (each) => {
        const { legs, lengthM, workingM } = coverOf(each);
        legs.slice(1).forEach((leg, i) => {
          expect(gap(legs[i]?.line.at(-1) as XY, leg.line[0] as XY)).toBeLessThan(1e-6);
        });
        for (const { line, lengthM: own } of legs) {
          const sum = line.slice(1).reduce((s, b, i) => s + gap(line[i] as XY, b), 0);
          expect(sum).toBeCloseTo(own, 6);
        }
        if (each.start) expect(legs[0]?.line[0]).toEqual(each.start);
        if (each.end) expect(legs.at(-1)?.line.at(-1)).toEqual(each.end);
        expect(legs.reduce((sum, leg) => sum + leg.lengthM, 0)).toBeCloseTo(lengthM, 6);
        expect(workingM).toBeLessThanOrEqual(lengthM + 1e-9);
      }),
      { numRuns: RUNS },
    );
  });

  it('does each zone once in each coat, at a stretch', () => {
    fc.assert(
      fc.property(scene, (each) => {
        const { zones } = split(each);
        const { walks, legs } = coverOf(each);
        const coats = each.coats === 2 ? [1, 2] : [1];
        const asked = zones.flatMap(({ zoneId }) => coats.map((coat) => `${zoneId} ${coat}`));
        expect(walks.map(({ zoneId, coat }) => `${zoneId} ${coat}`).sort()).toEqual(asked.sort());
        const worked = legs
          .filter(({ kind }) => kind === 'pass')
          .map(({ zoneId, coat }) => `${zoneId} ${coat}`);
        const stretches = worked.filter((key, i) => key !== worked[i - 1]);
        expect(stretches.toSorted()).toEqual(asked.sort());
      }),
      { numRuns: RUNS },
    );
  });

  it('never goes through a house or a strip unless that is told, or a mark stands in one', () => {
    fc.assert(
      fc.property(scene, (each) => {
        const { houses, spared } = split(each);
        const { legs, issues } = coverOf(each);
        const told = new Set(issues.map(({ code }) => code));
        const isMarkIn = [each.start, each.end].some((mark) => mark && isIn(mark, [...houses, ...spared]));
        if (isMarkIn) return;
        for (const leg of legs.filter(({ kind }) => kind === 'carry')) {
          if (!told.has('no-way-between')) expect(metresOf(leg, houses)).toBe(0);
          if (!told.has('way-over-strip') && !told.has('no-way-between'))
            expect(metresOf(leg, spared)).toBe(0);
        }
        // boxes of a cell each leave open ground all round
        expect([...told].filter((code) => code !== 'two-wet-coats')).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  });
});

/** Stops with up to three variants, on open ground with a few houses. */
const stopsOf = (min: number, max: number) =>
  fc.array(
    fc.array(fc.record({ entry: place, exit: place, lengthM: fc.integer({ min: 0, max: 40 }) }), {
      minLength: 1,
      maxLength: 3,
    }),
    { minLength: min, maxLength: max },
  );
const courts = boxes(1, 5).map((each) => each.map(partOf));

interface Task {
  readonly stops: readonly Stop[];
  readonly start: XY | null;
  readonly end: XY | null;
  readonly wayM: (from: XY, to: XY) => number;
}

function taskOf(
  variants: readonly Stop['variants'][],
  houses: readonly PlaneRings[],
  start: XY | null,
  end: XY | null,
): Task {
  const ways = createCarryGround(houses, []);
  const stops = variants.map((own) => ({ variants: own }));
  return { stops, start, end, wayM: (from, to) => ways.between(from, to).lengthM };
}

function orderOf({ stops, start, end, wayM }: Task) {
  return orderStops({
    stops,
    start,
    end,
    doneCosts: 0,
    wayOf: (a, b) => ({ lengthM: wayM(a, b), over: [] }),
  });
}

function costOf(
  { stops, start, end, wayM }: Task,
  order: readonly { stop: number; variant: number }[],
): number {
  let at = start;
  let sum = 0;
  for (const { stop, variant } of order) {
    const own = stops[stop]?.variants[variant];
    if (!own) throw new Error('no such variant');
    sum += (at ? wayM(at, own.entry) : 0) + own.lengthM;
    at = own.exit;
  }
  return sum + (at && end ? wayM(at, end) : 0);
}

/** The cost of going to the cheapest variant of any stop left, each time. */
function nearestCost(task: Task): number {
  const left = new Set(task.stops.keys());
  const order: { stop: number; variant: number }[] = [];
  let at = task.start;
  while (left.size > 0) {
    let [best, least] = [{ stop: -1, variant: -1 }, Number.POSITIVE_INFINITY];
    for (const stop of left) {
      (task.stops[stop] as Stop).variants.forEach((own, variant) => {
        const costM = (at ? task.wayM(at, own.entry) : 0) + own.lengthM;
        if (costM < least) [best, least] = [{ stop, variant }, costM];
      });
    }
    left.delete(best.stop);
    order.push(best);
    at = task.stops[best.stop]?.variants[best.variant]?.exit ?? null;
  }
  return costOf(task, order);
}

/** Every order with every variant. */
function leastCost(task: Task): number {
  const tryAll = (done: readonly { stop: number; variant: number }[]): number => {
    if (done.length === task.stops.length) return costOf(task, done);
    const costs = task.stops.flatMap(({ variants }, stop) =>
      done.some((each) => each.stop === stop)
        ? []
        : variants.map((_, variant) => tryAll([...done, { stop, variant }])),
    );
    return Math.min(...costs);
  };
  return tryAll([]);
}

describe('the order of stops on random ground', () => {
  it('of a few is the best of all orders, found by trying each one', () => {
    fc.assert(
      fc.property(stopsOf(1, 4), courts, fc.option(place), fc.option(place), (stops, houses, start, end) => {
        const task = taskOf(stops, houses, start, end);
        expect(costOf(task, orderOf(task))).toBeCloseTo(leastCost(task), 6);
      }),
      { numRuns: 40 },
    );
  });

  it('takes every stop once and is never longer than going to the nearest each time', () => {
    fc.assert(
      fc.property(stopsOf(1, 16), courts, fc.option(place), fc.option(place), (stops, houses, start, end) => {
        const task = taskOf(stops, houses, start, end);
        const order = orderOf(task);
        expect(order.map(({ stop }) => stop).toSorted((a, b) => a - b)).toEqual([...stops.keys()]);
        expect(costOf(task, order)).toBeLessThanOrEqual(nearestCost(task) + 1e-6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('ways round random ground', () => {
  const ground = fc
    .array(
      fc
        .tuple(place, fc.integer({ min: 2, max: 40 }), fc.integer({ min: 2, max: 40 }))
        .map(([[x, y], w, h]): PlaneRings => partOf([x, y, x + w, y + h])),
      { minLength: 1, maxLength: 8 },
    )
    .map((parts) => unionOf(parts));

  it('keep out of it, are as long in either direction and obey the triangle', () => {
    fc.assert(
      fc.property(ground, place, place, place, (blocked, a, b, c) => {
        const ways = createWays(blocked);
        fc.pre(![a, b, c].some((each) => isIn(each, blocked)));
        const [ab, ba, ac, cb] = [
          ways.between(a, b),
          ways.between(b, a),
          ways.between(a, c),
          ways.between(c, b),
        ];
        expect(ab === null).toBe(ba === null);
        if (!ab || !ba) return;
        expect(ab.lengthM).toBeCloseTo(ba.lengthM, 6);
        expect(ab.lengthM).toBeGreaterThanOrEqual(gap(a, b) - 1e-9);
        const leg: Leg = { kind: 'carry', zoneId: null, coat: 1, knots: [], ...ab };
        expect(metresOf(leg, blocked)).toBeLessThan(0.01 * ab.line.length);
        if (ac && cb) expect(ab.lengthM).toBeLessThanOrEqual(ac.lengthM + cb.lengthM + 0.02);
      }),
      { numRuns: 150 },
    );
  });
});
