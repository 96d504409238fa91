import { describe, expect, it } from 'vitest';
import { DEFAULT_CAPS } from '../yard/defaults';
import type { Visit } from '../yard/types';
import { capSource, guideIssues } from './guides';
import { lbPer1000, planOn, testDose, testLabel, testVisit, testZone, yardOf } from './testDose';

describe('caps for one application', () => {
  const visit = testVisit({ doses: [testDose({ productId: 'label' })] });
  const plan = (one: Visit) => planOn([testLabel()], one, [testZone(100)]);
  const yard = yardOf([], []);
  const codesWith = (caps: Partial<typeof DEFAULT_CAPS>) =>
    guideIssues({ ...yard, caps: { ...DEFAULT_CAPS, ...caps } }, plan(visit), [])
      .filter(({ severity }) => severity === 'warning')
      .map(({ code, message }) => `${code} ${/\(([^)]*)\)/.exec(message)?.[1]}`);

  it('are those of the yard; null is none', () => {
    // 1 lb N, all of it counted as soluble, and 0.25 lb P2O5
    expect(codesWith({})).toEqual(['guide-soluble-n UF/IFAS EP353, Florida rule']);
    expect(codesWith({ solubleNPerDose: null })).toEqual([]);
    expect(codesWith({ solubleNPerDose: lbPer1000(1), totalNPerDose: lbPer1000(0.9) })).toEqual([
      'guide-total-n the cap you set',
    ]);
    expect(codesWith({ solubleNPerDose: null, p2o5PerDose: lbPer1000(0.2) })).toEqual([
      'guide-p2o5 the cap you set',
    ]);
  });
  it('count what was really used once the visit is done', () => {
    // half of what was planned, told in the product's own measure
    const [whole] = plan(visit).doses;
    if (!whole) throw new Error('no dose');
    const actual = { ...whole.amount, value: whole.amount.value / 2 };
    const codes = (doneOn: string | null) =>
      guideIssues(yard, plan({ ...visit, doneOn, doses: [{ ...whole.dose, actual }] }), [])
        .filter(({ severity }) => severity === 'warning')
        .map(({ code }) => code);
    expect(codes(null)).toEqual(['guide-soluble-n']);
    expect(codes('2026-05-01')).toEqual([]);
  });
  it('count all that goes on a zone in one day, by whichever visit', () => {
    // 0.6 lb of N and 0.15 lb of P2O5 each: within 0.7, 1 and 0.25 lb alone
    const on = (id: string, date: string | null) =>
      plan(testVisit({ id, date, doses: [testDose({ id, productId: 'label', rateFactor: 0.6 })] }));
    const codes = (date: string | null, ...others: readonly (string | null)[]) =>
      guideIssues(
        yard,
        on('own', date),
        others.map((other, i) => on(`other ${i}`, other)),
      )
        .filter(({ severity }) => severity === 'warning')
        .map(({ code }) => code);
    expect(codes('2026-05-01', '2026-05-02', null)).toEqual([]);
    expect(codes('2026-05-01', '2026-05-01')).toEqual(['guide-soluble-n', 'guide-total-n', 'guide-p2o5']);
    // without a day nobody knows whether they fall together
    expect(codes(null, null)).toEqual([]);
    const [first] = guideIssues(yard, on('own', '2026-05-01'), [on('other', '2026-05-01')]);
    expect(first?.message).toContain('other visits of the day counted in');
  });
  it('name the published source while they stand as published', () => {
    expect(capSource('totalNPerDose', lbPer1000(1))).toBe('Univ. of Illinois, 1995');
    expect(capSource('nPerYear', lbPer1000(1))).toBe('the cap you set');
  });
});
