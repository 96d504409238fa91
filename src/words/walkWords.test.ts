import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatWalk, walkPartsWords, wholeParts } from './walkWords';

it('tells a walk in whole metres or feet, a short one as any length', () => {
  expect(formatWalk(941.42, 'metric')).toBe('941\u00a0m');
  expect(formatWalk(1941.6, 'metric')).toBe('1,942\u00a0m');
  // 30.48 m are 100 ft
  expect(formatWalk(30.6, 'us')).toBe('100\u00a0ft');
  expect(formatWalk(3.456, 'metric')).toBe('3.46\u00a0m');
});

describe('the parts of a walk', () => {
  const parts = { workingM: 613.45, turnM: 214.4, withinM: 87.4, betweenM: 26.22 };
  it('are all named and sum to the whole', () => {
    // 941.47 m
    expect(walkPartsWords(parts, 'metric').replaceAll('\u00a0', ' ')).toBe(
      '614 m with product going out, 214 m turning, 87 m on ways inside zones, shut off, 26 m between zones',
    );
    expect(walkPartsWords({ ...parts, withinM: 0, betweenM: 0.1 }, 'metric')).not.toMatch(/zones/);
  });

  it('are whole numbers less than one from their parts, with the rounded sum', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { maxLength: 6 }), (all) => {
        const made = wholeParts(all);
        const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
        expect(sum(made)).toBe(Math.round(sum(all)));
        made.forEach((count, i) => {
          expect(Math.abs(count - (all[i] ?? 0))).toBeLessThan(1);
        });
      }),
      { numRuns: 60 },
    );
  });
});
