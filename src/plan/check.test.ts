import { describe, expect, it } from 'vitest';
import type { Product } from '../yard/types';
import { checkProduct } from './check';
import { testAnalysis, testLimits, testPack, testProduct } from './testDose';

const litres = [testPack({ unit: 'L', value: 10 })];
const poured: Partial<Product> = {
  form: 'liquid-concentrate',
  packs: litres,
  rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
};

describe('a product entry', () => {
  it('that is in order has no issue', () => {
    expect(checkProduct(testProduct())).toEqual([]);
  });
  it.each<readonly [string, string, 'error' | 'warning', Partial<Product>]>([
    ['analysis-out-of-range', 'analysis.nPct', 'error', { analysis: testAnalysis(-1) }],
    ['analysis-out-of-range', 'analysis.k2oPct', 'error', { analysis: testAnalysis(0, 0, Number.NaN) }],
    ['analysis-over-100', 'analysis', 'error', { analysis: testAnalysis(50, 30, 21) }],
    ['slow-n-out-of-range', 'analysis.slowNPctOfN', 'error', { analysis: testAnalysis(20, 0, 0, 120) }],
    ['no-packs', 'packs', 'error', { packs: [] }],
    ['pack-empty', 'packs[0].content', 'error', { packs: [testPack({ unit: 'kg', value: 0 })] }],
    [
      'pack-unit',
      'packs[1].content',
      'error',
      { packs: [...testProduct().packs, testPack({ unit: 'L', value: 2 }, 'b')] },
    ],
    [
      'price-negative',
      'packs[0].price',
      'error',
      { packs: [{ ...testPack({ unit: 'kg', value: 1 }), price: -1 }] },
    ],
    ['on-hand-negative', 'onHand.pack-1', 'error', { onHand: { 'pack-1': -1 } }],
    [
      'pack-id-double',
      'packs[1].id',
      'error',
      { packs: [testPack({ unit: 'kg', value: 10 }), testPack({ unit: 'kg', value: 5 })] },
    ],
    ['on-hand-unknown', 'onHand.gone', 'warning', { onHand: { 'pack-1': 2, gone: 1 } }],
    ['density-not-positive', 'densityKgPerL', 'error', { densityKgPerL: 0 }],
    ['density-odd', 'densityKgPerL', 'warning', { densityKgPerL: 10.7 }],
    ['density-missing', 'densityKgPerL', 'warning', { ...poured, analysis: testAnalysis(12) }],
    [
      'density-missing',
      'densityKgPerL',
      'warning',
      { ...poured, form: 'soil-amendment', analysis: testAnalysis(1) },
    ],
    ['rate-not-positive', 'rate.rateKgPerM2', 'error', { rate: { basis: 'mass-per-area', rateKgPerM2: -1 } }],
    [
      'limit-not-positive',
      'limits.maxPerDose',
      'error',
      { limits: testLimits({ maxPerDose: { unit: 'kg', value: 0 } }) },
    ],
    [
      'limit-below-rate',
      'limits.maxPerYear',
      'warning',
      { limits: testLimits({ maxPerYear: { unit: 'kg', value: 0.01 } }) },
    ],
    [
      'limit-unit',
      'limits.maxPerDose',
      'error',
      { limits: testLimits({ maxPerDose: { unit: 'L', value: 1 } }) },
    ],
    ['limit-not-positive', 'limits.maxDosesPerYear', 'error', { limits: testLimits({ maxDosesPerYear: 0 }) }],
    [
      'limit-not-positive',
      'limits.minIntervalDays',
      'error',
      { limits: testLimits({ minIntervalDays: -1 }) },
    ],
    ['no-name', 'name', 'warning', { name: ' ' }],
    ['spread-negative', 'spreadDistanceM', 'error', { spreadDistanceM: -0.1 }],
    ['carrier-negative', 'carrierLPerM2', 'error', { carrierLPerM2: -1 }],
    [
      'carrier-below-rate',
      'carrierLPerM2',
      'error',
      { ...poured, carrierLPerM2: 0.001, carrierIsTotal: true },
    ],
  ])('%s at %s (%s)', (code, path, severity, fields) => {
    const issues = checkProduct(testProduct(fields));
    expect(issues.map((issue) => [issue.code, issue.place.path, issue.severity])).toEqual([
      [code, path, severity],
    ]);
    expect(issues[0]?.place.productId).toBe('p-1');
    expect(issues[0]?.message).toMatch(/^\S.*: .*\.$/);
  });
  it('is not warned of where there is no reason', () => {
    expect(checkProduct(testProduct({ ...poured, carrierLPerM2: 0.001 }))).toEqual([]);
    expect(checkProduct(testProduct({ analysis: testAnalysis(40, 30, 30) }))).toEqual([]);
    expect(
      checkProduct(testProduct({ limits: testLimits({ maxPerDose: { unit: 'kg', value: 0.02 } }) })),
    ).toEqual([]);
  });
});
