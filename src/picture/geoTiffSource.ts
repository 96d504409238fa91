import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import type { Issue } from '../yard/types';
import { blobSource } from './blobSource';
import { type GeoPosition, positionOfTags } from './geoKeys';
import { checkSize } from './pictureHeader';
import { type RasterColors, rasterToRgba, rgbToRgba, stretchOf } from './rasterToRgba';
import { LONGEST_SIDE_PX, MOST_PIXELS, MOST_TIFF_PIXELS, pictureIssue, type RowSource } from './types';

/** A TIFF opened, or the reason why not. */
export type GeoTiffResult =
  | {
      readonly ok: true;
      readonly source: RowSource;
      /** full-size pixels to one pixel of the version that is read, along and down. */
      readonly scale: readonly [number, number];
      /** for the pixels of the version that is read; null when the file gives none. */
      readonly position: GeoPosition | null;
      readonly issues: readonly Issue[];
    }
  | { readonly ok: false; readonly issue: Issue };

/** Rows read at once, at least. */
const BAND_ROWS = 512;
const COMPRESSIONS: Readonly<Record<number, string>> = {
  2: 'CCITT fax',
  3: 'CCITT fax group 3',
  4: 'CCITT fax group 4',
  6: 'old-style JPEG',
  34712: 'JPEG 2000',
  33003: 'JPEG 2000',
  33005: 'JPEG 2000',
  50002: 'JPEG XL',
};
const READABLE = [undefined, 1, 5, 7, 8, 32946, 32773, 34887, 50000, 50001];

/**
 * Opens a TIFF or GeoTIFF (BigTIFF too) to be read in bands of rows: 8 and 16 bits and floating point,
 * grey, colour, palette, CMYK, YCbCr and CIELab; opacity, masks and no-data values; tiles and strips;
 * deflate, LZW, PackBits, JPEG, LERC, Zstandard, WebP. Where the full picture is too large, the largest
 * overview that is not is read. Decoding: geotiff.
 */
