import { describe, expect, it } from 'vitest';
import { testSoil } from '../soil/testSoil';
import { limeVisits } from './limeVisits';
import { productRate } from './rate';
import { lbPer1000, testProduct } from './testDose';

const lime = testProduct({
  id: 'lime',
  name: 'Ground limestone',
  form: 'soil-amendment',
  limePct: 80,
  rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(40) },
});
let count = 0;
const newId = (prefix: string) => `${prefix}-${count++}`;
const laid = (pounds: number) =>
  limeVisits(testSoil({ limeKgPerM2: lbPer1000(pounds) }), lime, newId).map(
    ({ doses }) => (productRate(lime, doses[0]?.rateFactor).rate?.kgPerM2 ?? Number.NaN) / lbPer1000(1),
  );

describe('visits of the lime a lab recommends', () => {
  it('lay the recommendation over the effective value: 50 lb of pure lime is 62.5 lb of 80 % stone', () => {
    expect(laid(50)).toEqual([expect.closeTo(62.5, 9)]);
  });

  it('share out what is too much for one go', () => {
    // Penn State, Home Garden report notes: 11 to 20 lb per 100 sq ft in two goes
    expect(laid(160)).toEqual([expect.closeTo(100, 9), expect.closeTo(100, 9)]);
    expect(laid(300).length).toBe(3);
  });

  it('are none without a recommendation, or of a product that is no lime', () => {
    expect(limeVisits(testSoil(), lime, newId)).toEqual([]);
    expect(limeVisits(testSoil({ limeKgPerM2: 1 }), testProduct(), newId)).toEqual([]);
  });
});
