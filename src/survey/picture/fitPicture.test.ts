import { describe, expect, it } from 'vitest';
import { applyAffine } from './affine';
import { fitPicture } from './fitPicture';
import type { Affine, ControlPoint, KnownDistance, PictureFit, Pixel } from './types';

/* Fits whose result is plain from their making; published worked examples: tests/reference/picture.ref.test.ts. */

/** 0.05 m a pixel, the picture's up to the north-east (bearing 45°). */
const RES = 0.05;
const C = RES * Math.SQRT1_2;
const TURNED: Affine = [C, -C, 100, -C, -C, 200];
const SHEARED: Affine = [0.05, 0.004, 10, -0.003, -0.06, 20];
const at = (affine: Affine, ...pixel: Pixel): ControlPoint => ({ pixel, ground: applyAffine(affine, pixel) });
const fitted = (...args: Parameters<typeof fitPicture>): PictureFit => {
  const result = fitPicture(...args);
  if (!result.ok) throw new Error(result.issue.message);
  return result;
};
const refused = (...args: Parameters<typeof fitPicture>): string => {
  const result = fitPicture(...args);
  return result.ok ? 'fitted' : result.issue.code;
};
const expectAffine = (found: Affine, wanted: Affine) => {
  for (const [i, value] of wanted.entries()) expect(found[i]).toBeCloseTo(value, 8);
};

describe('by points', () => {
  it('two points: the similarity itself, nothing to spare, whatever kind is asked for', () => {
    const fit = fitted([at(TURNED, 10, 20), at(TURNED, 900, 400)], [], null, 'affine');
    expectAffine(fit.toGround, TURNED);
    expect(fit).toMatchObject({ kind: 'similarity', redundancy: 0, sigmaM: null, northDifferenceDeg: null });
    expect(fit.groundResolutionM).toBeCloseTo(RES, 10);
    expect(fit.rotationDeg).toBeCloseTo(45, 8);
    // by hand: ends a pixel each, √2 pixels in the 967.7 between them
    expect(fit.scaleSigma).toBeCloseTo(Math.SQRT2 / Math.hypot(890, 380), 8);
  });

  it('three points: the affine itself; its similarity leaves residuals that add up to none', () => {
    const points = [at(SHEARED, 0, 0), at(SHEARED, 1000, 30), at(SHEARED, 200, 800)];
    expectAffine(fitted(points, [], null, 'affine').toGround, SHEARED);
    const { residuals, redundancy, sigmaM, rmsM } = fitted(points, [], null, 'similarity');
    const sum = (of: 'dxM' | 'dyM') => residuals.points.reduce((total, one) => total + one[of], 0);
    expect([sum('dxM'), sum('dyM')].map((value) => Math.abs(value) < 1e-9)).toEqual([true, true]);
    const squares = residuals.points.reduce((total, one) => total + one.lengthM ** 2, 0);
    expect(redundancy).toBe(2);
    expect(sigmaM).toBeCloseTo(Math.sqrt(squares / 2), 10);
    expect(rmsM).toBeCloseTo(Math.sqrt(squares / 3), 10);
  });

  it('a point stated as poor pulls less', () => {
    const good = [at(TURNED, 0, 0), at(TURNED, 1000, 0), at(TURNED, 0, 1000)];
    const off: ControlPoint = { pixel: [1000, 1000], ground: applyAffine(TURNED, [1040, 1000]) };
    const pulled = (sigmaM: number) =>
      fitted([...good, { ...off, sigmaM }], [], null, 'similarity').residuals.points[1]?.lengthM ?? 0;
    expect(pulled(5)).toBeLessThan(pulled(0) / 100);
  });

  it('the north arrow is compared, not used', () => {
    const fit = fitted([at(TURNED, 0, 0), at(TURNED, 500, 0)], [], -42, 'similarity');
    expect(fit.rotationDeg).toBeCloseTo(45, 8);
    expect(fit.northDifferenceDeg).toBeCloseTo(3, 8);
  });
});

