import { describe, expect, it } from 'vitest';
import { HATCHES } from '../draft/hatches';
import { hatchPaths, movePath, pathBounds } from './hatchPath';

describe('movePath', () => {
  it('moves points and leaves radii and flags', () => {
    expect(movePath('M1 2L3 4H5V6A2 3 0 1 0 7 8Z', 10, 20)).toBe('M11 22L13 24H15V26A2 3 0 1 0 17 28Z');
    expect(movePath('M0 4C4 0 8 0 12 4S20 8 24 4', 1, 1)).toBe('M1 5C5 1 9 1 13 5S21 9 25 5');
  });
  it('refuses relative commands', () => expect(() => movePath('m1 2', 0, 0)).toThrow(RangeError));
});

describe('hatchPaths', () => {
  it('can lay every hatch', () => {
    for (const hatch of Object.values(HATCHES)) {
      const { stroked, filled } = hatchPaths(hatch, [10, 10, 40, 30], 0.2);
      expect(stroked + filled).toMatch(/^M/);
    }
  });
  it('reads bounds', () => expect(pathBounds('M1 2L-3 4L5 -6Z')).toEqual([-3, -6, 5, 4]));
});
