import { describe, expect, it } from 'vitest';
import { compareProducts } from '../../buy/compareProducts';
import type { CompareOption } from '../../buy/compareTypes';
import { turfYard } from '../../plan/testDose';
import { NO_CAPS, testFeed, testRatedSoil, testRule } from '../../season/testSeason';
import type { Product, RuleTerms, Yard } from '../../yard/types';
import { ruleVerdicts } from './rule-verdicts';

const plain = (words: readonly string[]) => words.map((one) => one.replaceAll('\u00a0', ' '));
const ground = { classes: ['turf-regular'], include: [], exclude: [] } as const;
const noPhosphorus = {
  kind: 'no-phosphorus',
  unlessSoilTest: true,
  testYears: 3,
  unlessNewLawn: false,
} as const;
const lb = (value: number) => (value * 0.45359237) / 92.90304;

/** 2 lb of N per 1,000 sq ft by doses of 1 lb. */
const optionOf = (product: Product): CompareOption =>
  compareProducts({ products: [product], areaM2: 100, nKgPerM2: lb(2), dose: 'label-rate', caps: NO_CAPS })
    .options[0] as CompareOption;
const verdicts = (terms: RuleTerms, product: Product, fields: Partial<Yard> = {}): readonly string[] => {
  const yard = { ...turfYard([product], []), rules: [testRule(terms)], ...fields };
  return plain(ruleVerdicts(yard, ground, optionOf(product), '2026-05-01'));
};
const balanced = testFeed('balanced', [10, 10, 10]);
const slow = (slowNPctOfN: number | null) =>
  testFeed('slow', [20, 0, 0], 1, { analysis: { ...balanced.analysis, p2o5Pct: 0, slowNPctOfN } });

describe('rules of the place against one product', () => {
  it('asks for the slow-release share of its nitrogen', () => {
    const terms = { kind: 'slow-share', minPct: 30 } as const;
    const [first, ...others] = verdicts(terms, slow(20));
    expect(others).toEqual([]);
    for (const words of ['Town rule', '20 %', 'at least 30 %', 'check the local code'])
      expect(first).toContain(words);
    expect(verdicts(terms, slow(30))).toEqual([]);
    expect(verdicts(terms, slow(null))[0]).toContain('does not say on its label');
    const off = { rules: [{ ...testRule(terms), isOn: false }] };
    expect(verdicts(terms, slow(20), off)).toEqual([]);
  });

  it('holds one visit to the most at once, of soluble nitrogen too', () => {
    const cap = { kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly: false } as const;
    expect(verdicts({ ...cap, maxKgPerM2: lb(0.9) }, balanced)[0]).toContain(
      'over 0.9 lb per 1,000 sq ft at once',
    );
    expect(verdicts({ ...cap, maxKgPerM2: lb(1) }, balanced)).toEqual([]);
    const soluble = { ...cap, isSolubleOnly: true, maxKgPerM2: lb(0.7) };
    expect(verdicts(soluble, slow(20))[0]).toContain('Soluble nitrogen of 0.8 lb');
    expect(verdicts(soluble, slow(40))).toEqual([]);
  });

  it('holds all visits together to the most of a year', () => {
    const cap = { kind: 'cap', nutrient: 'N', per: 'year', isSolubleOnly: false } as const;
    expect(verdicts({ ...cap, maxKgPerM2: lb(2) }, balanced)).toEqual([]);
    const [words] = verdicts({ ...cap, maxKgPerM2: lb(1.5) }, balanced);
    expect(words).toContain(
      'Nitrogen of 2 lb per 1,000 sq ft by all visits is over 1.5 lb per 1,000 sq ft a year.',
    );
    expect(words).not.toContain('this visit passes');
    const soluble = { ...cap, isSolubleOnly: true, maxKgPerM2: lb(1.5) };
    expect(verdicts(soluble, slow(20))[0]).toContain('Soluble nitrogen of 1.6 lb');
    expect(verdicts(soluble, slow(30))).toEqual([]);
  });

  it('refuses phosphorus without the test that the rule asks for', () => {
    expect(verdicts(noPhosphorus, balanced)[0]).toContain('P2O5 on Front, Back');
    expect(verdicts(noPhosphorus, slow(0))).toEqual([]);
    const test = (date: string) =>
      verdicts(noPhosphorus, balanced, { soilTests: [testRatedSoil(date, 'low')] });
    expect(test('2024-04-02')).toEqual([]);
    expect(test('2023-04-30')).toHaveLength(1);
  });

  it('leaves days and strips to the visits', () => {
    const blackout = { kind: 'blackout', from: '04-01', to: '06-01', nutrients: ['N'] } as const;
    expect(verdicts(blackout, balanced)).toEqual([]);
  });
});
