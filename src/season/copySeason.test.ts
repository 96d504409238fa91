import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { newDose, newVisit } from '../yard/defaults';
import { removeVisit, replaceVisit } from '../yard/edits';
import type { Program, Visit, Yard } from '../yard/types';
import { applyPrograms } from './applyPrograms';
import { copySeason, type SeasonCopy, weeksBetweenYears } from './copySeason';

const ids = () => {
  let count = 0;
  return (prefix: string) => `new-${prefix}-${++count}`;
};
const program: Program = {
  id: 'pg-1',
  name: 'Liquid 2027',
  from: '2027-04-05',
  to: '2027-06-30',
  pace: { kind: 'every', days: 14 },
  zones: { classes: ['turf-regular'], include: [], exclude: [] },
  doses: [
    { id: 'pd-1', productId: 'p-liquid', useId: null, amount: { kind: 'label', rateFactor: 1 }, zones: null },
  ],
  tankL: null,
};
const guest: Program = {
  ...program,
  id: 'pg-2',
  name: 'Granules',
  pace: { kind: 'with', programId: 'pg-1', nth: 2, offsetDays: 3 },
  doses: [{ ...program.doses[0], id: 'pd-2', productId: 'p-granules' } as Program['doses'][number]],
};
const own: Visit = newVisit('v-own', {
  name: 'Seed',
  date: '2027-09-06',
  doneOn: '2027-09-08',
  doses: [newDose('d-own', 'p-granules', { actual: { unit: 'kg', value: 3 }, taken: { 'pack-1': 0.3 } })],
});
const made = applyPrograms({ ...testYard(), visits: [own], programs: [program, guest] }, ids()).yard;
const weeks = (count: number): SeasonCopy => ({
  fromYear: 2027,
  toYear: 2028,
  shift: { kind: 'weeks', weeks: count },
  visits: 'all',
  withPrograms: true,
});
const copied = (yard: Yard, copy: SeasonCopy) => {
  const next = copySeason(yard, copy, ids());
  return {
    yard: next,
    visits: next.visits.slice(yard.visits.length),
    programs: next.programs.slice(yard.programs.length),
  };
};

it('the weeks from one year to the next are 52, over five years 261', () => {
  // by hand: 365.2425 / 7 = 52.18, five years 260.89
  expect([weeksBetweenYears(2027, 2028), weeksBetweenYears(2027, 2032)]).toEqual([52, 261]);
});

describe('a year copied by whole weeks', () => {
  const { yard, visits, programs } = copied(made, weeks(52));

  // 5 April 2027 and 364 days: 3 April 2028 (2028 has a leap day), both Mondays
  it('keeps the day of the week', () => {
    expect(programs.map((one) => [one.name, one.from, one.to])).toEqual([
      ['Liquid 2028', '2028-04-03', '2028-06-28'],
      ['Granules', '2028-04-03', '2028-06-28'],
    ]);
    expect(visits.map((visit) => visit.date).toSorted()[0]).toBe('2028-04-03');
    expect(visits).toHaveLength(made.visits.length);
  });

  it('makes new plans of what was done: on the day it was done, nothing used yet', () => {
    const seed = visits.find((visit) => visit.name === 'Seed');
    expect(seed).toMatchObject({
      date: '2028-09-06',
      doneOn: null,
      program: null,
      doses: [{ actual: null, taken: null }],
    });
    expect(seed?.doses[0]?.id).not.toBe('d-own');
  });

  it('pairs the copies, and making their visits changes nothing', () => {
    expect(programs[1]?.pace).toMatchObject({ kind: 'with', programId: programs[0]?.id });
    expect(applyPrograms(yard, ids()).yard).toBe(yard);
  });

  it('leaves the old year as it was', () => {
    expect(yard.visits.slice(0, made.visits.length)).toEqual(made.visits);
    expect(yard.programs.slice(0, 2)).toEqual(made.programs);
  });

  it('53 weeks are a week later', () => {
    expect(copied(made, weeks(53)).programs[0]?.from).toBe('2028-04-10');
  });
});

