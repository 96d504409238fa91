import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { newDose, newVisit } from '../yard/defaults';
import { removeVisit, replaceVisit } from '../yard/edits';
import type { NutrientNeed, Program, ProgramDose, Visit, Yard, ZoneChoice } from '../yard/types';
import { applyPrograms } from './applyPrograms';
import { allProgramVisits } from './programVisits';
import { NO_CAPS, testRule } from './testSeason';

/*
 * The granules of the fixture lay down 0.0024 kg N/m² at the label rate, half of it soluble. The need is 0.0096
 * kg/m² over April to July: 0.0024 a month. All amounts below are worked out by hand from these.
 */
const TURF: ZoneChoice = { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] };
const need: NutrientNeed = {
  id: 'n-1',
  name: 'Lawn',
  zones: TURF,
  speciesId: '',
  season: 'cool-season',
  guideId: '',
  nKgPerM2: 4 * 0.0024,
  split: { kind: 'even', fromMonth: 4, toMonth: 7 },
  hold: null,
};
const dose = (id: string, amount: ProgramDose['amount']): ProgramDose => ({
  id,
  productId: 'p-granules',
  useId: null,
  amount,
  zones: null,
});
const byNeed = (share = 1, maxFactor = 5) => ({ kind: 'need' as const, share, maxFactor });
/** 7 and 21 April, 5 and 19 May, 2, 16 and 30 June, 14 and 28 July: a quarter of the label, 0.0006 each. */
const light: Program = {
  id: 'pg-light',
  name: 'Light',
  from: '2031-04-07',
  to: '2031-07-31',
  pace: { kind: 'every', days: 14 },
  zones: TURF,
  doses: [dose('pd-1', { kind: 'label', rateFactor: 0.25 })],
  tankL: null,
};
/** joins it on 7 April, 5 May, 2 and 30 June, 28 July. */
const heavy: Program = {
  ...light,
  id: 'pg-heavy',
  name: 'Heavy',
  pace: { kind: 'with', programId: 'pg-light', nth: 2, offsetDays: 0 },
  doses: [dose('pd-2', byNeed())],
};
const yardWith = (fields: Partial<Yard>): Yard => {
  const yard = testYard();
  const products = yard.products.map((one) => ({ ...one, limits: { ...one.limits, maxPerDose: null } }));
  return { ...yard, products, caps: NO_CAPS, rules: [], visits: [], needs: [need], ...fields };
};
const ids = () => {
  let count = 0;
  return (prefix: string) => `${prefix}-${++count}`;
};
const own = (id: string, date: string, rateFactor: number, fields: Partial<Visit> = {}): Visit =>
  newVisit(id, {
    name: id,
    date,
    zones: TURF,
    doses: [newDose(`${id}-d`, 'p-granules', { rateFactor })],
    ...fields,
  });
const made = (yard: Yard) => applyPrograms(yard, ids());
/** Shares of the label of the doses of the planned visit on a day; null: there is none. */
const sharesOn = (yard: Yard, date: string): readonly number[] | null =>
  yard.visits.find((visit) => visit.program && visit.date === date)?.doses.map((one) => one.rateFactor) ??
  null;
const codes = (yard: Yard) => allProgramVisits(yard).issues.map((issue) => issue.code);

describe('what doses by need leave to what is there already', () => {
  it('is what the partner lays down by the label', () => {
    const { yard } = made(yardWith({ programs: [light, heavy] }));
    // April: 0.0024 less two of 0.0006 are 0.0012, half the label
    expect(sharesOn(yard, '2031-04-07')).toEqual([0.25, 0.5]);
    // June: 0.0024 less three of 0.0006 are 0.0006 for two visits: an eighth each
    expect(sharesOn(yard, '2031-06-02')).toEqual([0.25, 0.125]);
    expect(sharesOn(yard, '2031-06-16')).toEqual([0.25]);
  });

  it('is what is done and what was made by hand', () => {
    // May: by hand 0.0003; done 0.0006; the partner 0.0012: 0.0003 are left, an eighth of the label
    const visits = [
      own('hand', '2031-05-10', 0.125),
      own('done', '2031-05-01', 0.25, { doneOn: '2031-05-02' }),
    ];
    const { yard } = made(yardWith({ programs: [light, heavy], visits }));
    expect(sharesOn(yard, '2031-05-05')).toEqual([0.25, 0.125]);
    expect(sharesOn(yard, '2031-04-07')).toEqual([0.25, 0.5]);
    expect(made(yard).yard).toBe(yard);
  });

  it('is nothing where the month has all: the dose is left out and it is told, never less than nothing', () => {
    const visits = [own('done', '2031-05-01', 1.6, { doneOn: '2031-05-01' })];
    const yard = yardWith({ programs: [light, heavy], visits });
    expect(sharesOn(made(yard).yard, '2031-05-05')).toEqual([0.25]);
    const met = allProgramVisits(yard).issues.find((issue) => issue.code === 'program-need-met');
    expect(met).toMatchObject({ severity: 'note', place: { programId: 'pg-heavy', path: 'doses[0]' } });
    expect(met?.message).toContain('the need of May,');
    // what May has too much is not taken off June
    expect(sharesOn(made(yard).yard, '2031-06-02')).toEqual([0.25, 0.125]);
  });

  it('is shared by programs in the order of the list', () => {
    const first = { ...light, doses: [dose('pd-1', byNeed(0.75))] };
    const { yard } = made(yardWith({ programs: [first, heavy] }));
    // April: three quarters of 0.0024 over two visits, the rest to the one that joins
    expect(sharesOn(yard, '2031-04-07')).toEqual([0.375, 0.25]);
    const turned = made(yardWith({ programs: [heavy, first] })).yard;
    expect(sharesOn(turned, '2031-04-07')).toEqual([1]);
    expect(sharesOn(turned, '2031-04-21')).toBeNull();
  });

  it('leaves alone a dose that was taken out by hand, and shares its part among the others', () => {
    const { yard } = made(yardWith({ programs: [light, heavy] }));
    const joined = yard.visits.find((visit) => visit.date === '2031-06-02') as Visit;
    const without = made(replaceVisit(yard, { ...joined, doses: joined.doses.slice(0, 1) })).yard;
    expect(sharesOn(without, '2031-06-02')).toEqual([0.25]);
    // 30 June has all of the 0.0006 that June wants beside the partner
    expect(sharesOn(without, '2031-06-30')).toEqual([0.25, 0.25]);
    expect(made(without).yard).toBe(without);
    const gone = made(removeVisit(yard, joined.id)).yard;
    // the partner's 0.0006 of that day are gone too: 0.0024 less two of 0.0006
    expect(sharesOn(gone, '2031-06-30')).toEqual([0.25, 0.5]);
  });
});

