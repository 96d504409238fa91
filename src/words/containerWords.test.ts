import { describe, expect, it } from 'vitest';
import {
  lbPer1000,
  planOn,
  sqft,
  testDose,
  testPack,
  testProduct,
  testVisit,
  testZone,
} from '../plan/testDose';
import type { ContainerCount } from '../plan/types';
import { KG_PER_LB } from '../units/factors';
import type { Product, Visit } from '../yard/types';
import { changeWords, countWords, lastWords, stockWords } from './containerWords';

const count = (change: Partial<ContainerCount>): ContainerCount => ({
  packId: 'p',
  packContent: { unit: 'L', value: 0.946352946 },
  open: 2,
  lastLeft: 0.4375,
  exact: 1.5625,
  openLow: 2,
  openHigh: 2,
  changesAt: null,
  ...change,
});

describe('container words', () => {
  // 5,000 sq ft by bottles of 3,200 sq ft is 1.5625 bottles: the second keeps 0.4375
  it('says how full the last one stays', () => {
    expect(lastWords(count({}))).toBe('44\u00a0% of the last one is left');
    expect(lastWords(count({ open: 1, lastLeft: 0.6875 }))).toBe('69\u00a0% of it is left');
    expect(lastWords(count({ lastLeft: 0 }))).toBe('the last one is used up');
    expect(lastWords(count({ open: 0, lastLeft: 0 }))).toBe('nothing to open');
  });

  it('says when the count would change', () => {
    expect(changeWords(count({}))).toBeNull();
    expect(changeWords(count({ open: 4, changesAt: 0.02 }))).toBe('4, 5 if the ground is 2\u00a0% larger');
    expect(changeWords(count({ open: 4, changesAt: -0.013 }))).toBe(
      '4, 3 if the ground is 1.3\u00a0% smaller',
    );
    expect(changeWords(count({ open: 1, changesAt: 0 }))).toBe('1, 2 if the ground is even a little larger');
  });

  it('names the pack', () => {
    expect(countWords(testProduct(), count({}), 'us')).toBe('packs of 32\u00a0fl\u00a0oz');
    expect(countWords(testProduct(), count({ open: 1 }), 'metric')).toBe('pack of 946\u00a0mL');
  });

  // 56.6337 L is 2 cu ft (NIST Handbook 44, app. C: 1 cu ft = 28.316 846 592 L)
  it('names a sack of bulk goods by cubic feet', () => {
    const mulch = testProduct({ form: 'mulch', rate: { basis: 'depth', depthM: 0.05 } });
    const sack = count({ packContent: { unit: 'L', value: 56.633693184 } });
    expect(countWords(mulch, sack, 'us')).toBe('packs of 2\u00a0cu\u00a0ft');
    expect(countWords(mulch, sack, 'metric')).toBe('packs of 56.6\u00a0L');
  });
});

describe('with what is on the shelf', () => {
  // 22.5 lb: 3 lb on each 1,000 of 7,500 sq ft
  const grain = (onHand: Product['onHand'], sizes: readonly number[] = [12.5]) =>
    testProduct({
      rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(3) },
      packs: sizes.map((size) => testPack({ unit: 'kg', value: size * KG_PER_LB }, `${size}`)),
      onHand,
    });
  const told = (product: Product, change: Partial<Visit> = {}, before: readonly Visit[] = []) => {
    const plan = (visit: Visit) => planOn([product], visit, [testZone(sqft(7500))]);
    const own = plan(testVisit({ date: '2031-05-31', ...change }));
    const [dose] = own.doses;
    if (!dose) throw new Error('no dose');
    return stockWords([own, ...before.map(plan)], own, dose, 'us').replaceAll('\u00a0', ' ');
  };
  it('goes on with what is open, then opens from the shelf, then what is not there', () => {
    expect(told(grain({ '12.5': 2.5 }))).toBe(
      'Go on with 6.25 lb from the opened 12.5 lb pack, then open 2 × 12.5 lb from the shelf: 70 % of the last one is left.',
    );
    expect(told(grain({ '12.5': 1.5 }))).toBe(
      'Go on with 6.25 lb from the opened 12.5 lb pack, then open 1 × 12.5 lb from the shelf, then open 1 × 12.5 lb, not on the shelf: 70 % of it is left.',
    );
    expect(told(grain({ '12.5': 0.5 }, [12.5, 40]))).toBe(
      'Go on with 6.25 lb from the opened 12.5 lb pack, then open 2 × 12.5 lb (70 % of the last one is left) or 1 × 40 lb (59 % of it is left), not on the shelf.',
    );
    expect(told(grain({ '40': 0.8 }, [40]))).toBe(
      'Go on with 22.5 lb from the opened 40 lb pack: 24 % of it is left.',
    );
    expect(told(grain({ '12.5': 3 }))).toBe('Open 2 × 12.5 lb from the shelf: 20 % of the last one is left.');
  });
  it('counts what visits before it will take', () => {
    const before = testVisit({ id: 'before', date: '2031-05-01', doses: [testDose({ id: 'other' })] });
    expect(told(grain({ '12.5': 2.5 }), {}, [before])).toBe(
      'Once the visits before this one are done: go on with 8.75 lb from the opened 12.5 lb pack, then open 2 × 12.5 lb, not on the shelf: 90 % of the last one is left.',
    );
  });
  it('says nothing of a done visit or an empty shelf', () => {
    expect(told(grain({ '12.5': 2.5 }), { doneOn: '2031-05-31' })).toBe('');
    expect(told(grain({}))).toBe('');
  });
});
