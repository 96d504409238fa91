import type { XY } from '../../measure/types';
import { adjustPicture, CLICK_PX } from './adjust';
import { applyAffine, groundResolutionOf, lengthBetween, rotationOf } from './affine';
import { checkInput, extentOf, failFit, isCollinear } from './checkInput';
import type { Affine, ControlPoint, FitKind, KnownDistance, PictureFit, PictureFitResult } from './types';

const RAD = Math.PI / 180;
/** From this many spare measurements on, their residuals alone say how good the scale is. */
const TRUSTED_REDUNDANCY = 4;

/**
 * Lays a picture on the ground by what is known of it.
 * - Two or more points: similarity by least squares; three or more, not on one line, and `affine`: affine.
 * - Distances and points: all together by least squares (Gauss-Newton), each by its standard deviation:
 *   a click is good to one pixel in each of x and y, and `sigmaM` of the point or tape comes on top.
 * - One point or none: scale by least squares of the distances, turned by the north arrow (without one the
 *   picture's up is north), placed by the point or by `anchor`.
 *
 * Sources: adjustment with a-posteriori variance: Ghilani, Adjustment Computations, 6th ed., chapters 11,
 * 16 and 18 (conformal 18.2, affine 18.5). The least-squares similarity without reflection is that of
 * Umeyama 1991, doi 10.1109/34.88573.
 * @param points pixels and plane metres
 * @param distances metres
 * @param northDeg direction of north in the picture, degrees clockwise from its up; null when not known.
 *   With two or more points these turn the picture, and the arrow is only compared (`northDifferenceDeg`).
 * @param anchor a pixel and where to put it while there is no point; the picture's corner at (0, 0) by itself
 * @returns an issue for numbers that are not finite, too little to set the scale, points or ends that fall
 *   together, three or more points on one line with `affine`, and points that only a mirrored picture meets
 */
export function fitPicture(
  points: readonly ControlPoint[],
  distances: readonly KnownDistance[],
  northDeg: number | null,
  kind: FitKind,
  anchor: { readonly pixel: readonly [number, number]; readonly ground: XY } = {
    pixel: [0, 0],
    ground: [0, 0],
  },
): PictureFitResult {
  const fault = checkInput(points, distances, northDeg);
  if (fault !== null) return { ok: false, issue: fault };
  if (points.length < 2) {
    return { ok: true, ...fitByDistances(points[0] ?? anchor, points.length, distances, northDeg ?? 0) };
  }
  const used: FitKind = points.length < 3 ? 'similarity' : kind;
  if (used === 'affine' && isCollinear(points.map((point) => point.pixel))) {
    return failFit(
      'picture-points-collinear',
      'The points lie on one line in the picture, so its two scales cannot be told apart. Add a point well to the side, or fit one scale only.',
      'points',
    );
  }
  const adjusted = adjustPicture(points, distances, used);
  const det = adjusted === null ? 0 : determinantOf(adjusted.toGround);
  const reachM = extentOf(points.map((point) => point.ground));
  if (
    adjusted === null ||
    !Number.isFinite(det) ||
    Math.abs(det) < 1e-12 * (reachM / extentOf(points.map((p) => p.pixel))) ** 2
  ) {
    return failFit(
      'picture-fit-flat',
      'These points would flatten the picture to a line. Check that each lies where you said.',
      'points',
    );
  }
  if (det > 0) {
    return failFit(
      'picture-mirrored',
      'These points fit only if the picture is mirrored. Check that no two of them are swapped.',
      'points',
    );
  }
  const { toGround, weightedSquares, redundancy, meanSigmaM, scaleCofactor } = adjusted;
  const north = northDeg === null ? null : turnOf(northDeg + rotationOf(toGround));
  return {
    ok: true,
    kind: used,
    ...figuresOf(toGround, points, distances),
    redundancy,
    sigmaM: redundancy > 0 ? meanSigmaM * Math.sqrt(weightedSquares / redundancy) : null,
    scaleSigma: Math.sqrt(scaleCofactor * varianceFactor(weightedSquares, redundancy)),
    northDifferenceDeg: north,
  };
}

