import { expect, it } from 'vitest';
import { legAt } from './legAt';

it('finds the leg under way by the metres walked, at ends and beyond them', () => {
  const starts = [0, 10, 12, 12, 30];
  expect([-1, 0, 9.9, 10, 11, 12, 29, 30, 99].map((m) => legAt(starts, m))).toEqual([
    0, 0, 0, 1, 1, 3, 3, 3, 3,
  ]);
  expect(legAt([0], 5)).toBe(0);
});
