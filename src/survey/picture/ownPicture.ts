import { createPlane } from '../../measure/plane';
import type { BaseLayer, Position } from '../../yard/types';
import { applyAffine, invertAffine } from './affine';
import type { Pixel } from './types';

/** A picture of the person's own, as the document keeps it. */
export type OwnPicture = Extract<BaseLayer, { readonly kind: 'own-picture' }>;

type Laid = Pick<OwnPicture, 'origin' | 'toGround'>;

/** Where a pixel of a laid picture is, degrees. */
export function placeOfPixel({ origin, toGround }: Laid, pixel: Pixel): Position {
  return createPlane(origin).toLonLat(applyAffine(toGround, pixel));
}

/**
 * What pixel of a laid picture lies at a place, in or outside of the picture.
 * @returns null when the picture is flattened to a line
 */
export function pixelOfPlace({ origin, toGround }: Laid, place: Position): Pixel | null {
  const inverse = invertAffine(toGround);
  return inverse && applyAffine(inverse, createPlane(origin).toPlane(place));
}

/** The picture's corners, degrees: upper left, upper right, lower right, lower left, as its own top is up. */
export function cornersOfPicture(
  picture: Laid & Pick<OwnPicture, 'widthPx' | 'heightPx'>,
): readonly [Position, Position, Position, Position] {
  const { widthPx, heightPx } = picture;
  const at = (col: number, row: number) => placeOfPixel(picture, [col, row]);
  return [at(0, 0), at(widthPx, 0), at(widthPx, heightPx), at(0, heightPx)];
}

/** The pixel lies on the picture. */
export function isOnPicture(
  { widthPx, heightPx }: Pick<OwnPicture, 'widthPx' | 'heightPx'>,
  [col, row]: Pixel,
): boolean {
  return col >= 0 && row >= 0 && col <= widthPx && row <= heightPx;
}
