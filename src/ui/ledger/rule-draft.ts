import type { LocalRule, Nutrient, RuleTerms } from '../../yard/types';
import { dayOfYear } from '../../yard/yearDay';

/** A rule while it is filled in: nothing is taken for granted, so every figure begins empty. */
export interface RuleDraft {
  readonly kind: RuleTerms['kind'];
  readonly name: string;
  readonly source: string;
  readonly readOn: string | null;
  readonly unlessSoilTest: boolean;
  readonly testYears: number | null;
  readonly unlessNewLawn: boolean;
  /** MM-DD; empty parts until filled in: "-", "11-", "-15". */
  readonly from: string;
  readonly to: string;
  readonly nutrients: readonly Nutrient[];
  readonly round: 'water' | 'storm-drain' | 'well';
  readonly widthM: number | null;
  readonly nutrient: Nutrient;
  readonly per: 'dose' | 'year';
  readonly isSolubleOnly: boolean;
  readonly maxKgPerM2: number | null;
  readonly minPct: number | null;
}

/** A new draft of a kind. @param name as it will stand in the list */
export function blankRule(kind: RuleTerms['kind'], name: string): RuleDraft {
  return {
    kind,
    name,
    source: '',
    readOn: null,
    unlessSoilTest: false,
    testYears: null,
    unlessNewLawn: false,
    from: '-',
    to: '-',
    nutrients: [],
    round: 'water',
    widthM: null,
    nutrient: 'N',
    per: 'dose',
    isSolubleOnly: false,
    maxKgPerM2: null,
    minPct: null,
  };
}

/** The draft of a rule that is to be changed. */
export function draftOfRule({ name, source, readOn, terms }: LocalRule): RuleDraft {
  return { ...blankRule(terms.kind, name), source, readOn, ...terms };
}

/** The terms of a draft, or what is still to fill in. */
export function termsOfDraft(
  draft: RuleDraft,
): { readonly ok: true; readonly terms: RuleTerms } | { readonly ok: false; readonly message: string } {
  const missing = (message: string) => ({ ok: false, message }) as const;
  switch (draft.kind) {
    case 'no-phosphorus': {
      const { kind, unlessSoilTest, testYears, unlessNewLawn } = draft;
      return {
        ok: true,
        terms: { kind, unlessSoilTest, testYears: unlessSoilTest ? testYears : null, unlessNewLawn },
      };
    }
    case 'blackout': {
      const { kind, from, to, nutrients } = draft;
      if (dayOfYear(from) === null)
        return missing('Fill in the first day: a month and a day that month has.');
      if (dayOfYear(to) === null) return missing('Fill in the last day: a month and a day that month has.');
      if (nutrients.length === 0) return missing('Choose at least one nutrient that is not allowed.');
      return { ok: true, terms: { kind, from, to, nutrients } };
    }
    case 'buffer': {
      const { kind, round, widthM } = draft;
      return widthM === null || widthM <= 0
        ? missing('Fill in how wide the strip must be.')
        : { ok: true, terms: { kind, round, widthM } };
    }
    case 'cap': {
      const { kind, nutrient, per, isSolubleOnly, maxKgPerM2 } = draft;
      if (maxKgPerM2 === null) return missing('Fill in the most that is allowed.');
      return {
        ok: true,
        terms: { kind, nutrient, per, isSolubleOnly: isSolubleOnly && nutrient === 'N', maxKgPerM2 },
      };
    }
    case 'slow-share': {
      const { kind, minPct } = draft;
      return minPct === null ? missing('Fill in the least share.') : { ok: true, terms: { kind, minPct } };
    }
  }
}
