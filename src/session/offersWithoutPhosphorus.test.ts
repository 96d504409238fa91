import { describe, expect, it } from 'vitest';
import { lbPer1000, NO_CAPS, testAnalysis, testLabel, testLimits, turfVisit, yardOf } from '../plan/testDose';
import { testSoil } from '../soil/testSoil';
import { newZone } from '../yard/defaults';
import type { LocalRule, Product, Visit, Yard } from '../yard/types';
import { deriveYard } from './derive';
import './deriveVisit';
import { offersWithoutPhosphorus } from './offersWithoutPhosphorus';

const side = 0.0003;
const square = [
  [
    [
      [-96.5, 41.2],
      [-96.5 + side, 41.2],
      [-96.5 + side, 41.2 + side],
      [-96.5, 41.2 + side],
      [-96.5, 41.2],
    ],
  ],
] as const;
/** 1 lb N per 1,000 sq ft without phosphorus. */
const plain = (id: string, fields: Partial<Product> = {}) =>
  testLabel({ id, name: id, analysis: testAnalysis(20, 0, 10, 50), ...fields });
const rule = (terms: LocalRule['terms']): LocalRule => ({
  id: 'r',
  name: 'Town',
  isOn: true,
  terms,
  source: '',
  readOn: null,
});
const atOnce = (lb: number) =>
  rule({ kind: 'cap', nutrient: 'N', isSolubleOnly: false, maxKgPerM2: lbPer1000(lb), per: 'dose' });

function offers(
  products: readonly Product[],
  options: {
    fields?: Partial<Yard>;
    doses?: Parameters<typeof turfVisit>[2];
    others?: readonly Visit[];
  } = {},
) {
  const visit = turfVisit('v', '2026-05-01', [{}, ...(options.doses ?? [])]);
  const yard: Yard = {
    ...yardOf([testLabel(), ...products], [visit, ...(options.others ?? [])]),
    zones: [newZone('lawn', 'turf', square, { name: 'Lawn' })],
    soilTests: [testSoil({ mgPerKg: { P: 92 } })],
    caps: NO_CAPS,
    ...options.fields,
  };
  return offersWithoutPhosphorus(deriveYard(yard), 'v', 'v-0').map(({ product, rateFactor, against }) => ({
    id: product.id,
    rateFactor,
    codes: against.map(({ code }) => code),
  }));
}

describe('what is offered in place of a refused dose', () => {
  it('fits at the label rate where nothing speaks against it', () =>
    expect(offers([plain('a')])).toEqual([{ id: 'a', rateFactor: 1, codes: [] }]));

  it('is held to a rule of the place, and offered at the largest share that fits', () =>
    expect(offers([plain('a')], { fields: { rules: [atOnce(0.75)] } })).toEqual([
      { id: 'a', rateFactor: 0.75, codes: ['rule-cap-dose'] },
    ]));

  it('counts what else goes out at the visit', () =>
    expect(
      offers([plain('a'), plain('b')], {
        fields: { rules: [atOnce(1.5)] },
        doses: [{ productId: 'b' }],
      }),
    ).toContainEqual({ id: 'a', rateFactor: 0.5, codes: ['rule-cap-dose'] }));

  it('is held to its label, the same product in the visit already counted in', () => {
    // 1 lb N of 20 % is 5 lb of product; the label's most is 8 lb, and 5 lb are in the visit
    const limits = testLimits({ maxPerDose: { unit: 'kg', value: lbPer1000(8) } });
    expect(offers([plain('a', { limits })], { doses: [{ productId: 'a' }] })).toEqual([
      { id: 'a', rateFactor: 0.6, codes: ['limit-dose'] },
    ]);
  });

  it('is held to the caps of an application', () =>
    expect(offers([plain('a')], { fields: { caps: { ...NO_CAPS, totalNPerDose: lbPer1000(0.9) } } })).toEqual(
      [{ id: 'a', rateFactor: 0.9, codes: ['guide-total-n'] }],
    ));

  it('counts a later visit that it would put over the year', () =>
    expect(
      offers([plain('a')], {
        fields: { caps: { ...NO_CAPS, nPerYear: lbPer1000(1.4) } },
        others: [turfVisit('w', '2026-09-01', [{ productId: 'a' }])],
      }),
    ).toEqual([{ id: 'a', rateFactor: 0.4, codes: ['cap-year-n'] }]));

  it('is not offered where no share of it is right, and says what speaks against it', () =>
    expect(
      offers([plain('a', { limits: testLimits({ minIntervalDays: 14 }) })], {
        others: [turfVisit('w', '2026-05-08', [{ productId: 'a' }])],
      }),
    ).toMatchObject([{ id: 'a', rateFactor: null }]));

  it('lists what fits first, then what fits in part, then what does not', () => {
    const slow = rule({ kind: 'slow-share', minPct: 40 });
    const quick = plain('quick', { analysis: testAnalysis(20, 0, 10, 0) });
    const limits = testLimits({ maxPerDose: { unit: 'kg', value: lbPer1000(3) } });
    expect(
      offers([quick, plain('held', { limits }), plain('whole')], { fields: { rules: [slow] } }).map(
        ({ id, rateFactor }) => [id, rateFactor],
      ),
    ).toEqual([
      ['whole', 1],
      ['held', 0.6],
      ['quick', null],
    ]);
  });

  it('does not lay to the charge of an offer what speaks against the season without it', () =>
    expect(
      offers([plain('a')], {
        fields: { rules: [atOnce(1.2)] },
        others: [turfVisit('w', '2026-09-01', [{ productId: 'a', rateFactor: 2 }])],
      }),
    ).toEqual([{ id: 'a', rateFactor: 1, codes: [] }]));
});
