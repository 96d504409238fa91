import { describe, expect, it } from 'vitest';
import { breakEvens } from '../../src/buy/breakEven';
import { planPurchase } from '../../src/buy/planPurchase';
import type { NeedLine, ProductNeed } from '../../src/buy/types';
import { unitCostsOfPack } from '../../src/buy/unitCosts';
import { productRate } from '../../src/plan/rate';
import { KG_PER_LB, M2_PER_1000_SQFT, M2_PER_ACRE } from '../../src/units/factors';
import { newProduct } from '../../src/yard/defaults';
import type { Analysis, Pack, Product } from '../../src/yard/types';

/* Bag counts and costs of published worked examples; each names what was read. */

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
const TON_LB = 2000;

const bag = (lb: number, price: number | null, id = 'bag'): Pack => ({
  id,
  content: { unit: 'kg', value: lb * KG_PER_LB },
  price,
});

function fertilizer(
  analysis: readonly [number, number, number],
  packs: readonly Pack[],
  lbNPer1000 = 1,
): Product {
  const [nPct, p2o5Pct, k2oPct] = analysis;
  const label: Analysis = { nPct, p2o5Pct, k2oPct, slowNPctOfN: null, elementsPct: {} };
  return newProduct('p', {
    name: analysis.join('-'),
    analysis: label,
    packs,
    canPour: true,
    rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: lbNPer1000 * LB_PER_1000 },
  });
}

/** What the label's rate takes of the ground, in so many equal doses. */
function needOf(product: Product, areaM2: number, doses = 1): ProductNeed {
  const { rate } = productRate(product);
  const amount = (rate?.perM2.value ?? Number.NaN) * areaM2;
  const lines = Array.from({ length: doses }, (_, i): NeedLine => {
    const at = { visitId: `v${i}`, doseId: `d${i}`, useId: null, date: null };
    return { ...at, amount, areaM2, areaSigmaM2: 0 };
  });
  return { productId: product.id, unit: 'kg', lines, unreadDoseIds: [] };
}

describe('bags to buy', () => {
  it('142 bags of 50 lb for 0.9 lb N per 1,000 sq ft on 45 acres with 25 % N', () => {
    // "Turfgrass Mathematics Review" worksheet for certified turfgrass professional testing (copy read):
    // 3.6 lb per 1,000 sq ft, 7,057 lb, 142 bags
    const product = fertilizer([25, 0, 0], [bag(50, 20)], 0.9);
    const { needed, plans } = planPurchase(product, needOf(product, 45 * M2_PER_ACRE));
    expect(needed / KG_PER_LB).toBeCloseTo(3.6 * 43.56 * 45, 3);
    expect(plans.cost?.packs).toEqual([{ packId: 'bag', count: 142 }]);
  });

  it('one 50 lb bag of 16-4-8 is enough for 8,000 sq ft at 1 lb N, and no more', () => {
    // NC State Extension, Gaston County, "Considerations for Fertilizer Cost Savings", 2020
    const product = fertilizer([16, 4, 8], [bag(50, 20)]);
    const bags = (sqft: number) =>
      planPurchase(product, needOf(product, (sqft / 1000) * M2_PER_1000_SQFT)).plans.packs?.packCount;
    expect([bags(7999), bags(8000), bags(8001)]).toEqual([1, 1, 2]);
  });

  it('21.42 lb of 28-3-6 for 6,000 sq ft: two bags of 20 lb', () => {
    // Univ. of Nebraska-Lincoln, byf.unl.edu/LawnFertCalc: 3.57 lb (rounded) times 6; the bags by hand
    const product = fertilizer([28, 3, 6], [bag(20, 20)]);
    const { needed, plans } = planPurchase(product, needOf(product, 6 * M2_PER_1000_SQFT));
    expect(Math.abs(needed / KG_PER_LB - 21.42)).toBeLessThan(0.01);
    expect(plans.cost?.packCount).toBe(2);
  });
});

