import type { XY } from '../../measure/types';
import type { Affine, Issue, Position } from '../../yard/types';

/** [col, row] in pixels from the picture's upper left corner: col to the right, row down; whole numbers are pixel edges. */
export type Pixel = readonly [number, number];

/**
 * Pixel to plane, metres: x = a·col + b·row + c, y = d·col + e·row + f (x east, y north). The first pixel's
 * upper left corner is (0, 0), its centre (0.5, 0.5).
 */
export type { Affine } from '../../yard/types';

/** A point found both in the picture and on the ground. */
export interface ControlPoint {
  readonly pixel: Pixel;
  /** metres in the plane of the fit. */
  readonly ground: XY;
  /** standard deviation of `ground` in each of x and y, metres; absent or 0: as good as the click. */
  readonly sigmaM?: number;
}

/** A length known on the ground between two points of the picture. */
export interface KnownDistance {
  readonly from: Pixel;
  readonly to: Pixel;
  readonly lengthM: number;
  /** standard deviation of `lengthM`; absent or 0: as good as the two clicks. */
  readonly sigmaM?: number;
}

/** `similarity`: one scale, turned and shifted, never mirrored. `affine`: two scales and a shear beside. */
export type FitKind = 'similarity' | 'affine';

/** How a picture lies on the ground, and how well that is known. */
export interface PictureFit {
  /** what was fitted: an affine fit asked for with fewer than three points is a similarity. */
  readonly kind: FitKind;
  readonly toGround: Affine;
  readonly residuals: {
    /** fitted minus given, in the order of the points, metres. */
    readonly points: readonly { readonly dxM: number; readonly dyM: number; readonly lengthM: number }[];
    /** in the order of the distances; difference is measured minus wanted, metres. */
    readonly distances: readonly {
      readonly measuredM: number;
      readonly wantedM: number;
      readonly differenceM: number;
    }[];
  };
  /** root mean square of the lengths of the points' residuals (of the distances' differences where there are no points), metres. */
  readonly rmsM: number;
  /**
   * standard deviation of one point's place in each of x and y, metres, found from the residuals
   * (a posteriori); null without more measurements than unknowns.
   */
  readonly sigmaM: number | null;
  /** measurements beyond those needed. */
  readonly redundancy: number;
  /** relative standard deviation of lengths measured on the picture, such as 0.002; an area's is twice it. */
  readonly scaleSigma: number;
  /** side of the square with the ground area of one pixel, metres. */
  readonly groundResolutionM: number;
  /** bearing of the picture's up, degrees clockwise from north, 0 to below 360. */
  readonly rotationDeg: number;
  /** by how much the north arrow given points beside north as fitted, degrees, -180 to 180; null when it set the fit or none was given. */
  readonly northDifferenceDeg: number | null;
}

/** A fit, or the reason why there is none. */
export type PictureFitResult =
  | ({ readonly ok: true } & PictureFit)
  | { readonly ok: false; readonly issue: Issue };

/** A picture's place on the Earth. */
export interface PicturePosition {
  /** origin of the plane of `toGround` (`createPlane(origin)`). */
  readonly origin: Position;
  readonly toGround: Affine;
  /** standard deviation of a point read off the picture, in each of x and y, metres. */
  readonly sigmaM: number;
  /** relative standard deviation of lengths; 0 where the file's own position is taken at its word. */
  readonly scaleSigma: number;
  /** largest distance between the affine place of a pixel and its true one, metres (curved projections). */
  readonly residualM: number;
  /** name of the coordinate system the position was given in. */
  readonly crsName: string;
  /** for the person: where the position came from and what is left out of it. */
  readonly note: string;
}

/** One level of a picture's tiles: level 0 is full size, each next one half of it. */
export interface PictureLevel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly cols: number;
  readonly rows: number;
}

/** Side of a tile, pixels; tiles at the right and lower edge are cut to the picture. */
export const TILE_PX = 512;

/** What is stored of a picture beside its tiles. */
export interface PictureMeta {
  readonly pictureId: string;
  /** the yard it was opened for; it goes when the yard goes. */
  readonly yardId: string;
  /** file name. */
  readonly name: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly levels: readonly PictureLevel[];
  /** stored size of all tiles. */
  readonly bytes: number;
  /** where the file itself says the picture lies; null when it does not say, or not wholly (`unplaced`). */
  readonly position: PicturePosition | null;
  /**
   * the file gives coordinates but no coordinate system that can be used: pixel to those coordinates, for
   * `placeInCrs` once the person names the system. Null otherwise.
   */
  readonly unplaced: { readonly toProjected: Affine; readonly message: string } | null;
  /** where the camera stood, by the picture's own record; a place to begin, no position. */
  readonly cameraPosition: Position | null;
  /** notes for the person, such as a smaller version taken because the full one is too large. */
  readonly issues: readonly Issue[];
}