describe('days near the ends of a year', () => {
  // by hand: 1 January and 364 days are 31 December of the same year (30 December of a leap year)
  it.each([
    ['2027-01-01', 52, '2028-01-07'],
    ['2028-01-01', 52, '2029-01-06'],
    ['2028-01-02', 52, '2029-01-07'],
    ['2027-01-02', 52, '2028-01-01'],
    ['2027-12-31', 52, '2028-12-29'],
    // 371 days on from 30 December lie in the year after the one copied to: a week less
    ['2027-12-30', 53, '2028-12-28'],
  ])('%s goes %i weeks on to %s', (date, count, next) => {
    const copy = {
      ...weeks(count),
      fromYear: Number(date.slice(0, 4)),
      toYear: Number(date.slice(0, 4)) + 1,
    };
    const { visits } = copied({ ...testYard(), visits: [newVisit('v', { date })] }, copy);
    expect(visits.map((visit) => visit.date)).toEqual([next]);
  });

  it('a program that begins on 1 January moves as a whole, its visits with it', () => {
    const winter = { ...program, from: '2027-01-01', to: '2027-03-31' };
    const before = applyPrograms({ ...testYard(), visits: [], programs: [winter] }, ids()).yard;
    const moved = before.visits[1] as Visit;
    const touched = replaceVisit(before, { ...moved, date: '2027-01-18' });
    const { yard, visits, programs } = copied(touched, weeks(52));
    expect(programs[0]).toMatchObject({ from: '2028-01-07', to: '2028-04-05' });
    expect(visits).toHaveLength(before.visits.length);
    expect(visits.every((visit) => visit.program?.id === programs[0]?.id)).toBe(true);
    // moved by hand three days on, it stays so
    expect(visits.find((visit) => visit.date === '2028-01-24')?.program?.date).toBe('2028-01-21');
    expect(applyPrograms(yard, ids()).yard).toBe(yard);
  });

  it('a program that runs over the new year keeps its length', () => {
    const winter = { ...program, from: '2027-11-01', to: '2028-02-28' };
    const { programs } = copied({ ...testYard(), visits: [], programs: [winter] }, weeks(52));
    expect(programs[0]).toMatchObject({ from: '2028-10-30', to: '2029-02-26' });
  });
});

describe('a year copied by the same days', () => {
  const sameDay: SeasonCopy = { ...weeks(0), shift: { kind: 'same-day' } };

  it('keeps day and month; a leap day gives the 28th', () => {
    expect(copied(made, sameDay).programs[0]).toMatchObject({ from: '2028-04-05', to: '2028-06-30' });
    const leap = { ...testYard(), visits: [newVisit('v-leap', { date: '2028-02-29' })] };
    const next = copied(leap, { ...sameDay, fromYear: 2028, toYear: 2029 });
    expect(next.visits.map((visit) => visit.date)).toEqual(['2029-02-28']);
  });

  it('keeps visits on the days of the copied rule over a leap day', () => {
    const early = { ...program, from: '2027-02-15', to: '2027-03-31' };
    const before = applyPrograms({ ...testYard(), visits: [], programs: [early] }, ids()).yard;
    const { yard, visits } = copied(before, sameDay);
    // by hand, 14 days from 15 February 2028: 29 February, 14 and 28 March
    expect(visits.map((visit) => visit.date)).toEqual([
      '2028-02-15',
      '2028-02-29',
      '2028-03-14',
      '2028-03-28',
    ]);
    expect(applyPrograms(yard, ids()).yard).toBe(yard);
  });
});

it('moves, edits and removals by hand are copied with their programs', () => {
  const [, first, second] = made.visits as [Visit, Visit, Visit];
  const touched = removeVisit(replaceVisit(made, { ...first, date: '2027-04-07' }), second.id);
  const { yard, visits } = copied(touched, weeks(52));
  expect(visits.find((visit) => visit.name === first.name.replace('2027', '2028'))?.date).toBe('2028-04-05');
  expect(applyPrograms(yard, ids()).yard).toBe(yard);
});

it('without programs the copies are made by hand; only what was done where that is wanted', () => {
  const plain = copied(made, { ...weeks(52), withPrograms: false });
  expect(plain.programs).toEqual([]);
  expect(plain.visits.every((visit) => visit.program === null)).toBe(true);
  expect(
    copied(made, { ...weeks(52), visits: 'done', withPrograms: false }).visits.map((one) => one.name),
  ).toEqual(['Seed']);
  const nothing = { ...weeks(52), visits: 'none' as const, withPrograms: false };
  expect(copySeason(made, nothing, ids())).toBe(made);
});
