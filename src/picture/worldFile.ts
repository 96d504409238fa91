import type { Affine } from '../survey/picture/types';
import type { Issue } from '../yard/types';

/** A world file read, or the reason why it cannot be. */
export type WorldFileResult =
  | { readonly ok: true; readonly toProjected: Affine }
  | { readonly ok: false; readonly issue: Issue };

/**
 * Reads a world file: six lines A, D, B, E, C, F, where x = A·col + B·row + C and y = D·col + E·row + F
 * for the *centre* of the pixel in column col and row row, counted from 0. The affine returned counts
 * from pixel edges as all of ours do, so C and F are moved by half a pixel.
 * Source: Esri, "World files for raster datasets" (line order and centre of the upper left pixel).
 * A comma as decimal sign is read too.
 * @returns pixel to the units of the file's coordinate system (which the file does not name); an issue for
 *   fewer than six numbers, a line that is none, and six numbers that flatten the picture
 */
export function readWorldFile(text: string): WorldFileResult {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\s+/)
    .filter(Boolean);
  const numbers = lines
    .slice(0, 6)
    .map((line) => Number(/^[^.]*,[^.,]*$/.test(line) ? line.replace(',', '.') : line));
  const wrong = numbers.findIndex((number) => !Number.isFinite(number));
  if (wrong >= 0) {
    return fail(
      `Line ${wrong + 1} of the world file is no number: “${(lines[wrong] ?? '').slice(0, 40)}”.`,
      wrong + 1,
    );
  }
  if (numbers.length < 6) {
    return fail(
      `A world file has six lines with a number each; this one has ${numbers.length}.`,
      numbers.length + 1,
    );
  }
  const [a = 0, d = 0, b = 0, e = 0, c = 0, f = 0] = numbers;
  if (!(Math.abs(a * e - b * d) > 0)) {
    return fail('The world file gives the pixels no size: lines 1 and 4 (or 2 and 3) must not be 0.', 1);
  }
  return { ok: true, toProjected: [a, b, c - a / 2 - b / 2, d, e, f - d / 2 - e / 2] };
}

/** Endings of world files by the ending of the picture: first and last letter and a w, or the whole ending and a w. */
const ENDINGS: Readonly<Record<string, readonly string[]>> = {
  tif: ['tfw', 'tifw'],
  tiff: ['tfw', 'tifw', 'tiffw'],
  png: ['pgw', 'pngw'],
  jpg: ['jgw', 'jpgw'],
  jpeg: ['jgw', 'jpgw', 'jpegw'],
  webp: ['wpw', 'webpw'],
};

/** Whether a file name has the ending of a world file. */
export function isWorldFileName(name: string): boolean {
  const ending = endingOf(name);
  return ending === 'wld' || Object.values(ENDINGS).some((endings) => endings.includes(ending));
}

/**
 * Whether a world file (or .prj file) belongs to a picture: one name, and an ending that goes with the
 * picture's; capitals do not matter. `yard.jpg.wld` belongs to `yard.jpg` too.
 */
export function belongsTo(sidecar: string, picture: string): boolean {
  const [own, other] = [stemOf(sidecar).toLowerCase(), picture.toLowerCase()];
  if (own !== stemOf(other) && own !== other) return false;
  const ending = endingOf(sidecar);
  return ending === 'wld' || ending === 'prj' || (ENDINGS[endingOf(picture)] ?? []).includes(ending);
}

/** The part after the last dot, in small letters; empty where there is none. */
export function endingOf(name: string): string {
  return /\.([^./\\]*)$/.exec(name)?.[1]?.toLowerCase() ?? '';
}

function stemOf(name: string): string {
  return name.replace(/\.[^./\\]*$/, '');
}

function fail(message: string, line: number): { readonly ok: false; readonly issue: Issue } {
  return { ok: false, issue: { code: 'world-file', severity: 'error', message, place: { line } } };
}
