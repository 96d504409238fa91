import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyUse, usesOf } from '../../src/plan/applyUse';
import { checkProduct } from '../../src/plan/check';
import { effectiveLimePct, FINENESS_TABLES } from '../../src/plan/limeValue';
import { addAmounts, NOTHING, productByZone } from '../../src/plan/productByZone';
import { productRate } from '../../src/plan/rate';
import {
  planOn,
  planOne,
  testDose,
  testHoseLiquid,
  testLimits,
  testProduct,
  testUse,
  testVisit,
  testZone,
} from '../../src/plan/testDose';
import type { Product, ProductUse } from '../../src/yard/types';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (ours: number, other: number, relative = 1e-9) =>
  expect(Math.abs(ours - other)).toBeLessThanOrEqual(relative * Math.max(Math.abs(other), 1e-12));
const perM2 = (product: Product) => productRate(product).rate?.perM2.value ?? Number.NaN;

/** Uses of a granule by weight, with ids of their own. */
const uses = fc
  .array(real(1e-4, 0.2), { maxLength: 4 })
  .map((rates) =>
    rates.map(
      (rateKgPerM2, i): ProductUse =>
        testUse({ id: `u-${i}`, name: `Use ${i}`, rate: { basis: 'mass-per-area', rateKgPerM2 } }),
    ),
  );

describe('uses of a label', () => {
  it('the first is the label itself, the others keep what is the label’s', () => {
    fc.assert(
      fc.property(uses, (otherUses) => {
        const product = testProduct({ otherUses, saltIndex: 40 });
        expect(applyUse(product, null)).toBe(product);
        for (const use of usesOf(product)) {
          const { id, name, analysis, packs, saltIndex, limits } = use.product;
          expect({ id, name, analysis, packs, saltIndex, limits }).toEqual({
            id: product.id,
            name: product.name,
            analysis: product.analysis,
            packs: product.packs,
            saltIndex: product.saltIndex,
            limits: product.limits,
          });
          // a use of a use is that use
          expect(applyUse(use.product, use.id)).toEqual(use.product);
        }
      }),
    );
  });
  it('amounts scale with ground and share of the rate, by whichever use', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(null, 'tank'),
        real(1, 10_000),
        real(0.1, 2),
        real(0.5, 20),
        (useId, areaM2, factor, times) => {
          const product = testHoseLiquid();
          const by = (area: number, share: number) =>
            planOne(product, area, { factor: share, ...(useId && { useId }) });
          const once = by(areaM2, 1);
          near(by(areaM2 * times, 1).amount.value, once.amount.value * times);
          near(by(areaM2, factor).amount.value, once.amount.value * factor);
          near(by(areaM2, factor).nutrientKgPerM2?.N ?? Number.NaN, (once.nutrientKgPerM2?.N ?? 0) * factor);
        },
      ),
    );
  });
  it('what a visit lays on a zone is the sum over its doses, in any order, each by its own rate', () => {
    const share = fc.tuple(fc.nat(4), real(0.1, 2));
    fc.assert(
      fc.property(uses, fc.array(share, { minLength: 1, maxLength: 6 }), (otherUses, shares) => {
        const product = testProduct({ otherUses });
        const ids = [null, ...otherUses.map((use) => use.id)];
        const doses = shares.map(([which, rateFactor], i) =>
          testDose({ id: `d-${i}`, useId: ids[which % ids.length] ?? null, rateFactor }),
        );
        const laid = (list: typeof doses) =>
          productByZone(
            planOn([product], testVisit({ doses: list }), [testZone(100)]).laid,
            product.id,
          ).byZone.get('z-1')?.kgPerM2 ?? Number.NaN;
        const alone = doses.map((dose) => laid([dose]));
        const sum = alone.reduce((total, one) => total + one, 0);
        near(laid(doses), sum);
        near(laid(doses.toReversed()), sum);
        near(
          laid(doses.slice(0, 1)),
          planOne(product, 1, {
            factor: doses[0]?.rateFactor ?? 1,
            ...(doses[0]?.useId && { useId: doses[0].useId }),
          }).amount.value,
        );
        // the label's most is passed just where the sum passes it
        const codes = (most: number) =>
          planOn(
            [{ ...product, limits: testLimits({ maxPerDose: { unit: 'kg', value: most } }) }],
            testVisit({ doses }),
            [testZone(100)],
          ).issues.map((issue) => issue.code);
        expect(codes(sum * 1.001)).not.toContain('limit-dose');
        expect(codes(sum * 0.999)).toContain('limit-dose');
      }),
      { numRuns: 60 },
    );
  });
  it('nothing added changes nothing, and what is not known stays so', () => {
    fc.assert(
      fc.property(real(0, 5), real(0, 5), (kgPerM2, lPerM2) => {
        const whole = { kgPerM2, lPerM2, isKgWhole: true, isLWhole: true };
        expect(addAmounts(whole, NOTHING)).toEqual(whole);
        const part = { kgPerM2: 0, lPerM2, isKgWhole: false, isLWhole: true };
        expect(addAmounts(part, { ...whole, lPerM2: 0 })).toEqual({ ...whole, isKgWhole: false });
      }),
    );
  });
  it('a label of any numbers is judged, never thrown at', () => {
    const any = fc.oneof(fc.double(), fc.constantFrom(0, -1, Number.NaN, 1e9));
    fc.assert(
      fc.property(any, any, any, any, any, (a, b, c, d, e) => {
        const product = testHoseLiquid({
          analysis: { nPct: a, p2o5Pct: b, k2oPct: c, slowNPctOfN: d, elementsPct: { Fe: e } },
          densityKgPerL: b,
          carrierLPerM2: c,
          spreadDistanceM: d,
          limePct: e,
          saltIndex: a,
          seed: { purityPct: b, germinationPct: c },
          ingredients: [{ name: '', pct: d }],
          limits: testLimits({ maxPerDose: { unit: 'kg', value: e }, maxAirTempC: a }),
          otherUses: [testUse({ rate: { basis: 'pure-live-seed', rateKgPerM2: b }, packIds: ['gone'] })],
        });
        const issues = checkProduct(product);
        expect(new Set(issues.map((issue) => `${issue.code} ${issue.place.path}`)).size).toBe(issues.length);
        for (const issue of issues) expect(issue.message).toMatch(/\.$/);
        planOn([product], testVisit({ doses: [testDose({ productId: product.id })] }), [testZone(100)]);
      }),
    );
  });
});

