import { describe, expect, it } from 'vitest';
import { lbPer1000 } from '../plan/testDose';
import type { Issue, RuleTerms, Yard } from '../yard/types';
import { doneDay, NO_CAPS, testDay, testFeed, testRatedSoil, testRule, testSeason } from './testSeason';

const balanced = testFeed('balanced', [10, 10, 10], 0.5);
const nitrogen = testFeed('nitrogen', [46, 0, 0], 0.5);
const ofRule = (
  terms: RuleTerms,
  days: readonly (readonly [date: string | null, productId: string])[],
  fields: Partial<Yard> = {},
): readonly Issue[] =>
  testSeason(
    [balanced, nitrogen],
    days.map(([date, productId], index) => testDay(`v${index}`, date, [productId])),
    { rules: [testRule(terms)], ...fields },
  ).issues;
const at = (issues: readonly Issue[]) => issues.map(({ code, place }) => [code, place.visitId]);
const noPhosphorus = {
  kind: 'no-phosphorus',
  unlessSoilTest: true,
  testYears: 3,
  unlessNewLawn: true,
} as const;

describe('a rule against phosphorus', () => {
  it('names rule, product, zones, figure and where it was read; nitrogen alone is free', () => {
    const issues = ofRule(noPhosphorus, [
      ['2026-05-01', 'balanced'],
      ['2026-06-01', 'nitrogen'],
    ]);
    expect(at(issues)).toEqual([['rule-no-phosphorus', 'v0']]);
    const [issue] = issues;
    expect(issue).toMatchObject({ severity: 'error', place: { doseId: 'v0-0', ruleId: 'rule' } });
    for (const words of [
      '“Town rule”',
      'Front, Back',
      '0.5\u00a0lb',
      'town code',
      'Mon, Jan\u00a05, 2026',
      'check the local code',
    ])
      expect(issue?.message).toContain(words);
  });
  it('gives way to a soil test that shows a need within its years, sampled by then', () => {
    const withTest = (date: string | null, level: 'low' | 'high', day = '2026-05-01') =>
      ofRule(noPhosphorus, [[day, 'balanced']], { soilTests: [testRatedSoil(date, level)] }).length;
    expect(withTest('2024-04-02', 'low')).toBe(0);
    expect(withTest('2023-05-01', 'low')).toBe(0);
    expect(withTest('2023-04-30', 'low')).toBe(1);
    expect(withTest('2026-05-02', 'low')).toBe(1);
    expect(withTest(null, 'low')).toBe(1);
    expect(withTest('2024-04-02', 'high')).toBe(1);
  });
  it('goes by the newest test of the day', () => {
    const soilTests = [testRatedSoil('2024-04-02', 'low'), testRatedSoil('2026-03-01', 'high')];
    const days = [
      ['2025-05-01', 'balanced'],
      ['2026-05-01', 'balanced'],
    ] as const;
    expect(at(ofRule(noPhosphorus, days, { soilTests }))).toEqual([['rule-no-phosphorus', 'v1']]);
  });
  it('goes by the test that counts for the gate: a newer one that says nothing of phosphorus hides none', () => {
    const begun = { ...testRatedSoil('2026-03-01', undefined), mgPerKg: { K: 80 } };
    const soilTests = [testRatedSoil('2024-04-02', 'low'), begun];
    expect(ofRule(noPhosphorus, [['2026-05-01', 'balanced']], { soilTests })).toEqual([]);
  });
  it('is not set aside by a test sampled after the day, and ages both by one calendar', () => {
    const leap = [testRatedSoil('2024-02-29', 'low')];
    const on = (day: string) =>
      at(ofRule(noPhosphorus, [[day, 'balanced']], { soilTests: leap })).map(([code]) => code);
    expect(on('2024-02-28')).toEqual(['rule-no-phosphorus']);
    // three years from 29 February end on 1 March, where the year has no such day
    expect(on('2027-03-01')).toEqual([]);
    expect(on('2027-03-02')).toEqual(['rule-no-phosphorus']);
  });
  it('gives way to turf of less than a year, zone by zone', () => {
    const { yard } = testSeason([], []);
    const zones = yard.zones.map((zone) =>
      zone.id === 'front' ? { ...zone, plantedOn: '2025-09-01' } : zone,
    );
    const days = [
      ['2026-09-01', 'balanced'],
      ['2026-09-02', 'balanced'],
      ['2025-07-20', 'balanced'],
    ] as const;
    const names = ofRule(noPhosphorus, days, { zones }).map((issue) => issue.message.includes('Front'));
    expect(names).toEqual([false, true, true]);
  });
  it('is silent when off', () => {
    const rules = [testRule(noPhosphorus, { isOn: false })];
    expect(ofRule(noPhosphorus, [['2026-05-01', 'balanced']], { rules })).toEqual([]);
  });
});

