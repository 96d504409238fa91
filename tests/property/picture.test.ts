import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyAffine,
  composeAffine,
  groundResolutionOf,
  lengthBetween,
  rotationOf,
} from '../../src/survey/picture/affine';
import { fitPicture } from '../../src/survey/picture/fitPicture';
import { rotateFit, scaleFit, shiftFit } from '../../src/survey/picture/handMoves';
import type { Affine, ControlPoint, FitKind, PictureFit, Pixel } from '../../src/survey/picture/types';

/* Fits of pictures made up at random: what was put in comes out, and the errors told are those put in. */

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pixels = (count: number) =>
  fc.array(fc.tuple(number(0, 8000), number(0, 8000)), { minLength: count, maxLength: 12 });
/** Resolution 1 mm to 1 m a pixel, any turn, as far as 5 km from the plane's origin. */
const similarity: fc.Arbitrary<Affine> = fc
  .tuple(number(0.001, 1), number(0, 360), number(-5000, 5000), number(-5000, 5000))
  .map(([resolution, deg, x, y]) => {
    const [p, q] = [
      resolution * Math.cos((deg * Math.PI) / 180),
      resolution * Math.sin((deg * Math.PI) / 180),
    ];
    return [p, q, x, q, -p, y];
  });
/** The same, stretched and sheared as a scanner or an oblique photo may do. */
const affine: fc.Arbitrary<Affine> = fc
  .tuple(similarity, number(0.7, 1.4), number(-0.3, 0.3))
  .map(([base, stretch, shear]) => composeAffine([1, shear, 0, 0, stretch, 0], base));

const layDown = (...args: Parameters<typeof fitPicture>): PictureFit => {
  const result = fitPicture(...args);
  if (!result.ok) throw new Error(result.issue.message);
  return result;
};
const pointsOf = (truth: Affine, at: readonly Pixel[]): ControlPoint[] =>
  at.map((pixel) => ({ pixel, ground: applyAffine(truth, pixel) }));
/** Well spread: no line, no heap; of 12 points one stands aside by enough for the 1 % of a line (see checkInput). */
const isSpread = (at: readonly Pixel[]) =>
  at.some((a) =>
    at.some((b) =>
      at.some((c) => Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) > 3e6),
    ),
  );
const corners: readonly Pixel[] = [
  [0, 0],
  [8000, 0],
  [8000, 8000],
  [0, 8000],
];
/** Largest distance between two affines over a picture of 8,000 × 8,000 pixels. */
const apart = (one: Affine, other: Affine) =>
  Math.max(
    ...corners.map((at) =>
      Math.hypot(
        applyAffine(one, at)[0] - applyAffine(other, at)[0],
        applyAffine(one, at)[1] - applyAffine(other, at)[1],
      ),
    ),
  );

