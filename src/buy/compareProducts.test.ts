import { describe, expect, it } from 'vitest';
import { NO_CAPS } from '../plan/testDose';
import { DEFAULT_CAPS, newProduct } from '../yard/defaults';
import type { NutrientCaps, Product, ProductUse } from '../yard/types';
import { compareProducts, isLeast, sortOptions } from './compareProducts';
import type { CompareDose, CompareKey, CompareOption } from './compareTypes';

const kg = (value: number) => ({ unit: 'kg', value }) as const;
const litres = (value: number) => ({ unit: 'L', value }) as const;

/** 20 % N, half of it slow, at 10 g/m²: 2 g N/m² a dose. */
const granules = newProduct('granules', {
  name: 'Granules',
  analysis: { nPct: 20, p2o5Pct: 5, k2oPct: 10, slowNPctOfN: 50, elementsPct: { Fe: 1 } },
  rate: { basis: 'mass-per-area', rateKgPerM2: 0.01 },
  saltIndex: 50,
  packs: [
    { id: 'small', content: kg(2), price: 10 },
    { id: 'large', content: kg(5), price: 20 },
  ],
});

const only = (
  product: Product,
  {
    nKgPerM2 = 0.006,
    areaM2 = 100,
    caps = NO_CAPS,
    dose = 'label-rate' as CompareDose,
  }: { nKgPerM2?: number; areaM2?: number; caps?: NutrientCaps; dose?: CompareDose } = {},
): CompareOption => {
  const { options, leftOut } = compareProducts({ products: [product], areaM2, nKgPerM2, caps, dose });
  expect(leftOut).toEqual([]);
  return options[0] as CompareOption;
};

