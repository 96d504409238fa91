import { describe, expect, it } from 'vitest';
import type { Product, Visit } from '../yard/types';
import {
  planOn,
  testAnalysis,
  testDose,
  testLimits,
  testPack,
  testProduct,
  testVisit,
  testZone,
  yardOf,
} from './testDose';
import { planVisit } from './visit';

const spray = testProduct({
  id: 'p-spray',
  name: 'Test spray',
  form: 'liquid-concentrate',
  rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
  packs: [testPack({ unit: 'L', value: 1 }), testPack({ unit: 'kg', value: 5 }, 'pack-2')],
  densityKgPerL: 1.25,
  carrierLPerM2: 0.04,
  carrierIsTotal: true,
});
const run = (
  products: readonly Product[],
  visit: Visit,
  zones = [testZone(300, 'a', 20), testZone(200, 'b')],
) => planOn(products, visit, zones, 5);
const codes = (plan: ReturnType<typeof run>) =>
  [...plan.issues, ...plan.doses.flatMap((dose) => dose.issues)].map((issue) => issue.code);
const of = (productId: string, id = 'd-1', rateFactor = 1) => testDose({ id, productId, rateFactor });

describe('doses and cautions of a visit', () => {
  it('gives each dose its figures', () => {
    const plan = run([spray], testVisit({ doses: [of('p-spray', 'd-1', 0.5)], tankL: 15 }));
    expect(plan.issues).toEqual([]);
    const dose = plan.doses[0];
    expect(dose).toMatchObject({
      areaM2: 500,
      stripM2: 20,
      areaSigmaM2: 5,
      amount: { unit: 'L', value: 0.5 },
    });
    expect(dose?.zones.map((zone) => [zone.zoneId, zone.amount.value])).toEqual([
      ['a', 0.3],
      ['b', 0.2],
    ]);
    expect(dose?.carrierL).toBeCloseTo(19.5, 12);
    expect(dose?.tank).toMatchObject({ fullLoads: 1, tankL: 15 });
    // 0.5 L is half of a litre pack, and 0.625 kg of a 5 kg one
    expect(dose?.containers.map((row) => row.exact)).toEqual([0.5, 0.125]);
  });
  it('leaves out a dose that cannot be planned and says why, at the dose', () => {
    const bad = testProduct({ id: 'p-bad', packs: [testPack({ unit: 'kg', value: 0 })] });
    const doses = [of('gone', 'd-1'), of('p-bad', 'd-2'), of('p-spray', 'd-3', 0), of('p-spray', 'd-4')];
    const plan = run([bad, spray], testVisit({ doses }));
    expect(plan.doses.map((dose) => dose.dose.id)).toEqual(['d-4']);
    expect(plan.issues.map((issue) => [issue.code, issue.place.doseId])).toEqual([
      ['dose-product-missing', 'd-1'],
      ['pack-empty', 'd-2'],
      ['dose-rate-not-positive', 'd-3'],
    ]);
  });
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    'says that %s is no share of the label rate',
    (factor) => {
      const plan = run([spray], testVisit({ doses: [of('p-spray', 'd-1', factor)] }));
      expect(plan.doses).toEqual([]);
      expect(codes(plan)).toEqual(['dose-rate-not-positive']);
    },
  );
  it.each<readonly [string, Partial<Product>, Partial<Visit>, number]>([
    ['above-label-rate', {}, {}, 1.1],
    ['no-room-for-water', { carrierLPerM2: 0.003 }, {}, 1.5],
    ['air-temperature', { limits: testLimits({ maxAirTempC: 29 }) }, {}, 1],
    ['water-in', { waterIn: true }, {}, 1],
    ['rainfast', { rainfastS: 14_400 }, {}, 1],
    [
      'nutrients-no-density',
      { analysis: testAnalysis(5), densityKgPerL: null, packs: [testPack({ unit: 'L', value: 1 })] },
      {},
      1,
    ],
    ['phosphorus-soil-test', { analysis: testAnalysis(0, 1) }, {}, 1],
    ['tank-not-positive', {}, { tankL: 0 }, 1],
  ])('cautions: %s', (code, fields, visit, factor) => {
    const doses = [of('p-spray', 'd-1', factor)];
    expect(codes(run([spray], testVisit({ doses: [of('p-spray')] })))).not.toContain(code);
    expect(codes(run([{ ...spray, ...fields }], testVisit({ doses, ...visit })))).toContain(code);
  });
  it('say how much water and how long without rain, in words', () => {
    const told = (fields: Partial<Product>) =>
      run([{ ...spray, ...fields }], testVisit({ doses: [of('p-spray')] })).doses[0]?.issues.map((issue) =>
        issue.message.replaceAll('\u00a0', ' '),
      );
    const care = { rainfastS: 14_400, waterInDepthM: 0.00635 };
    expect(told({ ...care, waterIn: true })).toEqual([
      'Test spray: water it in with 0.25 in of water after it is down, no run-off.',
    ]);
    expect(told(care)).toEqual([
      'Test spray: no rain and no watering for 4 h after it is down, by its label.',
    ]);
  });
  it('two zones of a dose that overlap: told at each dose that treats both', () => {
    const doses = [of('p-spray', 'd-1'), of('p-spray', 'd-2'), of('p-spray', 'd-3')];
    const visit = testVisit({ doses });
    const [a, b, c] = [testZone(300, 'a'), testZone(200, 'b'), testZone(0, 'c')];
    const plan = (clashes?: readonly (readonly [string, string, number])[]) =>
      planVisit({
        yard: yardOf([spray], [visit]),
        visit,
        zonesByDose: new Map([
          ['d-1', [a, b, c]],
          ['d-2', [a, c]],
          ['d-3', [{ ...b, name: '' }, a]],
        ]),
        sigmaByDose: new Map(),
        ...(clashes && { clashes }),
      });
    // 10 m² are 107.64 sq ft; where no ground of a zone is treated, none is treated twice
    const told = plan([
      ['a', 'b', 10],
      ['a', 'c', 5],
      ['a', 'gone', 5],
    ]).issues;
    expect(told.map(({ code, severity, place }) => [code, severity, place.doseId, place.zoneId])).toEqual([
      ['zones-overlap', 'warning', 'd-1', 'a'],
      ['zones-overlap', 'warning', 'd-3', 'a'],
    ]);
    expect(told[0]?.message.replaceAll('\u00a0', ' ')).toBe(
      'Test spray: “Zone a” and “Zone b” overlap, so 108 sq ft is counted twice and would be treated twice; mend it on the Measure screen.',
    );
    expect(told[1]?.message).toContain('“Zone a” and an unnamed zone overlap');
    expect(plan().issues).toEqual([]);
  });
  it('a powder in the tank, no ground, one tank for two mixes', () => {
    const powder = testProduct({ form: 'soluble-powder', carrierLPerM2: 0.04 });
    const both = testVisit({ doses: [of('p-spray', 'd-1'), of('p-1', 'd-2')], tankL: 15 });
    const plan = run([spray, powder], both);
    expect(codes(plan)).toEqual(['tank-shared', 'powder-volume']);
    expect(codes(run([spray], testVisit({ doses: [of('p-spray')] }), []))).toEqual(['dose-no-ground']);
  });
});