describe('days without feeding', () => {
  const winter = { kind: 'blackout', from: '11-15', to: '03-01', nutrients: ['N'] } as const;
  it('run over the new year, both ends in them', () => {
    const days = [
      '2026-11-14',
      '2026-11-15',
      '2026-12-31',
      '2027-01-01',
      '2027-03-01',
      '2027-03-02',
    ] as const;
    const issues = ofRule(
      winter,
      days.map((day) => [day, 'nitrogen'] as const),
    );
    expect(at(issues).map(([, visit]) => visit)).toEqual(['v1', 'v2', 'v3', 'v4']);
    expect(issues[0]?.message).toContain('Nov\u00a015 to Mar\u00a01');
  });
  it('hold for the named nutrients alone, and ask for a day', () => {
    const summer = { kind: 'blackout', from: '06-01', to: '09-30', nutrients: ['P2O5', 'K2O'] } as const;
    expect(
      at(
        ofRule(summer, [
          ['2026-07-01', 'nitrogen'],
          ['2026-07-01', 'balanced'],
          [null, 'balanced'],
          [null, 'nitrogen'],
        ]),
      ),
    ).toEqual([
      ['rule-blackout', 'v1'],
      ['season-no-day', 'v2'],
    ]);
  });
});

describe('caps of a rule', () => {
  it('count all that goes down on one day as one', () => {
    const cap = {
      kind: 'cap',
      nutrient: 'N',
      per: 'dose',
      isSolubleOnly: false,
      maxKgPerM2: lbPer1000(0.9),
    } as const;
    const issues = ofRule(cap, [
      ['2026-05-01', 'balanced'],
      ['2026-05-01', 'nitrogen'],
      ['2026-06-01', 'nitrogen'],
    ]);
    expect(at(issues)).toEqual([['rule-cap-dose', 'v1']]);
    expect(issues[0]?.message).toMatch(/1\s*lb.*over 0\.9/);
  });
  it('may count soluble nitrogen alone', () => {
    const slow = testFeed('slow', [20, 0, 0], 0.9, {
      analysis: { ...nitrogen.analysis, nPct: 20, slowNPctOfN: 50 },
    });
    const cap = {
      kind: 'cap',
      nutrient: 'N',
      per: 'dose',
      isSolubleOnly: true,
      maxKgPerM2: lbPer1000(0.5),
    } as const;
    const codes = (isSolubleOnly: boolean) =>
      testSeason([slow], [testDay('v', '2026-05-01', ['slow'])], {
        rules: [testRule({ ...cap, isSolubleOnly })],
      }).issues.map((issue) => issue.code);
    expect(codes(true)).toEqual([]);
    expect(codes(false)).toEqual(['rule-cap-dose']);
  });
  it('of a year stand at the visit that passes it, by calendar year', () => {
    const cap = {
      kind: 'cap',
      nutrient: 'N',
      per: 'year',
      isSolubleOnly: false,
      maxKgPerM2: lbPer1000(1),
    } as const;
    const days = ['2026-12-01', '2026-05-01', '2026-09-01', '2027-01-01'] as const;
    expect(
      at(
        ofRule(
          cap,
          days.map((day) => [day, 'nitrogen'] as const),
        ),
      ),
    ).toEqual([['rule-cap-year', 'v0']]);
  });
});

describe('least slow-release share', () => {
  it('takes a silent label for none', () => {
    const [issue] = ofRule({ kind: 'slow-share', minPct: 20 }, [['2026-05-01', 'nitrogen']]);
    expect(issue?.code).toBe('rule-slow-share');
    expect(issue?.message).toContain('does not say');
  });
});

describe('caps of the yard, need and hold', () => {
  const three = ['2026-04-10', '2026-05-01', '2026-09-01'].map((day, index) =>
    testDay(`v${index}`, day, ['balanced']),
  );
  it('warn at the visit that passes a cap of the year, done or not', () => {
    const caps = {
      ...NO_CAPS,
      nPerYear: lbPer1000(1),
      p2o5PerYear: lbPer1000(0.6),
      k2oPerYear: lbPer1000(9),
    };
    const [first, ...others] = three;
    const visits = first ? [doneDay(first), ...others] : [];
    expect(at(testSeason([balanced], visits, { caps }).issues)).toEqual([
      ['cap-year-n', 'v2'],
      ['cap-year-p2o5', 'v1'],
    ]);
  });
  it('note a year more than a tenth over the need, and warn of a hold that is passed', () => {
    const need = {
      id: 'need',
      name: 'Low need',
      zones: { classes: ['turf-regular'], include: [], exclude: ['back'] },
      speciesId: '',
      season: 'cool-season',
      guideId: '',
      nKgPerM2: lbPer1000(1.4),
      split: { kind: 'even', fromMonth: 4, toMonth: 10 },
      hold: { from: '03-15', to: '05-01', maxNKgPerM2: lbPer1000(0.6) },
    } as const;
    const of = (nKgPerM2: number) =>
      at(testSeason([balanced], three, { needs: [{ ...need, nKgPerM2: lbPer1000(nKgPerM2) }] }).issues);
    expect(of(1.4)).toEqual([['hold-exceeded', 'v1']]);
    expect(of(1.3)).toEqual([
      ['need-passed', 'v2'],
      ['hold-exceeded', 'v1'],
    ]);
  });
});