export async function openGeoTiff(file: Blob): Promise<GeoTiffResult> {
  let full: GeoTIFFImage;
  let images: readonly GeoTIFFImage[];
  try {
    const tiff = await GeoTIFF.fromSource(blobSource(file));
    images = await imagesOf(tiff);
    const [first] = images;
    if (first === undefined) throw new Error('no picture in it');
    full = first;
  } catch (error) {
    return fail('picture-unreadable', `The TIFF file is damaged or cut off (${reasonOf(error)}).`);
  }
  const issues: Issue[] = [];
  const image = [...images]
    .sort((a, b) => b.getWidth() - a.getWidth())
    .find((one) => kindOf(one) !== 'mask' && isSmallEnough(one) && isSameShape(one, full));
  if (image === undefined) {
    const issue = checkSize(full.getWidth(), full.getHeight(), MOST_TIFF_PIXELS);
    return {
      ok: false,
      issue: issue ?? pictureIssue('picture-unreadable', 'The TIFF file holds no picture.'),
    };
  }
  const compression = Number(image.fileDirectory.getValue('Compression') ?? 1);
  if (!READABLE.includes(compression)) {
    const name = COMPRESSIONS[compression] ?? `code ${compression}`;
    return fail(
      'picture-compression',
      `This TIFF is compressed in a way that cannot be read here (${name}). Save it as PNG, or as TIFF with LZW or deflate.`,
    );
  }
  const fillOrder = Number((await image.fileDirectory.loadValue('FillOrder')) ?? 1);
  if (fillOrder === 2 && ![1, 7].includes(compression)) {
    return fail(
      'picture-compression',
      'This TIFF stores its bits in reverse order, which cannot be read here. Save it anew with the usual order, or as PNG.',
    );
  }
  const [widthPx, heightPx] = [image.getWidth(), image.getHeight()];
  const blockRows = image.getTileHeight();
  if (blockRows > 4 * BAND_ROWS && widthPx * Math.min(blockRows, heightPx) > MOST_PIXELS) {
    return fail(
      'picture-too-large',
      'This TIFF is stored in one piece too large to be decoded. Save it with tiles or strips.',
    );
  }
  if (image !== full) {
    const message = `The picture has ${full.getWidth()} × ${full.getHeight()} pixels, too many to be kept here: its version with ${widthPx} × ${heightPx} was taken.`;
    issues.push({ code: 'picture-overview', severity: 'note', message, place: {} });
  }
  if (Number((await image.fileDirectory.loadValue('Orientation')) ?? 1) !== 1) {
    const message = 'The TIFF asks to be shown turned or mirrored; it is shown as it is stored.';
    issues.push({ code: 'picture-orientation', severity: 'warning', message, place: {} });
  }
  const scale = [full.getWidth() / widthPx, full.getHeight() / heightPx] as const;
  const tags = full.fileDirectory;
  const position = positionOfTags({
    ModelPixelScale: tags.getValue('ModelPixelScale') as ArrayLike<number> | undefined,
    ModelTiepoint: tags.getValue('ModelTiepoint') as ArrayLike<number> | undefined,
    ModelTransformation: tags.getValue('ModelTransformation') as ArrayLike<number> | undefined,
    keys: full.getGeoKeys() ?? {},
  });
  const mask = images.find(
    (one) => kindOf(one) === 'mask' && one.getWidth() === widthPx && one.getHeight() === heightPx,
  );
  try {
    const read = await readerOf(image, mask, issues);
    const source: RowSource = {
      widthPx,
      heightPx,
      bandRows: Math.min(heightPx, Math.max(1, Math.ceil(BAND_ROWS / blockRows)) * blockRows),
      readRows: (from, count) => read([0, from, widthPx, from + count]),
      close: () => undefined,
    };
    const scaled = position && {
      ...position,
      toProjected: scaleColumns(position.toProjected, scale),
    };
    return { ok: true, source, scale, position: scaled, issues };
  } catch (error) {
    return fail('picture-unreadable', `The TIFF’s kind of picture cannot be read here (${reasonOf(error)}).`);
  }
}

function scaleColumns(
  [a, b, c, d, e, f]: GeoPosition['toProjected'],
  [sx, sy]: readonly [number, number],
): GeoPosition['toProjected'] {
  return [a * sx, b * sy, c, d * sx, e * sy, f];
}

async function imagesOf(tiff: GeoTIFF): Promise<readonly GeoTIFFImage[]> {
  const count = await tiff.getImageCount();
  return Promise.all(Array.from({ length: Math.min(count, 40) }, (_, i) => tiff.getImage(i)));
}

function kindOf(image: GeoTIFFImage): 'full' | 'reduced' | 'mask' {
  const type = Number(image.fileDirectory.getValue('NewSubfileType') ?? 0);
  return (type & 4) !== 0 ? 'mask' : (type & 1) !== 0 ? 'reduced' : 'full';
}

function isSmallEnough(image: GeoTIFFImage): boolean {
  const [width, height] = [image.getWidth(), image.getHeight()];
  return (
    width >= 2 &&
    height >= 2 &&
    Math.max(width, height) <= LONGEST_SIDE_PX &&
    width * height <= MOST_TIFF_PIXELS
  );
}

/** Of the first picture's shape, to two pixels: other pages of the file are none of it. */
function isSameShape(image: GeoTIFFImage, full: GeoTIFFImage): boolean {
  const ratio = full.getWidth() / image.getWidth();
  return image === full || Math.abs(full.getHeight() / ratio - image.getHeight()) <= 2;
}

type Window = [number, number, number, number];
type ReadWindow = (window: Window) => Promise<Uint8ClampedArray<ArrayBuffer>>;

