import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { removeEntry, removeVisit, replaceEntry, replaceVisit } from '../yard/edits';
import { checkProgramShape, checkVisitShape } from '../yard/schemaPlan';
import type { NutrientNeed, Program, ProgramDose, Visit, Yard, ZoneChoice } from '../yard/types';
import { applyPrograms } from './applyPrograms';
import { programDates } from './programDates';
import { programVisits } from './programVisits';

const TURF: ZoneChoice = { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] };
const labelDose = (id: string, productId: string, rateFactor = 1): ProgramDose => ({
  id,
  productId,
  useId: null,
  amount: { kind: 'label', rateFactor },
  zones: null,
});
const liquidProgram: Program = {
  id: 'pg-liquid',
  name: 'Light liquid',
  from: '2031-04-07',
  to: '2031-07-31',
  pace: { kind: 'every', days: 14 },
  zones: TURF,
  doses: [labelDose('pd-1', 'p-liquid')],
  tankL: 15,
};
const granules: Program = {
  ...liquidProgram,
  id: 'pg-granules',
  name: 'Granules',
  pace: { kind: 'with', programId: 'pg-liquid', nth: 4, offsetDays: 0 },
  doses: [labelDose('pd-2', 'p-granules')],
  tankL: null,
};
const yardWith = (...programs: readonly Program[]): Yard => ({ ...testYard(), visits: [], programs });
const ids = () => {
  let count = 0;
  return (prefix: string) => `${prefix}-${++count}`;
};
const apply = (yard: Yard, anew: readonly string[] = []) => applyPrograms(yard, ids(), anew);
const days = (yard: Yard) => yard.visits.map((visit) => visit.date);
const at = (yard: Yard, date: string): Visit => {
  const visit = yard.visits.find((one) => one.date === date);
  if (!visit) throw new Error(`no visit on ${date}`);
  return visit;
};

describe('pairs', () => {
  const pair = (nth: number, offsetDays: number, fields: Partial<Program> = {}): readonly string[] => {
    const guest = {
      ...granules,
      pace: { kind: 'with' as const, programId: 'pg-liquid', nth, offsetDays },
      ...fields,
    };
    return programDates(guest, [liquidProgram, guest]).dates;
  };

  // by hand: 7 April and every 14 days are 7, 21 Apr, 5, 19 May, 2, 16, 30 Jun, 14, 28 Jul
  it('take every nth day of the partner, so many days later, within their own span', () => {
    expect(pair(4, 0)).toEqual(['2031-04-07', '2031-06-02', '2031-07-28']);
    expect(pair(2, 3)).toEqual(['2031-04-10', '2031-05-08', '2031-06-05', '2031-07-03', '2031-07-31']);
    expect(pair(4, 0, { from: '2031-05-10' })).toEqual(['2031-05-19', '2031-07-14']);
    expect(pair(2, 4)).toEqual(['2031-04-11', '2031-05-09', '2031-06-06', '2031-07-04']);
  });

  it('in a ring are an issue at every program of it, and make nothing', () => {
    const ring: Program = {
      ...liquidProgram,
      pace: { kind: 'with', programId: 'pg-granules', nth: 1, offsetDays: 1 },
    };
    const programs = [ring, granules];
    for (const program of programs)
      expect(programDates(program, programs)).toMatchObject({
        dates: [],
        issues: [{ code: 'program-circular', place: { programId: program.id } }],
      });
    const self: Program = { ...ring, pace: { kind: 'with', programId: ring.id, nth: 1, offsetDays: 1 } };
    expect(programDates(self, [self]).issues[0]?.code).toBe('program-circular');
    expect(apply(yardWith(...programs)).yard.visits).toEqual([]);
  });

  it('with a partner that is gone are an issue', () => {
    expect(programDates(granules, [granules]).issues[0]?.code).toBe('program-partner-missing');
  });

  it('on the same day are doses of one visit', () => {
    const { yard } = apply(yardWith(liquidProgram, granules));
    expect(yard.visits).toHaveLength(9);
    expect(at(yard, '2031-04-07')).toMatchObject({
      name: 'Light liquid 1 + Granules',
      tankL: 15,
      zones: TURF,
      doses: [
        { productId: 'p-liquid', rateFactor: 1, zones: null },
        { productId: 'p-granules', rateFactor: 1, zones: null },
      ],
    });
    expect(at(yard, '2031-04-21').doses.map((dose) => dose.productId)).toEqual(['p-liquid']);
  });

  it('join the visit of the partner’s partner where all are on one day', () => {
    const third: Program = {
      ...granules,
      id: 'pg-third',
      name: 'Third',
      pace: { kind: 'with', programId: 'pg-granules', nth: 2, offsetDays: 0 },
      zones: { ...TURF, exclude: ['z-strip'] },
      doses: [labelDose('pd-3', 'p-liquid', 0.5)],
    };
    const { yard } = apply(yardWith(third, granules, liquidProgram));
    expect(yard.visits).toHaveLength(9);
    expect(at(yard, '2031-07-28').doses.map((dose) => [dose.rateFactor, dose.zones?.exclude])).toEqual([
      [1, undefined],
      [0.5, ['z-strip']],
      [1, undefined],
    ]);
    expect(at(yard, '2031-06-02').doses).toHaveLength(2);
  });
});

