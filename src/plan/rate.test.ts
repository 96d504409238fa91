import { describe, expect, it } from 'vitest';
import type { Product } from '../yard/types';
import { convertAmount, isBulk, isLiquid, measuredUnit, productRate } from './rate';
import { testAnalysis, testPack, testProduct } from './testDose';

const code = (fields: Partial<Product>) => {
  const { issues } = productRate(testProduct(fields));
  return issues.map((issue) => [issue.code, issue.place.path]);
};

describe('the label rate', () => {
  it('by what one pack covers', () => {
    const fields = { rate: { basis: 'area-per-container', areaM2: 400, packId: 'pack-1' } } as const;
    expect(productRate(testProduct(fields)).rate).toEqual({
      perM2: { unit: 'kg', value: 0.025 },
      kgPerM2: 0.025,
      lPerM2: null,
    });
  });
  it('by nutrient: 2.4 g of N from 24 % is 10 g', () => {
    const product = testProduct({
      analysis: testAnalysis(24),
      rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: 0.0024 },
    });
    expect(productRate(product).rate?.perM2.value).toBeCloseTo(0.01, 15);
    expect(productRate(product, 0.5).rate?.perM2.value).toBeCloseTo(0.005, 15);
  });
  it('by depth: 5 cm is 50 L on each m²', () => {
    const product = testProduct({
      form: 'mulch',
      rate: { basis: 'depth', depthM: 0.05 },
      packs: [testPack({ unit: 'L', value: 60 })],
    });
    expect(productRate(product).rate?.perM2).toEqual({ unit: 'L', value: 50 });
  });
  it('by weight for what is poured: turned by the density', () => {
    const product = testProduct({
      form: 'liquid-concentrate',
      densityKgPerL: 1.25,
      packs: [testPack({ unit: 'L', value: 10 })],
    });
    expect(productRate(product).rate).toEqual({
      perM2: { unit: 'L', value: 0.016 },
      kgPerM2: 0.02,
      lPerM2: 0.016,
    });
  });
  it('says which field keeps it from being one', () => {
    expect(code({ rate: { basis: 'mass-per-area', rateKgPerM2: 0 } })).toEqual([
      ['rate-not-positive', 'rate.rateKgPerM2'],
    ]);
    expect(code({ rate: { basis: 'mass-per-area', rateKgPerM2: Number.POSITIVE_INFINITY } })).toEqual([
      ['rate-not-positive', 'rate'],
    ]);
    expect(code({ rate: { basis: 'area-per-container', areaM2: 0, packId: 'pack-1' } })).toEqual([
      ['rate-no-coverage', 'rate.areaM2'],
    ]);
    expect(code({ rate: { basis: 'area-per-container', areaM2: 9, packId: 'gone' } })).toEqual([
      ['rate-pack-missing', 'rate.packId'],
    ]);
    expect(code({ rate: { basis: 'nutrient-per-area', nutrient: 'K2O', rateKgPerM2: 0.001 } })).toEqual([
      ['rate-no-nutrient', 'rate.nutrient'],
    ]);
    expect(code({ rate: { basis: 'volume-per-area', rateLPerM2: 0.001 } })).toEqual([
      ['rate-no-density', 'densityKgPerL'],
    ]);
  });
});

describe('what is poured', () => {
  const litres = [testPack({ unit: 'L', value: 10 })];
  const volume = { basis: 'volume-per-area', rateLPerM2: 0.003 } as const;
  it.each([
    ['a ready-to-use liquid', { form: 'ready-to-use' }, true],
    ['a concentrate', { form: 'liquid-concentrate' }, true],
    ['granules', { form: 'granular' }, false],
    ['a soil amendment in litres', { form: 'soil-amendment', packs: litres, rate: volume }, true],
    ['one without packs, by volume', { form: 'soil-amendment', packs: [], rate: volume }, true],
    ['one by weight', { form: 'soil-amendment' }, false],
    [
      'one laid by depth',
      { form: 'soil-amendment', packs: litres, rate: { basis: 'depth', depthM: 0.01 } },
      false,
    ],
    ['mulch in litres', { form: 'mulch', packs: litres, rate: volume }, false],
    ['topdressing in litres', { form: 'topdressing', packs: litres, rate: volume }, false],
    ['a powder', { form: 'soluble-powder', carrierLPerM2: 0.04 }, false],
    [
      'an amendment in litres from a tank',
      { form: 'soil-amendment', packs: litres, rate: volume, applicator: 'tank-sprayer' },
      true,
    ],
    [
      'peat in litres by hand',
      { form: 'soil-amendment', packs: litres, rate: volume, applicator: 'by-hand' },
      false,
    ],
  ] as const)('%s: %o', (_what, fields, expected) => {
    expect(isLiquid(testProduct(fields))).toBe(expected);
  });
  it('goes by the first pack, else by the form', () => {
    expect(measuredUnit(testProduct({ packs: litres }))).toBe('L');
    expect(measuredUnit(testProduct({ packs: [] }))).toBe('kg');
    expect(measuredUnit(testProduct({ form: 'ready-to-use', packs: [] }))).toBe('L');
  });
});

it('no reading without a usable density', () => {
  expect(convertAmount({ unit: 'L', value: 2 }, 'kg', null)).toBeNull();
  expect(convertAmount({ unit: 'L', value: 2 }, 'kg', 0)).toBeNull();
  expect(convertAmount({ unit: 'L', value: 2 }, 'L', null)).toEqual({ unit: 'L', value: 2 });
});

describe('bulk goods', () => {
  const bulk = (fields: Parameters<typeof testProduct>[0]) => isBulk(testProduct(fields));
  it('are mulch, topdressing and what is laid by depth, never what is poured', () => {
    expect(bulk({ form: 'mulch' })).toBe(true);
    expect(bulk({ form: 'topdressing' })).toBe(true);
    expect(bulk({ form: 'soil-amendment', rate: { basis: 'depth', depthM: 0.01 } })).toBe(true);
    expect(bulk({ form: 'soil-amendment' })).toBe(false);
    expect(bulk({ form: 'granular' })).toBe(false);
    expect(bulk({ form: 'liquid-concentrate', rate: { basis: 'depth', depthM: 0.01 } })).toBe(false);
  });
  it('are dry goods sold by volume', () => {
    const litres = [testPack({ unit: 'L', value: 50 })];
    const volume = { basis: 'volume-per-area', rateLPerM2: 1 } as const;
    expect(bulk({ form: 'granular', packs: litres, rate: volume })).toBe(true);
    expect(bulk({ form: 'soil-amendment', packs: litres, rate: volume })).toBe(false);
    expect(bulk({ form: 'soil-amendment', packs: litres, rate: volume, applicator: 'by-hand' })).toBe(true);
  });
  it('are measured as the packs of their use', () => {
    const packs = [testPack({ unit: 'kg', value: 20 }, 'bag'), testPack({ unit: 'L', value: 765 }, 'yard')];
    const depth = { basis: 'depth', depthM: 0.006 } as const;
    const top = { form: 'topdressing', packs, rate: depth } as const;
    expect(measuredUnit(testProduct({ ...top, packIds: ['yard'] }))).toBe('L');
    expect(measuredUnit(testProduct({ ...top, packIds: ['bag'] }))).toBe('kg');
  });
  it('without packs are measured by volume, unless their rate is a weight', () => {
    const mulch = { form: 'mulch', packs: [] } as const;
    expect(measuredUnit(testProduct({ ...mulch, rate: { basis: 'depth', depthM: 0.05 } }))).toBe('L');
    expect(measuredUnit(testProduct(mulch))).toBe('kg');
  });
});
