import { describe, expect, it } from 'vitest';
import { countIn, daysOf, fittingSpan, SPANS } from './keep-span';

describe('how long something keeps', () => {
  // 146,097 days in 400 Gregorian years: a year of 365.2425 days, a month of 30.436875
  it.each([
    [1, 'years', 365],
    [2, 'years', 730],
    [4, 'years', 1461],
    [6, 'months', 183],
    [30, 'days', 30],
  ] as const)('%d %s are %d days', (count, span, days) => {
    expect(daysOf(count, span)).toBe(days);
  });
  it('every whole number comes back as it was typed', () => {
    for (const span of SPANS)
      for (let count = 1; count <= 120; count++) expect(countIn(daysOf(count, span), span)).toBe(count);
  });
  it('is shown in the span it fills', () => {
    expect([null, 30, 90, 183, 365, 730, 731].map(fittingSpan)).toEqual([
      'months',
      'days',
      'days',
      'months',
      'years',
      'years',
      'days',
    ]);
  });
});