describe('cost of a pound of nitrogen', () => {
  const perLb = (nPct: number, lb: number, price: number) => {
    const pack = bag(lb, price);
    const costs = unitCostsOfPack(fertilizer([nPct, 0, 0], [pack]), pack);
    return (costs?.perKg.N ?? Number.NaN) * KG_PER_LB;
  };
  it.each([
    // USGA Green Section Record 60(05), 2022: urea at $50 a bag of 50 lb
    ['USGA, urea', 46, 50, 50, 2.17],
    // Texas A&M AgriLife, aggieturf.tamu.edu, fertilization: 15 % N, 40 lb at $15
    ['Texas A&M, 15 % N', 15, 40, 15, 2.5],
    // W. Reeves (Univ. of Georgia Extension), walterreeves.com: 10-10-10, 40 lb at $12
    ['Georgia, 10-10-10', 10, 40, 12, 3],
    // Univ. of Wisconsin-Extension, M. Rankin, "Time for some fertilizer math": by the ton
    ['Wisconsin, urea', 46, TON_LB, 700, 0.76],
    ['Wisconsin, UAN 28 %', 28, TON_LB, 600, 1.07],
    // Noble Research Institute, "Fertilizer: buy the numbers", June 2007: by the ton
    ['Noble, urea', 46, TON_LB, 412, 0.45],
    ['Noble, ammonium nitrate', 34, TON_LB, 370, 0.54],
  ] as const)('%s', (_, nPct, lb, price, dollars) => {
    expect(perLb(nPct, lb, price)).toBeCloseTo(dollars, 2);
  });

  it('an acre at 1 lb N per 1,000 sq ft costs $95 in urea and $148 in 23-0-6', () => {
    // USGA Green Section Record 60(05), 2022, the same article; whole dollars
    const acre = (analysis: readonly [number, number, number], price: number) => {
      const pack = bag(50, price);
      const product = fertilizer(analysis, [pack]);
      const perM2 = productRate(product).rate?.kgPerM2 ?? Number.NaN;
      return (unitCostsOfPack(product, pack)?.perUnit ?? Number.NaN) * perM2 * M2_PER_ACRE;
    };
    expect(Math.round(acre([46, 0, 0], 50))).toBe(95);
    expect(Math.round(acre([23, 0, 6], 39))).toBe(148);
  });
});

describe('choices of packs known from mathematics', () => {
  const plansFor = (sizes: readonly number[], amount: number) => {
    const packs = sizes.map(
      (size): Pack => ({ id: `s${size}`, content: { unit: 'kg', value: size }, price: size }),
    );
    const product = newProduct('p', { name: 'Sizes', packs, canPour: true });
    const at = { visitId: 'v', doseId: 'd', useId: null, date: null };
    return planPurchase(product, {
      productId: 'p',
      unit: 'kg',
      unreadDoseIds: [],
      lines: [{ ...at, amount, areaM2: 1, areaSigmaM2: 0 }],
    }).plans;
  };

  it.each([
    [5, 8],
    [7, 11],
    [9, 13],
  ])('packs of %i and %i leave nothing over from (a-1)(b-1) on, but one below it', (a, b) => {
    // J. J. Sylvester 1884 (Educational Times 41:21): ab - a - b is the greatest sum two coprime numbers cannot
    // make; from memory
    const greatest = a * b - a - b;
    expect(plansFor([a, b], greatest).left?.left).toBeCloseTo(1, 9);
    for (let n = greatest + 1; n <= greatest + a; n++)
      expect(plansFor([a, b], n).left?.left).toBeCloseTo(0, 9);
  });

  it('packs of 6, 9 and 20 cannot make 43, the greatest such number', () => {
    // the coin problem for (6, 9, 20), Frobenius number 43; from memory
    expect(plansFor([6, 9, 20], 43).left?.left).toBeCloseTo(1, 9);
    for (let n = 44; n < 50; n++) expect(plansFor([6, 9, 20], n).left?.left).toBeCloseTo(0, 9);
  });

  it('two packs of 3, not one of 4 and two of 1, make 6', () => {
    // the usual example in which taking the largest first fails (change-making of {1, 3, 4}); from memory
    expect(plansFor([1, 3, 4], 6).left?.bought).toBeCloseTo(6, 9);
    expect(plansFor([1, 3, 4], 6).packs?.packCount).toBe(2);
  });
});

describe('where a larger bag pays', () => {
  it('a 50 lb bag of urea at $50 against 10 lb at $12, by hand', () => {
    // prices: the larger by USGA Green Section Record 60(05), 2022, the smaller invented. To 40 lb four small
    // cost $48; over 40 lb five cost $60 against $50; 50 to 60 lb: $62 against $72 ... to 80 to 90 lb: $98 against
    // $108; 90 to 100 lb: $100 against $120. Never dearer over 40 lb
    const product = fertilizer([46, 0, 0], [bag(10, 12, 'small'), bag(50, 50, 'large')]);
    const [found] = breakEvens(product, needOf(product, M2_PER_1000_SQFT));
    expect(found?.packId).toBe('large');
    expect((found?.above ?? 0) / KG_PER_LB).toBeCloseTo(40, 6);
    // 40 lb of urea hold 18.4 lb of N: ground for that at 1 lb per 1,000 sq ft
    expect((found?.groundM2 ?? 0) / M2_PER_1000_SQFT).toBeCloseTo(18.4, 6);
  });
});
