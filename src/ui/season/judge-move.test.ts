import { describe, expect, it } from 'vitest';
import { testYard } from '../../../tests/fixtures/testYard';
import { deriveYard } from '../../session/derive';
import { loadPlanner } from '../../session/planner';
import { newDose, newVisit } from '../../yard/defaults';
import { replaceVisit } from '../../yard/edits';
import type { LocalRule, Visit, Yard } from '../../yard/types';
import { causesOn } from './calendar-model';
import { issuesOfVisit, MoveJudge } from './judge-move';

await loadPlanner();

const TURF = { classes: ['turf-low-cut' as const, 'turf-regular' as const], include: [], exclude: [] };
const on = (id: string, date: string, fields: Partial<Visit> = {}): Visit =>
  newVisit(id, { name: id, date, zones: TURF, doses: [newDose(`${id}-d`, 'p-liquid')], ...fields });
const season: Yard = {
  ...testYard(),
  visits: [on('first', '2031-04-07'), on('second', '2031-05-05'), on('third', '2031-06-02')],
};

describe('what speaks against a day', () => {
  const derived = deriveYard(season);
  const judge = new MoveJudge();
  const codes = (date: string, visitId = 'second') =>
    judge.judge(derived, visitId, date).map((issue) => issue.code);

  // the label of the fixture asks for 28 days: 7 April and 28 days are 5 May, 2 June less 28 are 5 May
  it('is the label’s interval to the visit before and the one after', () => {
    expect(codes('2031-05-05')).toEqual([]);
    expect(codes('2031-05-04')).toEqual(['limit-interval']);
    expect(codes('2031-05-06')).toEqual(['limit-interval']);
  });

  it('is what a move would do to others: the yearly count of the one that comes to be the last', () => {
    // four a year by the label: a fifth in spring puts the last of the year over it
    const four = {
      ...season,
      visits: [...season.visits, on('fourth', '2031-06-30'), on('spare', '2032-12-01')],
    };
    const [issue] = judge.judge(deriveYard(four), 'spare', '2031-02-03');
    expect(issue).toMatchObject({ code: 'limit-doses-per-year', place: { visitId: 'fourth' } });
    expect(issue?.message).toMatch(/^“fourth”: /);
  });

  it('is a stretch barred by a rule of the place', () => {
    const rule: LocalRule = {
      id: 'r-1',
      name: 'Winter',
      isOn: true,
      terms: { kind: 'blackout', from: '11-15', to: '03-01', nutrients: ['N'] },
      source: '',
      readOn: null,
    };
    const barred = { ...season, rules: [rule] };
    const issues = judge.judge(deriveYard(barred), 'third', '2031-12-01');
    expect(issues.map((issue) => issue.severity)).toContain('error');
    expect(causesOn(barred, '2031-12-01')).toEqual([{ kind: 'barred', words: 'Winter' }]);
    expect(causesOn(barred, '2032-03-01')).toHaveLength(1);
    expect(causesOn(barred, '2031-03-02')).toEqual([]);
    expect(causesOn({ ...barred, rules: [{ ...rule, isOn: false }] }, '2031-12-01')).toEqual([]);
  });

  it('leaves the document as it was, and agrees with it once the move is made', () => {
    const judged = judge.judge(derived, 'second', '2031-04-20');
    expect(derived.yard).toBe(season);
    expect(issuesOfVisit(derived, 'second')).toEqual([]);
    const [, second] = season.visits as [Visit, Visit];
    const moved = deriveYard(replaceVisit(season, { ...second, date: '2031-04-20' }), derived);
    expect(judged).toEqual(issuesOfVisit(moved, 'second'));
    expect(judged).not.toEqual([]);
  });
});
