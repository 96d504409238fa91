import { describe, expect, it } from 'vitest';
import { ruleSourceWords, ruleTermsWords } from './ledgerWords';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a rule in words', () => {
  it('never says more than the most, or less than the least, that was typed', () => {
    const cap = { kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly: false } as const;
    // 3.5 g/m² is 0.71685 lb per 1,000 sq ft; 7.6 m is 24.93 ft
    expect(plain(ruleTermsWords({ ...cap, maxKgPerM2: 0.0035 }, 'us'))).toBe(
      'At most 0.716 lb per 1,000 sq ft of N at once',
    );
    expect(plain(ruleTermsWords({ kind: 'buffer', round: 'well', widthM: 7.6 }, 'us'))).toBe(
      'At least 25 ft left untreated round a well',
    );
    expect(plain(ruleTermsWords({ kind: 'buffer', round: 'water', widthM: 7.6 }, 'metric'))).toBe(
      'At least 7.6 m left untreated along water',
    );
  });
  it('words the day it was read as other days are worded', () => {
    expect(plain(ruleSourceWords({ source: 'Town code.', readOn: '2026-05-14' }))).toBe(
      'Town code, read on Thu, May 14, 2026.',
    );
  });
});
