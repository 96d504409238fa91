import { describe, expect, it } from 'vitest';
import { stockLess, takeFromStock } from '../plan/takeFromStock';
import { newProduct } from '../yard/defaults';
import { replaceVisit } from '../yard/edits';
import type { Amount, Product, Yard } from '../yard/types';
import { changeActual, markDone, recordAll, unmarkDone } from './markDone';
import { testDay, testFeed, testSeason } from './testSeason';

const litres = (value: number): Amount => ({ unit: 'L', value });
const jugs = (onHand: Product['onHand'], fields: Partial<Product> = {}) =>
  newProduct('jugs', {
    packs: [
      { id: 'small', content: litres(1), price: null },
      { id: 'large', content: litres(10), price: null },
    ],
    onHand,
    ...fields,
  });
const taking = (onHand: Product['onHand'], value: number, fields: Partial<Product> = {}) =>
  takeFromStock(jugs(onHand, fields), litres(value));

describe('taking off the shelf', () => {
  it('empties opened packs first, the emptiest before', () => {
    expect(taking({ small: 1.5, large: 0.2 }, 0.4).taken).toEqual({ small: 0.4 });
    expect(taking({ small: 1.5, large: 0.2 }, 1.5).taken).toEqual({ small: 0.5, large: 0.1 });
  });
  it('then opens what is used up whole, and the smallest that holds the rest', () => {
    expect(taking({ small: 3, large: 2 }, 12.5)).toEqual({
      taken: { large: 1, small: 2.5 },
      short: litres(0),
    });
    expect(taking({ small: 1, large: 2 }, 1.5).taken).toEqual({ small: 1, large: 0.05 });
    expect(taking({ small: 1, large: 2 }, 0.25).taken).toEqual({ small: 0.25 });
  });
  it('tells what is short', () => {
    expect(taking({ small: 2 }, 5)).toEqual({ taken: { small: 2 }, short: litres(3) });
    expect(taking({}, 5)).toEqual({ taken: {}, short: litres(5) });
    expect(taking({ small: 2 }, 0)).toEqual({ taken: {}, short: litres(0) });
  });
  it('takes the packs of its use alone unless they may be poured together', () => {
    expect(taking({ small: 2, large: 2 }, 1, { packIds: ['large'] }).taken).toEqual({ large: 0.1 });
    expect(taking({ small: 2, large: 2 }, 1, { packIds: ['large'], canPour: true }).taken).toEqual({
      small: 1,
    });
  });
  it('turns weight into volume by the density', () => {
    const product = jugs({ small: 2 }, { densityKgPerL: 1.25 });
    expect(takeFromStock(product, { unit: 'kg', value: 1 }).taken).toEqual({ small: 0.8 });
    expect(takeFromStock(jugs({ small: 2 }), { unit: 'kg', value: 1 }).short.value).toBe(1);
  });
  it('puts back what it took', () => {
    const onHand = { small: 2.4, large: 1.3 };
    const { taken } = taking(onHand, 7.7);
    const back = stockLess(stockLess(onHand, taken), taken, -1);
    for (const [id, count] of Object.entries(onHand)) expect(back[id]).toBeCloseTo(count, 8);
  });
});

