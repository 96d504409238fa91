import type { Affine } from '../survey/picture/types';

/**
 * Pixel of a picture as shown to pixel of the same picture as its file holds it, for the eight orientations
 * of Exif (tag 0x0112). World files speak of the latter, browsers show the former.
 * Source: Exif 2.32 (CIPA DC-008), section 4.6.4, tag Orientation.
 * @param widthPx, heightPx of the picture as the file holds it
 */
export function shownToStored(orientation: number, widthPx: number, heightPx: number): Affine {
  switch (orientation) {
    case 2:
      return [-1, 0, widthPx, 0, 1, 0];
    case 3:
      return [-1, 0, widthPx, 0, -1, heightPx];
    case 4:
      return [1, 0, 0, 0, -1, heightPx];
    case 5:
      return [0, 1, 0, 1, 0, 0];
    case 6:
      return [0, 1, 0, -1, 0, heightPx];
    case 7:
      return [0, -1, widthPx, -1, 0, heightPx];
    case 8:
      return [0, -1, widthPx, 1, 0, 0];
    default:
      return [1, 0, 0, 0, 1, 0];
  }
}

/** Whether an orientation swaps width and height. */
export function isTurned(orientation: number): boolean {
  return orientation >= 5 && orientation <= 8;
}
