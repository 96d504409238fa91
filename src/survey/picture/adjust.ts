import { applyAffine, groundResolutionOf, lengthBetween } from './affine';
import { solveLeastSquares } from './leastSquares';
import type { Affine, ControlPoint, FitKind, KnownDistance } from './types';

/** How well a point of the picture is clicked, one standard deviation in each of x and y, pixels: common practice, no source. */
export const CLICK_PX = 1;
const MOST_STEPS = 50;
/** Steps end when the affine moves no corner by more than this share of its size. */
const STILL = 1e-13;

/** Result of the adjustment, before it is put in words. */
export interface Adjusted {
  readonly toGround: Affine;
  /** Σ (residual / sigma)². */
  readonly weightedSquares: number;
  readonly redundancy: number;
  /** root mean square of the points' stated sigmas, metres. */
  readonly meanSigmaM: number;
  /** variance of the logarithm of the scale, for stated sigmas as they are. */
  readonly scaleCofactor: number;
}

/** The four numbers of an affine without its shift: a, b, d, e. */
type Turn = readonly [number, number, number, number];
type Unknowns = readonly number[];

/** How the unknowns make the turn: (p, q) or (a, b, d, e); the last two unknowns are the shift. */
const MODELS = {
  similarity: {
    count: 4,
    turn: ([p = 0, q = 0]: Unknowns): Turn => [p, q, q, -p],
    /** d(p·u + q·v) and d(q·u − p·v) by the unknowns. */
    x: (u: number, v: number) => [u, v, 1, 0],
    y: (u: number, v: number) => [-v, u, 0, 1],
    scale: ([p = 0, q = 0]: Unknowns) => [p / (p * p + q * q), q / (p * p + q * q), 0, 0],
  },
  affine: {
    count: 6,
    turn: ([a = 0, b = 0, d = 0, e = 0]: Unknowns): Turn => [a, b, d, e],
    x: (u: number, v: number) => [u, v, 0, 0, 1, 0],
    y: (u: number, v: number) => [0, 0, u, v, 0, 1],
    scale: ([a = 0, b = 0, d = 0, e = 0]: Unknowns) => {
      const twice = 2 * (a * e - b * d);
      return [e / twice, -d / twice, -b / twice, a / twice, 0, 0];
    },
  },
} as const;

/**
 * Weighted least squares of points and distances together, by Gauss-Newton about the middle of the points.
 * Rows of a point are linear; those of a distance are linearised at the last step.
 * @returns null when the points do not determine the unknowns
 */
export function adjustPicture(
  points: readonly ControlPoint[],
  distances: readonly KnownDistance[],
  kind: FitKind,
): Adjusted | null {
  const model = MODELS[kind];
  const mean = (of: (point: ControlPoint) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const middle = [mean((p) => p.pixel[0]), mean((p) => p.pixel[1])] as const;
  const ground = [mean((p) => p.ground[0]), mean((p) => p.ground[1])] as const;
  let unknowns: Unknowns | null = null;
  let scaleCofactor = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const rows: number[][] = [];
    const right: number[] = [];
    const add = (row: readonly number[], value: number, sigma: number) => {
      rows.push(row.map((number) => number / sigma));
      right.push(value / sigma);
    };
    // the first step knows no scale yet: points alone, all alike
    const clickM = unknowns === null ? 1 : CLICK_PX * resolutionOfTurn(model.turn(unknowns));
    for (const { pixel, ground: at, sigmaM = 0 } of points) {
      const [u, v] = [pixel[0] - middle[0], pixel[1] - middle[1]];
      const sigma = unknowns === null ? 1 : Math.hypot(clickM, sigmaM);
      add(model.x(u, v), at[0] - ground[0], sigma);
      add(model.y(u, v), at[1] - ground[1], sigma);
    }
    if (unknowns !== null) {
      const turn = model.turn(unknowns);
      for (const { from, to, lengthM, sigmaM = 0 } of distances) {
        const [u, v] = [to[0] - from[0], to[1] - from[1]];
        const [dx, dy] = [turn[0] * u + turn[1] * v, turn[2] * u + turn[3] * v];
        const measured = Math.hypot(dx, dy);
        if (measured === 0) continue;
        const [alongX, alongY] = [model.x(u, v), model.y(u, v)];
        // a length is homogeneous of degree 1 in the turn, so J·unknowns is the length itself
        const row = alongX.map((number, i) =>
          i < model.count - 2 ? (dx * number + dy * (alongY[i] ?? 0)) / measured : 0,
        );
        add(row, lengthM, Math.hypot(Math.SQRT2 * clickM, sigmaM));
      }
    }
    const solved = solveLeastSquares(rows, right);
    if (solved === null) return null;
    const before: Unknowns | null = unknowns;
    unknowns = solved.solution;
    const gradient = model.scale(unknowns);
    scaleCofactor = gradient.reduce(
      (sum, gi, i) =>
        sum + gradient.reduce((part, gj, j) => part + gi * gj * (solved.cofactors[i]?.[j] ?? 0), 0),
      0,
    );
    if (before !== null && isStill(before, unknowns)) break;
  }
  if (unknowns === null) return null;
  const [a, b, d, e] = model.turn(unknowns);
  const [shiftX = 0, shiftY = 0] = unknowns.slice(-2);
  const toGround: Affine = [
    a,
    b,
    ground[0] + shiftX - a * middle[0] - b * middle[1],
    d,
    e,
    ground[1] + shiftY - d * middle[0] - e * middle[1],
  ];
  const redundancy = 2 * points.length + distances.length - model.count;
  return { toGround, redundancy, scaleCofactor, ...squaresOf(toGround, points, distances) };
}

function squaresOf(
  toGround: Affine,
  points: readonly ControlPoint[],
  distances: readonly KnownDistance[],
): Pick<Adjusted, 'weightedSquares' | 'meanSigmaM'> {
  const clickM = CLICK_PX * groundResolutionOf(toGround);
  let weightedSquares = 0;
  let variances = 0;
  for (const { pixel, ground, sigmaM = 0 } of points) {
    const variance = clickM ** 2 + sigmaM ** 2;
    const [x, y] = applyAffine(toGround, pixel);
    weightedSquares += ((x - ground[0]) ** 2 + (y - ground[1]) ** 2) / variance;
    variances += variance;
  }
  for (const { from, to, lengthM, sigmaM = 0 } of distances) {
    const difference = lengthBetween(toGround, from, to) - lengthM;
    weightedSquares += difference ** 2 / (2 * clickM ** 2 + sigmaM ** 2);
  }
  return { weightedSquares, meanSigmaM: Math.sqrt(variances / points.length) };
}

function resolutionOfTurn([a, b, d, e]: Turn): number {
  return groundResolutionOf([a, b, 0, d, e, 0]);
}

function isStill(before: Unknowns, after: Unknowns): boolean {
  // the shift is in metres, the turn in metres a pixel: the turn alone decides, for the shift follows it
  const size = Math.hypot(...after.slice(0, -2));
  return after.slice(0, -2).every((value, i) => Math.abs(value - (before[i] ?? 0)) <= STILL * size);
}
