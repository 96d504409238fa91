import { expect, it } from 'vitest';
import { programFaults } from './programFaults';
import { testDay, testFeed, testRule, testSeason } from './testSeason';

it('names every visit over a rule of the year, not only the one that passes it', () => {
  const program = (date: string) => ({ program: { id: 'pg', date } });
  const days = ['2026-04-01', '2026-05-01', '2026-06-01', '2026-07-01', '2027-04-01'];
  const visits = days.map((date) => testDay(date, date, ['a'], program(date)));
  const hand = testDay('hand', '2026-06-15', ['a']);
  // a pound a visit, two pounds a year: the third passes it, the one by hand and the fourth lie over it
  const rule = testRule({
    kind: 'cap',
    nutrient: 'N',
    per: 'year',
    isSolubleOnly: false,
    maxKgPerM2: (2 * 0.45359237) / 92.90304,
  });
  const { yard, entries, issues } = testSeason([testFeed('a', [10, 0, 0])], [...visits, hand], {
    rules: [rule],
  });
  const found = programFaults(yard, entries, (id) => issues.filter((issue) => issue.place.visitId === id));
  expect(found.map(({ visit }) => visit.id)).toEqual(['2026-06-01', '2026-07-01']);
  expect(found[1]?.message).toBe('Rule “Town rule”: the year is over it before this visit.');
});
