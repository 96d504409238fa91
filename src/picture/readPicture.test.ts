import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PictureMeta } from '../survey/picture/types';
import { readPicture } from './readPicture';
import type { CutTile } from './types';

/* The whole reading but for the browser's own decoding and encoding of pictures, which Node has not. */
const ids = { pictureId: 'p-1', yardId: 'y-1' };
const fixture = (name: string, as = name) =>
  new File(
    [readFileSync(fileURLToPath(new URL(`../../tests/fixtures/pictures/${name}`, import.meta.url)))],
    as,
  );
const textFile = (name: string, text: string) => new File([text], name);

async function read(...files: readonly File[]) {
  const tiles: CutTile[] = [];
  const shares: number[] = [];
  const result = await readPicture(
    files,
    ids,
    async (tile) => {
      tiles.push(tile);
    },
    ({ share }) => shares.push(share),
  );
  return { result, tiles, shares };
}
async function metaOf(...files: readonly File[]): Promise<PictureMeta> {
  const { result } = await read(...files);
  if (!result.ok) throw new Error(result.issue.message);
  return result.meta;
}
const messageOf = async (...files: readonly File[]) => {
  const { result } = await read(...files);
  return result.ok ? 'read' : result.issue.message;
};

beforeEach(() => {
  vi.stubGlobal(
    'OffscreenCanvas',
    class {
      getContext() {
        return { putImageData: () => undefined };
      }
      async convertToBlob({ type }: { type: string }) {
        return new Blob(['0123456789'], { type });
      }
    },
  );
  vi.stubGlobal('ImageData', class {});
});
afterEach(() => vi.unstubAllGlobals());

describe('a GeoTIFF', () => {
  it('is cut and placed by itself', async () => {
    const { result, tiles, shares } = await read(fixture('utm-tiles-deflate.tif'));
    expect(tiles.map(({ level, col, row }) => [level, col, row])).toEqual([[0, 0, 0]]);
    expect(shares.at(-1)).toBe(1);
    expect(result).toMatchObject({
      ok: true,
      meta: { ...ids, name: 'utm-tiles-deflate.tif', widthPx: 48, heightPx: 40, bytes: 10, unplaced: null },
    });
    const { position } = await metaOf(fixture('utm-tiles-deflate.tif'));
    // 24 m east and 20 m south, halved, from 686000, 3653000: PROJ 9.1.1 puts that corner at −97.009077, 32.999572
    expect(position?.origin[0]).toBeCloseTo(-97.009077 + 12 / 93450, 5);
    expect(position?.origin[1]).toBeCloseTo(32.999572 - 10 / 110900, 5);
    expect(position?.note).toContain('4 m');
  });

  it('without a position lies nowhere; a world file and a .prj file beside it place it', async () => {
    const world = textFile('yard.tfw', '0.5\n0\n0\n-0.5\n686000.25\n3652999.75\n');
    const prj = textFile('yard.prj', 'EPSG:26914');
    expect(await metaOf(fixture('jpeg.tif', 'yard.tif'))).toMatchObject({ position: null, unplaced: null });
    const placed = await metaOf(fixture('jpeg.tif', 'yard.tif'), prj, world);
    const own = await metaOf(fixture('utm-tiles-deflate.tif'));
    expect(placed.position).toEqual(own.position);
  });

  it('with a world file alone waits for the name of the system', async () => {
    const world = textFile('yard.tfw', '0.5\n0\n0\n-0.5\n686000.25\n3652999.75\n');
    const { position, unplaced } = await metaOf(fixture('jpeg.tif', 'yard.tif'), world);
    expect(position).toBeNull();
    expect(unplaced?.toProjected).toEqual([0.5, 0, 686000, 0, -0.5, 3653000]);
    expect(unplaced?.message).toContain('do not say in which coordinate system');
  });

  it('with a world file in degrees is placed', async () => {
    const world = textFile('yard.tfw', '0.000001\n0\n0\n-0.000001\n-97\n33\n');
    expect((await metaOf(fixture('jpeg.tif', 'yard.tif'), world)).position?.crsName).toBe('WGS 84');
  });

  it('with a system that cannot be understood waits, and says why', async () => {
    const world = textFile('yard.tfw', '0.5\n0\n0\n-0.5\n686000.25\n3652999.75\n');
    const meta = await metaOf(
      fixture('jpeg.tif', 'yard.tif'),
      world,
      textFile('yard.prj', 'PROJCS["odd",broken'),
    );
    expect(meta.unplaced?.message).toContain('odd');
  });

  it('a side file of another name, or that cannot be read, is told and left out', async () => {
    const meta = await metaOf(
      fixture('jpeg.tif', 'yard.tif'),
      textFile('other.tfw', '1\n0\n0\n-1\n0\n0\n'),
      textFile('yard.wld', 'none\n'),
    );
    expect(meta.issues.map((issue) => [issue.code, issue.severity])).toEqual([
      ['picture-side-file', 'note'],
      ['world-file', 'warning'],
    ]);
  });
});

describe('what is refused', () => {
  it.each([
    ['nothing', [], 'no picture among the files'],
    ['a world file alone', [textFile('a.tfw', '1')], 'no picture among the files'],
    ['two pictures', [textFile('a.png', 'x'), textFile('b.png', 'y')], '“a.png”, “b.png”'],
    ['an empty file', [textFile('a.png', '')], 'is empty'],
    ['text named as a picture', [textFile('a.png', 'no picture at all')], 'no picture that can be read'],
    ['a PDF', [textFile('plat.pdf', '%PDF-1.7 and so on')], 'is a PDF'],
    ['a HEIC photo', [textFile('IMG.HEIC', '\0\0\0\x18ftypheic')], 'is a HEIC photo'],
    ['an SVG', [textFile('a.svg', '<svg width="10" height="10"></svg>')], 'no picture that can be read'],
  ])('%s', async (_, files, words) => {
    expect(await messageOf(...files)).toContain(words);
  });

  it('a picture too large, by its header alone, with the limit', async () => {
    const png = (width: number, height: number) => {
      const bytes = new Uint8Array(40);
      bytes.set([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82]);
      new DataView(bytes.buffer).setUint32(16, width);
      new DataView(bytes.buffer).setUint32(20, height);
      return new File([bytes], 'big.png');
    };
    expect(await messageOf(png(20000, 100))).toContain('16,384');
    expect(await messageOf(png(15000, 15000))).toContain('150 million is the most');
    expect(await messageOf(png(1, 1))).toContain('too few');
  });
});
