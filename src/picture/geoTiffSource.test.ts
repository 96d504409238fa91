import { openAsBlob } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openGeoTiff } from './geoTiffSource';

/*
 * Small TIFFs written by libtiff and libgeotiff (raw2tiff, tiffcp, tiffmedian, tiffdither, geotifcp), 48 × 40
 * pixels: red is 5 · column, green 6 · row, blue 2 · (column + row).
 */
const open = async (name: string) =>
  openGeoTiff(
    await openAsBlob(fileURLToPath(new URL(`../../tests/fixtures/pictures/${name}.tif`, import.meta.url))),
  );
async function opened(name: string) {
  const result = await open(name);
  if (!result.ok) throw new Error(result.issue.message);
  expect([result.source.widthPx, result.source.heightPx]).toEqual([48, 40]);
  return result;
}
/** One pixel, read as the reading does: in bands of rows. */
async function pixel(name: string, col: number, row: number): Promise<readonly number[]> {
  const { source } = await opened(name);
  const from = Math.floor(row / 7) * 7;
  const rows = await source.readRows(from, Math.min(7, 40 - from));
  const at = ((row - from) * 48 + col) * 4;
  return [...rows.slice(at, at + 4)];
}
const PIXELS = [
  [0, 0],
  [47, 39],
  [20, 17],
] as const;

describe('kinds of TIFF', () => {
  it.each(['utm-tiles-deflate', 'state-plane-point-strips-lzw', 'turned-packbits', 'separate-planes'])(
    '%s: every pixel as written',
    async (name) => {
      for (const [col, row] of PIXELS) {
        expect(await pixel(name, col, row)).toEqual([5 * col, 6 * row, 2 * (col + row), 255]);
      }
    },
  );

  it('JPEG: near what was written', async () => {
    for (const [col, row] of PIXELS) {
      const [red = 0, green = 0, blue = 0, opacity] = await pixel('jpeg', col, row);
      const off = Math.max(...[red - 5 * col, green - 6 * row, blue - 2 * (col + row)].map(Math.abs));
      expect(off, `${col} ${row}`).toBeLessThan(24);
      expect(opacity).toBe(255);
    }
  });

  it('palette: the colours that libtiff’s own tiff2rgba gives', async () => {
    expect(await pixel('palette', 0, 0)).toEqual([0, 0, 0, 255]);
    expect(await pixel('palette', 47, 39)).toEqual([232, 224, 216, 255]);
    expect(await pixel('palette', 20, 17)).toEqual([232, 224, 216, 255]);
  });

  it('opacity', async () => {
    expect(await pixel('opacity', 10, 5)).toEqual([50, 30, 100, 255]);
    expect(await pixel('opacity', 30, 5)).toEqual([0, 0, 0, 0]);
  });

  it('16 bits are stretched, and the person is told', async () => {
    const { issues } = await opened('grey-16-bit');
    expect(issues.map((issue) => issue.code)).toEqual(['picture-stretched']);
    // written: 1000 + 40 · column + 10 · row, from 1000 to 3270; the outermost hundredths are cut off
    const [dark = 0] = await pixel('grey-16-bit', 0, 0);
    const [middle = 0] = await pixel('grey-16-bit', 24, 20);
    const [light = 0] = await pixel('grey-16-bit', 47, 39);
    expect([dark, light]).toEqual([0, 255]);
    expect(Math.abs(middle - (255 * (2160 - 1000)) / 2270)).toBeLessThan(8);
  });

  it('fax compression is refused by its name', async () => {
    expect(await open('fax')).toMatchObject({
      ok: false,
      issue: { message: expect.stringContaining('CCITT fax group 4') },
    });
  });

  it('a file cut off or none at all is refused', async () => {
    const whole = await openAsBlob(
      fileURLToPath(new URL('../../tests/fixtures/pictures/utm-tiles-deflate.tif', import.meta.url)),
    );
    for (const broken of [
      whole.slice(0, 100),
      whole.slice(0, 6),
      new Blob(['II*\0 and then nothing of the kind']),
    ]) {
      expect(await openGeoTiff(broken)).toMatchObject({ ok: false });
    }
  });
});

describe('where it lies', () => {
  it('pixels as areas: the tie point is the first pixel’s corner', async () => {
    const { position } = await opened('utm-tiles-deflate');
    expect(position).toEqual({ crs: 'EPSG:26914', toProjected: [0.5, 0, 686000, 0, -0.5, 3653000] });
  });

  it('pixels as points: the tie point is the first pixel’s centre', async () => {
    const { position } = await opened('state-plane-point-strips-lzw');
    expect(position).toEqual({ crs: 'EPSG:2276', toProjected: [1, 0, 2428000 - 0.5, 0, -2, 7050000 + 1] });
  });

  it('turned', async () => {
    expect((await opened('turned-packbits')).position?.toProjected).toEqual([
      0.4, 0.3, 686000, 0.3, -0.4, 3653000,
    ]);
  });

  it('without tags, nowhere', async () => {
    expect((await opened('jpeg')).position).toBeNull();
  });
});