describe('what cannot be meant', () => {
  it.each([
    [{ to: '2031-04-01' }, 'program-days'],
    [{ from: '2031-02-30' }, 'program-days'],
    [{ pace: { kind: 'every', days: 0 } }, 'program-interval'],
    [{ pace: { kind: 'every', days: 2.5 } }, 'program-interval'],
    [{ pace: { kind: 'every', days: 1 }, to: '2033-04-07' }, 'program-too-many'],
  ] as const)('%o is told and makes nothing', (fields, code) => {
    const program: Program = { ...liquidProgram, ...fields };
    const made = programVisits(yardWith(program), program);
    expect(made.visits).toEqual([]);
    expect(made.issues[0]).toMatchObject({ code, severity: 'error', place: { programId: program.id } });
  });

  it('a dose of a product that is gone is told once and left out', () => {
    const program = { ...liquidProgram, doses: [...liquidProgram.doses, labelDose('pd-9', 'p-gone')] };
    const made = programVisits(yardWith(program), program);
    expect(made.issues.map((issue) => issue.code)).toEqual(['program-product-missing']);
    expect(made.visits[0]?.doses).toHaveLength(1);
  });
});

describe('making visits again', () => {
  const made = apply(yardWith(liquidProgram)).yard;
  const second = at(made, '2031-04-21');
  const change = (yard: Yard, visit: Visit, fields: Partial<Visit>) =>
    replaceVisit(yard, { ...visit, ...fields });
  const slower = (yard: Yard): Yard =>
    replaceEntry(yard, 'programs', { ...liquidProgram, pace: { kind: 'every', days: 21 } });

  it('changes nothing when nothing changed', () => {
    const again = apply(made);
    expect(again.yard).toBe(made);
    expect(again).toMatchObject({ added: 0, renewed: 0, removed: 0, kept: 0 });
  });

  it('puts untouched visits in line with a changed program', () => {
    const { yard, added, removed } = apply(slower(made));
    // by hand, 21 days: 7, 28 Apr, 19 May, 9, 30 Jun, 21 Jul
    expect(days(yard).toSorted()).toEqual([
      '2031-04-07',
      '2031-04-28',
      '2031-05-19',
      '2031-06-09',
      '2031-06-30',
      '2031-07-21',
    ]);
    // 7 Apr, 19 May and 30 Jun are days of both
    expect([added, removed]).toEqual([3, 6]);
    expect(at(yard, '2031-05-19').id).toBe(at(made, '2031-05-19').id);
  });

  it.each<[string, Partial<Visit>]>([
    ['done', { doneOn: '2031-04-22' }],
    ['renamed', { name: 'After the party' }],
    ['given a note', { note: 'Windy corner' }],
    ['given other ground', { zones: { ...TURF, exclude: ['z-strip'] } }],
    ['dosed otherwise', { doses: second.doses.map((dose) => ({ ...dose, rateFactor: 0.5 })) }],
    ['moved', { date: '2031-04-23' }],
  ])('leaves a visit that was %s, though its day is no longer asked for', (_, fields) => {
    const touched = change(made, second, fields);
    const { yard, kept } = apply(slower(touched));
    expect(yard.visits.find((visit) => visit.id === second.id)).toEqual({ ...second, ...fields });
    expect(kept).toBeGreaterThan(0);
    expect(apply(yard).yard).toBe(yard);
  });

  it('gives a visit that was only moved the new content, on the day it was moved to', () => {
    const moved = change(made, second, { date: '2031-04-24' });
    const stronger = replaceEntry(moved, 'programs', {
      ...liquidProgram,
      doses: [labelDose('pd-1', 'p-liquid', 0.75)],
    });
    const { yard } = apply(stronger);
    const now = yard.visits.find((visit) => visit.id === second.id);
    expect(now).toMatchObject({ date: '2031-04-24', doses: [{ id: second.doses[0]?.id, rateFactor: 0.75 }] });
    expect(yard.visits).toHaveLength(9);
  });

  it('does not bring back a visit that was removed, until they are made anew', () => {
    const without = removeVisit(made, second.id);
    expect(without.programs[0]?.skips).toEqual(['2031-04-21']);
    expect(apply(without).yard).toBe(without);
    const anew = apply(without, ['pg-liquid']).yard;
    expect(days(anew)).toContain('2031-04-21');
    expect(anew.programs[0]?.skips).toEqual([]);
  });

  it('anew forgets moves and edits, but never what is done', () => {
    const done = change(made, at(made, '2031-05-05'), { doneOn: '2031-05-06', note: 'Rain at noon' });
    const touched = change(change(done, second, { date: '2031-04-25' }), at(made, '2031-05-19'), {
      name: 'Mine',
    });
    const { yard } = apply(touched, ['pg-liquid']);
    expect(yard.visits.find((visit) => visit.id === second.id)).toEqual(second);
    expect(at(yard, '2031-05-19').name).toBe('Light liquid 4');
    expect(at(yard, '2031-05-05')).toMatchObject({ doneOn: '2031-05-06', note: 'Rain at noon' });
  });

  it('leaves the visits of a program with a fault alone', () => {
    const broken = replaceEntry(made, 'programs', { ...liquidProgram, to: '2030-01-01' });
    expect(apply(broken).yard.visits).toBe(broken.visits);
  });

  it('leaves visits made by hand, and those of a program that is gone', () => {
    const own: Visit = { ...second, id: 'v-own', program: null, date: '2031-04-21' };
    const yard = { ...made, visits: [...made.visits, own] };
    expect(apply(yard).yard).toBe(yard);
    const gone = removeEntry(yard, 'programs', 'pg-liquid');
    expect(apply(gone).yard).toBe(gone);
    expect(gone.visits).toHaveLength(10);
  });

  it('holds through the file form', () => {
    const { program } = second;
    const read = checkVisitShape(JSON.parse(JSON.stringify(second)));
    expect(read).toMatchObject({ ok: true, value: { program } });
    const skipping = { ...liquidProgram, skips: ['2031-04-21'] };
    expect(checkProgramShape(JSON.parse(JSON.stringify(skipping)))).toEqual({ ok: true, value: skipping });
  });
});

