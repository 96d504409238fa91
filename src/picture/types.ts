import type { PictureMeta } from '../survey/picture/types';
import type { Issue } from '../yard/types';

/** What reading a picture needs of the store of pictures; the session's `PictureStorage` is one. */
export interface PictureSink {
  saveTile(pictureId: string, level: number, col: number, row: number, tile: Blob): Promise<void>;
  saveMeta(meta: PictureMeta): Promise<void>;
  remove(pictureId: string): Promise<void>;
}

/** Which picture of which yard is being read. */
export interface PictureIds {
  readonly pictureId: string;
  readonly yardId: string;
}

/** How far reading has come. */
export interface PictureProgress {
  /** 0 to 1. */
  readonly share: number;
  readonly step: 'opening' | 'cutting';
}

/** A picture read, or the reason why not; `picture-cancelled` when it was called off. */
export type PictureResult =
  | { readonly ok: true; readonly meta: PictureMeta }
  | { readonly ok: false; readonly issue: Issue };

/** One tile cut from a picture. */
export interface CutTile {
  readonly level: number;
  readonly col: number;
  readonly row: number;
  readonly tile: Blob;
}

/** Rows of a picture, top to bottom; four bytes a pixel: red, green, blue, opacity (not premultiplied). */
export interface RowSource {
  readonly widthPx: number;
  readonly heightPx: number;
  /** how many rows are best asked for at once. */
  readonly bandRows: number;
  /** @returns widthPx · count · 4 bytes; rows are asked for once each, in order. */
  readRows(from: number, count: number): Promise<Uint8ClampedArray>;
  close(): void;
}

/** Largest number of pixels of a PNG, JPEG or WebP: the browser decodes it whole, four bytes a pixel. */
export const MOST_PIXELS = 150_000_000;
/** Largest number of pixels of a GeoTIFF, which is read in bands. */
export const MOST_TIFF_PIXELS = 600_000_000;
/** Longest side of any picture, pixels. */
export const LONGEST_SIDE_PX = 60_000;
/** Longest side of a picture that the browser decodes whole, pixels: no browser draws from longer ones. */
export const LONGEST_DECODED_SIDE_PX = 16_384;

/** A refusal in words for the person. */
export function pictureIssue(code: string, message: string, path = ''): Issue {
  return { code, severity: 'error', message, place: path === '' ? {} : { path } };
}
