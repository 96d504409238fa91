import { createPlane } from '../../measure/plane';
import type { Issue, Position } from '../../yard/types';
import { applyAffine, groundResolutionOf, lengthBetween, rotationOf } from './affine';
import { fitPicture } from './fitPicture';
import { rotateFit, shiftFit } from './handMoves';
import type { OwnPicture } from './ownPicture';
import type { PictureFit } from './types';

/** Relative sigma of the scale of a picture that nothing has been measured on yet: its sizes mean nothing. */
export const UNKNOWN_SCALE_SIGMA = 0.5;

/** How a picture came to lie where it does. */
export type PictureLaid =
  /** nothing, or not enough, is known of it: it lies where it lay, or was only shifted or turned. */
  | { readonly state: 'open'; readonly picture: OwnPicture }
  | { readonly state: 'fitted'; readonly picture: OwnPicture; readonly fit: PictureFit }
  /** what is known does not go together: it lies where it lay. */
  | { readonly state: 'refused'; readonly picture: OwnPicture; readonly issue: Issue };

/** Longitudes are taken on one side of the first. */
function meanOf(places: readonly Position[]): Position {
  const [first] = places;
  if (!first) return [0, 0];
  const turned = places.map(([lon]) => lon + 360 * Math.round((first[0] - lon) / 360));
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const lon = mean(turned);
  return [lon - 360 * Math.round(lon / 360), mean(places.map(([, lat]) => lat))];
}

/**
 * Lays a picture by what its `fit` holds of points, lengths and north; what is marked as out does not
 * count. One point alone shifts it there, north alone turns it about its middle. Without a north arrow a
 * picture that only lengths are known of keeps its direction and its middle.
 * The sigma of a place is that of the fit's residuals, and one pixel where there is nothing to spare.
 */
export function refitPicture(picture: OwnPicture): PictureLaid {
  const { fit } = picture;
  if (!fit) return { state: 'open', picture };
  const points = fit.points.filter((point) => !point.isOut);
  const distances = fit.distances.filter((distance) => !distance.isOut);
  const middle = [picture.widthPx / 2, picture.heightPx / 2] as const;
  const isByPoints = points.length > 0;
  const origin = isByPoints ? meanOf(points.map((point) => point.ground)) : picture.origin;
  const plane = createPlane(origin);
  const control = points.map(({ pixel, ground }) => ({ pixel, ground: plane.toPlane(ground) }));
  if (points.length < 2 && distances.length === 0) {
    const [point] = control;
    const pivot = point?.pixel ?? middle;
    let { toGround } = picture;
    const at = applyAffine(toGround, pivot);
    if (fit.northDeg !== null) toGround = rotateFit(toGround, at, -fit.northDeg - rotationOf(toGround));
    if (point) toGround = shiftFit(toGround, point.ground[0] - at[0], point.ground[1] - at[1]);
    const isStill = toGround === picture.toGround;
    return {
      state: 'open',
      picture: {
        ...picture,
        ...(isStill ? {} : { toGround, origin }),
        sigmaM: 0,
        scaleSigma: UNKNOWN_SCALE_SIGMA,
      },
    };
  }
  const north = fit.northDeg ?? (points.length < 2 ? -rotationOf(picture.toGround) : null);
  const made = fitPicture(control, distances, north, fit.kind, {
    pixel: middle,
    ground: applyAffine(picture.toGround, middle),
  });
  if (!made.ok) return { state: 'refused', picture, issue: made.issue };
  const { toGround, scaleSigma } = made;
  const sigmaM = made.sigmaM ?? made.groundResolutionM;
  return { state: 'fitted', picture: { ...picture, origin, toGround, sigmaM, scaleSigma }, fit: made };
}

/** How far each point of the picture lies from where it was said to be, as the picture lies now, metres. */
export function pointMisses({ origin, toGround, fit }: OwnPicture): readonly number[] {
  const plane = createPlane(origin);
  return (fit?.points ?? []).map(({ pixel, ground }) => {
    const [x0, y0] = plane.toPlane(ground);
    const [x1, y1] = applyAffine(toGround, pixel);
    return Math.hypot(x1 - x0, y1 - y0);
  });
}

/** Each known length as the picture gives it now, metres. */
export function measuredLengths({ toGround, fit }: OwnPicture): readonly number[] {
  return (fit?.distances ?? []).map(({ from, to }) => lengthBetween(toGround, from, to));
}

/**
 * The picture laid by eye: its places are taken to be good to `sigmaM`, its scale to what two such errors
 * at the ends of its diagonal make.
 */
export function trustByEye(picture: OwnPicture, sigmaM: number): OwnPicture {
  const diagonalM = Math.hypot(picture.widthPx, picture.heightPx) * groundResolutionOf(picture.toGround);
  const scaleSigma = Math.min(UNKNOWN_SCALE_SIGMA, (Math.SQRT2 * sigmaM) / diagonalM);
  return { ...picture, sigmaM, scaleSigma };
}

/** Sizes read from it mean something: it has been fitted, trusted by eye, or has a place of its own. */
export function isPictureSet(picture: OwnPicture): boolean {
  return picture.scaleSigma < UNKNOWN_SCALE_SIGMA;
}
