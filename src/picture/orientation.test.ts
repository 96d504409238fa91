import { describe, expect, it } from 'vitest';
import { applyAffine } from '../survey/picture/affine';
import { isTurned, shownToStored } from './orientation';

/* A picture stored 30 × 20. Where the stored picture's first pixel (row 0, column 0) is shown, by Exif 2.32, table of tag Orientation. */
const ROWS = [
  [1, 'upper left', [0, 0]],
  [2, 'upper right', [30, 0]],
  [3, 'lower right', [30, 20]],
  [4, 'lower left', [0, 20]],
  [5, 'upper left', [0, 0]],
  [6, 'upper right', [20, 0]],
  [7, 'lower right', [20, 30]],
  [8, 'lower left', [0, 30]],
] as const;

describe('orientation', () => {
  it.each(ROWS)('%i: the first pixel is shown at the %s', (orientation, _, corner) => {
    expect(applyAffine(shownToStored(orientation, 30, 20), corner).map((value) => value + 0)).toEqual([0, 0]);
  });

  it.each([
    [5, [20, 0], [0, 20]],
    [6, [20, 30], [30, 0]],
    [7, [0, 30], [0, 20]],
    [8, [20, 30], [0, 20]],
  ] as const)('%i: a second corner', (orientation, shown, stored) => {
    expect(applyAffine(shownToStored(orientation, 30, 20), shown).map((value) => value + 0)).toEqual(stored);
    expect(isTurned(orientation)).toBe(true);
  });

  it('one that is none is taken as upright', () => {
    expect(shownToStored(0, 30, 20)).toEqual([1, 0, 0, 0, 1, 0]);
    expect(isTurned(3)).toBe(false);
  });
});
