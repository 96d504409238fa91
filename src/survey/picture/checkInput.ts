import type { Issue } from '../../yard/types';
import type { ControlPoint, KnownDistance } from './types';

/** Ends nearer than this in the picture are one place, pixels. */
const LEAST_PX = 1;
/** Points whose spread across their line is less than this share of that along it lie on the line. */
const COLLINEAR_SHARE = 0.01;

/** A failed fit. @param path what it is about, such as `points[2]`. */
export function failFit(
  code: string,
  message: string,
  path: string,
): { readonly ok: false; readonly issue: Issue } {
  return { ok: false, issue: { code, severity: 'error', message, place: { path } } };
}

/** The first reason why no fit can be tried; null when there is none. */
export function checkInput(
  points: readonly ControlPoint[],
  distances: readonly KnownDistance[],
  northDeg: number | null,
): Issue | null {
  const fail = (code: string, message: string, path: string) => failFit(code, message, path).issue;
  for (const [i, { pixel, ground, sigmaM }] of points.entries()) {
    if (![...pixel, ...ground].every(Number.isFinite) || !isSigma(sigmaM)) {
      return fail('picture-number', `Point ${i + 1} holds a number that cannot be used.`, `points[${i}]`);
    }
  }
  for (const [i, { from, to, lengthM, sigmaM }] of distances.entries()) {
    const path = `distances[${i}]`;
    if (!(lengthM > 0 && Number.isFinite(lengthM)) || !isSigma(sigmaM)) {
      return fail('picture-length', `Known distance ${i + 1} must be a length above 0.`, path);
    }
    if (![...from, ...to].every(Number.isFinite)) {
      return fail('picture-number', `Known distance ${i + 1} has an end that cannot be used.`, path);
    }
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LEAST_PX) {
      return fail(
        'picture-ends-together',
        `Both ends of known distance ${i + 1} are at one place in the picture.`,
        path,
      );
    }
  }
  if (northDeg !== null && !Number.isFinite(northDeg)) {
    return fail('picture-number', 'The direction of north must be an angle in degrees.', 'northDeg');
  }
  if (points.length < 2) {
    if (distances.length > 0) return null;
    const message = 'The picture’s scale is not known yet: set two points, or one known distance.';
    return fail('picture-no-scale', message, points.length === 0 ? '' : 'points');
  }
  if (extentOf(points.map((point) => point.pixel)) < LEAST_PX) {
    return fail(
      'picture-points-together',
      'The points are all at one place in the picture. Set them far apart.',
      'points',
    );
  }
  const groundM = extentOf(points.map((point) => point.ground));
  if (!(groundM > 1e-6)) {
    return fail(
      'picture-ground-together',
      'The points are all at one place on the ground. Set them far apart.',
      'points',
    );
  }
  return null;
}

function isSigma(sigmaM: number | undefined): boolean {
  return sigmaM === undefined || (sigmaM >= 0 && Number.isFinite(sigmaM));
}

/** Diagonal of the box round the points. */
export function extentOf(points: readonly (readonly [number, number])[]): number {
  const span = (axis: 0 | 1) => {
    const values = points.map((point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  return Math.hypot(span(0), span(1));
}

/** Whether the points lie on one line, by the two principal spreads (eigenvalues of their scatter). */
export function isCollinear(points: readonly (readonly [number, number])[]): boolean {
  const mean = (of: (point: readonly [number, number]) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [mx, my] = [mean((p) => p[0]), mean((p) => p[1])];
  const xx = mean((p) => (p[0] - mx) ** 2);
  const yy = mean((p) => (p[1] - my) ** 2);
  const xy = mean((p) => (p[0] - mx) * (p[1] - my));
  const root = Math.hypot(xx - yy, 2 * xy);
  const [large, small] = [(xx + yy + root) / 2, Math.max(0, (xx + yy - root) / 2)];
  return Math.sqrt(small) < COLLINEAR_SHARE * Math.sqrt(large);
}
