import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { PATTERN_WORDS, paceWords } from '../words/seasonWords';
import type { NutrientNeed, Program, Yard } from '../yard/types';
import { applyPrograms } from './applyPrograms';
import { paceAsBefore } from './programDates';
import { programPatterns } from './programPatterns';
import { testRule } from './testSeason';

const ids = () => {
  let count = 0;
  return (prefix: string) => `${prefix}-${++count}`;
};
const bare: Yard = { ...testYard(), visits: [] };
const quick: Yard = {
  ...bare,
  products: bare.products.map((one) => ({ ...one, limits: { ...one.limits, minIntervalDays: null } })),
};

describe('patterns', () => {
  it('are made of the shelf: liquid on low-cut every two weeks, granules on regular every eight', () => {
    const patterns = programPatterns(quick, 2031, ids());
    expect(patterns.map((one) => one.id)).toEqual([
      'liquid-and-granular',
      'liquid-joined',
      'liquid',
      'granular',
    ]);
    const [liquid, granular] = patterns[0]?.programs ?? [];
    expect(liquid).toMatchObject({
      pace: { kind: 'every', days: 14 },
      zones: { classes: ['turf-low-cut'] },
      doses: [{ productId: 'p-liquid' }],
    });
    expect(granular).toMatchObject({
      pace: { kind: 'every', days: 56 },
      zones: { classes: ['turf-regular'] },
      doses: [{ productId: 'p-granules' }],
    });
    expect(patterns[1]?.programs[1]?.pace).toMatchObject({ kind: 'with', nth: 4, offsetDays: 0 });
    for (const { id } of patterns) expect(PATTERN_WORDS[id]).toBeDefined();
  });

  it('keep the least interval of the label, in whole weeks', () => {
    // the labels of the fixture ask for 28 days
    const [, joined] = programPatterns(bare, 2031, ids());
    expect(joined?.programs.map((one) => paceWords(one, joined.programs))).toEqual([
      'every 4 weeks',
      'with every 2nd visit of “Light liquid”',
    ]);
  });

  it('make visits as they are', () => {
    for (const { programs } of programPatterns(quick, 2031, ids())) {
      const made = applyPrograms({ ...quick, programs }, ids());
      expect(made.issues).toEqual([]);
      expect(made.added).toBeGreaterThan(2);
    }
  });

  it('are none without turf, and only what the shelf has', () => {
    expect(programPatterns({ ...bare, zones: [] }, 2031, ids())).toEqual([]);
    const dry = { ...bare, products: bare.products.filter((one) => one.form === 'granular') };
    expect(programPatterns(dry, 2031, ids()).map((one) => one.id)).toEqual(['granular']);
    expect(programPatterns({ ...bare, products: [] }, 2031, ids())).toEqual([]);
  });

  it('begin after the hold of their ground, in the longest stretch that no rule bars', () => {
    const need: NutrientNeed = {
      id: 'n-1',
      name: 'Lawn',
      speciesId: '',
      season: 'cool-season',
      guideId: '',
      nKgPerM2: 0.01,
      split: { kind: 'even', fromMonth: 4, toMonth: 10 },
      zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
      hold: { from: '03-01', to: '05-10', maxNKgPerM2: 0.002 },
    };
    const spanOf = (yard: Yard) => {
      const first = programPatterns(yard, 2031, ids()).find((one) => one.id === 'liquid-joined')?.programs;
      return first?.map(({ from, to }) => `${from} ${to}`);
    };
    expect(spanOf(quick)).toEqual(Array(2).fill('2031-04-01 2031-10-15'));
    const held = { ...quick, needs: [need] };
    expect(spanOf(held)).toEqual(Array(2).fill('2031-05-11 2031-10-15'));
    // by hand: 11 May to 14 Jun are 35 days, 1 Sep to 15 Oct 45
    const summer = testRule({ kind: 'blackout', from: '06-15', to: '08-31', nutrients: ['N'] });
    expect(spanOf({ ...held, rules: [summer] })).toEqual(Array(2).fill('2031-09-01 2031-10-15'));
    expect(spanOf({ ...held, rules: [{ ...summer, isOn: false }] })).toEqual(spanOf(held));
    // of phosphorus, which neither carries
    const noP = testRule({ kind: 'blackout', from: '06-15', to: '08-31', nutrients: ['P2O5'] });
    expect(spanOf({ ...held, rules: [noP] })).toEqual(spanOf(held));
    const always = testRule({ kind: 'blackout', from: '01-01', to: '12-31', nutrients: ['N'] });
    expect(spanOf({ ...held, rules: [always] })).toEqual(spanOf(quick));
  });
});

describe('a change of pace', () => {
  const beat = (id: string, pace: Program['pace']): Program => ({
    id,
    name: id,
    from: '2031-04-01',
    to: '2031-10-15',
    pace,
    zones: { classes: ['turf-regular'], include: [], exclude: [] },
    doses: [],
    tankL: null,
  });

  it('keeps about the rhythm from before', () => {
    const liquid = beat('liquid', { kind: 'every', days: 14 });
    const paired = (days: number) =>
      paceAsBefore(beat('own', { kind: 'every', days }), 'liquid', [
        liquid,
        beat('own', { kind: 'every', days }),
      ]);
    expect(paired(56)).toEqual({ kind: 'with', programId: 'liquid', nth: 4, offsetDays: 0 });
    expect(paired(30)).toMatchObject({ nth: 2 });
    expect(paired(7)).toMatchObject({ nth: 1 });
    // from every 4th visit of it (56 days) to each 2nd of one of 28 days, and back to a pace of its own
    const slow = beat('slow', { kind: 'every', days: 28 });
    const own = beat('own', { kind: 'with', programId: 'liquid', nth: 4, offsetDays: 0 });
    expect(paceAsBefore(own, 'slow', [liquid, slow, own])).toMatchObject({ nth: 2 });
    expect(paceAsBefore(own, null, [liquid, own])).toEqual({ kind: 'every', days: 56 });
    // a ring has no rhythm
    const ring = beat('liquid', { kind: 'with', programId: 'own', nth: 3, offsetDays: 1 });
    expect(paceAsBefore(own, 'liquid', [ring, own])).toMatchObject({ nth: 1 });
    expect(paceAsBefore(own, null, [ring, own])).toEqual({ kind: 'every', days: 14 });
  });
});
