import { describe, expect, it } from 'vitest';
import type { Amount, Product, Visit, VisitDose } from '../yard/types';
import { labelLimitIssues } from './limits';
import {
  planOn,
  testDose,
  testLimits,
  testPack,
  testProduct,
  testUse,
  testVisit,
  testZone,
  yardOf,
} from './testDose';
import type { LaidDose } from './types';

/** Codes of the label's limits for a visit, the product going out at 0.02 kg/m² each time. */
function codes(limits: Partial<Product['limits']>, visit: Visit, others: readonly Visit[] = []): string[] {
  const product = testProduct({ limits: testLimits(limits) });
  const plan = planOn([product], visit, [testZone(100)], 0, others);
  return plan.issues.map((issue) => issue.code).filter((code) => code.startsWith('limit-'));
}
const on = (date: string | null, id = 'v-1', rateFactor = 1) =>
  testVisit({ id, date, doses: [testDose({ id: `d-${id}`, rateFactor })] });
const kg = (value: number) => ({ unit: 'kg', value }) as const;

describe('the label’s limits', () => {
  it('most for one application, two passes counting as one', () => {
    expect(codes({ maxPerDose: kg(0.02) }, on(null))).toEqual([]);
    expect(codes({ maxPerDose: kg(0.02) }, on(null, 'v-1', 1.1))).toEqual(['limit-dose']);
    const passes = (share: number) =>
      testVisit({ doses: ['a', 'b'].map((id) => testDose({ id, rateFactor: share })) });
    expect(codes({ maxPerDose: kg(0.02) }, passes(0.5))).toEqual([]);
    expect(codes({ maxPerDose: kg(0.02) }, passes(0.6))).toEqual(['limit-dose']);
  });
  it('days between, before and after', () => {
    const limit = { minIntervalDays: 28 };
    expect(codes(limit, on('2031-06-29'), [on('2031-06-01', 'v-2')])).toEqual([]);
    expect(codes(limit, on('2031-06-28'), [on('2031-06-01', 'v-2')])).toEqual(['limit-interval']);
    expect(codes(limit, on('2031-06-01'), [on('2031-06-28', 'v-2')])).toEqual(['limit-interval']);
    // 28 days over the end of February in a leap year
    expect(codes(limit, on('2032-03-10'), [on('2032-02-11', 'v-2')])).toEqual([]);
  });
  it('most for a year and number a year, in the 365 days that end with the visit', () => {
    const before = [on('2031-05-01', 'v-2')];
    expect(codes({ maxPerYear: kg(0.04) }, on('2031-09-01'), before)).toEqual([]);
    expect(codes({ maxPerYear: kg(0.039) }, on('2031-09-01'), before)).toEqual(['limit-year-amount']);
    expect(codes({ maxPerYear: kg(0.039) }, on('2032-05-01'), before)).toEqual([]);
    expect(codes({ maxDosesPerYear: 2 }, on('2031-09-01'), before)).toEqual([]);
    expect(codes({ maxDosesPerYear: 1 }, on('2031-09-01'), before)).toEqual(['limit-doses-per-year']);
  });
  it.each([
    ['2028-01-01', '2028-12-31', 1], // a leap year has both, 365 days apart
    ['2029-01-01', '2029-12-31', 1],
    ['2028-06-01', '2029-05-31', 1], // the 365 days that end with the visit
    ['2028-06-01', '2029-06-01', 0],
    ['2028-12-31', '2029-12-31', 0],
  ])(
    'a yearly limit holds within the calendar year and within 365 days: %s and %s',
    (first, second, count) => {
      const limit = { maxDosesPerYear: 1, maxPerYear: kg(0.039) };
      const both = ['limit-year-amount', 'limit-doses-per-year'];
      expect(codes(limit, on(second), [on(first, 'v-2')])).toEqual(count === 1 ? both : []);
      expect(codes(limit, on(first), [on(second, 'v-2')])).toEqual([]);
    },
  );
  it('says when a missing date hinders the check', () => {
    const limit = { minIntervalDays: 28 };
    expect(codes(limit, on(null), [on('2031-06-01', 'v-2')])).toEqual(['limit-not-checked']);
    expect(codes(limit, on('2031-06-01'), [on(null, 'v-2')])).toEqual(['limit-not-checked']);
    expect(codes(limit, on(null))).toEqual([]);
  });
});

