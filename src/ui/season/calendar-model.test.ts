import { describe, expect, it } from 'vitest';
import { testYard } from '../../../tests/fixtures/testYard';
import { newDose, newVisit } from '../../yard/defaults';
import type { Visit, Yard } from '../../yard/types';
import { nextVisit, shiftWords, visitsByDay, weeksToShow, yearToBegin } from './calendar-model';

const TURF = { classes: ['turf-low-cut' as const, 'turf-regular' as const], include: [], exclude: [] };
const on = (id: string, date: string, fields: Partial<Visit> = {}): Visit =>
  newVisit(id, { name: id, date, zones: TURF, doses: [newDose(`${id}-d`, 'p-liquid')], ...fields });
const season: Yard = {
  ...testYard(),
  visits: [on('first', '2031-04-07'), on('second', '2031-05-05'), on('third', '2031-06-02')],
};

describe('the calendar', () => {
  it('shows visits on the day they were done, else planned, or are held over', () => {
    const done = {
      ...season,
      visits: [on('done', '2031-04-07', { doneOn: '2031-04-09' }), on('held', '2031-05-05')],
    };
    const days = visitsByDay(done.visits, { visitId: 'held', date: '2031-05-06' });
    expect([...days.keys()]).toEqual(['2031-04-09', '2031-05-06']);
  });

  it('shows three weeks before the first visit to three after the last, or the whole year', () => {
    const weeks = weeksToShow(2031, 1, ['2031-04-07', '2031-06-02'], false);
    // Mondays by hand: 7 April 2031 less 21 days is 17 March; 2 June and 21 days is 23 June
    expect([weeks[0]?.[0], weeks.at(-1)?.[0]]).toEqual(['2031-03-17', '2031-06-23']);
    expect(weeksToShow(2031, 1, ['2031-04-07'], true)).toHaveLength(53);
    expect(weeksToShow(2031, 1, [], false)).toHaveLength(53);
    expect(weeksToShow(2031, 7, [], false)[0]?.[0]).toBe('2030-12-29');
  });

  it('begins with the year of the next planned visit, else this one', () => {
    expect(yearToBegin(season, '2030-11-25')).toBe(2031);
    expect(yearToBegin(season, '2031-04-08')).toBe(2031);
    expect(yearToBegin(season, '2033-01-01')).toBe(2031);
    expect(yearToBegin({ ...season, visits: [] }, '2033-01-01')).toBe(2033);
    expect(yearToBegin({ ...season, visits: [] }, '2033-11-25')).toBe(2034);
    expect(nextVisit(season, '2031-04-08')?.id).toBe('second');
    expect(nextVisit(season, '2031-06-03')).toBeNull();
    const both = {
      ...season,
      visits: [...season.visits, on('past', '2030-10-10', { doneOn: '2030-10-11' })],
    };
    expect(yearToBegin(both, '2030-11-25')).toBe(2031);
  });

  it('tells a shift in words', () => {
    expect(shiftWords('2031-05-05', '2031-05-06')).toBe(', a day later');
    expect(shiftWords('2031-05-05', '2031-04-28')).toBe(', a week earlier');
    expect(shiftWords('2031-05-05', '2031-05-19')).toBe(', 2 weeks later');
    expect(shiftWords('2031-05-05', '2031-05-05')).toBe('');
  });
});
