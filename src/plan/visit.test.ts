import { describe, expect, it } from 'vitest';
import { L_PER_GAL, M2_PER_1000_SQFT } from '../units/factors';
import { visitZones } from '../yard/choose';
import type { Product, Visit, VisitDose } from '../yard/types';
import { holdVisit } from './holdVisit';
import {
  flozPer1000,
  fluidOunces,
  ground,
  lbPer1000,
  nitrogenRate,
  testAnalysis,
  testLabel,
  turfVisit,
  turfYard,
} from './testDose';
import { planVisit } from './visit';

/** Plans the first visit with every dose on the given zones, and holds it with the others on the zones they choose. */
function plan(products: readonly Product[], visits: readonly [Visit, ...Visit[]], zones = ['front', 'back']) {
  const [visit, ...others] = visits;
  const yard = turfYard(products, visits);
  const planned = (one: Visit, idsOf: (dose: VisitDose) => readonly string[]) => {
    const zonesByDose = new Map(one.doses.map((dose) => [dose.id, ground(...idsOf(dose))]));
    return planVisit({ yard, visit: one, zonesByDose, sigmaByDose: new Map() });
  };
  const chosen = (one: Visit) => planned(one, (dose) => visitZones(yard, one, dose).map((zone) => zone.id));
  return holdVisit(
    yard,
    planned(visit, () => zones),
    others.map(chosen),
  );
}
const codes = (figures: ReturnType<typeof plan>) =>
  [...figures.issues, ...figures.doses.flatMap((dose) => dose.issues)].map((issue) => issue.code);
const limits = testLabel().limits;
const soft = { ...testAnalysis(20), slowNPctOfN: 50, elementsPct: {} };

describe('a visit', () => {
  it('sums amounts by zone and nutrients over doses', () => {
    const figures = plan(
      [testLabel({ analysis: soft })],
      [turfVisit('a', null, [{ rateFactor: 0.5 }, { rateFactor: 0.25 }])],
    );
    const [first] = figures.doses;
    expect(first?.amount.value).toBeCloseTo(
      (first?.zones ?? []).reduce((sum, zone) => sum + zone.amount.value, 0),
      12,
    );
    expect(figures.nutrientByZone.get('front')?.N).toBeCloseTo(lbPer1000(0.75), 12);
    expect(codes(figures)).toEqual([]);
  });
  it('says why a dose cannot be planned, and plans the rest', () => {
    const figures = plan(
      [testLabel(), testLabel({ id: 'bad', analysis: testAnalysis(90, 20) })],
      [turfVisit('a', null, [{}, { productId: 'bad' }, { productId: 'gone' }, { rateFactor: 0 }])],
    );
    expect(figures.doses).toHaveLength(1);
    const told = figures.issues.filter((issue) => issue.severity === 'error');
    expect(told.map((issue) => [issue.code, issue.place.doseId])).toEqual([
      ['analysis-over-100', 'a-1'],
      ['dose-product-missing', 'a-2'],
      ['dose-rate-not-positive', 'a-3'],
    ]);
  });
  it('warns above the label rate, without ground, with no tank size', () => {
    const figures = plan(
      [testLabel({ analysis: soft })],
      [{ ...turfVisit('a', null, [{ rateFactor: 1.2 }]), tankL: 0 }],
      [],
    );
    expect(codes(figures)).toEqual(
      expect.arrayContaining(['above-label-rate', 'dose-no-ground', 'tank-not-positive']),
    );
  });
  it('cautions where one product follows another in the tank, not where one is sprayed twice', () => {
    const spray = testLabel({
      id: 'spray',
      form: 'liquid-concentrate',
      analysis: testAnalysis(0),
      rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(5) },
      packs: [{ id: 'jug', content: fluidOunces(128), price: null }],
      carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
    });
    const products = [spray, { ...spray, id: 'other', name: 'Other spray' }];
    const twice = { ...turfVisit('a', null, [{ productId: 'spray' }, { productId: 'spray' }]), tankL: 15 };
    const mixed = { ...turfVisit('a', null, [{ productId: 'spray' }, { productId: 'other' }]), tankL: 15 };
    expect(codes(plan(products, [twice]))).not.toContain('tank-shared');
    const [caution] = plan(products, [mixed]).issues;
    expect(caution).toMatchObject({ code: 'tank-shared', place: { doseId: 'a-1' } });
    expect(caution?.message).toContain('jar test');
  });
});