describe('limits over several uses of one label', () => {
  // 0.02 kg/m² by the first use, 0.01 kg/m² by the light one: the sum is of product, not of shares
  const both = (
    limits: Partial<Product['limits']>,
    ...doses: readonly (readonly [string | null, number])[]
  ) => {
    const product = testProduct({ limits: testLimits(limits), otherUses: [testUse()] });
    const visit = testVisit({
      doses: doses.map(([useId, rateFactor], i) => testDose({ id: `d-${i}`, useId, rateFactor })),
    });
    return planOn([product], visit, [testZone(100)])
      .issues.filter((issue) => issue.code.startsWith('limit-'))
      .map((issue) => [issue.code, issue.message]);
  };
  it('add up real product, whichever use is last', () => {
    const most = { maxPerDose: kg(0.03) };
    expect(both(most, [null, 1], ['u-1', 1])).toEqual([]);
    expect(both(most, ['u-1', 1], [null, 1])).toEqual([]);
    expect(both(most, ['u-1', 2], [null, 0.5])).toEqual([]);
    expect(both(most, ['u-1', 2], [null, 0.51]).map(([code]) => code)).toEqual(['limit-dose']);
    expect(both(most, [null, 1.01], ['u-1', 1]).map(([code]) => code)).toEqual(['limit-dose']);
  });
  it('add up over the year', () => {
    const product = testProduct({
      limits: testLimits({ maxPerYear: kg(0.03), minIntervalDays: 14 }),
      otherUses: [testUse()],
    });
    const at = (date: string, id: string, useId: string | null) =>
      testVisit({ id, date, doses: [testDose({ id: `d-${id}`, useId })] });
    const codesOf = (date: string, first: string | null, second: string | null) =>
      planOn([product], at(date, 'v-1', first), [testZone(100)], 0, [at('2031-05-01', 'v-2', second)])
        .issues.map((issue) => issue.code)
        .filter((code) => code.startsWith('limit-'));
    expect(codesOf('2031-06-01', null, 'u-1')).toEqual([]);
    expect(codesOf('2031-06-01', null, null)).toEqual(['limit-year-amount']);
    expect(codesOf('2031-05-10', 'u-1', 'u-1')).toEqual(['limit-interval']);
  });
  it('say so where a use cannot be told in the measure of the limit', () => {
    const product = testProduct({
      form: 'liquid-concentrate',
      packs: [testPack({ unit: 'L', value: 10 }, 'jug'), testPack({ unit: 'kg', value: 10 }, 'sack')],
      rate: { basis: 'volume-per-area', rateLPerM2: 0.01 },
      packIds: ['jug'],
      limits: testLimits({ maxPerDose: { unit: 'L', value: 0.02 } }),
      otherUses: [testUse({ packIds: ['sack'] })],
    });
    const doses = [testDose({ id: 'a' }), testDose({ id: 'b', useId: null })];
    const codesOf = (visit: Visit) =>
      planOn([product], visit, [testZone(100)]).issues.map((issue) => issue.code);
    expect(codesOf(testVisit({ doses }))).toEqual([]);
    // the dry use is measured in kg, the limit in litres: it cannot go out before the density is known
    const mixed = testVisit({ doses: [testDose({ id: 'b', useId: 'u-1' }), testDose({ id: 'a' })] });
    expect(codesOf(mixed)).toEqual(['limit-unit']);
  });
});

