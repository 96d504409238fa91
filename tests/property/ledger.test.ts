import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stockLess, takeFromStock } from '../../src/plan/takeFromStock';
import { plannedEntries } from '../../src/season/ledgerEntries';
import { findExcess } from '../../src/season/ledgerExcess';
import { LEDGER_ITEMS, type LedgerItem, ledgerSums, meanOfZones } from '../../src/season/ledgerSums';
import { doneDay, testDay, testFeed, testSeason } from '../../src/season/testSeason';
import { yearByMonth } from '../../src/season/yearByMonth';
import { newProduct } from '../../src/yard/defaults';
import type { Visit } from '../../src/yard/types';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const day = fc
  .tuple(
    fc.integer({ min: 2025, max: 2027 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
  )
  .map(([y, m, d]) => `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`);
const feeds = [
  testFeed('grain', [20, 5, 10], 0.8, {
    analysis: { nPct: 20, p2o5Pct: 5, k2oPct: 10, slowNPctOfN: 40, elementsPct: { Fe: 2, S: 3 } },
  }),
  testFeed('liquid', [12, 0, 6], 0.2, {
    form: 'liquid-concentrate',
    densityKgPerL: 1.2,
    packs: [{ id: 'jug', content: { unit: 'L', value: 10 }, price: null }],
  }),
];
const plan = fc.record({
  date: fc.option(day, { nil: null }),
  product: fc.constantFrom('grain', 'liquid'),
  factor: real(0.1, 1.5),
  isDone: fc.boolean(),
  zones: fc.constantFrom<readonly string[]>(['front'], ['back'], ['front', 'back']),
});
const plans = fc.array(plan, { maxLength: 14 });
const toVisit = (
  { date, product, factor, isDone, zones }: typeof plan extends fc.Arbitrary<infer T> ? T : never,
  index: number,
): Visit => {
  const visit = testDay(`v${index}`, date, [{ productId: product, rateFactor: factor }], {
    zones: { classes: [], include: zones, exclude: [] },
  });
  return isDone ? doneDay(visit, null, date ?? '2026-01-01') : visit;
};
const near = (ours: number, other: number) =>
  expect(Math.abs(ours - other)).toBeLessThanOrEqual(1e-9 * Math.max(1e-6, Math.abs(other)));
const grounds = [
  { zoneId: 'front', areaM2: 120 },
  { zoneId: 'back', areaM2: 80 },
];

describe('the ledger', () => {
  it('adds up: months to the year, done and to come to the total, products to the mean', () => {
    fc.assert(
      fc.property(plans, (list) => {
        const { entries } = testSeason(feeds, list.map(toVisit));
        for (const year of [2025, 2026, 2027]) {
          const sums = ledgerSums(entries, grounds, year);
          const value = (laid: Readonly<Partial<Record<LedgerItem, number>>>, item: LedgerItem) =>
            laid[item] ?? 0;
          for (const item of LEDGER_ITEMS) {
            for (const zone of sums) {
              near(
                zone.months.reduce((sum, month) => sum + value(month.total, item), 0),
                value(zone.year.total, item),
              );
              near(value(zone.year.done, item) + value(zone.year.toCome, item), value(zone.year.total, item));
            }
          }
          const products = yearByMonth(entries, grounds, year);
          near(
            products.flatMap((one) => [...one.planned, ...one.done]).reduce((sum, each) => sum + each, 0),
            value(meanOfZones(sums).year.total, 'N'),
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it('done as planned equals the plan, told by volume or by weight', () => {
    fc.assert(
      fc.property(plans, fc.boolean(), (list, isOther) => {
        const visits = list.map((one, index) => toVisit({ ...one, isDone: false }, index));
        const { figures, entries } = testSeason(feeds, visits);
        const done = visits.map((visit, index) => {
          const amount = figures[index]?.doses[0]?.amount ?? null;
          const kg = amount?.unit === 'L' ? { unit: 'kg' as const, value: amount.value * 1.2 } : amount;
          return doneDay(visit, isOther ? kg : amount, visit.date ?? '2026-01-01');
        });
        const real = testSeason(feeds, done);
        expect(real.entries).toHaveLength(entries.length);
        real.entries.forEach((entry, index) => {
          near(entry.nutrientKgPerM2.N, entries[index]?.nutrientKgPerM2.N ?? Number.NaN);
          near(entry.solubleNKgPerM2, entries[index]?.solubleNKgPerM2 ?? Number.NaN);
          near(entry.elementKgPerM2.Fe ?? 0, entries[index]?.elementKgPerM2.Fe ?? 0);
        });
        expect(plannedEntries(real.figures).map((entry) => entry.nutrientKgPerM2.N)).toEqual(
          entries.map((entry) => entry.nutrientKgPerM2.N),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('more product or a lower limit never takes away a zone that passes the limit', () => {
    fc.assert(
      fc.property(plans, plan, real(0.0002, 0.01), real(0.2, 1), (list, more, limit, lower) => {
        const passed = (all: typeof list, most: number) =>
          new Set(
            findExcess(testSeason(feeds, all.map(toVisit)).entries, {
              amountOf: (entry) => entry.nutrientKgPerM2.N,
              stretchOf: ({ date }) => date?.slice(0, 4) ?? null,
              limitOf: () => most,
            }).flatMap(({ stretch, zoneIds }) => zoneIds.map((id) => `${stretch} ${id}`)),
          );
        const before = passed(list, limit);
        for (const after of [passed([...list, more], limit), passed(list, limit * lower)]) {
          expect([...before].filter((each) => !after.has(each))).toEqual([]);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('stock', () => {
  const count = fc.oneof(fc.integer({ min: 0, max: 5 }), real(0, 5));
  it('taken and short make up the need; none goes below nothing; put back it is as before', () => {
    fc.assert(
      fc.property(fc.tuple(count, count, count), real(0, 60), (counts, need) => {
        const sizes = [0.5, 2.5, 10];
        const packs = sizes.map((value, index) => ({
          id: `p${index}`,
          content: { unit: 'L' as const, value },
          price: null,
        }));
        const onHand = Object.fromEntries(counts.map((each, index) => [`p${index}`, each]));
        const product = newProduct('x', { packs, onHand });
        const { taken, short } = takeFromStock(product, { unit: 'L', value: need });
        const sum = Object.entries(taken).reduce(
          (total, [id, each]) => total + each * (sizes[Number(id[1])] ?? 0),
          0,
        );
        expect(Math.abs(sum + short.value - need)).toBeLessThan(1e-6);
        const all = counts.reduce((total, each, index) => total + each * (sizes[index] ?? 0), 0);
        if (short.value > 1e-6) expect(Math.abs(sum - all)).toBeLessThan(1e-6);
        const left = stockLess(onHand, taken);
        for (const [id, each] of Object.entries(left)) {
          expect(each).toBeGreaterThanOrEqual(0);
          expect(each).toBeLessThanOrEqual((onHand[id] ?? 0) + 1e-8);
        }
        const back = stockLess(left, taken, -1);
        for (const [id, each] of Object.entries(onHand))
          expect(Math.abs((back[id] ?? 0) - each)).toBeLessThan(1e-8);
      }),
    );
  });
});
