import { describe, expect, it } from 'vitest';
import { lbPer1000 } from '../plan/testDose';
import { KG_PER_LB } from '../units/factors';
import { removeProduct, removeZones, replaceProduct } from '../yard/edits';
import type { Product, Yard } from '../yard/types';
import { plannedEntries } from './ledgerEntries';
import { markDone } from './markDone';
import { seasonFigures } from './seasonFigures';
import { NO_CAPS, planSeason, testDay, testFeed, testRule, testSeason } from './testSeason';

/*
 * 10 lb of 20-0-0 on two zones of 1,000 sq ft is 1 lb of N per 1,000 sq ft: 5 lb of product on each, 20 % of it
 * (UMass Amherst, Rotary Spreader Calibration: 5 lb of a 20 % product for 1 lb of N).
 */
const feed = testFeed('feed', [20, 5, 0]);
const start = testSeason(
  [feed],
  [testDay('day', '2026-05-01', ['feed']), testDay('next', '2026-06-01', ['feed'])],
);
const [figures] = start.figures;
if (!figures) throw new Error('no figures');
const done = markDone(start.yard, figures, '2026-05-01', false);

/** N on each zone as the ledger has it for the done visit, lb per 1,000 sq ft. */
function laidIn(yard: Yard, areas?: Readonly<Record<string, number>>) {
  const visits = planSeason(yard, areas);
  const season = seasonFigures(yard, visits);
  const entries = season.entries.filter((entry) => entry.visitId === 'day');
  const n = entries.map((entry) => [
    entry.zoneId,
    Number((entry.nutrientKgPerM2.N / lbPer1000(1)).toFixed(6)),
  ]);
  return { n, entries, visits, season };
}
const BOTH = [
  ['front', 1],
  ['back', 1],
];
const label = (fields: Partial<Product>) => replaceProduct(done, { ...feed, ...fields });

describe('what is done stays as it was', () => {
  it('when a zone is removed: the other shows no more, the removed one keeps its name', () => {
    const after = laidIn(removeZones(done, ['back']));
    expect(after.n).toEqual(BOTH);
    expect(after.entries.map((entry) => entry.zoneName)).toEqual(['Front', 'Back']);
  });
  it('when a zone is measured anew', () => {
    expect(laidIn(done, { front: 400, back: 3000 }).n).toEqual(BOTH);
  });
  it.each<[string, Partial<Product>]>([
    ['has no packs any more', { packs: [] }],
    ['has another analysis', { analysis: { ...feed.analysis, nPct: 10 } }],
    ['has another rate', { rate: { basis: 'mass-per-area', rateKgPerM2: 0.1 } }],
    ['cannot be right', { analysis: { ...feed.analysis, nPct: 90, k2oPct: 90 } }],
  ])('when its label %s', (_what, fields) => {
    const after = laidIn(label(fields));
    expect(after.n).toEqual(BOTH);
    // nothing speaks against what is history
    expect(after.visits[0]?.issues.filter((issue) => issue.severity === 'error')).toEqual([]);
  });
  it('when its product leaves the shelf: the name is told as recorded', () => {
    const after = laidIn(removeProduct(done, 'feed'));
    expect(after.n).toEqual(BOTH);
    expect(after.entries[0]?.productName).toBe('Feed 20-5-0');
    expect(after.visits[0]?.issues).not.toContainEqual(expect.objectContaining({ severity: 'error' }));
    // the visit still planned has lost its dose
    expect(after.visits[1]?.visit.doses).toEqual([]);
  });
  it('when the use of its label is gone', () => {
    const [visit] = done.visits;
    const doses = visit?.doses.map((dose) => ({ ...dose, useId: 'gone' })) ?? [];
    const yard = { ...done, visits: done.visits.map((each) => (each === visit ? { ...each, doses } : each)) };
    expect(laidIn(yard).n).toEqual(BOTH);
  });
  it('in caps of the year and rules of the place too', () => {
    const yard: Yard = {
      ...removeZones(label({ analysis: { ...feed.analysis, nPct: 1, p2o5Pct: 0 } }), ['back']),
      caps: { ...NO_CAPS, nPerYear: lbPer1000(0.9) },
      rules: [testRule({ kind: 'slow-share', minPct: 30 })],
    };
    const { issues } = laidIn(yard).season;
    const caps = issues.filter((issue) => issue.code === 'cap-year-n');
    expect(caps.map((issue) => issue.place.visitId)).toEqual(['day']);
    expect(caps[0]?.message).toContain('Front, ground that is gone');
    expect(issues.find((issue) => issue.code === 'rule-slow-share')?.message).toContain('Feed 20-5-0');
  });
  it('a rule against phosphorus that knows exceptions is not held against ground that is gone', () => {
    const rule = (unlessSoilTest: boolean) =>
      testRule({ kind: 'no-phosphorus', unlessSoilTest, testYears: null, unlessNewLawn: false });
    const told = (unlessSoilTest: boolean) =>
      laidIn({ ...removeZones(done, ['front', 'back']), rules: [rule(unlessSoilTest)] }).season.issues.filter(
        (issue) => issue.code === 'rule-no-phosphorus' && issue.place.visitId === 'day',
      );
    expect(told(true)).toEqual([]);
    expect(told(false)).toHaveLength(1);
  });
  it('while what was really used is told anew, on the ground of the record', () => {
    const [visit] = done.visits;
    const doses = visit?.doses.map((dose) => ({
      ...dose,
      actual: { unit: 'kg', value: 5 * KG_PER_LB } as const,
    }));
    const yard = {
      ...done,
      visits: done.visits.map((each) => (each === visit ? { ...each, doses: doses ?? [] } : each)),
    };
    expect(laidIn(removeZones(yard, ['back'])).n).toEqual([
      ['front', 0.5],
      ['back', 0.5],
    ]);
    const [planned] = plannedEntries(planSeason(removeZones(yard, ['back'])));
    expect(planned?.nutrientKgPerM2.N).toBeCloseTo(lbPer1000(1), 12);
  });
  it('and one without a record goes by today’s label and ground, as it must', () => {
    const doneOn = '2026-05-01';
    const [visit] = start.yard.visits;
    const yard = { ...start.yard, visits: visit ? [{ ...visit, doneOn }] : [] };
    expect(laidIn(yard).n).toEqual(BOTH);
    expect(laidIn(replaceProduct(yard, { ...feed, packs: [] })).n).toEqual([]);
  });
});