describe('visits that are done', () => {
  const product = (limits: Partial<Product['limits']>, fields: Partial<Product> = {}) =>
    testProduct({ limits: testLimits(limits), ...fields });
  const done = (doneOn: string, actual: Amount | null, fields: Partial<VisitDose> = {}) => ({
    ...on('2031-05-01', 'v-2'),
    doneOn,
    doses: [testDose({ id: 'd-v-2', actual, ...fields })],
  });
  const codesOf = (label: Product, before: Visit, areaM2 = 100) =>
    planOn([label], on('2031-06-01'), [testZone(areaM2)], 0, [before])
      .issues.map((issue) => issue.code)
      .filter((code) => code.startsWith('limit-'));
  it('count by the day they were done', () => {
    const label = product({ minIntervalDays: 28 });
    expect(codesOf(label, done('2031-05-04', null))).toEqual([]);
    expect(codesOf(label, done('2031-05-05', null))).toEqual(['limit-interval']);
  });
  it('count by what was really used', () => {
    // 0.02 kg/m² now, and 3 kg on 100 m² then
    const label = product({ maxPerYear: kg(0.045) });
    expect(codesOf(label, done('2031-05-01', kg(3)))).toEqual(['limit-year-amount']);
    expect(codesOf(label, done('2031-05-01', kg(2.4)))).toEqual([]);
    expect(codesOf(label, { ...done('2031-05-01', kg(3)), doneOn: null })).toEqual([]);
  });
  it('count by their record, whatever became of ground and label since', () => {
    const label = product({ maxPerYear: kg(0.045) });
    const zones = [{ zoneId: 'z-1', name: 'Lawn', areaM2: 100 }];
    const { analysis } = label;
    const laid = { productName: 'Old', useName: '', planned: kg(3), densityKgPerL: null, analysis, zones };
    // by today's plan it would be 3 kg on 400 m²
    expect(codesOf(label, done('2031-05-01', kg(3)), 400)).toEqual([]);
    expect(codesOf(label, done('2031-05-01', kg(3), { laid }), 400)).toEqual(['limit-year-amount']);
    expect(codesOf(label, done('2031-05-01', null, { laid }), 400)).toEqual(['limit-year-amount']);
    const elsewhere = { ...laid, zones: [{ zoneId: 'gone', name: 'Gone', areaM2: 100 }] };
    expect(codesOf(label, done('2031-05-01', null, { laid: elsewhere }), 400)).toEqual([]);
  });
  it('count for nothing where they laid nothing, in any measure', () => {
    const label = product({ minIntervalDays: 60, maxDosesPerYear: 1, maxPerYear: kg(0.03) });
    expect(codesOf(label, done('2031-05-20', kg(0.001)))).toEqual(['limit-interval', 'limit-doses-per-year']);
    expect(codesOf(label, done('2031-05-20', kg(0)))).toEqual([]);
    // nothing of a liquid told in kg, without a density
    const liquid = product(
      { maxPerYear: { unit: 'L', value: 0.015 } },
      {
        form: 'liquid-concentrate',
        rate: { basis: 'volume-per-area', rateLPerM2: 0.02 },
        packs: [testPack({ unit: 'L', value: 10 })],
      },
    );
    expect(codesOf(liquid, done('2031-05-20', kg(0)))).toEqual(['limit-year-amount']);
  });
  it('count as planned in the other measure where no density turns the real amount round', () => {
    const label = product({ maxPerYear: kg(0.039) });
    const litres = done('2031-05-20', { unit: 'L', value: 1 });
    expect(codesOf(label, litres)).toEqual(['limit-year-amount']);
    expect(codesOf(product({ maxPerYear: kg(0.041) }), litres)).toEqual([]);
  });
});

describe('one day is one application', () => {
  const limit = { maxPerDose: kg(0.03), minIntervalDays: 14, maxDosesPerYear: 1 };
  it('by several visits of the day', () => {
    const half = (id: string, date: string | null) => on(date, id, 0.75);
    expect(codes(limit, half('v-1', '2031-05-01'), [half('v-2', '2031-05-01')])).toEqual([]);
    const more = on('2031-05-01', 'v-2', 0.76);
    expect(codes(limit, half('v-1', '2031-05-01'), [more])).toEqual(['limit-dose']);
    expect(codes(limit, half('v-1', '2031-05-01'), [{ ...more, date: '2031-05-02' }])).toEqual([
      'limit-interval',
    ]);
  });
});

describe('a product in two measures', () => {
  // poured by the first use, weighed by the second, and no density: a dose by weight cannot be told in litres
  const laidBy = (doseId: string, kgPerM2: number | null, lPerM2: number | null): LaidDose => ({
    doseId,
    productId: 'p-1',
    productName: 'Test granules',
    zones: [{ zoneId: 'z-1', name: 'Lawn', areaM2: 100 }],
    kgPerM2,
    lPerM2,
    rates: null,
    isSilentOnSlow: false,
    isUseUnread: false,
  });
  const codesOf = (most: number, ...laid: readonly LaidDose[]) => {
    const product = testProduct({ limits: testLimits({ maxPerDose: { unit: 'L', value: most } }) });
    const own = planOn([product], testVisit(), [testZone(100)]);
    return labelLimitIssues(yardOf([product], []), { ...own, laid }, [], 'p-1').map((issue) => issue.code);
  };
  it('is over the most where what is known is, and not checked where only the rest could be', () => {
    expect(codesOf(0.01, laidBy('a', null, 0.02), laidBy('b', 0.02, null))).toEqual(['limit-dose']);
    expect(codesOf(0.03, laidBy('a', null, 0.02), laidBy('b', 0.02, null))).toEqual(['limit-not-checked']);
    expect(codesOf(0.03, laidBy('a', null, 0.02))).toEqual([]);
  });
});
