import { SUGGESTED_SIGMA_M, suggestedSurvey } from '../yard/defaults';
import type { BaseLayer, Survey, SurveyMethod } from '../yard/types';
import { tilePixelM } from './tilePixel';

/** What was traced over, as far as it decides how well a corner can be found on it. */
export interface PictureBasis {
  readonly name: string;
  /** ground width of one pixel, m; null: not known. */
  readonly pixelM: number | null;
  /** standard deviation of the picture's own fit to the ground, in each of x and y, m. */
  readonly fitSigmaM: number;
  readonly scaleSigma: number;
}

/** How corners came about. */
export interface SigmaBasis {
  readonly method: SurveyMethod;
  /** ground metres for one px of the screen while it was drawn; null: not drawn on the screen. */
  readonly screenPixelM: number | null;
  /** true: pointed at with a finger. */
  readonly isTouch: boolean;
  /** null: on the plain grid. */
  readonly picture: PictureBasis | null;
}

/** One part of a corner's error, one standard deviation in each of x and y. */
export interface SigmaTerm {
  readonly what: 'pointing' | 'resolution' | 'unknown-resolution' | 'fit' | 'usual';
  readonly sigmaM: number;
}

export interface SuggestedSigma {
  readonly survey: Survey;
  /** what the corner error is made of: its square is the sum of their squares. */
  readonly terms: readonly SigmaTerm[];
}

/** How far from a corner seen on the screen people point, one sigma, CSS px; common practice, no source. */
export const POINTING_PX = { mouse: 2.5, touch: 8 } as const;
/** How well a corner is made out in a picture, in its pixels, one sigma; common practice, no source. */
export const SEEN_PIXELS = 0.5;
/** Pixel of an aerial picture that tells none, m; common practice, no source. */
export const USUAL_PIXEL_M = 0.3;
/** Relative error of the scale of a public aerial picture; common practice, no source. */
const AERIAL_SCALE_SIGMA = 0.002;

/**
 * Survey record to begin with: sigma of a corner from pointing on the screen, the grain of the picture
 * and the picture's own fit, as the root of the sum of their squares. Ways that do not trace have their
 * usual values. The person may type others.
 *
 * ASPRS (2014), Positional Accuracy Standards, annex B (from memory; its 1990 classes of 2, 4 and 6 pixels read), holds digital orthoimagery to 1 to 2 pixels in
 * each of x and y; that is of absolute places. A shift common to all corners does not change an area, so
 * only what differs from corner to corner stands here.
 */
export function suggestSigma({ method, screenPixelM, isTouch, picture }: SigmaBasis): SuggestedSigma {
  const usual = suggestedSurvey(method);
  if (method !== 'traced') return { survey: usual, terms: [{ what: 'usual', sigmaM: usual.vertexSigmaM }] };
  if (picture === null) {
    // drawn on the plain grid: the lengths are what the person says they are
    const sigmaM = SUGGESTED_SIGMA_M.typed;
    return { survey: suggestedSurvey('typed'), terms: [{ what: 'usual', sigmaM }] };
  }
  const terms: SigmaTerm[] = [];
  if (screenPixelM !== null && screenPixelM > 0)
    terms.push({
      what: 'pointing',
      sigmaM: screenPixelM * (isTouch ? POINTING_PX.touch : POINTING_PX.mouse),
    });
  terms.push({
    what: picture.pixelM === null ? 'unknown-resolution' : 'resolution',
    sigmaM: SEEN_PIXELS * (picture.pixelM ?? USUAL_PIXEL_M),
  });
  if (picture.fitSigmaM > 0) terms.push({ what: 'fit', sigmaM: picture.fitSigmaM });
  const vertexSigmaM = roundSigma(Math.hypot(...terms.map((term) => term.sigmaM)));
  const { name: source, scaleSigma } = picture;
  return { survey: { method, vertexSigmaM, scaleSigma, source }, terms };
}

/** Two digits are all that an error of an error bears. */
function roundSigma(sigmaM: number): number {
  return Number(sigmaM.toPrecision(2));
}

/**
 * How well corners can be found on a base layer at a latitude; null for the plain grid.
 * @param latitudeDeg of the yard
 */
export function pictureBasis(layer: BaseLayer, latitudeDeg: number): PictureBasis | null {
  switch (layer.kind) {
    case 'grid':
      return null;
    case 'xyz':
      return {
        name: layer.name,
        pixelM: tilePixelM(latitudeDeg, layer.maxNativeZoom),
        fitSigmaM: 0,
        scaleSigma: AERIAL_SCALE_SIGMA,
      };
    case 'wms':
      return { name: layer.name, pixelM: null, fitSigmaM: 0, scaleSigma: AERIAL_SCALE_SIGMA };
    case 'picture':
      return { name: layer.name, pixelM: null, fitSigmaM: 0, scaleSigma: 0 };
    case 'own-picture': {
      const [a, b, , d, e] = layer.toGround;
      const pixelM = Math.sqrt(Math.abs(a * e - b * d));
      return { name: layer.name, pixelM, fitSigmaM: layer.sigmaM, scaleSigma: layer.scaleSigma };
    }
  }
}
