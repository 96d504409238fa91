import { describe, expect, it } from 'vitest';
import { DEFAULT_CAPS } from '../yard/defaults';
import { capSource, guideIssues } from './guides';
import { lbPer1000, planOn, testDose, testLabel, testVisit, testZone, yardOf } from './testDose';

describe('caps for one application', () => {
  const visit = testVisit({ doses: [testDose({ productId: 'label' })] });
  const { doses } = planOn([testLabel()], visit, [testZone(100)]);
  const codesWith = (caps: Partial<typeof DEFAULT_CAPS>) =>
    guideIssues({ ...yardOf([], []), caps: { ...DEFAULT_CAPS, ...caps } }, visit, doses)
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
    const half = doses.map((each) => ({
      ...each,
      dose: { ...each.dose, actual: { ...each.amount, value: each.amount.value / 2 } },
    }));
    const codes = (doneOn: string | null) =>
      guideIssues({ ...yardOf([], []), caps: DEFAULT_CAPS }, { ...visit, doneOn }, half)
        .filter(({ severity }) => severity === 'warning')
        .map(({ code }) => code);
    expect(codes(null)).toEqual(['guide-soluble-n']);
    expect(codes('2026-05-01')).toEqual([]);
  });
  it('name the published source while they stand as published', () => {
    expect(capSource('totalNPerDose', lbPer1000(1))).toBe('Univ. of Illinois, 1995');
    expect(capSource('nPerYear', lbPer1000(1))).toBe('the cap you set');
  });
});
