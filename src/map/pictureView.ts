import { createPlane } from '../measure/plane';
import { applyAffine } from '../survey/picture/affine';
import { type OwnPicture, pixelOfPlace } from '../survey/picture/ownPicture';
import { type PictureLevel, type Pixel, TILE_PX } from '../survey/picture/types';
import type { Position } from '../yard/types';
import type { TileKey } from './tileCache';

/** A place on the drawing surface, CSS px from its upper left. */
export type Spot = readonly [number, number];

/** How one tile lies on the surface: canvas transform from the tile's own px to CSS px. */
export interface LaidTile {
  readonly key: TileKey;
  readonly widthPx: number;
  readonly heightPx: number;
  /** a, b, c, d, e, f of the canvas: x = a·col + c·row + e, y = b·col + d·row + f. */
  readonly matrix: readonly [number, number, number, number, number, number];
}

/** A picture seen on a surface of the screen. */
export interface PictureView {
  readonly picture: OwnPicture;
  readonly levels: readonly PictureLevel[];
  /** place in degrees to a spot of the surface, and back. */
  toSpot(place: Position): Spot;
  toPlace(spot: Spot): Position;
  readonly width: number;
  readonly height: number;
  /** pixels of the screen to one CSS px. */
  readonly ratio: number;
}

/** More tiles than this are never wanted at once; a coarser level is taken instead. */
const MOST_TILES = 96;
/** A pixel of a level may cover up to 2 to this power pixels of the screen, side by side, before a finer level is taken. */
const UPSIZE_LOG2 = 0.25;

/** Pixels of the full picture to spots, exact for each pixel. */
function spotOf({ picture, toSpot }: PictureView): (pixel: Pixel) => Spot {
  const plane = createPlane(picture.origin);
  return (pixel) => toSpot(plane.toLonLat(applyAffine(picture.toGround, pixel)));
}

/** Box of whole-picture pixels that the surface shows; null when the picture is flat. */
function seenBox(view: PictureView): readonly [number, number, number, number] | null {
  const { width, height } = view;
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const spot of [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const) {
    const pixel = pixelOfPlace(view.picture, view.toPlace(spot));
    if (!pixel?.every(Number.isFinite)) return null;
    west = Math.min(west, pixel[0]);
    east = Math.max(east, pixel[0]);
    north = Math.min(north, pixel[1]);
    south = Math.max(south, pixel[1]);
  }
  return [west, north, east, south];
}

/** CSS px to one pixel of the full picture, in the middle of what is seen. */
export function scaleOfView(view: PictureView): number {
  const at = spotOf(view);
  const { widthPx, heightPx } = view.picture;
  const [x0, y0] = at([widthPx / 2, heightPx / 2]);
  const [x1, y1] = at([widthPx / 2 + 100, heightPx / 2]);
  const [x2, y2] = at([widthPx / 2, heightPx / 2 + 100]);
  return Math.sqrt(Math.abs((x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0))) / 100;
}

/** The level whose pixels come nearest to the screen's, a little on the fine side. */
export function levelFor(view: PictureView): number {
  const scale = scaleOfView(view) * view.ratio;
  const wanted = Math.floor(Math.log2(1 / scale) + UPSIZE_LOG2);
  return Math.max(0, Math.min(view.levels.length - 1, Number.isFinite(wanted) ? wanted : 0));
}

/** The tile's place on the surface. */
export function layTile(view: PictureView, key: TileKey): LaidTile | null {
  const level = view.levels[key.level];
  if (!level) return null;
  const at = spotOf(view);
  const [sx, sy] = [view.picture.widthPx / level.widthPx, view.picture.heightPx / level.heightPx];
  const [col, row] = [key.col * TILE_PX, key.row * TILE_PX];
  const widthPx = Math.min(TILE_PX, level.widthPx - col);
  const heightPx = Math.min(TILE_PX, level.heightPx - row);
  if (widthPx <= 0 || heightPx <= 0) return null;
  const [x, y] = at([col * sx, row * sy]);
  const [x1, y1] = at([(col + widthPx) * sx, row * sy]);
  const [x2, y2] = at([col * sx, (row + heightPx) * sy]);
  const matrix = [
    (x1 - x) / widthPx,
    (y1 - y) / widthPx,
    (x2 - x) / heightPx,
    (y2 - y) / heightPx,
    x,
    y,
  ] as const;
  return { key, widthPx, heightPx, matrix };
}

/** Box of a laid tile on the surface: left, top, right, bottom. */
export function boxOfTile({
  widthPx,
  heightPx,
  matrix,
}: LaidTile): readonly [number, number, number, number] {
  const [a, b, c, d, e, f] = matrix;
  const [ax, bx, cx, dx] = [a * widthPx, b * widthPx, c * heightPx, d * heightPx];
  return [
    e + Math.min(0, ax) + Math.min(0, cx),
    f + Math.min(0, bx) + Math.min(0, dx),
    e + Math.max(0, ax) + Math.max(0, cx),
    f + Math.max(0, bx) + Math.max(0, dx),
  ];
}

/** Tiles of one level that the surface shows, those nearest its middle first. */
export function tilesSeen(view: PictureView, level: number): LaidTile[] {
  const size = view.levels[level];
  const box = seenBox(view);
  if (!size || !box) return [];
  const [sx, sy] = [
    size.widthPx / view.picture.widthPx / TILE_PX,
    size.heightPx / view.picture.heightPx / TILE_PX,
  ];
  const [west, north, east, south] = [box[0] * sx, box[1] * sy, box[2] * sx, box[3] * sy];
  const cols = between(west, east, size.cols);
  const rows = between(north, south, size.rows);
  if (cols.length * rows.length > 4 * MOST_TILES && level + 1 < view.levels.length)
    return tilesSeen(view, level + 1);
  const seen: { readonly tile: LaidTile; readonly far: number }[] = [];
  for (const row of rows) {
    for (const col of cols) {
      const tile = layTile(view, { level, col, row });
      if (!tile) continue;
      const [left, top, right, bottom] = boxOfTile(tile);
      if (right < 0 || bottom < 0 || left > view.width || top > view.height) continue;
      const far = Math.hypot((left + right - view.width) / 2, (top + bottom - view.height) / 2);
      seen.push({ tile, far });
    }
  }
  if (seen.length > MOST_TILES && level + 1 < view.levels.length) return tilesSeen(view, level + 1);
  return seen.sort((a, b) => a.far - b.far).map(({ tile }) => tile);
}

function between(from: number, to: number, count: number): number[] {
  const first = Math.max(0, Math.floor(from));
  const last = Math.min(count - 1, Math.floor(to));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}