describe('compareProducts', () => {
  it('visits alike at no more than the label rate, amounts, packs of least cost and what comes along', () => {
    // 6 g N/m² by 2 g a dose: 3 visits of 1 kg on 100 m²; 3 kg: one large at 20 is as dear as two small at 20
    const option = only(granules);
    expect(option).toMatchObject({ visits: 3, bound: 'label-rate', packs: [{ packId: 'large', count: 1 }] });
    expect(option.rateFactor).toBeCloseTo(1, 12);
    expect(option.perVisit).toEqual(kg(expect.closeTo(1, 9) as number));
    expect(option.total.value).toBeCloseTo(3, 9);
    expect(option.left).toBeCloseTo(2, 9);
    expect(option.cost).toBe(20);
    // 3 of 5 kg go out: 12 of 20 in money for 0.6 kg N
    expect(option.costPerKgN).toBeCloseTo(20, 9);
    expect(option.costPerM2).toBeCloseTo(0.12, 12);
    expect(option.solubleNPerVisit).toBeCloseTo(0.001, 12);
    expect(option.saltPerVisit).toBeCloseTo(0.005, 12);
    expect(option.nutrients.P2O5).toBeCloseTo(0.0015, 12);
    expect(option.nutrients.K2O).toBeCloseTo(0.003, 12);
    expect(option.elements.Fe).toBeCloseTo(0.0003, 12);
    expect(option.issues).toEqual([]);
  });

  it('has no leftover where it is rounding of the rate', () => {
    // 6 g N/m² on 166.6666 m²: 4.999998 kg, from one pack of 5 kg
    expect(only(granules, { areaM2: 166.6666 }).left).toBe(0);
    expect(only(granules, { areaM2: 166 }).left).toBeCloseTo(0.02, 9);
  });

  it.each([
    ['total-n-cap', { totalNPerDose: 0.0015 }, 4],
    ['soluble-n-cap', { solubleNPerDose: 0.0005 }, 6],
    ['p2o5-cap', { p2o5PerDose: 0.00025 }, 6],
  ] as const)('%s holds the dose down', (bound, cap, visits) => {
    const option = only(granules, { caps: { ...NO_CAPS, ...cap } });
    expect(option).toMatchObject({ bound, visits });
    expect(option.nutrients.N).toBeCloseTo(0.006, 12);
  });

  it('goes up to the most of the label where that is asked for, and never over it', () => {
    const limits = { ...granules.limits, maxPerDose: kg(0.03), minIntervalDays: 28 };
    const bolder = { ...granules, limits };
    expect(only(bolder, { dose: 'label-most' })).toMatchObject({ visits: 1, bound: 'wanted', days: 0 });
    expect(only(bolder)).toMatchObject({ visits: 3, days: 56 });
    const weaker = { ...granules, limits: { ...limits, maxPerDose: kg(0.005) } };
    expect(only(weaker)).toMatchObject({ visits: 6, bound: 'label-most' });
    expect(only(granules).days).toBeNull();
  });

  it('tells what goes over a year', () => {
    const limits = { ...granules.limits, maxDosesPerYear: 2, maxPerYear: kg(0.02) };
    const option = only({ ...granules, limits }, { caps: { ...NO_CAPS, p2o5PerYear: 0.001 } });
    expect(option.issues.map((issue) => issue.code)).toEqual([
      'compare-doses-per-year',
      'compare-year-amount',
      'compare-p2o5-year',
    ]);
    // 6 g N, 1.5 g P2O5 and 3 g K2O per m²
    const caps = { ...NO_CAPS, nPerYear: 0.0059, p2o5PerYear: 0.0015, k2oPerYear: 0.0029 };
    expect(only(granules, { caps }).issues.map((issue) => issue.code)).toEqual([
      'compare-n-year',
      'compare-k2o-year',
    ]);
  });

  it('looks at every use; a bottle that may not be poured serves its own use alone', () => {
    const use: ProductUse = {
      id: 'tank',
      name: 'Tank',
      applicator: 'tank-sprayer',
      rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
      carrierLPerM2: 0.04,
      carrierIsTotal: false,
      spreadDistanceM: 0.5,
      waterIn: false,
      packIds: ['can'],
    };
    const liquid = newProduct('liquid', {
      name: 'Liquid',
      form: 'ready-to-use',
      analysis: { ...granules.analysis, nPct: 10 },
      densityKgPerL: 1.2,
      rate: { basis: 'area-per-container', areaM2: 300, packId: 'bottle' },
      packIds: ['bottle'],
      packs: [
        { id: 'bottle', content: litres(1), price: 10 },
        { id: 'can', content: litres(10), price: 30 },
      ],
      otherUses: [use],
    });
    const packsOf = (product: Product) =>
      compareProducts({
        products: [product],
        areaM2: 300,
        nKgPerM2: 0.002,
        dose: 'label-rate',
        caps: NO_CAPS,
      }).options.map((option) => [option.key, option.packs[0]?.packId, option.packs[0]?.count]);
    // 0.6 kg N is 6 kg or 5 L: five bottles by themselves, a can from the tank or where all may be poured
    expect(packsOf(liquid)).toEqual([
      ['liquid', 'bottle', 5],
      ['liquid/tank', 'can', 1],
    ]);
    expect(packsOf({ ...liquid, canPour: true })).toEqual([
      ['liquid', 'can', 1],
      ['liquid/tank', 'can', 1],
    ]);
  });

  it('leaves out, with the reason, what brings no nitrogen or cannot be told', () => {
    const humic = newProduct('humic', { name: 'Humic', rate: { basis: 'mass-per-area', rateKgPerM2: 0.01 } });
    const noRate = { ...granules, id: 'no-rate', rate: { basis: 'mass-per-area', rateKgPerM2: 0 } } as const;
    const noDensity = newProduct('no-density', {
      form: 'liquid-concentrate',
      analysis: granules.analysis,
      rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
      packs: [{ id: 'can', content: litres(1), price: 5 }],
    });
    const { options, leftOut } = compareProducts({
      products: [humic, noRate, noDensity],
      areaM2: 100,
      nKgPerM2: 0.005,
      dose: 'label-rate',
      caps: DEFAULT_CAPS,
    });
    expect(options).toEqual([]);
    expect(leftOut.map(({ key, why }) => [key, why])).toEqual([
      ['humic', expect.stringContaining('no nitrogen')],
      ['no-rate', expect.stringContaining('more than zero')],
      ['no-density', expect.stringContaining('density')],
    ]);
    expect(() =>
      compareProducts({ products: [], areaM2: 0, nKgPerM2: 1, dose: 'label-rate', caps: NO_CAPS }),
    ).toThrow(RangeError);
  });

  it('leaves out a label or a use in which something cannot be right', () => {
    const [small, large] = granules.packs;
    const paid = { ...granules, packs: [{ ...small, price: -30 }, large] } as Product;
    const bare = { ...granules, id: 'bare', packs: [] };
    const wet = { ...granules, id: 'wet', carrierLPerM2: -1 };
    const { options, leftOut } = compareProducts({
      products: [granules, { ...paid, id: 'paid' }, wet, bare],
      areaM2: 100,
      nKgPerM2: 0.006,
      dose: 'label-rate',
      caps: NO_CAPS,
    });
    expect(options.map((option) => option.key)).toEqual(['granules']);
    expect(leftOut.map(({ key, why }) => [key, why])).toEqual([
      ['paid', expect.stringContaining('price')],
      ['wet', expect.stringContaining('carrier')],
      ['bare', expect.stringContaining('pack')],
    ]);
  });

  it('without prices there are packs, the fewest, and no cost', () => {
    const packs = granules.packs.map((pack) => ({ ...pack, price: null }));
    const option = only({ ...granules, packs }, { nKgPerM2: 0.012 });
    expect(option).toMatchObject({ cost: null, costPerKgN: null, costPerM2: null });
    expect(option.packs.reduce((sum, { count }) => sum + count, 0)).toBe(2);
  });

  it('sorts least first with the unknown last, and marks a least only where figures differ', () => {
    const dear = { ...granules, id: 'dear', packs: [{ id: 'one', content: kg(5), price: 90 }] };
    const free = { ...granules, id: 'free', packs: [{ id: 'one', content: kg(5), price: null }] };
    const { options } = compareProducts({
      products: [free, dear, granules],
      areaM2: 100,
      nKgPerM2: 0.006,
      dose: 'label-rate',
      caps: NO_CAPS,
    });
    expect(sortOptions(options, 'cost').map((option) => option.key)).toEqual(['granules', 'dear', 'free']);
    expect(sortOptions(options, 'visits').map((option) => option.key)).toEqual(['free', 'dear', 'granules']);
    const least = (key: CompareKey) =>
      options.filter((option) => isLeast(options, option, key)).map((option) => option.key);
    expect(least('cost')).toEqual(['granules']);
    expect(least('visits')).toEqual([]);
    expect(least('days')).toEqual([]);
  });
});
