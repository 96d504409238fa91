import { describe, expect, it } from 'vitest';
import { elementalPct } from '../../src/plan/elemental';
import { nutrientPerLitre } from '../../src/plan/nutrients';
import { saltPerUnit } from '../../src/plan/saltLoad';
import { planOne, testAnalysis, testPack, testProduct } from '../../src/plan/testDose';
import type { Product } from '../../src/yard/types';
import { acres, density, floz, gal, holdRows, lb, lbPer1000, sqft } from './holdRows';

/*
 * Published worked examples of what labels hold: liquids by density, slow release, oxides, salt. Each is typed in as its source
 * has it and planned by the program. Tolerances are absolute, in the unit of the source; the comment says
 * why they are so wide.
 * After each source: (read) its own text was read; (copy) read where others quote it; (memory) recalled
 * and not read again; (weak) read, but neither a university nor an authority.
 */

const sack = testPack({ unit: 'kg', value: lb(50) });

// --- liquids by their density

const liquid = (fields: Partial<Product>) =>
  testProduct({
    form: 'liquid-concentrate',
    packs: [testPack({ unit: 'L', value: gal(2.5) })],
    ...fields,
  });
const uan = liquid({
  analysis: testAnalysis(28),
  densityKgPerL: density(10.6, 'lb/gal'),
  rate: { basis: 'volume-per-area', rateLPerM2: gal(20) / acres(1) },
});
const manganese = planOne(
  liquid({
    analysis: { ...testAnalysis(4), elementsPct: { Mn: 0.4 } },
    densityKgPerL: density(10.68, 'lb/gal'),
    rate: { basis: 'volume-per-area', rateLPerM2: floz(6) / sqft(1000) },
  }),
  sqft(1000),
);
const PURDUE = 'Camberato, Purdue Extension, in Indiana Prairie Farmer, 17 Jan 2023 (read)';

holdRows('liquids by their density', [
  [
    '28 % N at 10.6 lb/gal: lb N in a gallon',
    (nutrientPerLitre(uan, 'N') ?? Number.NaN) * (gal(1) / lb(1)),
    2.97,
    0.005,
    PURDUE,
  ], // two decimals
  [
    '20 gal of it to the acre: lb N',
    ((planOne(uan, acres(1)).nutrientKgPerM2?.N ?? Number.NaN) * acres(1)) / lb(1),
    59.4,
    0.05,
    PURDUE,
  ], // one decimal
  [
    '0.4 % Mn at 10.68 lb/gal, 6 fl oz: lb Mn on 1,000 sq ft',
    (manganese.elementKgPerM2?.Mn ?? Number.NaN) / lbPer1000(1),
    0.002,
    0.0005,
    'Woods, Asian Turfgrass Center, 19 Mar 2015 (read)',
  ], // three decimals
]);

// --- slow release

const half = planOne(
  testProduct({
    // the county prints 15 of the 30 % N as water-insoluble
    analysis: testAnalysis(30, 5, 10, 50),
    rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: lbPer1000(1) },
    packs: [sack],
  }),
  sqft(1000),
);
const SUFFOLK = 'Suffolk County (N.Y.), Healthy Lawns, fertilizer selection (read)';

holdRows('slow release', [
  [
    '1 lb N of 30-5-10, half of it water-insoluble: lb soluble N on 1,000 sq ft, the most the county advises',
    (half.solubleNKgPerM2 ?? Number.NaN) / lbPer1000(1),
    0.5,
    1e-9,
    SUFFOLK,
  ], // exact
]);

// --- oxides and elements

const inBag = (bagLb: number, analysis: Product['analysis']) => {
  const bag = testPack({ unit: 'kg', value: lb(bagLb) }, 'bag');
  const figures = planOne(
    testProduct({
      analysis,
      rate: { basis: 'area-per-container', areaM2: sqft(10_000), packId: 'bag' },
      packs: [bag],
    }),
    sqft(10_000),
  );
  // pounds of product laid on the ground, times what of it is P and K
  const { pPct, kPct } = elementalPct(figures.product.analysis);
  const laidLb = (figures.rate.kgPerM2 ?? Number.NaN) * (figures.areaM2 / lb(1));
  return { P: (laidLb * pPct) / 100, K: (laidLb * kPct) / 100 };
};
const pct = elementalPct({ nPct: 0, p2o5Pct: 20, k2oPct: 10 });
const printed = elementalPct({ nPct: 0, p2o5Pct: 2.291, k2oPct: 60 });
const TENNESSEE = 'Samples, Sorochan, Jakubowski, Tennessee Turfgrass, Oct/Nov 2007 (copy)';
const MINNESOTA = 'Univ. of Minnesota Extension, lawn fertilizer series, tables 7.3-7.4 (read)';
const WORKSHEET = 'turfgrass professional maths worksheet, author not shown (copy)';
const PENN_STATE = 'Penn State turf fact sheet, 2022 (read)';
const VIRGINIA = 'Virginia Tech SPES-201NP, table 1 (read)';
const long = inBag(1250, testAnalysis(5, 10, 20));

