/** How the numbers of a raster become red, green, blue and opacity. */
export interface RasterColors {
  readonly samples: number;
  /** `rgb`: three samples; `grey`: one; `grey-down`: one, 0 is white; `palette`: one, an index. */
  readonly kind: 'rgb' | 'grey' | 'grey-down' | 'palette';
  /** index of the sample with the opacity; null when there is none. */
  readonly alpha: number | null;
  /** colours are multiplied by the opacity. */
  readonly isPremultiplied: boolean;
  /** full opacity. */
  readonly alphaMax: number;
  /** values that become 0 and 255. */
  readonly black: number;
  readonly white: number;
  /** 3 · n values of 16 bits: red, green, blue. */
  readonly palette: ArrayLike<number> | null;
  /** a pixel whose colour samples all have this value is not there; null: no such value. */
  readonly noData: number | null;
}

/** Pixels of a raster, samples interleaved, as four bytes each: red, green, blue, opacity. */
export function rasterToRgba(
  raster: ArrayLike<number>,
  colors: RasterColors,
): Uint8ClampedArray<ArrayBuffer> {
  const { samples, kind, alpha, black, white, palette, noData } = colors;
  const count = Math.floor(raster.length / samples);
  const out = new Uint8ClampedArray(count * 4);
  const factor = 255 / (white - black);
  const size = palette === null ? 0 : palette.length / 3;
  const shades = kind === 'rgb' ? 3 : 1;
  for (let i = 0, from = 0, to = 0; i < count; i++, from += samples, to += 4) {
    let isThere = true;
    if (noData !== null) {
      isThere = false;
      for (let k = 0; k < shades; k++) if (raster[from + k] !== noData) isThere = true;
    }
    const first = raster[from] as number;
    if (!isThere || Number.isNaN(first)) continue;
    let opacity = 255;
    if (alpha !== null) opacity = ((raster[from + alpha] as number) * 255) / colors.alphaMax;
    if (opacity <= 0) continue;
    if (kind === 'palette' && palette !== null) {
      for (let k = 0; k < 3; k++) out[to + k] = ((palette[first + k * size] ?? 0) as number) / 257;
    } else if (kind === 'rgb') {
      const share = colors.isPremultiplied ? (factor * 255) / opacity : factor;
      for (let k = 0; k < 3; k++) out[to + k] = ((raster[from + k] as number) - black) * share;
    } else {
      const shade = (first - black) * factor;
      out.fill(kind === 'grey-down' ? 255 - shade : shade, to, to + 3);
    }
    out[to + 3] = opacity;
  }
  return out;
}

/** Three bytes a pixel to four. */
export function rgbToRgba(rgb: ArrayLike<number>): Uint8ClampedArray<ArrayBuffer> {
  return rasterToRgba(rgb, {
    samples: 3,
    kind: 'rgb',
    alpha: null,
    isPremultiplied: false,
    alphaMax: 255,
    black: 0,
    white: 255,
    palette: null,
    noData: null,
  });
}

/**
 * Values to be shown as black and white of a raster of more than 8 bits: its 1st and 99th percentile.
 * @param values a sample of the picture; numbers that are not finite, and `noData`, do not count
 */
export function stretchOf(
  values: readonly number[],
  noData: number | null,
): readonly [black: number, white: number] {
  const sorted = values.filter((value) => Number.isFinite(value) && value !== noData).sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
  const [black, white] = [at(0.01), at(0.99)];
  return white > black ? [black, white] : [black, black + 1];
}
