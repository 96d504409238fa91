import { describe, expect, it } from 'vitest';
import {
  applyAffine,
  composeAffine,
  groundResolutionOf,
  invertAffine,
  lengthBetween,
  rotationOf,
} from './affine';
import { rotateFit, scaleFit, shiftFit } from './handMoves';
import type { Affine } from './types';

/** 0.1 m a pixel, up is north, upper left corner at (50, 80). */
const UP: Affine = [0.1, 0, 50, 0, -0.1, 80];
const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

describe('moves by hand', () => {
  it('shift: metres east and north', () => {
    expect(applyAffine(shiftFit(UP, 3, -4), [10, 20])).toEqual(near([54, 74]));
  });

  it('turn clockwise about a point that stays: what was up there points east', () => {
    const turned = rotateFit(UP, [50, 80], 90);
    expect(rotationOf(turned)).toBeCloseTo(90, 9);
    expect(applyAffine(turned, [0, 0])).toEqual(near([50, 80]));
    expect(applyAffine(turned, [0, -100])).toEqual(near([60, 80]));
    expect(rotationOf(rotateFit(UP, [0, 0], -30))).toBeCloseTo(330, 9);
  });

  it('scale about a point that stays', () => {
    const larger = scaleFit(UP, [51, 79], 1.5);
    expect(applyAffine(larger, [10, 10])).toEqual(near([51, 79]));
    expect(lengthBetween(larger, [0, 0], [300, 400])).toBeCloseTo(75, 9);
    expect(groundResolutionOf(larger)).toBeCloseTo(0.15, 12);
    expect(() => scaleFit(UP, [0, 0], 0)).toThrow(RangeError);
  });
});

describe('affines', () => {
  const odd: Affine = [0.05, 0.004, 10, -0.003, -0.06, 20];

  it('the inverse undoes', () => {
    const inverse = invertAffine(odd) as Affine;
    expect(composeAffine(odd, inverse)).toEqual(near([1, 0, 0, 0, 1, 0]));
    expect(applyAffine(inverse, applyAffine(odd, [123, 456]))).toEqual(near([123, 456]));
  });

  it('a flat one has no inverse', () => {
    expect(invertAffine([1, 2, 0, 2, 4, 0])).toBeNull();
    expect(invertAffine([1, Number.NaN, 0, 2, 4, 0])).toBeNull();
  });
});