describe('seed and lime', () => {
  const pct = real(1, 100);
  it('the better the seed, the less of the bag; pure live seed in it is always what was wanted', () => {
    const bag = (purityPct: number, germinationPct: number, rateKgPerM2: number) =>
      perM2(
        testProduct({
          form: 'seed',
          seed: { purityPct, germinationPct },
          rate: { basis: 'pure-live-seed', rateKgPerM2 },
        }),
      );
    fc.assert(
      fc.property(pct, pct, pct, real(1e-4, 0.1), (purity, germination, better, rate) => {
        const seed = bag(purity, germination, rate);
        near((seed * purity * germination) / 10_000, rate);
        expect(bag(Math.max(purity, better), germination, rate)).toBeLessThanOrEqual(seed * (1 + 1e-12));
        expect(bag(purity, Math.max(germination, better), rate)).toBeLessThanOrEqual(seed * (1 + 1e-12));
        near(bag(purity, germination, rate * 2), seed * 2);
      }),
    );
  });
  it('the stronger the lime, the less of it', () => {
    const sold = (limePct: number, rateKgPerM2: number) =>
      perM2(testProduct({ limePct, rate: { basis: 'effective-lime', rateKgPerM2 } }));
    fc.assert(
      fc.property(real(1, 200), real(1, 200), real(0.01, 1), (one, other, rate) => {
        near((sold(one, rate) * one) / 100, rate);
        expect(sold(Math.max(one, other), rate)).toBeLessThanOrEqual(sold(one, rate) * (1 + 1e-12));
      }),
    );
  });
  it('finer lime of one purity is worth as much or more, never more than its purity', () => {
    const sieves = fc.array(real(0, 100), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(
        fc.constantFrom(...FINENESS_TABLES),
        real(1, 180),
        sieves,
        real(0, 1),
        (table, cce, raw, up) => {
          const coarse = raw.toSorted((a, b) => b - a);
          const fine = coarse.map((passing) => passing + (100 - passing) * up);
          const worth = (passing: readonly number[]) => {
            const found = effectiveLimePct(
              cce,
              table.meshes.map((mesh, i) => ({ mesh, passingPct: passing[i] ?? Number.NaN })),
              table,
            );
            expect(found.ok ? '' : found.message).toBe('');
            return found.ok ? found.value : Number.NaN;
          };
          expect(worth(fine)).toBeGreaterThanOrEqual(worth(coarse) * (1 - 1e-12));
          expect(worth(fine)).toBeLessThanOrEqual(cce * (1 + 1e-12));
          expect(worth(coarse)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
