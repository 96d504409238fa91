import { describe, expect, it } from 'vitest';
import { applyUse } from '../plan/applyUse';
import {
  flozPer1000,
  lbPer1000,
  planOne,
  sqft,
  testAnalysis,
  testHoseLiquid,
  testLimits,
  testProduct,
} from '../plan/testDose';
import { KG_PER_LB, L_PER_GAL } from '../units/factors';
import type { Product } from '../yard/types';
import {
  contentsWords,
  elementalWords,
  laidRows,
  lifeWords,
  limitsWords,
  rainfastWords,
  usePacksWords,
  volumeWords,
  waterInWords,
} from './labelWords';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('label words', () => {
  it('list all that a dose lays down', () => {
    const iron = testProduct({
      form: 'liquid-concentrate',
      analysis: { ...testAnalysis(5), elementsPct: { Fe: 6, Mn: 0 } },
      ingredients: [{ name: 'Humic acid', pct: 3 }],
      densityKgPerL: (10.4 * KG_PER_LB) / L_PER_GAL,
      rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(3) },
    });
    // 3 fl oz of 128 in a gallon of 10.4 lb: 0.24375 lb, of which 5 %, 6 % and 3 %
    expect(laidRows(planOne(iron, sqft(1000)), 'us').map(({ what, rate }) => [what, plain(rate)])).toEqual([
      ['N', '0.0122 lb per 1,000 sq ft'],
      ['Iron (Fe)', '0.0146 lb per 1,000 sq ft'],
      ['Humic acid', '0.00731 lb per 1,000 sq ft'],
    ]);
    expect(laidRows({ nutrientKgPerM2: null, elementKgPerM2: null, ingredients: null }, 'us')).toEqual([]);
  });
  it('say the analysis by elements beside the label’s own numbers', () => {
    // Virginia Tech SPES-201NP: K is 0.8301 of K2O, P 0.4365 of P2O5
    expect(plain(elementalWords(testProduct({ analysis: testAnalysis(8, 0, 2) })))).toBe(
      '8-0-2 (P 0, K 1.7 as elements)',
    );
    expect(plain(elementalWords(testProduct({ analysis: testAnalysis(0, 46) })))).toBe(
      '0-46-0 (P 20, K 0 as elements)',
    );
  });
  it('say what is inside, and nothing of what the label is silent on', () => {
    const analysis = { ...testAnalysis(16, 0, 8, 50), elementsPct: { Fe: 5, Mn: 0, S: 12.5 } };
    const product: Product = testProduct({
      analysis,
      ingredients: [
        { name: 'humic acid', pct: 6 },
        { name: 'kelp extract', pct: 0.25 },
      ],
      seed: { purityPct: 98, germinationPct: 85 },
      limePct: 62.5,
      saltIndex: 74.4,
    });
    expect(contentsWords(product).map(plain)).toEqual([
      '50 % of the N slow-release',
      '12.5 % S, 5 % Fe',
      '6 % humic acid, 0.25 % kelp extract',
      '98 % pure, 85 % germinates: 83.3 % pure live seed',
      '62.5 % effective calcium carbonate',
      'salt index 74.4, 3.1 for each unit of plant food',
    ]);
    expect(contentsWords(testProduct())).toEqual([]);
  });
  it('say what a gallon or a litre holds', () => {
    // Camberato, Purdue Extension, 2023: 28 % N at 10.6 lb a gallon is 2.97 lb N
    const densityKgPerL = (10.6 * 0.45359237) / 3.785411784;
    const uan = testProduct({ analysis: testAnalysis(28), densityKgPerL });
    expect(plain(volumeWords(uan, 'us'))).toBe('A gallon holds 2.97 lb N.');
    expect(
      plain(volumeWords({ ...uan, densityKgPerL: 1.2, analysis: testAnalysis(10, 0, 5) }, 'metric')),
    ).toBe('A litre holds 120 g N, 60 g K₂O.');
    expect(volumeWords({ ...uan, densityKgPerL: null }, 'us')).toBe('');
    expect(volumeWords({ ...uan, analysis: testAnalysis(0) }, 'us')).toBe('');
  });
  it('say the limits, one each', () => {
    const limits = testLimits({
      maxPerDose: { unit: 'kg', value: lbPer1000(5) },
      minIntervalDays: 28,
      maxDosesPerYear: 1,
      maxAirTempC: 29.4444,
    });
    expect(limitsWords(testProduct({ limits }), 'us').map(plain)).toEqual([
      'at most 5 lb per 1,000 sq ft at once',
      'at least 28 days between',
      'at most 1 application a year',
      'not above 85 °F in the air',
    ]);
    expect(limitsWords(testProduct(), 'us')).toEqual([]);
  });
  it('say rain, water and how long it keeps', () => {
    const product = testProduct({
      waterIn: true,
      waterInDepthM: 0.00635,
      rainfastS: 14_400,
      shelfLifeDays: 730,
      openedLifeDays: 1,
    });
    expect(plain(rainfastWords(product))).toBe('no rain for 4 h after it is down');
    expect(plain(waterInWords(product, 'us'))).toBe('water in with 0.25 in');
    expect(waterInWords({ ...product, waterInDepthM: null }, 'us')).toBe('water in');
    expect(plain(lifeWords(product))).toBe('keeps 730 days closed, 1 day opened');
    const silent = testProduct();
    expect([rainfastWords(silent), waterInWords(silent, 'us'), lifeWords(silent)]).toEqual(['', '', '']);
  });
  it('say which packs a use opens, where not all', () => {
    const label = testHoseLiquid();
    expect(plain(usePacksWords(label, 'us'))).toBe('from the 32 fl oz pack only');
    expect(plain(usePacksWords(applyUse(label, 'tank') ?? label, 'us'))).toBe('from the 1 gal pack only');
    expect(usePacksWords(testProduct(), 'us')).toBe('');
  });
});
