import { describe, expect, it } from 'vitest';
import { KG_PER_LB } from '../units/factors';
import type { Product } from '../yard/types';
import { openFromStock } from './openFromStock';
import { stockAtDose } from './stockAtDose';
import {
  fluidOunces,
  lbPer1000,
  planOn,
  sqft,
  testDose,
  testHoseLiquid,
  testPack,
  testProduct,
  testVisit,
  testZone,
} from './testDose';

const lb = (value: number) => ({ unit: 'kg', value: value * KG_PER_LB }) as const;
// 3 lb on each 1,000 sq ft
const grain = (onHand: Product['onHand'], fields: Partial<Product> = {}) =>
  testProduct({
    rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(3) },
    packs: [testPack(lb(12.5), 'bag')],
    onHand,
    ...fields,
  });
const twoSizes = { packs: [testPack(lb(12.5), 'bag'), testPack(lb(40), 'sack')] };
/** Opened: pounds taken and level after; closed and missing: count and what is left of the last. */
function told(product: Product, pounds: number) {
  const found = openFromStock(product, lb(pounds));
  const round = (value: number) => Math.round(value * 1e6) / 1e6;
  const rows = (list: NonNullable<typeof found>['closed']) =>
    list.map(({ pack, count, lastLeft }) => [pack.id, count, round(lastLeft)]);
  return (
    found && {
      opened: found.opened.map((one) => [
        one.pack.id,
        round(one.taken.value / KG_PER_LB),
        round(one.levelAfter),
      ]),
      closed: rows(found.closed),
      missing: rows(found.missing),
    }
  );
}

describe('openFromStock', () => {
  // 22.5 lb with 6.25 lb open: 16.25 lb are two bags of 12.5 lb, of which 8.75 lb, 70 % of the last, are left
  it('goes on with what is open, then opens', () => {
    expect(told(grain({ bag: 2.5 }), 22.5)).toEqual({
      opened: [['bag', 6.25, 0]],
      closed: [['bag', 2, 0.7]],
      missing: [],
    });
    expect(told(grain({ bag: 0.5 }), 22.5)).toEqual({
      opened: [['bag', 6.25, 0]],
      closed: [],
      missing: [['bag', 2, 0.7]],
    });
    expect(told(grain({ bag: 1.5 }), 22.5)).toEqual({
      opened: [['bag', 6.25, 0]],
      closed: [['bag', 1, 0]],
      missing: [['bag', 1, 0.7]],
    });
  });
  it('opens nothing where what is open is enough', () => {
    expect(told(grain({ bag: 3.5 }), 3)).toEqual({ opened: [['bag', 3, 0.26]], closed: [], missing: [] });
    expect(told(grain({ bag: 3.5 }), 6.25)).toEqual({ opened: [['bag', 6.25, 0]], closed: [], missing: [] });
  });
  it('offers what is missing in every size', () => {
    expect(told(grain({ bag: 0.5 }, twoSizes), 22.5)?.missing).toEqual([
      ['bag', 2, 0.7],
      ['sack', 1, 0.59375],
    ]);
  });
  it('has nothing to say of an empty shelf', () => {
    expect(told(grain({}), 22.5)).toBeNull();
    expect(told(grain({ bag: 0 }), 22.5)).toBeNull();
  });
  it('draws on the packs of its use alone unless they may be poured together', () => {
    const hose = testHoseLiquid({ onHand: { jug: 1 } });
    expect(openFromStock(hose, fluidOunces(16))).toBeNull();
    const poured = openFromStock({ ...hose, canPour: true }, fluidOunces(16));
    expect(poured?.closed.map(({ pack, lastLeft }) => [pack.id, lastLeft])).toEqual([['jug', 0.875]]);
  });
});

describe('stockAtDose', () => {
  const visit = (id: string, date: string | null, doneOn: string | null = null) =>
    testVisit({ id, date, doneOn, doses: [testDose({ id: `${id}-1` }), testDose({ id: `${id}-2` })] });
  // each dose takes 3 lb
  const at = (product: Product, visits: readonly ReturnType<typeof visit>[], id: string, index = 0) => {
    const figures = visits.map((one) => planOn([product], one, [testZone(sqft(1000))]));
    const dose = figures.find((one) => one.visit.id === id)?.doses[index];
    if (!dose) throw new Error('no such dose');
    const { onHand, isAfterVisits } = stockAtDose(figures, id, dose);
    return [Math.round((onHand.bag ?? 0) * 12.5 * 1e6) / 1e6, isAfterVisits];
  };
  it('takes off what goes out before, by day', () => {
    const visits = [visit('c', null), visit('b', '2031-05-02'), visit('a', '2031-04-01')];
    const product = grain({ bag: 4 });
    expect(at(product, visits, 'a')).toEqual([50, false]);
    expect(at(product, visits, 'a', 1)).toEqual([47, false]);
    expect(at(product, visits, 'b')).toEqual([44, true]);
    expect(at(product, visits, 'c', 1)).toEqual([35, true]);
  });
  it('leaves out what is done', () => {
    const visits = [visit('a', '2031-04-01', '2031-04-01'), visit('b', '2031-05-02')];
    expect(at(grain({ bag: 4 }), visits, 'b')).toEqual([50, false]);
  });
  it('goes on with what is left of a pack that an earlier visit had to buy', () => {
    const visits = [visit('a', '2031-04-01'), visit('b', '2031-05-02')];
    // 5 lb on hand, 6 lb before it: 1 lb of a new bag of 12.5 lb
    expect(at(grain({ bag: 0.4 }), visits, 'b')).toEqual([11.5, true]);
    expect(at(grain({ bag: 0.4 }, twoSizes), visits, 'b')).toEqual([0, true]);
  });
});
