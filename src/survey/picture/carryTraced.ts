import { roundPosition } from '../../measure/corners';
import { moveOutline } from '../../measure/moveYard';
import { createPlane } from '../../measure/plane';
import { isLockedZone } from '../../yard/locks';
import type { Survey, Zone } from '../../yard/types';
import { groundResolutionOf } from './affine';
import { cornersOfPicture, type OwnPicture, pixelOfPlace, placeOfPixel } from './ownPicture';

/** Corners that go less than this stay, metres. */
const STILL_M = 0.001;

/** How far the corner that goes farthest is from one placement of a picture to another, metres. */
export function cornerMoveM(before: OwnPicture, now: OwnPicture): number {
  const plane = createPlane(before.origin);
  const was = cornersOfPicture(before);
  const moves = cornersOfPicture(now).map((corner, i) => {
    const [x0, y0] = plane.toPlane(was[i] ?? corner);
    const [x1, y1] = plane.toPlane(corner);
    return Math.hypot(x1 - x0, y1 - y0);
  });
  return Math.max(...moves);
}

/** The picture lies otherwise than before, by more than a millimetre at a corner. */
export function isPictureMoved(before: OwnPicture, now: OwnPicture): boolean {
  const isSame = before.toGround === now.toGround && before.origin === now.origin;
  return !isSame && cornerMoveM(before, now) > STILL_M;
}

/** The zone lies on the ground and says that it was measured by this picture. */
export function isTracedOn(zone: Zone, picture: OwnPicture): boolean {
  return zone.isPlaced && zone.survey.source !== '' && zone.survey.source === picture.name;
}

/**
 * A zone traced over a picture, brought along when the picture is laid otherwise: every corner, and every
 * point of its curves, keeps its pixel. Its corner error takes the new fit in place of the old and grows
 * with the pixels; its scale error is that of the new fit unless another was typed.
 * @returns null for a zone that is locked, or when the old placement is flattened to a line
 */
export function carryTraced(zone: Zone, before: OwnPicture, now: OwnPicture): Zone | null {
  if (isLockedZone(zone) || pixelOfPlace(before, before.origin) === null) return null;
  const carried = moveOutline(zone, (place) => {
    const pixel = pixelOfPlace(before, place);
    return pixel ? roundPosition(placeOfPixel(now, pixel)) : place;
  });
  return { ...carried, survey: carrySurvey(zone.survey, before, now) };
}

function carrySurvey(survey: Survey, before: OwnPicture, now: OwnPicture): Survey {
  const factor = groundResolutionOf(now.toGround) / groundResolutionOf(before.toGround);
  const ownSquare = Math.max(0, survey.vertexSigmaM ** 2 - before.sigmaM ** 2);
  const vertexSigmaM = Number(Math.hypot(factor * Math.sqrt(ownSquare), now.sigmaM).toPrecision(2));
  const scaleSigma = survey.scaleSigma === before.scaleSigma ? now.scaleSigma : survey.scaleSigma;
  return { ...survey, vertexSigmaM, scaleSigma };
}