describe('amounts by need', () => {
  const LB = 0.45359237 / 92.90304;
  const need: NutrientNeed = {
    id: 'n-1',
    name: 'Lawn',
    zones: TURF,
    speciesId: '',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: 2 * LB,
    split: { kind: 'even', fromMonth: 4, toMonth: 7 },
    hold: null,
  };
  const byNeed = (maxFactor: number, fields: Partial<Program> = {}): Program => ({
    ...liquidProgram,
    doses: [{ ...labelDose('pd-1', 'p-granules'), amount: { kind: 'need', share: 1, maxFactor } }],
    ...fields,
  });
  const factors = (yard: Yard) =>
    Object.fromEntries(
      programVisits(yard, yard.programs[0] as Program).visits.map((visit) => [
        visit.date,
        visit.doses[0]?.rateFactor,
      ]),
    );

  // by hand: 2 lb over 4 months are 0.5 lb a month; the label lays 0.0024 kg N/m² (0.4916 lb): two visits in
  // April take 0.25 / 0.4916 = 0.5085 of it each, three in June 0.1667 / 0.4916 = 0.3390
  it('share the need of the month among its visits', () => {
    const yard = { ...yardWith(byNeed(2)), needs: [need] };
    const got = factors(yard);
    expect(got['2031-04-07']).toBeCloseTo((0.25 * LB) / 0.0024, 2);
    expect(got['2031-06-16']).toBeCloseTo((0.5 * LB) / 3 / 0.0024, 2);
    const sum = Object.values(got).reduce((total: number, one) => total + (one ?? 0) * 0.0024, 0);
    expect(sum / LB).toBeLessThanOrEqual(2);
    expect(sum / LB).toBeGreaterThan(1.98);
  });

  it('stop at the most of the label told, at the label’s own most for one dose and at the caps', () => {
    const rich = { ...need, nKgPerM2: 20 * LB };
    const yard = { ...yardWith(byNeed(1.25)), needs: [rich] };
    expect(factors(yard)['2031-04-07']).toBe(1.25);
    const made = programVisits(yard, yard.programs[0] as Program);
    expect(made.issues.map((issue) => issue.code)).toEqual(['program-need-capped']);
    // by hand: 0.0024 kg N at 20 % are 0.012 kg of product; at most 0.009 kg are 0.75 of it
    const products = yard.products.map((one) => ({
      ...one,
      limits: { ...one.limits, maxPerDose: { unit: 'kg' as const, value: 0.009 } },
    }));
    expect(factors({ ...yard, products })['2031-04-07']).toBeCloseTo(0.75, 3);
    // half of its N is soluble: a cap of 0.0006 soluble stops it at 0.0012 of 0.0024
    const caps = { ...yard.caps, solubleNPerDose: 0.0006 };
    expect(factors({ ...yard, caps })['2031-04-07']).toBeCloseTo(0.5, 3);
  });

  it('leave out a day on which nothing is wanted', () => {
    const late = { ...need, split: { kind: 'even' as const, fromMonth: 6, toMonth: 7 } };
    expect(Object.keys(factors({ ...yardWith(byNeed(2)), needs: [late] }))[0]).toBe('2031-06-02');
  });

  it('keep the hold before the spring flush', () => {
    // by hand: none within 1 Apr to 15 May: the first dose goes out on 19 May
    const held = { ...need, hold: { from: '04-01', to: '05-15', maxNKgPerM2: 0 } };
    expect(Object.keys(factors({ ...yardWith(byNeed(3)), needs: [held] }))[0]).toBe('2031-05-19');
  });

  // by hand: the hold lets nothing down from 1 Apr to 20 May; the year's 2 lb go to 11 days of May, June and July.
  // The visits of May, on the 5th and the 19th, lie in the hold, so that what is left of May has none of its own
  it('carry what a partly held month wants to the first visit after the hold', () => {
    const held = { ...need, hold: { from: '04-01', to: '05-20', maxNKgPerM2: 0 } };
    const yard = { ...yardWith(byNeed(5)), needs: [held] };
    const got = factors(yard);
    expect(Object.keys(got)[0]).toBe('2031-06-02');
    const laid = Object.values(got).reduce((sum: number, factor) => sum + (factor ?? 0) * 0.0024, 0);
    expect(laid / LB).toBeCloseTo(2, 2);
    expect(programVisits(yard, yard.programs[0] as Program).issues).toEqual([]);
    // the carried rest of May lies on the first visit of June alone
    expect((got['2031-06-02'] ?? 0) > (got['2031-06-16'] ?? 0)).toBe(true);
    expect(got['2031-06-16']).toBe(got['2031-06-30']);
  });

  it('say so where no visit comes after the hold', () => {
    const held = { ...need, hold: { from: '04-01', to: '05-20', maxNKgPerM2: 0 } };
    const yard = { ...yardWith(byNeed(5, { to: '2031-05-25' })), needs: [held] };
    const made = programVisits(yard, yard.programs[0] as Program);
    expect(made.visits).toEqual([]);
    expect(made.issues.map((issue) => [issue.code, issue.severity])).toEqual([['program-need-held', 'note']]);
    // a visit after the hold takes it, as far as the caps of one dose allow
    const later = { ...yardWith(byNeed(5, { to: '2031-06-02' })), needs: [held] };
    expect(programVisits(later, later.programs[0] as Program).issues.map((issue) => issue.code)).toEqual([
      'program-need-capped',
    ]);
  });

  // by hand, every 56 days: 7 Apr, 2 Jun, 28 Jul, 22 Sep. May wants half a pound and has no visit; August wants none
  it('say what months without a visit want, once', () => {
    const sparse = byNeed(5, { to: '2031-09-30', pace: { kind: 'every', days: 56 } });
    const yard = {
      ...yardWith(sparse),
      needs: [need],
      settings: { ...testYard().settings, units: 'us' as const },
    };
    const { issues } = programVisits(yard, sparse);
    expect(issues.map((issue) => [issue.code, issue.severity])).toEqual([['program-need-gap', 'note']]);
    expect(issues[0]?.message.replaceAll('\u00a0', ' ')).toContain('0.5 lb per 1,000 sq ft');
  });

  it('go by the zone that wants least, and say so', () => {
    const strip = {
      ...need,
      id: 'n-2',
      nKgPerM2: LB,
      zones: { classes: [], include: ['z-strip'], exclude: [] },
    };
    const yard = { ...yardWith(byNeed(2)), needs: [strip, need] };
    expect(factors(yard)['2031-04-07']).toBeCloseTo((0.125 * LB) / 0.0024, 3);
    const made = programVisits(yard, yard.programs[0] as Program);
    expect(made.issues.map((issue) => issue.code)).toEqual(['program-need-differs']);
  });

  it('need a need, the climate for growth, and nitrogen in the product', () => {
    const codes = (yard: Yard) =>
      programVisits(yard, yard.programs[0] as Program).issues.map((issue) => issue.code);
    expect(codes(yardWith(byNeed(2)))).toEqual(['program-no-need']);
    expect(codes({ ...yardWith(byNeed(2)), needs: [{ ...need, split: { kind: 'growth' } }] })).toEqual([
      'program-no-climate',
    ]);
    const products = testYard().products.map((one) => ({
      ...one,
      rate: { basis: 'mass-per-area' as const, rateKgPerM2: 0.01 },
      analysis: { ...one.analysis, nPct: 0 },
    }));
    expect(codes({ ...yardWith(byNeed(2)), needs: [need], products })).toEqual(['program-no-nitrogen']);
  });
});
