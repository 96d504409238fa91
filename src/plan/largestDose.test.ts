import { describe, expect, it } from 'vitest';
import { newProduct } from '../yard/defaults';
import type { Product } from '../yard/types';
import { labelMostFactor, largestDose } from './largestDose';
import { NO_CAPS } from './testDose';

/** 10 g/m² of 20-5-10, half of its N slow: 2 g N, 1 g soluble, 0.5 g P2O5. */
const product = newProduct('p', {
  name: 'Granules',
  analysis: { nPct: 20, p2o5Pct: 5, k2oPct: 10, slowNPctOfN: 50, elementsPct: {} },
  rate: { basis: 'mass-per-area', rateKgPerM2: 0.01 },
  packs: [{ id: 'bag', content: { unit: 'kg', value: 10 }, price: null }],
});
const withMost = (unit: 'kg' | 'L', value: number): Product => ({
  ...product,
  limits: { ...product.limits, maxPerDose: { unit, value } },
});

describe('largestDose', () => {
  it('is what is asked for where nothing speaks against it', () => {
    expect(largestDose(product, NO_CAPS, 1.5)).toEqual({ factor: 1.5, hold: 'asked' });
    expect(largestDose(withMost('kg', 0.02), NO_CAPS, 2)).toEqual({ factor: 2, hold: 'asked' });
  });

  it.each([
    ['label-most', {}, 1.2],
    ['total-n-cap', { totalNPerDose: 0.002 }, 1],
    ['soluble-n-cap', { totalNPerDose: 0.002, solubleNPerDose: 0.0005 }, 0.5],
    ['p2o5-cap', { solubleNPerDose: 0.0005, p2o5PerDose: 0.0001 }, 0.2],
  ] as const)('is held by the tightest: %s', (hold, caps, factor) => {
    const found = largestDose(withMost('kg', 0.012), { ...NO_CAPS, ...caps }, Number.POSITIVE_INFINITY);
    expect(found?.hold).toBe(hold);
    expect(found?.factor).toBeCloseTo(factor, 12);
  });

  it('cannot be told without a rate; a most in the other measure needs the density', () => {
    const noRate: Product = { ...product, rate: { basis: 'mass-per-area', rateKgPerM2: 0 } };
    expect(largestDose(noRate, NO_CAPS, 1)).toBeNull();
    expect(labelMostFactor(withMost('L', 0.02))).toBeNull();
    expect(labelMostFactor({ ...withMost('L', 0.02), densityKgPerL: 0.5 })).toBeCloseTo(1, 12);
    expect(labelMostFactor(product)).toBeNull();
  });
});
