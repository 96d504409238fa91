import { describe, expect, it } from 'vitest';
import type { Product } from '../yard/types';
import { checkProduct } from './check';
import { analysis, fluidOunces, lbPer1000, makeLabel } from './testLabels';

const limits = makeLabel().limits;
const cases: readonly (readonly [Partial<Product>, string, string, string])[] = [
  [{ analysis: analysis(60, 30, 20) }, 'analysis-over-100', 'analysis', 'error'],
  [{ analysis: analysis(20, -1) }, 'analysis-out-of-range', 'analysis.p2o5Pct', 'error'],
  [
    { analysis: { ...analysis(20), slowNPctOfN: 120 } },
    'slow-n-out-of-range',
    'analysis.slowNPctOfN',
    'error',
  ],
  [{ analysis: analysis(0, 5) }, 'rate-no-nutrient', 'rate.nutrient', 'error'],
  [
    { rate: { basis: 'area-per-container', areaM2: 0, packId: 'bag' } },
    'rate-no-coverage',
    'rate.areaM2',
    'error',
  ],
  [
    { rate: { basis: 'area-per-container', areaM2: 9, packId: 'x' } },
    'rate-pack-missing',
    'rate.packId',
    'error',
  ],
  [{ packs: [] }, 'no-packs', 'packs', 'error'],
  [{ densityKgPerL: 0 }, 'density-not-positive', 'densityKgPerL', 'error'],
  [{ densityKgPerL: 12 }, 'density-odd', 'densityKgPerL', 'warning'],
  [
    { limits: { ...limits, maxPerDose: { unit: 'kg', value: lbPer1000(1) } } },
    'limit-below-rate',
    'limits.maxPerDose',
    'warning',
  ],
  [
    { limits: { ...limits, maxPerYear: { unit: 'kg', value: 0 } } },
    'limit-not-positive',
    'limits.maxPerYear',
    'error',
  ],
  [{ limits: { ...limits, minIntervalDays: -1 } }, 'limit-not-positive', 'limits.minIntervalDays', 'error'],
  [{ limits: { ...limits, maxDosesPerYear: 0 } }, 'limit-not-positive', 'limits.maxDosesPerYear', 'error'],
  [{ carrierLPerM2: -1 }, 'carrier-negative', 'carrierLPerM2', 'error'],
  [{ spreadDistanceM: -1 }, 'spread-negative', 'spreadDistanceM', 'error'],
  [{ name: ' ' }, 'no-name', 'name', 'warning'],
];

describe('checks on a label', () => {
  it('finds nothing on a good one', () => {
    expect(checkProduct(makeLabel())).toEqual([]);
  });
  it('exactly 100 % by floating sums is no fault', () => {
    expect(checkProduct(makeLabel({ analysis: analysis(33.3, 33.4, 33.3) }))).toEqual([]);
  });
  it.each(cases)('%j: %s', (fields, code, path, severity) => {
    const found = checkProduct(makeLabel(fields)).filter(
      (issue) => issue.code === code && issue.place.path === path,
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity, place: { productId: 'label' } });
    expect(found[0]?.message).toMatch(/\w.*\.$/);
  });
  it('a pack in a unit that the density cannot turn', () => {
    const packs = [...makeLabel().packs, { id: 'jug', content: fluidOunces(64), price: null }];
    expect(checkProduct(makeLabel({ packs })).map((issue) => issue.code)).toEqual(['pack-unit']);
    expect(checkProduct(makeLabel({ packs, densityKgPerL: 0.9 }))).toEqual([]);
  });
});