describe('published guides', () => {
  it('0.7 lb soluble N and 1 lb N at once, over all doses of the visit', () => {
    const of = (lb: number, slow: number | null) =>
      codes(
        plan(
          [
            testLabel({
              rate: nitrogenRate(lb),
              analysis: { ...testAnalysis(20), slowNPctOfN: slow, elementsPct: {} },
            }),
          ],
          [turfVisit('a', null, [{}])],
        ),
      );
    expect(of(0.7, 0)).toEqual([]);
    expect(of(0.71, 0)).toEqual(['guide-soluble-n']);
    expect(of(1, 50)).toEqual([]);
    expect(of(1.01, 50)).toEqual(['guide-total-n']);
    expect(of(0.9, null)).toEqual(['guide-soluble-n', 'slow-share-unknown']);
    const two = testLabel({ rate: nitrogenRate(0.6), analysis: soft });
    expect(codes(plan([two], [turfVisit('a', null, [{}, {}])]))).toEqual(['guide-total-n']);
  });
});

describe("the label's own limits", () => {
  const label = (own: Partial<Product['limits']>) =>
    testLabel({ analysis: soft, limits: { ...limits, ...own } });
  it('most for one application counts half passes as one', () => {
    const product = label({ maxPerDose: { unit: 'kg', value: lbPer1000(5) } });
    expect(
      codes(plan([product], [turfVisit('a', null, [{ rateFactor: 0.5 }, { rateFactor: 0.5 }])])),
    ).toEqual([]);
    expect(
      codes(plan([product], [turfVisit('a', null, [{ rateFactor: 0.6 }, { rateFactor: 0.6 }])])),
    ).toContain('limit-dose');
  });
  it.each([
    ['2031-06-28', 'limit-interval'],
    ['2031-06-29', null],
    ['2031-05-05', 'limit-interval'],
    ['2031-05-04', null],
  ])('28 days to a visit on %s: %s', (date, code) => {
    const visits = [turfVisit('a', '2031-06-01', [{}]), turfVisit('b', date, [{}])] as const;
    expect(codes(plan([label({ minIntervalDays: 28 })], [...visits]))).toEqual(code ? [code] : []);
  });
  it('visits on other ground or with other products do not count', () => {
    const back = { classes: [], include: ['back'], exclude: [] };
    const elsewhere = turfVisit('b', '2031-06-02', [{ zones: back }]);
    const other = turfVisit('c', '2031-06-02', [{ productId: 'other' }]);
    const product = label({ minIntervalDays: 28, maxDosesPerYear: 1 });
    expect(codes(plan([product], [turfVisit('a', '2031-06-01', [{}]), elsewhere, other], ['front']))).toEqual(
      [],
    );
  });
  it('doses and amount of the 365 days that end with the visit', () => {
    const visits = (last: string) =>
      [turfVisit('a', '2031-06-01', [{}]), turfVisit('b', last, [{}])] as [Visit, ...Visit[]];
    const product = label({ maxDosesPerYear: 1, maxPerYear: { unit: 'kg', value: lbPer1000(9) } });
    expect(codes(plan([product], visits('2030-06-02')))).toEqual([
      'limit-year-amount',
      'limit-doses-per-year',
    ]);
    expect(codes(plan([product], visits('2030-06-01')))).toEqual([]);
  });
  it('says that a missing date hinders the check', () => {
    const visits = [turfVisit('a', null, [{}]), turfVisit('b', '2031-06-02', [{}])] as [Visit, ...Visit[]];
    expect(codes(plan([label({ minIntervalDays: 28 })], visits))).toEqual(['limit-not-checked']);
  });
});
