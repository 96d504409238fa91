import { type PictureLevel, TILE_PX } from '../survey/picture/types';

/** A piece of one level, uncompressed. */
export interface RawTile {
  readonly level: number;
  readonly col: number;
  readonly row: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** widthPx · heightPx · 4 bytes: red, green, blue, opacity. */
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  /** every pixel fully opaque. */
  readonly isOpaque: boolean;
}

/** The levels of a picture: full size first, halved (rounded up) until both sides fit in one tile. */
export function levelsOf(widthPx: number, heightPx: number): readonly PictureLevel[] {
  const levels: PictureLevel[] = [];
  let [width, height] = [widthPx, heightPx];
  for (;;) {
    levels.push({
      widthPx: width,
      heightPx: height,
      cols: Math.ceil(width / TILE_PX),
      rows: Math.ceil(height / TILE_PX),
    });
    if (width <= TILE_PX && height <= TILE_PX) return levels;
    [width, height] = [Math.ceil(width / 2), Math.ceil(height / 2)];
  }
}

/** Takes the rows of a picture from top to bottom and gives out the tiles of all levels as soon as they are whole. */
export interface TilePyramid {
  /** @param rows whole rows of the full-size picture, any number of them */
  push(rows: Uint8ClampedArray): Promise<void>;
}

/**
 * Cuts a picture into tiles while it is read. Each level holds one row of tiles at most, so the memory
 * needed is twice that of 512 full rows. Four pixels make one of the next level: their mean, weighted by
 * opacity; at an odd edge two or one.
 * @param give called with every tile, level by level as they fill; its promise is waited for
 */
export function createTilePyramid(
  widthPx: number,
  heightPx: number,
  give: (tile: RawTile) => Promise<void>,
): TilePyramid {
  const bands = levelsOf(widthPx, heightPx).map((level, index) => ({
    ...level,
    index,
    data: new Uint8ClampedArray(level.widthPx * Math.min(TILE_PX, level.heightPx) * 4),
    /** rows of the level taken so far, and of them those in `data`. */
    taken: 0,
    filled: 0,
  }));
  type Band = (typeof bands)[number];

  async function flush(band: Band): Promise<void> {
    const tileRow = Math.ceil(band.taken / TILE_PX) - 1;
    for (let col = 0; col < band.cols; col++) {
      await give(cutTile(band, col, tileRow));
    }
    const next = bands[band.index + 1];
    if (next !== undefined) await add(next, halve(band.data, band.widthPx, band.filled));
    band.filled = 0;
  }

  async function add(band: Band, rows: Uint8ClampedArray): Promise<void> {
    const rowBytes = band.widthPx * 4;
    let from = 0;
    while (from < rows.length) {
      const left = band.heightPx - band.taken;
      const count = Math.min((rows.length - from) / rowBytes, TILE_PX - band.filled, left);
      if (!(count > 0) || !Number.isInteger(count)) {
        throw new RangeError(`More rows than the picture has, or no whole rows: ${count} of ${left}.`);
      }
      band.data.set(rows.subarray(from, from + count * rowBytes), band.filled * rowBytes);
      from += count * rowBytes;
      band.filled += count;
      band.taken += count;
      if (band.filled === TILE_PX || band.taken === band.heightPx) await flush(band);
    }
  }

  return { push: (rows) => add(bands[0] as Band, rows) };
}

function cutTile(
  band: {
    readonly index: number;
    readonly widthPx: number;
    readonly filled: number;
    readonly data: Uint8ClampedArray;
  },
  col: number,
  row: number,
): RawTile {
  const left = col * TILE_PX;
  const width = Math.min(TILE_PX, band.widthPx - left);
  const data = new Uint8ClampedArray(width * band.filled * 4);
  for (let y = 0; y < band.filled; y++) {
    const from = (y * band.widthPx + left) * 4;
    data.set(band.data.subarray(from, from + width * 4), y * width * 4);
  }
  return {
    level: band.index,
    col,
    row,
    widthPx: width,
    heightPx: band.filled,
    data,
    isOpaque: isOpaque(data),
  };
}

function isOpaque(data: Uint8ClampedArray): boolean {
  for (let i = 3; i < data.length; i += 4) if (data[i] !== 255) return false;
  return true;
}

/** Rows at half the size: means of 2 × 2 pixels, weighted by opacity. */
function halve(data: Uint8ClampedArray, width: number, height: number): Uint8ClampedArray {
  const [outWidth, outHeight] = [Math.ceil(width / 2), Math.ceil(height / 2)];
  const out = new Uint8ClampedArray(outWidth * outHeight * 4);
  const at = (index: number) => data[index] as number;
  for (let y = 0; y < outHeight; y++) {
    const top = 2 * y * width * 4;
    const below = 2 * y + 1 < height ? top + width * 4 : top;
    for (let x = 0; x < outWidth; x++) {
      const left = 2 * x * 4;
      const right = 2 * x + 1 < width ? left + 4 : left;
      const [a, b, c, d] = [top + left, top + right, below + left, below + right];
      const [wa, wb, wc, wd] = [at(a + 3), at(b + 3), at(c + 3), at(d + 3)];
      const weight = wa + wb + wc + wd;
      const to = (y * outWidth + x) * 4;
      if (weight === 1020) {
        for (let k = 0; k < 3; k++) out[to + k] = (at(a + k) + at(b + k) + at(c + k) + at(d + k)) / 4;
        out[to + 3] = 255;
      } else if (weight > 0) {
        for (let k = 0; k < 3; k++) {
          out[to + k] = (at(a + k) * wa + at(b + k) * wb + at(c + k) * wc + at(d + k) * wd) / weight;
        }
        out[to + 3] = weight / 4;
      }
    }
  }
  return out;
}
