import type { Issue, Position } from '../yard/types';
import { LONGEST_DECODED_SIDE_PX, LONGEST_SIDE_PX, MOST_PIXELS, pictureIssue } from './types';

/** What the first bytes of a picture say. */
export interface PictureHeader {
  readonly type: 'tiff' | 'decoded';
  /** of the picture as the file holds it; 0 for TIFF, which its own reader measures. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Exif orientation, 1 to 8. */
  readonly orientation: number;
  readonly cameraPosition: Position | null;
}

/** The header, or why the file is no picture that can be read. */
export type HeaderResult =
  | { readonly ok: true; readonly header: PictureHeader }
  | { readonly ok: false; readonly issue: Issue };

/** Enough for the size and the camera's record, bytes. */
const HEAD_BYTES = 4_000_000;
const READABLE = ['png', 'jpg', 'webp'];

/** Reads kind, size and camera's record of a picture from its first bytes, before anything is decoded. */
export async function readPictureHeader(file: File): Promise<HeaderResult> {
  const bytes = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  if (bytes.length === 0) return refuse(`“${file.name}” is empty.`);
  const known = otherKind(bytes);
  if (known === 'tiff') {
    return {
      ok: true,
      header: { type: 'tiff', widthPx: 0, heightPx: 0, orientation: 1, cameraPosition: null },
    };
  }
  if (known !== null) return refuse(`“${file.name}” ${known}`);
  const { imageSize } = await import('image-size');
  try {
    const { width, height, orientation = 1, type = '' } = imageSize(bytes);
    if (!READABLE.includes(type)) throw new TypeError(type);
    const tooLarge = checkSize(width, height, MOST_PIXELS, LONGEST_DECODED_SIDE_PX);
    if (tooLarge !== null) return { ok: false, issue: tooLarge };
    const cameraPosition = type === 'jpg' ? await readCameraPosition(bytes) : null;
    return {
      ok: true,
      header: { type: 'decoded', widthPx: width, heightPx: height, orientation, cameraPosition },
    };
  } catch {
    return refuse(`“${file.name}” is no picture that can be read here: PNG, JPEG, WebP or TIFF.`);
  }
}

/** The first reason why a picture is too large, with the limit; null when it is not. */
export function checkSize(
  widthPx: number,
  heightPx: number,
  mostPixels: number,
  longestSide = LONGEST_SIDE_PX,
): Issue | null {
  const told = (pixels: number) => Math.floor(pixels / 1e6).toLocaleString('en');
  const size = `${widthPx.toLocaleString('en')} × ${heightPx.toLocaleString('en')} pixels`;
  if (!(widthPx >= 2 && heightPx >= 2)) {
    return pictureIssue('picture-too-small', `The picture has ${size}: too few to measure on.`);
  }
  if (Math.max(widthPx, heightPx) > longestSide) {
    const limit = longestSide.toLocaleString('en');
    return pictureIssue(
      'picture-too-large',
      `The picture has ${size}; a side may have ${limit} at most. Make it smaller or cut out the yard first.`,
    );
  }
  if (widthPx * heightPx > mostPixels) {
    return pictureIssue(
      'picture-too-large',
      `The picture has ${size}, ${told(widthPx * heightPx)} million in all; ${told(mostPixels)} million is the most. Make it smaller or cut out the yard first.`,
    );
  }
  return null;
}

/** TIFF by its first bytes; a sentence for kinds that people try and that no browser decodes; null for the rest. */
function otherKind(bytes: Uint8Array): string | null {
  const text = String.fromCharCode(...bytes.slice(0, 16));
  if (/^(II[*+]\0|MM\0[*+])/.test(text)) return 'tiff';
  if (text.startsWith('%PDF')) return 'is a PDF. Save the page as PNG first, at 300 dots an inch or more.';
  if (/ftyp(heic|heix|mif1|msf1)/.test(text)) return 'is a HEIC photo. Save it as JPEG first.';
  return null;
}

async function readCameraPosition(bytes: Uint8Array<ArrayBuffer>): Promise<Position | null> {
  try {
    const { default: reader } = await import('exifreader');
    const { gps } = reader.load(bytes.buffer, { expanded: true });
    const [lon, lat] = [gps?.Longitude, gps?.Latitude];
    const isPlace =
      lon !== undefined &&
      lat !== undefined &&
      Math.abs(lon) <= 180 &&
      Math.abs(lat) < 90 &&
      !(lon === 0 && lat === 0);
    return isPlace ? [lon, lat] : null;
  } catch {
    return null; // a damaged record does not spoil the picture
  }
}

function refuse(message: string): HeaderResult {
  return { ok: false, issue: pictureIssue('picture-unreadable', message) };
}
