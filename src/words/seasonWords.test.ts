import { describe, expect, it } from 'vitest';
import { testYard, visit } from '../../tests/fixtures/testYard';
import type { Program } from '../yard/types';
import {
  appliedWords,
  choiceWords,
  classesOfVisit,
  daysWords,
  dayWords,
  firstWeekdayOf,
  ordinal,
  paceWords,
  productsWords,
  sayIssues,
} from './seasonWords';

const program: Program = {
  id: 'a',
  name: 'Light liquid',
  from: '2031-04-01',
  to: '2031-09-30',
  pace: { kind: 'every', days: 14 },
  zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
  doses: [],
  tankL: null,
};

describe('words of the season', () => {
  it('days', () => {
    expect(dayWords('2031-05-14', true)).toBe('Wed, May\u00a014, 2031');
    expect(dayWords('soon')).toBe('soon');
    expect([1, 7, 10, 56].map(daysWords)).toEqual(['day', 'week', '10 days', '8 weeks']);
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '101st',
      '111th',
    ]);
    expect([firstWeekdayOf('us'), firstWeekdayOf('metric')]).toEqual([7, 1]);
  });

  it('paces', () => {
    const paired = (nth: number, offsetDays: number) =>
      paceWords({ ...program, id: 'b', pace: { kind: 'with', programId: 'a', nth, offsetDays } }, [program]);
    expect(paceWords(program, [])).toBe('every 2 weeks');
    expect(paired(4, 0)).toBe('with every 4th visit of “Light liquid”');
    expect(paired(1, 1)).toBe('a day after every visit of “Light liquid”');
    expect(paired(2, 3)).toBe('3 days after every 2nd visit of “Light liquid”');
  });

  it('ground and products of a visit', () => {
    const yard = testYard();
    expect(choiceWords(yard, program.zones)).toBe('Low-cut turf, regular turf');
    expect(choiceWords(yard, { classes: [], include: ['z-bed'], exclude: [] })).toBe('Island');
    expect(choiceWords(yard, { ...program.zones, exclude: ['z-strip'] })).toBe(
      'Low-cut turf, regular turf without 1 of the zones',
    );
    expect(choiceWords(yard, { classes: [], include: [], exclude: [] })).toBe('no ground chosen');
    expect(classesOfVisit(yard, visit)).toEqual(['turf-low-cut', 'turf-regular']);
    expect(productsWords(yard, visit)).toBe('Liquid 12-0-6');
  });

  it('what making visits does, and what speaks against a day', () => {
    expect(appliedWords({ added: 2, renewed: 0, removed: 1, kept: 3 })).toBe('2 to add, 1 to take away');
    expect(appliedWords({ added: 0, renewed: 0, removed: 0, kept: 3 })).toBe('nothing to change');
    expect(sayIssues([])).toBe('Nothing speaks against this day.');
    expect(sayIssues([{ code: 'a', severity: 'error', message: 'Too soon.', place: {} }])).toBe(
      'Not right: Too soon.',
    );
  });
});