describe('a visit moved to another month', () => {
  const alone: Program = { ...light, doses: [dose('pd-1', byNeed())] };

  it('has its share of the month it stands in', () => {
    const { yard } = made(yardWith({ programs: [alone] }));
    expect(sharesOn(yard, '2031-04-21')).toEqual([0.5]);
    const second = yard.visits.find((visit) => visit.date === '2031-04-21') as Visit;
    const next = made(replaceVisit(yard, { ...second, date: '2031-05-12' })).yard;
    // April has one visit now, May three
    expect(sharesOn(next, '2031-04-07')).toEqual([1]);
    expect(sharesOn(next, '2031-05-12')).toEqual([0.333]);
    expect(sharesOn(next, '2031-05-19')).toEqual([0.333]);
    expect(made(next).yard).toBe(next);
  });
});

describe('what lies on one day together keeps the most of one dose', () => {
  const all = (fields: Partial<Yard>) => yardWith({ programs: [light, heavy], ...fields });

  it.each<[string, Partial<Yard>, number]>([
    // 0.0015 less the partner's 0.0006 are 0.0009: 0.375 of the label
    ['the yard’s cap of N', { caps: { ...NO_CAPS, totalNPerDose: 0.0015 } }, 0.375],
    // half of each is soluble: 0.0006 less 0.0003 are a quarter of 0.0012
    ['the yard’s cap of soluble N', { caps: { ...NO_CAPS, solubleNPerDose: 0.0006 } }, 0.25],
    [
      'a rule for N at once',
      {
        rules: [
          testRule({ kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly: false, maxKgPerM2: 0.0012 }),
        ],
      },
      0.25,
    ],
    [
      'a rule for soluble N at once',
      {
        rules: [
          testRule({ kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly: true, maxKgPerM2: 0.00045 }),
        ],
      },
      0.125,
    ],
    // 10 % K2O of 0.012 kg: 0.0012 at the label; 0.00072 less the partner’s 0.0003 are 0.35 of it
    [
      'a rule for K2O at once',
      {
        rules: [
          testRule({ kind: 'cap', nutrient: 'K2O', per: 'dose', isSolubleOnly: false, maxKgPerM2: 0.00072 }),
        ],
      },
      0.35,
    ],
  ])('%s', (_, fields, share) => {
    const yard = all(fields);
    expect(sharesOn(made(yard).yard, '2031-04-07')).toEqual([0.25, share]);
    expect(codes(yard)).toContain('program-need-capped');
  });

  it('the label’s most for one dose, with a visit made by hand on that day', () => {
    const products = yardWith({}).products.map((one) => ({
      ...one,
      limits: { ...one.limits, maxPerDose: { unit: 'kg' as const, value: 0.0075 } },
    }));
    // 0.0075 kg are 0.625 of the label; the partner has 0.25, a visit by hand 0.125
    const yard = all({ products, visits: [own('hand', '2031-04-07', 0.125)] });
    expect(sharesOn(made(yard).yard, '2031-04-07')).toEqual([0.25, 0.25]);
    // no room at all: the dose is left out
    const full = all({ products, visits: [own('hand', '2031-04-07', 0.5)] });
    expect(sharesOn(made(full).yard, '2031-04-07')).toEqual([0.25]);
  });
});
