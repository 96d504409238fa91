import { describe, expect, it } from 'vitest';
import { testVisit } from '../plan/testDose';
import { visitChoices } from './visitWords';

const visits = [
  testVisit({ id: 'late', name: 'Late', date: '2031-09-02' }),
  testVisit({ id: 'open', name: 'Some time', date: null }),
  testVisit({ id: 'done', name: 'Feed', date: '2031-04-05', doneOn: '2031-04-20' }),
  testVisit({ id: 'iron', name: ' ', date: '2031-04-07' }),
  testVisit({ id: 'same', name: 'Same day', date: '2031-04-07' }),
];
const words = (today: string) =>
  visitChoices(visits, today).map((one) => one.words.replaceAll('\u00a0', ' '));

describe('visits to choose from', () => {
  it('stand by day, what is done by the day it was done, without a day last', () => {
    expect(words('2031-01-01')).toEqual([
      'Visit without a name, Mon, Apr 7',
      'Same day, Mon, Apr 7',
      'Feed, done Sun, Apr 20',
      'Late, Tue, Sep 2',
      'Some time',
    ]);
  });
  it('have their year where it is not this one', () => {
    expect(words('2030-12-31')[3]).toBe('Late, Tue, Sep 2, 2031');
  });
});