describe('without error', () => {
  it('points give the similarity back', () => {
    fc.assert(
      fc.property(similarity, pixels(2), (truth, at) => {
        fc.pre(Math.hypot((at[0]?.[0] ?? 0) - (at[1]?.[0] ?? 0), (at[0]?.[1] ?? 0) - (at[1]?.[1] ?? 0)) > 50);
        const found = layDown(pointsOf(truth, at), [], null, 'similarity');
        expect(apart(found.toGround, truth)).toBeLessThan(1e-6);
        expect(found.rmsM).toBeLessThan(1e-7);
      }),
    );
  });

  it('points give the affine back', () => {
    fc.assert(
      fc.property(affine, pixels(3), (truth, at) => {
        fc.pre(isSpread(at));
        expect(apart(layDown(pointsOf(truth, at), [], null, 'affine').toGround, truth)).toBeLessThan(1e-5);
      }),
    );
  });

  it('distances, north and one point give the similarity back', () => {
    fc.assert(
      fc.property(similarity, pixels(3), (truth, at) => {
        const [first, ...rest] = at as unknown as [Pixel, ...Pixel[]];
        const distances = rest
          .filter((to) => Math.hypot(to[0] - first[0], to[1] - first[1]) > 50)
          .map((to) => ({ from: first, to, lengthM: lengthBetween(truth, first, to), sigmaM: 0.02 }));
        fc.pre(distances.length > 0);
        const found = layDown(pointsOf(truth, [first]), distances, -rotationOf(truth), 'similarity');
        expect(apart(found.toGround, truth)).toBeLessThan(1e-6);
      }),
    );
  });

  it('points and distances that agree change nothing', () => {
    fc.assert(
      fc.property(affine, pixels(4), fc.constantFrom<FitKind>('similarity', 'affine'), (truth, at, kind) => {
        fc.pre(isSpread(at));
        const alone = layDown(pointsOf(truth, at), [], null, kind);
        const [from, to] = [at[0] as Pixel, at[2] as Pixel];
        fc.pre(Math.hypot(to[0] - from[0], to[1] - from[1]) > 50);
        const lengthM = lengthBetween(alone.toGround, from, to);
        const both = layDown(pointsOf(truth, at), [{ from, to, lengthM }], null, kind);
        expect(apart(both.toGround, alone.toGround)).toBeLessThan(1e-5);
      }),
    );
  });

  it('moves by hand keep lengths, turn what they say, and undo', () => {
    fc.assert(
      fc.property(
        similarity,
        number(-720, 720),
        number(0.2, 5),
        number(-900, 900),
        (truth, deg, factor, metres) => {
          const about = [metres, -metres / 3] as const;
          const turned = rotateFit(truth, about, deg);
          expect(groundResolutionOf(turned)).toBeCloseTo(groundResolutionOf(truth), 12);
          const turn = (rotationOf(turned) - rotationOf(truth) - deg) / 360;
          expect(Math.abs(turn - Math.round(turn))).toBeLessThan(1e-9);
          const moved = shiftFit(scaleFit(turned, about, factor), metres, 7);
          const back = rotateFit(scaleFit(shiftFit(moved, -metres, -7), about, 1 / factor), about, -deg);
          expect(apart(back, truth)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});

/** Numbers of the standard normal distribution, the same at every run (Box-Muller on a linear congruence). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe('with normal error of known sigma', () => {
  const truth: Affine = [0.04, 0.03, 10, 0.03, -0.04, 20];
  const AT: readonly Pixel[] = [
    [200, 300],
    [7600, 500],
    [7000, 7500],
    [400, 7100],
    [4000, 3500],
    [2500, 6000],
  ];
  const SIGMA = 0.3;
  const DRAWS = 4000;

  it.each([
    ['similarity', 4],
    ['affine', 6],
  ] as const)(
    '%s: Σv²/σ² has the mean and variance of chi-square, and sigmaM² is σ² on average',
    (kind, unknowns) => {
      const normal = normals(kind.length);
      const freedom = 2 * AT.length - unknowns;
      let [sum, squares, variances, scales] = [0, 0, 0, 0];
      let stated = 0;
      for (let i = 0; i < DRAWS; i++) {
        const points = AT.map((pixel): ControlPoint => {
          const [x, y] = applyAffine(truth, pixel);
          return { pixel, ground: [x + SIGMA * normal(), y + SIGMA * normal()] };
        });
        const found = layDown(points, [], null, kind);
        const chi2 = found.residuals.points.reduce((total, one) => total + one.lengthM ** 2, 0) / SIGMA ** 2;
        sum += chi2;
        squares += (chi2 - freedom) ** 2;
        variances += (found.sigmaM ?? Number.NaN) ** 2;
        scales += Math.log(found.groundResolutionM / 0.05) ** 2;
        stated += found.scaleSigma ** 2;
        expect(found.redundancy).toBe(freedom);
      }
      // four standard errors of a mean of DRAWS draws; chi-square: mean f, variance 2f (any textbook of statistics)
      expect(Math.abs(sum / DRAWS - freedom)).toBeLessThan(4 * Math.sqrt((2 * freedom) / DRAWS));
      expect(squares / DRAWS / (2 * freedom)).toBeGreaterThan(0.85);
      expect(squares / DRAWS / (2 * freedom)).toBeLessThan(1.15);
      expect(variances / DRAWS / SIGMA ** 2).toBeCloseTo(1, 1);
      // the scale's own scatter is what scaleSigma says of it
      expect(scales / stated).toBeGreaterThan(0.9);
      expect(scales / stated).toBeLessThan(1.1);
    },
  );

  it('distances: the scale’s scatter is what scaleSigma says of it', () => {
    const normal = normals(99);
    const ends = AT.slice(1).map((to) => ({ from: AT[0] as Pixel, to }));
    const sigmaM = 0.5;
    let [scales, stated] = [0, 0];
    for (let i = 0; i < DRAWS; i++) {
      const distances = ends.map(({ from, to }) => {
        const trueM = lengthBetween(truth, from, to);
        // two clicks of a pixel each, and the tape
        return { from, to, sigmaM, lengthM: trueM + normal() * Math.hypot(sigmaM, Math.SQRT2 * 0.05) };
      });
      const found = layDown([], distances, null, 'similarity');
      scales += Math.log(found.groundResolutionM / 0.05) ** 2;
      stated += found.scaleSigma ** 2;
    }
    expect(scales / stated).toBeGreaterThan(0.9);
    expect(scales / stated).toBeLessThan(1.1);
  });
});