/** How a window of the image becomes pixels. */
async function readerOf(
  image: GeoTIFFImage,
  mask: GeoTIFFImage | undefined,
  issues: Issue[],
): Promise<ReadWindow> {
  const photometric = Number(image.fileDirectory.getValue('PhotometricInterpretation') ?? 1);
  const masked = (read: ReadWindow): ReadWindow =>
    mask === undefined
      ? read
      : async (window) => {
          const [pixels, seen] = await Promise.all([
            read(window),
            mask.readRasters({ window, interleave: true }),
          ]);
          const values = seen as unknown as ArrayLike<number>;
          for (let i = 0; i < values.length; i++) if (values[i] === 0) pixels.fill(0, 4 * i, 4 * i + 4);
          return pixels;
        };
  // CMYK, YCbCr, CIELab: the library's own turning to red, green and blue
  if ([5, 6, 8].includes(photometric)) {
    return masked(async (window) =>
      rgbToRgba((await image.readRGB({ window, interleave: true })) as unknown as ArrayLike<number>),
    );
  }
  const colors = await colorsOf(image, photometric, issues);
  const wanted = [...Array(colors.kind === 'rgb' ? 3 : 1).keys()];
  const samples = colors.alpha === null ? wanted : [...wanted, colors.alpha];
  const own: RasterColors = {
    ...colors,
    samples: samples.length,
    alpha: colors.alpha === null ? null : wanted.length,
  };
  return masked(async (window) =>
    rasterToRgba(
      (await image.readRasters({ window, samples, interleave: true })) as unknown as ArrayLike<number>,
      own,
    ),
  );
}

async function colorsOf(image: GeoTIFFImage, photometric: number, issues: Issue[]): Promise<RasterColors> {
  const samples = image.getSamplesPerPixel();
  const isRgb = photometric === 2 && samples >= 3;
  const palette =
    photometric === 3
      ? ((await image.fileDirectory.loadValue('ColorMap')) as ArrayLike<number> | undefined)
      : undefined;
  const extra = [
    ...((image.fileDirectory.getValue('ExtraSamples') as ArrayLike<number> | undefined)
      ? Array.from(image.fileDirectory.getValue('ExtraSamples') as ArrayLike<number>)
      : []),
  ];
  const at = extra.findIndex((type) => type === 1 || type === 2);
  const bits = image.getBitsPerSample(0);
  const isBytes = bits <= 8 && image.getSampleFormat(0) === 1;
  const noData = image.getGDALNoData();
  const [black, white] = isBytes
    ? [0, 2 ** bits - 1]
    : stretchOf(await sampleOf(image, isRgb ? 3 : 1), noData);
  if (!isBytes && palette === undefined) {
    const message = `The picture’s values of ${bits} bits were stretched for showing: ${round(black)} is black, ${round(white)} white.`;
    issues.push({ code: 'picture-stretched', severity: 'note', message, place: {} });
  }
  return {
    samples,
    kind: palette !== undefined ? 'palette' : isRgb ? 'rgb' : photometric === 0 ? 'grey-down' : 'grey',
    alpha: at < 0 ? null : samples - extra.length + at,
    isPremultiplied: extra[at] === 1,
    alphaMax: image.getSampleFormat(0) === 3 ? 1 : 2 ** bits - 1,
    black,
    white,
    palette: palette ?? null,
    noData,
  };
}

/** Values of nine small windows spread over the image. */
async function sampleOf(image: GeoTIFFImage, shades: number): Promise<number[]> {
  const [width, height] = [image.getWidth(), image.getHeight()];
  const side = 64;
  const values: number[] = [];
  for (const i of [1, 3, 5]) {
    for (const j of [1, 3, 5]) {
      const left = Math.max(0, Math.floor((width * i) / 6) - side / 2);
      const top = Math.max(0, Math.floor((height * j) / 6) - side / 2);
      const window: Window = [left, top, Math.min(width, left + side), Math.min(height, top + side)];
      const raster = await image.readRasters({
        window,
        samples: [...Array(shades).keys()],
        interleave: true,
      });
      values.push(...Array.from(raster as unknown as ArrayLike<number>));
    }
  }
  return values;
}

function round(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function reasonOf(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).slice(0, 120);
}

function fail(code: string, message: string): GeoTiffResult {
  return { ok: false, issue: pictureIssue(code, message) };
}