describe('by distances', () => {
  const tape = (lengthM: number, from: Pixel, to: Pixel, sigmaM = 0): KnownDistance => ({
    lengthM,
    from,
    to,
    sigmaM,
  });

  it('scale by least squares, north where the arrow points, middle where told', () => {
    // by hand: (100·10 + 200·20.2) / (100² + 200²) = 0.1008
    const distances = [tape(10, [0, 0], [100, 0]), tape(20.2, [0, 0], [0, 200])];
    const fit = fitted([], distances, 90, 'similarity', { pixel: [50, 60], ground: [7, 8] });
    expect(fit.groundResolutionM).toBeCloseTo(0.1008, 12);
    // north to the right: one column is 0.1008 m north, one row 0.1008 m east
    expectAffine(fit.toGround, [0, 0.1008, 7 - 60 * 0.1008, 0.1008, 0, 8 - 50 * 0.1008]);
    expect(fit.residuals.distances.map((one) => one.differenceM)).toEqual([
      expect.closeTo(0.08, 10),
      expect.closeTo(-0.04, 10),
    ]);
    expect(fit.redundancy).toBe(1);
  });

  it('without a north arrow up is north, and lengths are right all the same', () => {
    const fit = fitted([], [tape(12, [100, 100], [100, 340])], null, 'similarity');
    expect(fit.rotationDeg).toBe(0);
    expect(fit.toGround.map((value) => value + 0)).toEqual([0.05, 0, 0, 0, -0.05, 0]);
    // by hand: the tape 3 cm, each end a pixel of 5 cm, in 12 m
    const known = fitted([], [tape(12, [100, 100], [100, 340], 0.03)], null, 'similarity');
    expect(known.scaleSigma).toBeCloseTo(Math.hypot(0.03, 0.05 * Math.SQRT2) / 12, 6);
  });

  it('one point places it', () => {
    const point = { pixel: [30, 40], ground: [1000, 2000] } as const;
    const fit = fitted([point], [tape(5, [0, 0], [100, 0])], 20, 'similarity');
    expect(applyAffine(fit.toGround, point.pixel)).toEqual([
      expect.closeTo(1000, 9),
      expect.closeTo(2000, 9),
    ]);
    expect(fit.rotationDeg).toBeCloseTo(340, 9);
    expect(fit.residuals.points).toHaveLength(1);
  });

  it('a poor tape counts for less', () => {
    const short = tape(10, [0, 0], [200, 0], 0.01);
    const fit = fitted([], [short, tape(11, [0, 0], [0, 200], 1)], null, 'similarity');
    expect(Math.abs(fit.groundResolutionM - 0.05)).toBeLessThan(0.0001);
  });

  it('with points: both bear on the scale', () => {
    const points = [at(TURNED, 0, 0), at(TURNED, 1000, 0)];
    const agreed = fitted(points, [tape(50, [0, 500], [1000, 500])], null, 'similarity');
    expectAffine(agreed.toGround, TURNED);
    expect(agreed.redundancy).toBe(1);
    const longer = fitted(points, [tape(52, [0, 500], [1000, 500])], null, 'similarity');
    // by hand: points and distance say 50 and 52 with one variance (two clicks along the line each)
    expect(1000 * longer.groundResolutionM).toBeCloseTo(51, 6);
    const three = [...points, at(TURNED, 400, 900)];
    expectAffine(fitted(three, [tape(50, [0, 500], [1000, 500])], null, 'affine').toGround, TURNED);
  });
});

describe('what cannot be fitted', () => {
  const p = (col: number, row: number, x: number, y: number): ControlPoint => ({
    pixel: [col, row],
    ground: [x, y],
  });
  const line = [p(0, 0, 0, 0), p(100, 100, 5, -5), p(300, 301, 15, -15)];

  it.each([
    ['nothing', [], [], null, 'picture-no-scale'],
    ['one point', [p(0, 0, 0, 0)], [], null, 'picture-no-scale'],
    ['points at one pixel', [p(5, 5, 0, 0), p(5, 5.5, 9, 9)], [], null, 'picture-points-together'],
    ['points at one place', [p(0, 0, 3, 3), p(500, 0, 3, 3)], [], null, 'picture-ground-together'],
    ['a number that is none', [p(0, Number.NaN, 0, 0), p(9, 9, 1, 1)], [], null, 'picture-number'],
    ['north that is none', [p(0, 0, 0, 0), p(9, 9, 1, 1)], [], Number.NaN, 'picture-number'],
    ['a length of 0', [], [{ from: [0, 0], to: [9, 0], lengthM: 0 }], null, 'picture-length'],
    ['ends together', [], [{ from: [3, 3], to: [3, 3.5], lengthM: 2 }], null, 'picture-ends-together'],
    ['three points on a line', line, [], null, 'picture-points-collinear'],
    [
      'three on one line of the ground',
      [p(0, 0, 0, 0), p(99, 0, 5, 0), p(0, 99, 9, 0)],
      [],
      null,
      'picture-fit-flat',
    ],
    ['two points swapped', [p(0, 0, 0, 0), p(99, 0, 0, -9), p(0, 99, 9, 0)], [], null, 'picture-mirrored'],
  ] as const)('%s', (_, points, distances, northDeg, code) => {
    expect(refused(points, distances, northDeg, 'affine')).toBe(code);
  });

  it('names the point or distance', () => {
    const result = fitPicture([p(0, 0, 0, 0), p(9, 9, 1, Number.NaN)], [], null, 'affine');
    expect(result).toMatchObject({
      issue: { place: { path: 'points[1]' }, message: expect.stringContaining('Point 2') },
    });
  });

  it('points on a line still make a similarity', () => {
    expect(refused(line, [], null, 'similarity')).toBe('fitted');
  });
});