/** Scale from distances, turn from north, place from one point. The scale is linear: s = Σ w·l·L / Σ w·l². */
function fitByDistances(
  at: { readonly pixel: readonly [number, number]; readonly ground: XY },
  pointCount: number,
  distances: readonly KnownDistance[],
  northDeg: number,
): PictureFit {
  const lengthsPx = distances.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]));
  const sum = (of: (distance: KnownDistance, px: number) => number) =>
    distances.reduce((total, distance, i) => total + of(distance, lengthsPx[i] ?? 0), 0);
  let scale = sum((distance) => distance.lengthM) / sum((_, px) => px);
  const weight = ({ sigmaM = 0 }: KnownDistance) => 1 / (2 * (CLICK_PX * scale) ** 2 + sigmaM ** 2);
  for (let i = 0; i < 20; i++) {
    scale = sum((d, px) => weight(d) * px * d.lengthM) / sum((d, px) => weight(d) * px * px);
  }
  const [sin, cos] = [scale * Math.sin(northDeg * RAD), scale * Math.cos(northDeg * RAD)];
  const turned: Affine = [cos, sin, 0, sin, -cos, 0];
  const [x, y] = applyAffine(turned, at.pixel);
  const toGround: Affine = [cos, sin, at.ground[0] - x, sin, -cos, at.ground[1] - y];
  const redundancy = distances.length - 1;
  const weightedSquares = sum((d, px) => weight(d) * (scale * px - d.lengthM) ** 2);
  const cofactor = 1 / sum((d, px) => weight(d) * px * px) / scale ** 2;
  return {
    kind: 'similarity',
    ...figuresOf(toGround, pointCount > 0 ? [at] : [], distances),
    redundancy,
    sigmaM: redundancy > 0 ? CLICK_PX * scale * Math.sqrt(weightedSquares / redundancy) : null,
    scaleSigma: Math.sqrt(cofactor * varianceFactor(weightedSquares, redundancy)),
    northDifferenceDeg: null,
  };
}

/** By how much the squares of the stated sigmas are to be multiplied; with few spare measurements never less than 1. */
function varianceFactor(weightedSquares: number, redundancy: number): number {
  if (redundancy === 0) return 1;
  const found = weightedSquares / redundancy;
  return redundancy >= TRUSTED_REDUNDANCY ? found : Math.max(1, found);
}

/** What follows from the affine alone. */
function figuresOf(
  toGround: Affine,
  points: readonly ControlPoint[],
  distances: readonly KnownDistance[],
): Pick<PictureFit, 'toGround' | 'residuals' | 'rmsM' | 'groundResolutionM' | 'rotationDeg'> {
  const atPoints = points.map(({ pixel, ground }) => {
    const [x, y] = applyAffine(toGround, pixel);
    const [dxM, dyM] = [x - ground[0], y - ground[1]];
    return { dxM, dyM, lengthM: Math.hypot(dxM, dyM) };
  });
  const atDistances = distances.map(({ from, to, lengthM }) => {
    const measuredM = lengthBetween(toGround, from, to);
    return { measuredM, wantedM: lengthM, differenceM: measuredM - lengthM };
  });
  const told =
    points.length > 1 ? atPoints.map((one) => one.lengthM) : atDistances.map((one) => one.differenceM);
  return {
    toGround,
    residuals: { points: atPoints, distances: atDistances },
    rmsM: Math.sqrt(told.reduce((sum, value) => sum + value * value, 0) / Math.max(1, told.length)),
    groundResolutionM: groundResolutionOf(toGround),
    rotationDeg: rotationOf(toGround),
  };
}

function determinantOf([a, b, , d, e]: Affine): number {
  return a * e - b * d;
}

/** An angle brought to -180 (excluded) to 180 degrees. */
function turnOf(deg: number): number {
  return deg - 360 * Math.ceil((deg - 180) / 360);
}
