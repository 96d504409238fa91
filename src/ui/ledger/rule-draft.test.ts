import { describe, expect, it } from 'vitest';
import type { LocalRule, RuleTerms } from '../../yard/types';
import { blankRule, draftOfRule, type RuleDraft, termsOfDraft } from './rule-draft';

const read = (kind: RuleTerms['kind'], change: Partial<RuleDraft>) =>
  termsOfDraft({ ...blankRule(kind, 'Rule'), ...change });

describe('a rule while it is filled in', () => {
  it('begins with no figure: each asks for its own', () => {
    for (const kind of ['blackout', 'buffer', 'cap', 'slow-share'] as const)
      expect(read(kind, {}).ok).toBe(false);
    expect(read('no-phosphorus', {})).toEqual({
      ok: true,
      terms: { kind: 'no-phosphorus', unlessSoilTest: false, testYears: null, unlessNewLawn: false },
    });
  });
  it('takes days that there are, over the new year too', () => {
    const days = (from: string, to: string) => read('blackout', { from, to, nutrients: ['N'] }).ok;
    expect(days('11-15', '03-01')).toBe(true);
    expect(days('02-29', '12-31')).toBe(true);
    for (const bad of ['02-30', '04-31', '13-01', '00-10', '11-', '-', '06-00', '06-xx'])
      expect([days(bad, '12-01'), days('12-01', bad)]).toEqual([false, false]);
    expect(read('blackout', { from: '11-15', to: '03-01' }).ok).toBe(false);
  });
  it('drops what does not belong: years without a test, soluble alone but for N, a strip of no width', () => {
    expect(read('no-phosphorus', { testYears: 3 })).toMatchObject({ terms: { testYears: null } });
    expect(read('cap', { nutrient: 'K2O', isSolubleOnly: true, maxKgPerM2: 0 })).toMatchObject({
      terms: { isSolubleOnly: false, maxKgPerM2: 0 },
    });
    expect(read('buffer', { widthM: 0 }).ok).toBe(false);
  });
  it('comes back from a rule as it was', () => {
    const all: readonly RuleTerms[] = [
      { kind: 'no-phosphorus', unlessSoilTest: true, testYears: 3, unlessNewLawn: true },
      { kind: 'blackout', from: '11-15', to: '03-01', nutrients: ['N', 'P2O5'] },
      { kind: 'buffer', round: 'well', widthM: 20 },
      { kind: 'cap', nutrient: 'N', per: 'year', isSolubleOnly: true, maxKgPerM2: 0.01 },
      { kind: 'slow-share', minPct: 20 },
    ];
    for (const terms of all) {
      const rule: LocalRule = { id: 'r', name: 'R', isOn: true, terms, source: 's', readOn: '2026-01-01' };
      const draft = draftOfRule(rule);
      expect(termsOfDraft(draft)).toEqual({ ok: true, terms });
      expect([draft.source, draft.readOn]).toEqual(['s', '2026-01-01']);
    }
  });
});
