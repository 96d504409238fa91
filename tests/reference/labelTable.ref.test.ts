import { describe, expect, it } from 'vitest';
import { readLabelsCsv } from '../../src/io/readLabelsCsv';
import { nutrientRates } from '../../src/plan/nutrients';
import { productRate } from '../../src/plan/rate';
import type { Product } from '../../src/yard/types';

/*
 * Published worked examples written as a row of the table of labels, in the units of the source, and held
 * against what the program makes of the row. The factors here are NIST's, typed in anew.
 */
const LB_PER_1000 = 0.45359237 / 92.90304;
const FLOZ_L = 0.003785411784 * (1000 / 128);

const HEAD = [
  'Product',
  'Form',
  'N (%)',
  'P2O5 (%)',
  'K2O (%)',
  'Density (lb/gal)',
  'Seed purity (%)',
  'Seed germination (%)',
  'Effective lime (%)',
  'Pack weight (lb)',
  'Pack volume (gal)',
  'Rate basis',
  'Nutrient',
  '"Rate by weight (lb per 1,000 sq ft)"',
  '"Rate by volume (fl oz per 1,000 sq ft)"',
];
type Cells = Readonly<Record<string, string | number>>;
function labelOf(cells: Cells): Product {
  const named = Object.keys(cells).filter((key) => !HEAD.includes(key));
  expect(named).toEqual([]);
  const row = HEAD.map((title) => cells[title] ?? '');
  const { products, issues } = readLabelsCsv(`${HEAD.join(',')}\r\nExample,${row.slice(1).join(',')}\r\n`);
  expect(issues).toEqual([]);
  const [product] = products;
  if (!product) throw new Error('no label was read');
  return product;
}
const WEIGHT = '"Rate by weight (lb per 1,000 sq ft)"';
const VOLUME = '"Rate by volume (fl oz per 1,000 sq ft)"';
const byN = (nPct: number, rest: Cells = {}): Product =>
  labelOf({
    Form: 'granular',
    'N (%)': nPct,
    'Pack weight (lb)': 50,
    'Rate basis': 'nutrient-per-area',
    Nutrient: 'N',
    [WEIGHT]: 1,
    ...rest,
  });
const lbPer1000 = (product: Product) => (productRate(product).rate?.kgPerM2 ?? Number.NaN) / LB_PER_1000;

describe('published examples as rows of the table', () => {
  it.each([
    ['Univ. of Nebraska-Lincoln, lawn fertilizer calculations: 1.0 lb N with 28-3-6', 28, 1, 3.57, 0.005],
    ['UMass Amherst, Rotary Spreader Calibration: 1 lb N with 20-5-10', 20, 1, 5, 1e-9],
    ['LSU AgCenter, broadcast spreader article: 1 lb N with 20-0-0', 20, 1, 5, 1e-9],
    ['Purdue AY-22 (copy): 0.75 lb N with 16-8-8', 16, 0.75, 4.69, 0.005],
    ['turfgrass maths worksheet (copy): 0.9 lb N at 25 % N', 25, 0.9, 3.6, 1e-9],
  ])('%s', (_source, nPct, lbN, wanted, tolerance) => {
    expect(Math.abs(lbPer1000(byN(nPct, { [WEIGHT]: lbN })) - wanted)).toBeLessThan(tolerance);
  });

  it('Woods, Asian Turfgrass Center, 2015: 6 fl oz of 4 % N at 10.68 lb/gal are 0.50 lb and 0.020 lb N', () => {
    const liquid = labelOf({
      Form: 'liquid-concentrate',
      'N (%)': 4,
      'Density (lb/gal)': 10.68,
      'Pack volume (gal)': 2.5,
      'Rate basis': 'volume-per-area',
      [VOLUME]: 6,
    });
    const { rate } = productRate(liquid);
    if (!rate) throw new Error('no rate');
    expect((rate.lPerM2 ?? 0) * 92.90304).toBeCloseTo(6 * FLOZ_L, 12);
    expect(lbPer1000(liquid)).toBeCloseTo(0.5, 2);
    expect((nutrientRates(liquid, rate)?.N ?? 0) / LB_PER_1000).toBeCloseTo(0.02, 3);
  });

  it('LSU AgCenter, Pure Live Seed Calculation: 20 lb at 48 % purity and 80 % germination are 52 lb of the bag', () => {
    const seed = labelOf({
      Form: 'seed',
      'Seed purity (%)': 48,
      'Seed germination (%)': 80,
      'Pack weight (lb)': 50,
      'Rate basis': 'pure-live-seed',
      [WEIGHT]: 20,
    });
    // the source rounds 52.08 to whole pounds
    expect(Math.abs(lbPer1000(seed) - 52)).toBeLessThan(0.5);
  });
});
