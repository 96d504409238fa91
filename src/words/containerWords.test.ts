import { describe, expect, it } from 'vitest';
import { testProduct } from '../plan/testDose';
import type { ContainerCount } from '../plan/types';
import { changeWords, countWords, lastWords } from './containerWords';

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
    expect(lastWords(count({}))).toBe('the last one stays 44\u00a0% full');
    expect(lastWords(count({ open: 1, lastLeft: 0.6875 }))).toBe('it stays 69\u00a0% full');
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
