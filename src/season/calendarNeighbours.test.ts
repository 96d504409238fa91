import { expect, it } from 'vitest';
import { neighbourWords } from '../words/seasonWords';
import { productNeighbours } from './calendarNeighbours';
import { testDay, testFeed, testSeason } from './testSeason';

const only = (zoneId: string) => ({ classes: [], include: [zoneId], exclude: [] });

it('tells the visits before and after that put the same product on the same ground', () => {
  const visits = [
    testDay('far', '2026-01-10', ['a']),
    testDay('early', '2026-04-05', ['a'], { zones: only('front') }),
    testDay('other', '2026-04-06', ['b']),
    testDay('back', '2026-04-06', ['a'], { zones: only('back') }),
    testDay('moved', '2026-05-20', ['a'], { zones: only('front') }),
    testDay('late', '2026-05-01', ['a'], { date: '2026-04-29', doneOn: '2026-04-30' }),
  ];
  const { yard } = testSeason([testFeed('a', [10, 0, 0]), testFeed('b', [10, 0, 0])], visits);
  const moved = visits[4];
  if (!moved) throw new Error('no visit');
  // by hand: 5 to 7 April are 2 days, 7 to 30 April 23
  const near = productNeighbours(yard, moved, '2026-04-07');
  expect(near).toMatchObject([
    {
      productId: 'a',
      before: { visit: { id: 'early' }, days: 2 },
      after: { visit: { id: 'late' }, days: 23 },
    },
  ]);
  expect(near.map((one) => neighbourWords(yard, one))).toEqual([
    'Feed 10-0-0 goes on the same ground 2 days before (early) and 23 days after (late).',
  ]);
  expect(neighbourWords(yard, { productId: 'a', before: { visit: moved, days: 0 }, after: null })).toBe(
    'Feed 10-0-0 goes on the same ground the same day (moved).',
  );
  expect(productNeighbours(yard, moved, '2027-04-07')).toEqual([]);
});
