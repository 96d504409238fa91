import { createPlane } from '../measure/plane';
import { adjustPicture } from '../survey/picture/adjust';
import { applyAffine, groundResolutionOf } from '../survey/picture/affine';
import type { Affine, ControlPoint, PicturePosition, Pixel } from '../survey/picture/types';
import type { Issue } from '../yard/types';
import type { Crs } from './crs';

/** Points along each side of the grid that the affine is fitted to. */
const GRID = 9;
/** A picture whose sides are longer is no yard's: the affine would bend away from it, m. */
const LARGEST_M = 50_000;
/** The affine may miss the true place of a pixel by this much before the person is told, m. */
const TOLD_M = 0.05;

/** A picture placed, or the reason why not. */
export type PlaceResult =
  | { readonly ok: true; readonly position: PicturePosition }
  | { readonly ok: false; readonly issue: Issue };

/**
 * Places a picture whose pixels have coordinates in a known system: each point of a grid over the picture
 * goes through the system's projection to the plane round the picture's middle, and an affine is fitted to
 * them by least squares. `residualM` tells how far it is from the projection itself at worst.
 * @param toProjected pixel (edges at whole numbers) to the system's coordinates, in its own unit
 * @returns an issue when the picture reaches out of the projection, is mirrored, or is too large for a yard
 */
export function placeInCrs(toProjected: Affine, widthPx: number, heightPx: number, crs: Crs): PlaceResult {
  const middle = crs.toLonLat(applyAffine(toProjected, [widthPx / 2, heightPx / 2]));
  if (middle === null) return outside(crs);
  const plane = createPlane(middle);
  const points: ControlPoint[] = [];
  for (let i = 0; i < GRID; i++) {
    for (let j = 0; j < GRID; j++) {
      const pixel: Pixel = [(widthPx * i) / (GRID - 1), (heightPx * j) / (GRID - 1)];
      const place = crs.toLonLat(applyAffine(toProjected, pixel));
      if (place === null) return outside(crs);
      points.push({ pixel, ground: plane.toPlane(place) });
    }
  }
  const reachM = Math.max(...points.map(({ ground }) => Math.hypot(ground[0], ground[1])));
  if (reachM > LARGEST_M) {
    const km = Math.round((2 * reachM) / 1000).toLocaleString('en');
    return fail(
      'picture-too-wide',
      `The picture would be ${km} km across: too large for a yard, or its coordinates are in another system than “${crs.name}”.`,
    );
  }
  const toGround = adjustPicture(points, [], 'affine')?.toGround;
  if (toGround === undefined || !toGround.every(Number.isFinite)) return outside(crs);
  if (toGround[0] * toGround[4] - toGround[1] * toGround[3] >= 0) {
    return fail(
      'picture-mirrored',
      'The file’s coordinates mirror the picture, so it cannot be laid on the map.',
    );
  }
  const residualM = Math.max(
    ...points.map(({ pixel, ground }) => {
      const [x, y] = applyAffine(toGround, pixel);
      return Math.hypot(x - ground[0], y - ground[1]);
    }),
  );
  const bend =
    residualM > TOLD_M
      ? `Laid flat, the picture’s edges lie up to ${residualM.toFixed(2)} m from their true place.`
      : '';
  return {
    ok: true,
    position: {
      origin: plane.origin,
      toGround,
      sigmaM: Math.hypot(groundResolutionOf(toGround), residualM),
      scaleSigma: 0,
      residualM,
      crsName: crs.name,
      note: [crs.note, bend].filter((part) => part !== '').join(' '),
    },
  };
}

function outside(crs: Crs): PlaceResult {
  return fail(
    'picture-outside-crs',
    `The picture’s coordinates lie outside “${crs.name}”. Is it the right coordinate system?`,
  );
}

function fail(code: string, message: string): { readonly ok: false; readonly issue: Issue } {
  return { ok: false, issue: { code, severity: 'error', message, place: {} } };
}
