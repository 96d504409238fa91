import { describe, expect, it } from 'vitest';
import { doneDay, testDay, testFeed, testSeason } from '../season/testSeason';
import { KG_PER_LB } from '../units/factors';
import { doneRows, notYetWords } from './doneWords';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the day of a done visit', () => {
  it('is today or before; a day to come is refused in words', () => {
    expect(notYetWords('2026-05-14', '2026-05-14')).toBe('');
    expect(notYetWords('2025-11-01', '2026-05-14')).toBe('');
    expect(plain(notYetWords('2026-05-15', '2026-05-14'))).toBe(
      'Fri, May 15, 2026, is not yet: mark the visit done on that day or after, or type the day it was done.',
    );
  });
});

describe('a done visit in words', () => {
  // 1 lb of N per 1,000 sq ft of a 20 % feed is 5 lb per 1,000 sq ft; 10 % of it is iron
  const feed = testFeed('feed', [20, 5, 10], 1, {
    analysis: { nPct: 20, p2o5Pct: 5, k2oPct: 10, slowNPctOfN: null, elementsPct: { Fe: 10 } },
  });
  const day = testDay('day', '2026-05-04', ['feed']);
  const rowsOf = (visit: typeof day) => {
    const { figures, yard } = testSeason([feed], [visit], {}, { front: 2000 });
    const [own] = figures;
    if (!own) throw new Error('no visit');
    return doneRows(own, yard.products, 'us');
  };

  it('has what was really used beside the plan, and what that lays down', () => {
    const [row, ...others] = rowsOf(doneDay(day, { unit: 'kg', value: 12 * KG_PER_LB }));
    expect(others).toEqual([]);
    expect([row?.planned, row?.used, row?.share].map((text) => plain(text ?? ''))).toEqual([
      '10 lb',
      '12 lb',
      '120 % of the plan',
    ]);
    expect(row?.laid.map(plain)).toEqual([
      'N 1.2',
      'P₂O₅ 0.3',
      'K₂O 0.6',
      'Iron (Fe) 0.6 lb per 1,000 sq ft',
    ]);
    expect(row?.laidByPlan.map(plain)[0]).toBe('N 1');
  });
  it('says nothing of a share where the plan was kept, and none where nothing was put down', () => {
    expect(rowsOf(doneDay(day))[0]).toMatchObject({ share: '' });
    expect(rowsOf(doneDay(day, { unit: 'kg', value: 0 }))[0]).toMatchObject({ used: 'none', laid: [] });
  });
  it('has no rows before the visit is done', () => expect(rowsOf(day)).toEqual([]));
});
