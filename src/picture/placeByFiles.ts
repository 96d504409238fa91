import { applyAffine } from '../survey/picture/affine';
import type { Affine, PictureMeta } from '../survey/picture/types';
import { type CrsResult, loadCrs } from './crs';
import { placeInCrs } from './placeInCrs';

/** What the files say of a picture's place. */
export type FilePlace = Pick<PictureMeta, 'position' | 'unplaced'>;

/**
 * Places a picture by the coordinates of its files.
 * @param toProjected pixel to coordinates; null when the files give none
 * @param crs EPSG code or text of the coordinate system; null when the files do not name it. Then numbers
 *   that can only be degrees are taken as longitude and latitude, and any others wait for the person's word
 *   (`unplaced`)
 */
export async function placeByFiles(
  toProjected: Affine | null,
  crs: string | null,
  widthPx: number,
  heightPx: number,
): Promise<FilePlace> {
  if (toProjected === null) return { position: null, unplaced: null };
  const found: CrsResult | null =
    crs !== null
      ? await loadCrs(crs)
      : looksLikeDegrees(toProjected, widthPx, heightPx)
        ? await loadCrs(4326)
        : null;
  if (found === null) {
    const message =
      'The picture comes with coordinates, but its files do not say in which coordinate system. Name it, or set the picture by points.';
    return { position: null, unplaced: { toProjected, message } };
  }
  if (!found.ok) return { position: null, unplaced: { toProjected, message: found.issue.message } };
  const placed = placeInCrs(toProjected, widthPx, heightPx, found.crs);
  if (!placed.ok) return { position: null, unplaced: { toProjected, message: placed.issue.message } };
  return { position: placed.position, unplaced: null };
}

/** Corners inside ±180, ±90, and pixels of less than about 100 m: in metres or feet the picture would be smaller than an ant. */
function looksLikeDegrees(toProjected: Affine, widthPx: number, heightPx: number): boolean {
  const [a, b, , d, e] = toProjected;
  const pixel = Math.sqrt(Math.abs(a * e - b * d));
  const corners = [
    [0, 0],
    [widthPx, 0],
    [0, heightPx],
    [widthPx, heightPx],
  ] as const;
  return (
    pixel < 1e-3 &&
    corners.every((pixelAt) => {
      const [lon, lat] = applyAffine(toProjected, pixelAt);
      return Math.abs(lon) <= 180 && Math.abs(lat) < 90;
    })
  );
}
