import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareProducts } from '../../src/buy/compareProducts';
import { DEFAULT_CAPS, newProduct } from '../../src/yard/defaults';
import type { NutrientCaps, Pack, Product } from '../../src/yard/types';

/** Whole grams and cents, so that a purchase by trial is exact. */
const packs = fc
  .array(
    fc.record({ grams: fc.integer({ min: 500, max: 25_000 }), cents: fc.integer({ min: 100, max: 9000 }) }),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .map((sizes) =>
    sizes.map(
      ({ grams, cents }, i): Pack => ({
        id: `${i}`,
        content: { unit: 'kg', value: grams / 1000 },
        price: cents / 100,
      }),
    ),
  );
const product = fc
  .record({
    nPct: fc.integer({ min: 2, max: 46 }),
    slowNPctOfN: fc.option(fc.integer({ min: 0, max: 100 }), { nil: null }),
    p2o5Pct: fc.integer({ min: 0, max: 20 }),
    rateKgPerM2: fc.integer({ min: 2, max: 40 }).map((grams) => grams / 1000),
    most: fc.option(fc.integer({ min: 1, max: 60 }), { nil: null }),
    packs,
  })
  .map(
    ({ nPct, slowNPctOfN, p2o5Pct, rateKgPerM2, most, packs: sizes }): Product =>
      newProduct('p', {
        analysis: { nPct, p2o5Pct, k2oPct: 0, slowNPctOfN, elementsPct: {} },
        rate: { basis: 'mass-per-area', rateKgPerM2 },
        limits: {
          ...newProduct('x').limits,
          maxPerDose: most === null ? null : { unit: 'kg', value: most / 1000 },
        },
        packs: sizes,
      }),
  );
const cap = fc.option(fc.double({ min: 2e-4, max: 0.01, noNaN: true }), { nil: null });
const caps: fc.Arbitrary<NutrientCaps> = fc.record({
  totalNPerDose: cap,
  solubleNPerDose: cap,
  p2o5PerDose: cap,
  nPerYear: fc.constant(null),
  p2o5PerYear: fc.constant(DEFAULT_CAPS.p2o5PerYear),
  k2oPerYear: fc.constant(null),
});
const asked = fc.record({
  product,
  caps,
  areaM2: fc.integer({ min: 20, max: 800 }),
  nKgPerM2: fc.integer({ min: 1, max: 20 }).map((grams) => grams / 1000),
  dose: fc.constantFrom('label-rate' as const, 'label-most' as const),
});
const EPS = 1e-6;

/** Product of one dose by the plain words of the limits, kg/m². */
function mostAtOnce(of: Product, dose: 'label-rate' | 'label-most', limits: NutrientCaps): number {
  const { nPct, p2o5Pct, slowNPctOfN } = of.analysis;
  const rate = of.rate.basis === 'mass-per-area' ? of.rate.rateKgPerM2 : Number.NaN;
  const most = of.limits.maxPerDose?.value ?? null;
  const bounds = [
    dose === 'label-most' && most !== null ? most : rate,
    most ?? Number.POSITIVE_INFINITY,
    limits.totalNPerDose === null ? Number.POSITIVE_INFINITY : limits.totalNPerDose / (nPct / 100),
    limits.solubleNPerDose === null
      ? Number.POSITIVE_INFINITY
      : limits.solubleNPerDose / ((nPct / 100) * (1 - (slowNPctOfN ?? 0) / 100)),
    limits.p2o5PerDose === null ? Number.POSITIVE_INFINITY : limits.p2o5PerDose / (p2o5Pct / 100),
  ];
  return Math.min(...bounds);
}

/** Least cost by trying every count. */
function leastCost(sizes: readonly Pack[], need: number): number {
  const [first, ...rest] = sizes;
  if (need <= 1e-9) return 0;
  if (!first) return Number.POSITIVE_INFINITY;
  const price = first.price ?? 0;
  let best = Number.POSITIVE_INFINITY;
  const most = Math.ceil(need / first.content.value - EPS);
  for (let count = 0; count <= most; count++)
    best = Math.min(best, count * price + leastCost(rest, need - count * first.content.value));
  return best;
}

describe('any product for any nitrogen', () => {
  it('brings what is wanted in as few like visits as every limit allows', () => {
    fc.assert(
      fc.property(asked, ({ product: own, ...input }) => {
        const option = compareProducts({ ...input, products: [own] }).options[0];
        if (!option) throw new Error('left out');
        expect(option.nutrients.N / input.nKgPerM2).toBeCloseTo(1, 9);
        const each = option.perVisit.value / input.areaM2;
        const most = mostAtOnce(own, input.dose, input.caps);
        expect(each).toBeLessThanOrEqual(most * (1 + EPS));
        // one visit fewer would pass a limit
        if (option.visits > 1)
          expect((each * option.visits) / (option.visits - 1)).toBeGreaterThan(most * (1 - EPS));
      }),
      { numRuns: 400 },
    );
  });

  it('buys at the least cost that trying every count finds', () => {
    fc.assert(
      fc.property(asked, ({ product: own, ...input }) => {
        const option = compareProducts({ ...input, products: [own] }).options[0];
        const need = option?.total.value ?? Number.NaN;
        fc.pre(need < 60);
        expect(option?.cost).toBeCloseTo(leastCost(own.packs, need), 6);
        expect(option?.left).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});
