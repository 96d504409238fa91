import { describe, expect, it } from 'vitest';
import { ingredientRates, nutrientPerLitre, nutrientRates } from './nutrients';
import { saltLoad, saltPerUnit } from './saltLoad';
import { planOn, planOne, testAnalysis, testDose, testProduct, testVisit, testZone } from './testDose';

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

describe('what else a dose lays down', () => {
  const liquid = {
    form: 'liquid-concentrate',
    ingredients: [
      { name: 'humic acid', pct: 6 },
      { name: 'kelp extract', pct: 0 },
    ],
    saltIndex: 20,
  } as const;
  it('is an ingredient without N-P-K by weight, by its name; one of 0 % is left out', () => {
    expect(ingredientRates(testProduct(liquid), kilos)).toEqual([{ name: 'humic acid', kgPerM2: 0.0012 }]);
    expect(ingredientRates(testProduct(), litres)).toEqual([]);
    expect(ingredientRates(testProduct(liquid), litres)).toBeNull();
  });
  it('is salt by its index', () => {
    expect(saltLoad(testProduct(liquid), kilos)).toBeCloseTo(0.004, 15);
    expect(saltLoad(testProduct(liquid), litres)).toBeNull();
    expect(saltLoad(testProduct(), kilos)).toBeNull();
    expect(saltPerUnit(100, 16)).toBe(6.25);
    expect(saltPerUnit(100, 0)).toBeNull();
  });
  it('stands in the figures of the dose', () => {
    const product = testProduct({ ...liquid, form: 'granular', analysis: testAnalysis(20, 0, 0, 25) });
    const dose = planOne(product, 100);
    expect(dose.ingredients).toEqual([{ name: 'humic acid', kgPerM2: 0.0012 }]);
    expect(dose.saltKgPerM2).toBeCloseTo(0.004, 15);
    expect(dose.solubleNKgPerM2).toBeCloseTo(0.003, 15);
    expect(nutrientPerLitre({ ...product, densityKgPerL: 1.2 }, 'N')).toBeCloseTo(0.24, 15);
    expect(nutrientPerLitre(product, 'N')).toBeNull();
  });
});
