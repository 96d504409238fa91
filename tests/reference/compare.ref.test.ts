import { describe, expect, it } from 'vitest';
import { compareProducts } from '../../src/buy/compareProducts';
import type { CompareOption } from '../../src/buy/compareTypes';
import { KG_PER_LB, M2_PER_1000_SQFT, M2_PER_ACRE, M2_PER_SQFT } from '../../src/units/factors';
import { DEFAULT_CAPS, newProduct } from '../../src/yard/defaults';
import type { Product } from '../../src/yard/types';

/*
 * Published comparisons of nitrogen sources. Grades, bags, prices and results are the publications' own;
 * results agree to the figures printed there.
 */
const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
const TON_LB = 2000;
const NO_CAPS = {
  ...DEFAULT_CAPS,
  totalNPerDose: null,
  solubleNPerDose: null,
  p2o5PerDose: null,
  p2o5PerYear: null,
};

function source(nPct: number, packLb: number, price: number, p2o5Pct = 0, k2oPct = 0): Product {
  return newProduct(`p-${nPct}-${price}`, {
    name: `${nPct} % N`,
    analysis: { nPct, p2o5Pct, k2oPct, slowNPctOfN: null, elementsPct: {} },
    rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: LB_PER_1000 },
    packs: [{ id: 'pack', content: { unit: 'kg', value: packLb * KG_PER_LB }, price }],
  });
}

function compare(product: Product, nLbPer1000 = 1, areaM2 = M2_PER_ACRE): CompareOption {
  const { options } = compareProducts({
    products: [product],
    areaM2,
    nKgPerM2: nLbPer1000 * LB_PER_1000,
    dose: 'label-rate',
    caps: NO_CAPS,
  });
  return options[0] as CompareOption;
}
const perLb = (option: CompareOption) => (option.costPerKgN ?? Number.NaN) * KG_PER_LB;
const perAcre = (option: CompareOption) => (option.costPerM2 ?? Number.NaN) * M2_PER_ACRE;

describe('cost of a pound of nitrogen', () => {
  it.each([
    // USGA Green Section Record 60(05), 18 March 2022, “Does the grass know the cost of fertilizer?”
    ['USGA: urea, 50 lb at $50', 46, 50, 50, 2.17],
    // Ohio State Univ. Extension, LaBarge, Feb 2024 (Ohio’s Country Journal)
    ['OSU: 82-0-0 at $789 a ton', 82, TON_LB, 789, 0.48],
    ['OSU: 28-0-0 at $336 a ton', 28, TON_LB, 336, 0.6],
    // Univ. of Wisconsin-Extension, Rankin, fertilizer math
    ['UWEX: urea at $700 a ton', 46, TON_LB, 700, 0.76],
    ['UWEX: 28 % solution at $600 a ton', 28, TON_LB, 600, 1.07],
    // Noble Research Institute, Ag News and Views, June 2007
    ['Noble: urea at $412 a ton', 46, TON_LB, 412, 0.45],
    ['Noble: ammonium nitrate at $370 a ton', 34, TON_LB, 370, 0.54],
    // Univ. of Wisconsin, SnapPlus help
    ['Wisconsin: urea at $425 a ton', 46, TON_LB, 425, 0.46],
    // New Mexico State Univ. Guide A-133, example A (read in a copy)
    ['NMSU: urea at $567 a ton', 46, TON_LB, 567, 0.62],
    // W. Reeves, Univ. of Georgia Extension retired, column on fertilizer prices
    ['Reeves: 10-10-10, 40 lb at $12', 10, 40, 12, 3],
  ] as const)('%s', (_name, nPct, packLb, price, dollars) => {
    expect(Math.abs(perLb(compare(source(nPct, packLb, price))) - dollars)).toBeLessThanOrEqual(0.005 + 1e-9);
  });
});

describe('cost of ground fed', () => {
  // USGA, as above: 1 lb N per 1,000 sq ft on one acre
  it('an acre by urea $95, by 23-0-6 at $39 a bag $148', () => {
    const urea = compare(source(46, 50, 50));
    const blend = compare(source(23, 50, 39, 0, 6));
    expect(Math.round(perAcre(urea))).toBe(95);
    expect(Math.round(perAcre(blend))).toBe(148);
  });

  // USGA, as above: 1/8 lb N per 1,000 sq ft from urea
  it('spoon-feeding an acre by urea $12', () => {
    expect(Math.round(perAcre(compare(source(46, 50, 50), 1 / 8)))).toBe(12);
  });
});

describe('amount and bags', () => {
  // N.C. Cooperative Extension, Gaston County, Sept 2020: 50 lb of 16-4-8 hold 8 lb N, 2 and 4 lb of P2O5 and
  // K2O, and at 1 lb N per 1,000 sq ft are enough for 8,000 sq ft
  it('one bag of 16-4-8 for 8,000 sq ft, two from a little more', () => {
    const bag = source(16, 50, 20, 4, 8);
    const whole = compare(bag, 1, 8000 * M2_PER_SQFT);
    expect(whole.packs).toEqual([{ packId: 'pack', count: 1 }]);
    expect(whole.left).toBeCloseTo(0, 4);
    const lb = (kgPerM2: number) => (kgPerM2 * 8000 * M2_PER_SQFT) / KG_PER_LB;
    expect(lb(whole.nutrients.N)).toBeCloseTo(8, 6);
    expect(lb(whole.nutrients.P2O5)).toBeCloseTo(2, 6);
    expect(lb(whole.nutrients.K2O)).toBeCloseTo(4, 6);
    expect(compare(bag, 1, 8010 * M2_PER_SQFT).packs).toEqual([{ packId: 'pack', count: 2 }]);
  });

  // Univ. of Nebraska-Lincoln, lawn fertilizer calculations: 28-3-6, 1 lb N on 6,000 sq ft, 21.42 lb
  it('21.42 lb of 28-3-6 for 6,000 sq ft', () => {
    const { total } = compare(source(28, 50, 20, 3, 6), 1, 6000 * M2_PER_SQFT);
    expect(Math.abs(total.value / KG_PER_LB - 21.42)).toBeLessThan(0.01);
  });

  // UF/IFAS ENH1089 (EP353): soluble N at most 0.7 lb per 1,000 sq ft at once, so 1 lb takes two visits;
  // with 60 % slow-release only 0.4 lb of it is soluble, and one is enough
  it('the published cap of soluble nitrogen sets the visits', () => {
    const visitsOf = (slowNPctOfN: number) => {
      const plain = source(46, 50, 50);
      const product = { ...plain, analysis: { ...plain.analysis, slowNPctOfN } };
      const input = { products: [product], areaM2: 100, nKgPerM2: LB_PER_1000, caps: DEFAULT_CAPS };
      return compareProducts({ ...input, dose: 'label-rate' }).options[0]?.visits;
    };
    expect(visitsOf(0)).toBe(2);
    expect(visitsOf(60)).toBe(1);
  });
});
