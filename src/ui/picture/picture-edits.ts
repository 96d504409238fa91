import { createPlane } from '../../measure/plane';
import { carryTraced, isPictureMoved, isTracedOn } from '../../survey/picture/carryTraced';
import { rotateFit, scaleFit, shiftFit } from '../../survey/picture/handMoves';
import type { OwnPicture } from '../../survey/picture/ownPicture';
import { refitPicture, UNKNOWN_SCALE_SIGMA } from '../../survey/picture/refitPicture';
import type { PictureMeta, PicturePosition, Pixel } from '../../survey/picture/types';
import { changeSettings } from '../../yard/edits';
import type { PictureFit, Position, Yard } from '../../yard/types';

/** Nothing is known yet of where a picture lies. */
export const NO_FIT: PictureFit = { kind: 'similarity', points: [], distances: [], northDeg: null };

/** The pictures of the person's own in a yard, in their order; one that is only shown comes last. */
export function ownPictures({ settings: { baseLayer, ownLayers } }: Yard): readonly OwnPicture[] {
  const kept = ownLayers.filter((layer) => layer.kind === 'own-picture');
  const isLoose = baseLayer.kind === 'own-picture' && !kept.some((layer) => layer.id === baseLayer.id);
  return isLoose ? [...kept, baseLayer] : kept;
}

/** Adds a picture and shows it. */
export function addPicture(yard: Yard, picture: OwnPicture): Yard {
  return changeSettings(yard, {
    baseLayer: picture,
    ownLayers: [...yard.settings.ownLayers, picture],
  });
}

/** The yard after a change of a picture, with the zones traced over it brought along; locked ones stay. */
export function carryTracedZones(before: Yard, after: Yard, id: string): Yard {
  const find = (yard: Yard) => ownPictures(yard).find((each) => each.id === id);
  const [was, now] = [find(before), find(after)];
  if (!was || !now || (was.scaleSigma === now.scaleSigma && !isPictureMoved(was, now))) return after;
  const zones = after.zones.map(
    (zone) => (isTracedOn(zone, was) ? carryTraced(zone, was, now) : null) ?? zone,
  );
  return { ...after, zones };
}

/** Takes a picture off the list; its file stays in the browser until the yard is opened anew, for undo. */
export function removePicture(yard: Yard, id: string): Yard {
  const { baseLayer, ownLayers } = yard.settings;
  return changeSettings(yard, {
    ownLayers: ownLayers.filter((layer) => !('id' in layer && layer.id === id)),
    ...('id' in baseLayer && baseLayer.id === id ? { baseLayer: { kind: 'grid' as const } } : {}),
  });
}

/** A picture just read, laid flat with its middle at a place. @param widthM guess of its width on the ground */
export function layFlat(meta: PictureMeta, id: string, middle: Position, widthM: number): OwnPicture {
  const mPerPx = widthM / meta.widthPx;
  return {
    kind: 'own-picture',
    id,
    name: meta.name,
    attribution: '',
    pictureId: meta.pictureId,
    widthPx: meta.widthPx,
    heightPx: meta.heightPx,
    origin: middle,
    toGround: [mPerPx, 0, (-mPerPx * meta.widthPx) / 2, 0, -mPerPx, (mPerPx * meta.heightPx) / 2],
    opacity: 1,
    sigmaM: 0,
    scaleSigma: UNKNOWN_SCALE_SIGMA,
    fit: NO_FIT,
  };
}

/** The picture where its own file says it lies. */
export function layByPosition(picture: OwnPicture, position: PicturePosition): OwnPicture {
  const { origin, toGround, sigmaM, scaleSigma } = position;
  return { ...picture, origin, toGround, sigmaM, scaleSigma, fit: null };
}

/** Other measurements of a picture, which is laid by them at once. */
export function changeFit(picture: OwnPicture, change: (fit: PictureFit) => PictureFit): OwnPicture {
  return refitPicture({ ...picture, fit: change(picture.fit ?? NO_FIT) }).picture;
}

/** Direction of an arrow in the picture, degrees clockwise from its top edge, -180 to 180. */
export function arrowDeg(from: Pixel, to: Pixel): number {
  return (Math.atan2(to[0] - from[0], from[1] - to[1]) * 180) / Math.PI;
}

/** Moves by hand; turning and scaling keep the ground under `about` where it is. */
export const handMoves = {
  shift: (picture: OwnPicture, eastM: number, northM: number): OwnPicture => ({
    ...picture,
    toGround: shiftFit(picture.toGround, eastM, northM),
  }),
  turn: (picture: OwnPicture, about: Position, deg: number): OwnPicture => ({
    ...picture,
    toGround: rotateFit(picture.toGround, createPlane(picture.origin).toPlane(about), deg),
  }),
  scale: (picture: OwnPicture, about: Position, factor: number): OwnPicture => ({
    ...picture,
    toGround: scaleFit(picture.toGround, createPlane(picture.origin).toPlane(about), factor),
  }),
};
