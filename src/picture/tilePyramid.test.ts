import { describe, expect, it } from 'vitest';
import { createTilePyramid, levelsOf, type RawTile } from './tilePyramid';

type Pixel = (x: number, y: number) => readonly [number, number, number, number];

/** Cuts a picture given by its pixels, pushed in bands of `band` rows. */
async function cut(width: number, height: number, band: number, pixel: Pixel): Promise<readonly RawTile[]> {
  const tiles: RawTile[] = [];
  const pyramid = createTilePyramid(width, height, async (tile) => {
    tiles.push(tile);
  });
  for (let from = 0; from < height; from += band) {
    const rows = new Uint8ClampedArray(width * Math.min(band, height - from) * 4);
    for (let i = 0; i < rows.length / 4; i++) rows.set(pixel(i % width, from + Math.floor(i / width)), 4 * i);
    await pyramid.push(rows);
  }
  return tiles;
}
const at = (tiles: readonly RawTile[], level: number, x: number, y: number): readonly number[] => {
  const tile = tiles.find((one) => one.level === level && one.col === x >> 9 && one.row === y >> 9);
  if (!tile) throw new Error(`no tile at ${level}, ${x}, ${y}`);
  const from = ((y & 511) * tile.widthPx + (x & 511)) * 4;
  return [...tile.data.slice(from, from + 4)];
};

describe('levels', () => {
  it.each([
    [512, 512, ['512 × 512, 1 × 1']],
    [513, 100, ['513 × 100, 2 × 1', '257 × 50, 1 × 1']],
    [1, 2049, ['1 × 2049, 1 × 5', '1 × 1025, 1 × 3', '1 × 513, 1 × 2', '1 × 257, 1 × 1']],
  ])('of %i × %i pixels', (width, height, wanted) => {
    const told = levelsOf(width, height).map((l) => `${l.widthPx} × ${l.heightPx}, ${l.cols} × ${l.rows}`);
    expect(told).toEqual(wanted);
  });

  it('of 8,000 × 8,000: five, 341 tiles in all', () => {
    const levels = levelsOf(8000, 8000);
    expect(levels.map((level) => level.cols * level.rows)).toEqual([256, 64, 16, 4, 1]);
  });
});

describe('tiles', () => {
  const gradient: Pixel = (x, y) => [x & 255, y & 255, (x >> 8) * 16 + (y >> 8), 255];

  it.each([1, 100, 512, 700, 1100])('full size is the picture itself, in bands of %i rows', async (band) => {
    const tiles = await cut(1030, 1100, band, gradient);
    expect(tiles.map((tile) => tile.level).filter((level) => level === 0)).toHaveLength(9);
    for (const [x, y] of [
      [0, 0],
      [511, 511],
      [512, 512],
      [1029, 0],
      [0, 1099],
      [1029, 1099],
      [700, 300],
    ] as const) {
      expect(at(tiles, 0, x, y)).toEqual(gradient(x, y));
    }
    expect(tiles.every((tile) => tile.isOpaque)).toBe(true);
    expect(tiles.find((tile) => tile.level === 0 && tile.col === 2 && tile.row === 2)).toMatchObject({
      widthPx: 6,
      heightPx: 76,
    });
  });

  it('each level halves the one before: means of 2 × 2 pixels, also across the bands', async () => {
    const tiles = await cut(600, 1200, 77, (x, y) => [4 * (x % 32), 4 * (y % 32), 100, 255]);
    // by hand: columns 2x and 2x + 1 hold 8x and 8x + 4
    expect(at(tiles, 1, 5, 7)).toEqual([42, 58, 100, 255]);
    expect(at(tiles, 1, 5, 519)).toEqual([42, 58, 100, 255]);
    expect(at(tiles, 2, 3, 3)).toEqual([4 * 13.5, 4 * 13.5, 100, 255]);
  });

  it('an odd edge keeps its own pixels', async () => {
    const tiles = await cut(513, 513, 512, (x, y) =>
      x === 512 || y === 512 ? [200, 0, 0, 255] : [0, 0, 0, 255],
    );
    expect(at(tiles, 1, 256, 256)).toEqual([200, 0, 0, 255]);
    expect(at(tiles, 1, 255, 255)).toEqual([0, 0, 0, 255]);
  });

  it('what is not there gives no colour to the mean', async () => {
    const tiles = await cut(600, 600, 512, (x) => (x % 2 === 0 ? [240, 120, 60, 255] : [0, 0, 0, 0]));
    expect(at(tiles, 1, 10, 10)).toEqual([240, 120, 60, 128]);
    expect(tiles.some((tile) => tile.isOpaque)).toBe(false);
  });

  it('more rows than the picture has are a mistake', async () => {
    const pyramid = createTilePyramid(2, 2, async () => undefined);
    await pyramid.push(new Uint8ClampedArray(16));
    await expect(pyramid.push(new Uint8ClampedArray(8))).rejects.toThrow(RangeError);
    await expect(
      createTilePyramid(2, 2, async () => undefined).push(new Uint8ClampedArray(4)),
    ).rejects.toThrow();
  });
});
