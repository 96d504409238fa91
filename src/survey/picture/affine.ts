import type { XY } from '../../measure/types';
import type { Affine, Pixel } from './types';

const RAD = Math.PI / 180;

/** Where a pixel lies, in the unit of the affine (metres for `toGround`). */
export function applyAffine([a, b, c, d, e, f]: Affine, [col, row]: Pixel): XY {
  return [a * col + b * row + c, d * col + e * row + f];
}

/** The affine of doing `first`, then `second`. */
export function composeAffine(first: Affine, second: Affine): Affine {
  const [a, b, c, d, e, f] = second;
  const [g, h, i, j, k, l] = first;
  return [a * g + b * j, a * h + b * k, a * i + b * l + c, d * g + e * j, d * h + e * k, d * i + e * l + f];
}

/** Ground to pixel; null when the affine flattens the picture to a line or holds numbers that are not finite. */
export function invertAffine(affine: Affine): Affine | null {
  const [a, b, c, d, e, f] = affine;
  const det = a * e - b * d;
  const size = Math.max(Math.abs(a), Math.abs(b), Math.abs(d), Math.abs(e));
  if (!affine.every(Number.isFinite) || !(Math.abs(det) > 1e-12 * size * size)) return null;
  return [e / det, -b / det, (b * f - c * e) / det, -d / det, a / det, (c * d - a * f) / det];
}

/** Side of the square that has the ground area of one pixel, metres: √|det|. */
export function groundResolutionOf([a, b, , d, e]: Affine): number {
  return Math.sqrt(Math.abs(a * e - b * d));
}

/** Bearing of the picture's up (against the rows), degrees clockwise from north, 0 to below 360. */
export function rotationOf([, b, , , e]: Affine): number {
  return (Math.atan2(-b, -e) / RAD + 360) % 360;
}

/** Length on the ground between two pixels, metres. */
export function lengthBetween(affine: Affine, from: Pixel, to: Pixel): number {
  const [x0, y0] = applyAffine(affine, from);
  const [x1, y1] = applyAffine(affine, to);
  return Math.hypot(x1 - x0, y1 - y0);
}
