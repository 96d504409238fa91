import type { XY } from '../../measure/types';
import { composeAffine } from './affine';
import type { Affine } from './types';

const RAD = Math.PI / 180;

/** The picture moved by `eastM` and `northM` metres. */
export function shiftFit([a, b, c, d, e, f]: Affine, eastM: number, northM: number): Affine {
  return [a, b, c + eastM, d, e, f + northM];
}

/**
 * The picture turned about a point of the ground that stays where it is.
 * @param about metres, in the plane of the affine
 * @param deg degrees, clockwise seen from above, as bearings grow
 */
export function rotateFit(affine: Affine, about: XY, deg: number): Affine {
  const [sin, cos] = [Math.sin(deg * RAD), Math.cos(deg * RAD)];
  return composeAffine(affine, aboutPoint(about, cos, sin, -sin, cos));
}

/**
 * The picture made larger or smaller about a point of the ground that stays where it is.
 * @param factor of lengths, more than 0
 * @param about metres, in the plane of the affine
 * @throws RangeError when the factor is not more than 0
 */
export function scaleFit(affine: Affine, about: XY, factor: number): Affine {
  if (!(factor > 0 && Number.isFinite(factor))) {
    throw new RangeError(`A picture is scaled by a factor above 0, not ${factor}.`);
  }
  return composeAffine(affine, aboutPoint(about, factor, 0, 0, factor));
}

function aboutPoint([x, y]: XY, a: number, b: number, d: number, e: number): Affine {
  return [a, b, x - a * x - b * y, d, e, y - d * x - e * y];
}