// the sources multiply by 0.44 and 0.83; atomic weights give 0.4364 and 0.8301
holdRows('oxides and elements', [
  ['50 lb of 20-5-15: lb P', inBag(50, testAnalysis(20, 5, 15)).P, 1.1, 0.05, TENNESSEE], // one decimal
  ['50 lb of 20-5-15: lb K', inBag(50, testAnalysis(20, 5, 15)).K, 6.2, 0.05, TENNESSEE], // one decimal
  ['60 lb of 30-4-4: lb P', inBag(60, testAnalysis(30, 4, 4)).P, 1.1, 0.06, MINNESOTA], // one decimal; 1.047
  ['60 lb of 30-4-4: lb K', inBag(60, testAnalysis(30, 4, 4)).K, 2, 0.05, MINNESOTA], // one decimal
  ['1,250 lb of 5-10-20: lb P', long.P, 55, 0.5, WORKSHEET], // by 0.44
  ['1,250 lb of 5-10-20: lb K', long.K, 207.5, 0.1, WORKSHEET], // by 0.83
  ['20 % P2O5: % P', pct.pPct, 8.8, 0.1, PENN_STATE], // by 0.44
  ['10 % K2O: % K', pct.kPct, 8.3, 0.05, PENN_STATE], // one decimal
  ['2.291 % P2O5: % P', printed.pPct, 1, 0.0005, VIRGINIA], // four digits
  ['60 % K2O: % K', printed.kPct, 49.8, 0.05, VIRGINIA], // one decimal
]);

// --- salt

const salted = (saltIndex: number, nPct: number) =>
  (planOne(
    testProduct({
      saltIndex,
      analysis: testAnalysis(nPct),
      rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: lbPer1000(1) },
      packs: [sack],
    }),
    sqft(1000),
  ).saltKgPerM2 ?? Number.NaN) / lbPer1000(1);
const unit = (saltIndex: number, nutrientPct: number) => saltPerUnit(saltIndex, nutrientPct) ?? Number.NaN;
// salt index by weight: Mortvedt 2001 (copy); by unit of nutrient: McCarty 2001 (copy), one decimal
const MCCARTY = 'McCarty, Best Golf Course Management Practices, 2001, with indices of Mortvedt 2001 (copy)';

holdRows('salt', [
  [
    'sodium nitrate, 16.5 % N, by unit',
    unit(100, 16.5),
    6.06,
    0.005,
    'Rader, White, Whittaker, Soil Science 55, 1943 (memory)',
  ], // the standard itself
  ['urea, 46 % N, by unit', unit(74.4, 46), 1.6, 0.05, MCCARTY],
  ['ammonium nitrate, 34 % N, by unit', unit(104, 34), 3, 0.1, MCCARTY], // whole number
  ['calcium nitrate, 15.5 % N, by unit', unit(65, 15.5), 4.1, 0.1, MCCARTY], // % N of the source not shown
  ['potassium sulfate, 50 % K2O, by unit', unit(42.6, 50), 0.9, 0.05, MCCARTY],
  ['1 lb N by urea: lb of sodium nitrate that act alike', salted(74.4, 46), 1.6, 0.05, MCCARTY],
  ['1 lb N by ammonium nitrate: the same', salted(104, 34), 3, 0.1, MCCARTY],
]);

describe('salt, by weight and by what it feeds', () => {
  // Growing Produce, How To Avoid Salt Injury From Nitrogen Fertilizers (weak): by weight ammonium nitrate is the
  // saltiest and calcium nitrate low; by its N calcium nitrate is one of the saltiest, urea and ammonium nitrate low
  it('ranks calcium nitrate over urea and ammonium nitrate by its N', () => {
    expect(salted(65, 15.5)).toBeGreaterThan(salted(104, 34));
    expect(salted(65, 15.5)).toBeGreaterThan(salted(74.4, 46));
  });
});

// --- gypsum by its elements

const weights = { Ca: 40.078, S: 32.06, O: 15.999, H: 1.008 }; // IUPAC standard atomic weights, abridged
const gypsumWeight = weights.Ca + weights.S + 6 * weights.O + 4 * weights.H; // CaSO4 · 2 H2O
const gypsum = planOne(
  testProduct({
    form: 'soil-amendment',
    analysis: { ...testAnalysis(0), elementsPct: { Ca: 23.3, S: 18.6 } },
    rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(40) },
    packs: [sack],
  }),
  sqft(1000),
);

holdRows('gypsum', [
  [
    '40 lb of pure gypsum: lb Ca',
    (gypsum.elementKgPerM2?.Ca ?? Number.NaN) / lbPer1000(1),
    (40 * weights.Ca) / gypsumWeight,
    0.02,
    'IUPAC atomic weights, by hand; labels print 23.3 % Ca',
  ], // a label's three digits
  [
    '40 lb of pure gypsum: lb S',
    (gypsum.elementKgPerM2?.S ?? Number.NaN) / lbPer1000(1),
    (40 * weights.S) / gypsumWeight,
    0.02,
    'IUPAC atomic weights, by hand; labels print 18.6 % S',
  ], // a label's three digits
]);
