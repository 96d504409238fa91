import { describe, expect, it } from 'vitest';
import type { Product } from '../yard/types';
import { checkProduct } from './check';
import { testAnalysis, testHoseLiquid, testLimits, testPack, testProduct, testUse } from './testDose';

const litres = [testPack({ unit: 'L', value: 10 })];
const poured: Partial<Product> = {
  form: 'liquid-concentrate',
  packs: litres,
  rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
};

const withElements = (elementsPct: Product['analysis']['elementsPct'], analysis = testAnalysis(0)) => ({
  ...analysis,
  elementsPct,
});

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
    ['element-out-of-range', 'analysis.elementsPct.Fe', 'error', { analysis: withElements({ Fe: -1 }) }],
    ['elements-over-100', 'analysis.elementsPct', 'error', { analysis: withElements({ Ca: 60, S: 41 }) }],
    // 0-0-62 is 51.5 % K
    [
      'elements-over-100',
      'analysis.elementsPct',
      'error',
      { analysis: withElements({ Cl: 49 }, testAnalysis(0, 0, 62)) },
    ],
    ['ingredient-out-of-range', 'ingredients[0].pct', 'error', { ingredients: [{ name: 'kelp', pct: 101 }] }],
    ['ingredient-no-name', 'ingredients[0].name', 'warning', { ingredients: [{ name: ' ', pct: 6 }] }],
    [
      'ingredient-double',
      'ingredients[1].name',
      'warning',
      {
        ingredients: [
          { name: 'Kelp', pct: 6 },
          { name: 'kelp ', pct: 1 },
        ],
      },
    ],
    [
      'ingredients-over-100',
      'ingredients',
      'error',
      {
        ingredients: [
          { name: 'humic acid', pct: 70 },
          { name: 'kelp', pct: 31 },
        ],
      },
    ],
    ['seed-out-of-range', 'seed.purityPct', 'error', { seed: { purityPct: 101, germinationPct: 85 } }],
    [
      'rate-no-seed-tag',
      'seed',
      'error',
      { form: 'seed', rate: { basis: 'pure-live-seed', rateKgPerM2: 0.01 } },
    ],
    ['lime-out-of-range', 'limePct', 'error', { limePct: 251 }],
    ['rate-no-lime-value', 'limePct', 'error', { rate: { basis: 'effective-lime', rateKgPerM2: 0.1 } }],
    ['salt-index-negative', 'saltIndex', 'error', { saltIndex: -1 }],
    ['salt-index-odd', 'saltIndex', 'warning', { saltIndex: 744 }],
    ['rainfast-negative', 'rainfastS', 'error', { rainfastS: -60 }],
    ['rainfast-odd', 'rainfastS', 'warning', { rainfastS: 14_400 * 60 }],
    ['water-in-negative', 'waterInDepthM', 'error', { waterIn: true, waterInDepthM: -0.01 }],
    ['water-in-odd', 'waterInDepthM', 'warning', { waterIn: true, waterInDepthM: 0.635 }],
    ['water-in-unused', 'waterInDepthM', 'warning', { waterInDepthM: 0.00635 }],
    ['life-not-positive', 'openedLifeDays', 'error', { openedLifeDays: 0 }],
    ['life-opened-longer', 'openedLifeDays', 'warning', { shelfLifeDays: 365, openedLifeDays: 730 }],
    ['limit-temperature-odd', 'limits.maxAirTempC', 'warning', { limits: testLimits({ maxAirTempC: 85 }) }],
    ['use-pack-unknown', 'packIds', 'warning', { packIds: ['pack-1', 'gone'] }],
    ['carrier-missing', 'carrierLPerM2', 'warning', { ...poured, applicator: 'tank-sprayer' }],
    ['carrier-dry', 'carrierLPerM2', 'warning', { applicator: 'drop-spreader', carrierLPerM2: 0.04 }],
    ['carrier-hose', 'carrierLPerM2', 'warning', { ...poured, applicator: 'hose-end', carrierLPerM2: 0.04 }],
    ['carrier-odd', 'carrierLPerM2', 'warning', { ...poured, carrierLPerM2: 4 }],
    ['density-missing', 'densityKgPerL', 'warning', { ...poured, ingredients: [{ name: 'kelp', pct: 2 }] }],
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

describe('a label with several uses', () => {
  const found = (fields: Partial<Product>) =>
    checkProduct(testProduct(fields)).map((issue) => [issue.code, issue.place.path, issue.message]);
  it('in order has no issue', () => {
    expect(checkProduct(testHoseLiquid())).toEqual([]);
    expect(checkProduct(testProduct({ analysis: withElements({ Cl: 47 }, testAnalysis(0, 0, 62)) }))).toEqual(
      [],
    );
  });
  it('has each use checked as its own, at its place and by its name', () => {
    expect(
      found({
        otherUses: [
          testUse({ rate: { basis: 'area-per-container', areaM2: 0, packId: 'pack-1' } }),
          testUse({ id: 'u-2', name: '', spreadDistanceM: -1 }),
        ],
      }),
    ).toEqual([
      [
        'use-name-double',
        'otherUses[1].name',
        'Test granules: use 3 is called like an earlier one; give it a name of its own.',
      ],
      [
        'rate-no-coverage',
        'otherUses[0].rate.areaM2',
        'Test granules: use “Light rate”: the area one container covers must be more than zero.',
      ],
      [
        'spread-negative',
        'otherUses[1].spreadDistanceM',
        'Test granules: use 3: the spread distance cannot be less than zero.',
      ],
    ]);
  });
  it('cannot have two of one id, a coverage by a pack of another use, or no pack of its own', () => {
    const codes = (fields: Partial<Product>) => found(fields).map(([code, path]) => [code, path]);
    expect(codes({ otherUses: [testUse(), testUse({ name: 'Full rate' })] })).toEqual([
      ['use-id-double', 'otherUses[1].id'],
    ]);
    const hose = testHoseLiquid();
    expect(
      checkProduct({ ...hose, packIds: ['jug'] }).map((issue) => [issue.code, issue.place.path]),
    ).toEqual([['rate-pack-other-use', 'rate.packId']]);
    expect(codes({ otherUses: [testUse({ packIds: ['gone'] })] })).toEqual([
      ['use-pack-unknown', 'otherUses[0].packIds'],
      ['use-no-packs', 'otherUses[0].packIds'],
    ]);
  });
  it('is told once of what its uses share', () => {
    expect(
      found({ otherUses: [testUse()], limits: testLimits({ maxPerDose: { unit: 'L', value: 1 } }) }),
    ).toEqual([
      [
        'limit-unit',
        'limits.maxPerDose',
        'Test granules: the most for one dose is in another measure than the rate; give the density.',
      ],
    ]);
  });
  it('is told which use asks for what the label lacks', () => {
    const seeded = testUse({ name: 'Sown', rate: { basis: 'pure-live-seed', rateKgPerM2: 0.01 } });
    expect(found({ otherUses: [seeded] })).toEqual([
      [
        'rate-no-seed-tag',
        'seed',
        'Test granules: use “Sown”: the rate is by pure live seed, so purity and germination of the tag are needed.',
      ],
    ]);
  });
});