describe('a visit marked done', () => {
  // 1 lb of N per 1,000 sq ft from 20 % on 2,000 sq ft: 10 lb of product, 4.5359 kg, of bags of 20 kg
  const feed = testFeed('feed', [20, 0, 0], 1, { onHand: { bag: 1.5 } });
  const season = testSeason([feed], [testDay('day', '2026-05-01', ['feed', 'feed'])]);
  const figures = season.figures[0];
  if (!figures) throw new Error('no figures');
  const stockOf = (yard: Yard) => yard.products[0]?.onHand.bag ?? Number.NaN;
  const each = 4.5359237 / 20;

  it('takes each dose off the shelf and keeps what it took', () => {
    const done = markDone(season.yard, figures, '2026-05-02', true);
    expect(done.visits[0]).toMatchObject({ doneOn: '2026-05-02' });
    expect(stockOf(done)).toBeCloseTo(1.5 - 2 * each, 8);
    expect(done.visits[0]?.doses[1]?.taken?.bag).toBeCloseTo(each, 8);
    expect(stockOf(markDone(season.yard, figures, '2026-05-02', false))).toBe(1.5);
  });
  it('takes what was really used instead, and puts all back when it is not done after all', () => {
    const done = markDone(season.yard, figures, '2026-05-02', true);
    const used = changeActual(done, figures, 'day-0', { unit: 'kg', value: 2 });
    expect(stockOf(used)).toBeCloseTo(1.5 - each - 0.1, 8);
    const undone = unmarkDone(used, 'day');
    expect(stockOf(undone)).toBeCloseTo(1.5, 8);
    expect(undone.visits[0]).toMatchObject({ doneOn: null, doses: [{ actual: null, taken: null }, {}] });
  });
  it('counts a dose that the plan leaves out as not put down', () => {
    const partly = { ...figures, doses: figures.doses.slice(0, 1) };
    const done = markDone(season.yard, partly, '2026-05-02', true);
    expect(done.visits[0]?.doses.map((dose) => dose.actual)).toEqual([null, { unit: 'kg', value: 0 }]);
    expect(stockOf(done)).toBeCloseTo(1.5 - each, 8);
    expect(unmarkDone(done, 'day').visits[0]?.doses.map((dose) => dose.actual)).toEqual([null, null]);
  });
  it('keeps on record what each dose was laid down by, until the mark is taken off', () => {
    const done = markDone(season.yard, figures, '2026-05-02', false);
    const [laid] = done.visits[0]?.doses.map((dose) => dose.laid) ?? [];
    expect(laid).toMatchObject({ productName: 'Feed 20-0-0', useName: '', analysis: { nPct: 20 } });
    expect(laid?.planned.value).toBeCloseTo(4.5359237, 6);
    expect(laid?.zones.map((zone) => [zone.zoneId, zone.name, Math.round(zone.areaM2)])).toEqual([
      ['front', 'Front', 93],
      ['back', 'Back', 93],
    ]);
    const used = changeActual(done, figures, 'day-0', { unit: 'kg', value: 2 });
    expect(used.visits[0]?.doses[0]?.laid).toBe(laid);
    expect(unmarkDone(used, 'day').visits[0]?.doses.map((dose) => dose.laid)).toEqual([null, null]);
  });
  it('puts on record what was done before without one, and leaves other records alone', () => {
    const done = markDone(season.yard, figures, '2026-05-02', false);
    const [visit] = done.visits;
    const [first, second] = visit?.doses ?? [];
    if (!visit || !first || !second) throw new Error('no doses');
    const partly = replaceVisit(done, { ...visit, doses: [first, { ...second, laid: null }] });
    const again = markDone(partly, figures, '2026-05-02', false);
    expect(again.visits[0]?.doses[0]?.laid).toBe(first.laid);
    expect(again.visits[0]?.doses[1]?.laid).toEqual(second.laid);
    const used = changeActual(partly, figures, second.id, { unit: 'kg', value: 2 });
    expect(used.visits[0]?.doses[1]?.laid).toEqual(second.laid);
    // a visit that is still planned has nothing to put on record
    expect(changeActual(season.yard, figures, 'day-0', null).visits[0]?.doses[0]?.laid).toBeNull();
  });
  it('puts on record what has none before its product leaves the shelf', () => {
    const [visit] = season.yard.visits;
    const bare = { ...season.yard, visits: visit ? [{ ...visit, doneOn: '2026-05-02' }] : [] };
    const kept = recordAll(bare, () => figures, 'feed');
    expect(kept.visits[0]?.doses.map((dose) => dose.laid?.productName)).toEqual([
      'Feed 20-0-0',
      'Feed 20-0-0',
    ]);
    expect(recordAll(bare, () => figures, 'other')).toBe(bare);
    expect(recordAll(season.yard, () => figures, 'feed')).toBe(season.yard);
    expect(recordAll(bare, () => null, 'feed')).toBe(bare);
  });
  it('leaves the shelf alone where nothing was taken from it', () => {
    const done = markDone(season.yard, figures, '2026-05-02', false);
    const used = changeActual(done, figures, 'day-0', { unit: 'kg', value: 2 });
    expect(stockOf(used)).toBe(1.5);
    expect(used.visits[0]?.doses[0]?.actual).toEqual({ unit: 'kg', value: 2 });
    expect(unmarkDone(season.yard, 'day')).toBe(season.yard);
  });
});
