import { describe, expect, it } from 'vitest';
import { createPlane } from '../../measure/plane';
import type { PictureFit, Position } from '../../yard/types';
import { cornersOfPicture, type OwnPicture, pixelOfPlace, placeOfPixel } from './ownPicture';
import {
  isPictureSet,
  measuredLengths,
  pointMisses,
  refitPicture,
  trustByEye,
  UNKNOWN_SCALE_SIGMA,
} from './refitPicture';

const ORIGIN: Position = [-97.43, 39.82];
/** Truth: 0.08 m a pixel, its up 20° east of north, upper left corner at the origin. */
const [S, C] = [0.08 * Math.sin((20 * Math.PI) / 180), 0.08 * Math.cos((20 * Math.PI) / 180)];
const TRUE = { origin: ORIGIN, toGround: [C, -S, 0, -S, -C, 0] } as const;

function picture(fit: Partial<PictureFit>): OwnPicture {
  return {
    kind: 'own-picture',
    id: 'p',
    name: 'Scan',
    attribution: '',
    pictureId: 'p1',
    widthPx: 800,
    heightPx: 600,
    origin: ORIGIN,
    toGround: [0.05, 0, -20, 0, -0.05, 15],
    opacity: 1,
    sigmaM: 0,
    scaleSigma: UNKNOWN_SCALE_SIGMA,
    fit: { kind: 'similarity', points: [], distances: [], northDeg: null, ...fit },
  };
}
const point = (col: number, row: number, isOut?: boolean) => ({
  pixel: [col, row] as const,
  ground: placeOfPixel(TRUE, [col, row]),
  ...(isOut ? { isOut } : {}),
});
const far = (a: Position, b: Position) => Math.hypot(...createPlane(a).toPlane(b));

describe('refitPicture', () => {
  it('lies where nothing is known of it, and is not set', () => {
    const laid = refitPicture(picture({}));
    expect(laid.state).toBe('open');
    expect(laid.picture.toGround).toEqual([0.05, 0, -20, 0, -0.05, 15]);
    expect(isPictureSet(laid.picture)).toBe(false);
  });

  it('one point shifts it there', () => {
    const laid = refitPicture(picture({ points: [point(700, 500)] }));
    expect(laid.state).toBe('open');
    expect(far(placeOfPixel(laid.picture, [700, 500]), placeOfPixel(TRUE, [700, 500]))).toBeLessThan(1e-6);
  });

  it('two points give scale, turn and place', () => {
    const laid = refitPicture(picture({ points: [point(10, 20), point(700, 500)] }));
    expect(laid.state).toBe('fitted');
    expect(isPictureSet(laid.picture)).toBe(true);
    cornersOfPicture(laid.picture).forEach((corner, i) => {
      expect(far(corner, cornersOfPicture({ ...laid.picture, ...TRUE })[i] ?? ORIGIN)).toBeLessThan(0.002);
    });
  });

  it('a point that is out does not count, and its miss is told', () => {
    const wrong = { ...point(400, 300, true), ground: placeOfPixel(TRUE, [460, 300]) };
    const laid = refitPicture(picture({ points: [point(0, 0), point(800, 0), point(0, 600), wrong] }));
    const misses = pointMisses(laid.picture);
    expect(Math.max(...misses.slice(0, 3))).toBeLessThan(0.001);
    // 60 pixels of 0.08 m
    expect(misses[3]).toBeCloseTo(4.8, 2);
  });

  it('lengths alone give the scale and keep middle and direction; north turns it', () => {
    const laid = refitPicture(picture({ distances: [{ from: [100, 100], to: [400, 500], lengthM: 40 }] }));
    // a line of 300 by 400 pixels is 500 long: 40 m / 500 = 0.08 m a pixel
    expect(measuredLengths(laid.picture)[0]).toBeCloseTo(40, 9);
    expect(laid.picture.toGround[0]).toBeCloseTo(0.08, 9);
    expect(far(placeOfPixel(laid.picture, [400, 300]), placeOfPixel(picture({}), [400, 300]))).toBeLessThan(
      1e-6,
    );
    const turned = refitPicture(
      picture({ distances: [{ from: [100, 100], to: [400, 500], lengthM: 40 }], northDeg: -20 }),
    );
    turned.picture.toGround.slice(0, 2).forEach((value, i) => {
      expect(value).toBeCloseTo(TRUE.toGround[i] ?? 0, 9);
    });
  });

  it('what does not go together is refused and leaves it where it was', () => {
    const twice = [point(10, 20), { ...point(700, 500), ground: point(10, 20).ground }];
    const laid = refitPicture(picture({ points: twice }));
    expect(laid.state).toBe('refused');
    expect(laid.picture.toGround).toEqual([0.05, 0, -20, 0, -0.05, 15]);
  });

  it('trust by eye follows from two such errors at the ends of the diagonal', () => {
    // 800 by 600 pixels of 0.05 m: a diagonal of 50 m
    expect(trustByEye(picture({}), 0.5).scaleSigma).toBeCloseTo((Math.SQRT2 * 0.5) / 50, 12);
  });
});

describe('pixelOfPlace', () => {
  it('brings a place back to its pixel', () => {
    const pixel = pixelOfPlace(TRUE, placeOfPixel(TRUE, [123.5, 456.25]));
    expect(pixel?.[0]).toBeCloseTo(123.5, 6);
    expect(pixel?.[1]).toBeCloseTo(456.25, 6);
  });
});
