import { describe, expect, it } from 'vitest';
import { doneDay, testDay, testFeed, testSeason } from '../season/testSeason';
import { KG_PER_LB } from '../units/factors';
import { doneBlocks } from './doneBlocks';

// a 20 % feed at 1 lb of N per 1,000 sq ft is 5 lb per 1,000 sq ft, 10 lb on 2,000 sq ft
const feed = testFeed('feed', [20, 0, 0]);
const day = testDay('day', '2026-05-04', ['feed']);
const wordsOf = (visit: typeof day) => {
  const { figures, yard } = testSeason([feed], [visit], {}, { front: 2000 });
  const blocks = figures[0] ? doneBlocks(figures[0], yard.products, 'us') : [];
  return JSON.stringify(blocks).replaceAll('\u00a0', ' ');
};

describe('the sheet of a done visit', () => {
  it('has what was really used beside the plan, with the nutrients of each', () => {
    const words = wordsOf(doneDay(day, { unit: 'kg', value: 12 * KG_PER_LB }, '2026-05-06'));
    expect(words).toContain('done on Wed, May 6, 2026');
    expect(words).toContain(
      '["Feed 20-0-0","10 lb","12 lb, 120 % of the plan","N 1.2 lb per 1,000 sq ft","N 1 lb per 1,000 sq ft"]',
    );
  });
  it('says so where nothing was put down', () => {
    expect(wordsOf(doneDay(day, { unit: 'kg', value: 0 }))).toContain('"none","nothing"');
  });
  it('has nothing of it before it is done', () => expect(wordsOf(day)).toBe('[]'));
});
