import { describe, expect, it } from 'vitest';
import { nutrientRates } from './nutrients';
import { planOn, testAnalysis, testDose, testProduct, testVisit, testZone } from './testDose';

const kilos = { perM2: { unit: 'kg', value: 0.02 }, kgPerM2: 0.02, lPerM2: null } as const;
const litres = { perM2: { unit: 'L', value: 0.02 }, kgPerM2: null, lPerM2: 0.02 } as const;

describe('nutrients', () => {
  it('are the percents of the weight laid down', () => {
    const rates = nutrientRates(testProduct({ analysis: testAnalysis(20, 5, 10) }), kilos);
    expect(rates?.N).toBeCloseTo(0.004, 15);
    expect(rates?.P2O5).toBeCloseTo(0.001, 15);
    expect(rates?.K2O).toBeCloseTo(0.002, 15);
  });
  it('are not known by volume without a density, unless there are none', () => {
    expect(nutrientRates(testProduct({ analysis: testAnalysis(0, 0, 1) }), litres)).toBeNull();
    expect(nutrientRates(testProduct(), litres)).toEqual({ N: 0, P2O5: 0, K2O: 0 });
  });
  it('of several doses add up on each zone', () => {
    const product = testProduct({ analysis: testAnalysis(20) });
    const doses = [testDose(), testDose({ id: 'd-2', rateFactor: 0.5 })];
    const plan = planOn([product], testVisit({ doses }), [testZone(50, 'a'), testZone(0, 'empty')]);
    expect(plan.nutrientByZone.get('a')?.N).toBeCloseTo(0.006, 15);
    expect(plan.nutrientByZone.has('empty')).toBe(false);
  });
});
