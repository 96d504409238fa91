import { decodeText } from './decodeText';

/** What a file is, by its content. */
export type FileSort =
  | 'json'
  | 'json-lines'
  | 'xml'
  | 'zip'
  | 'shp'
  | 'dbf'
  | 'picture'
  | 'table'
  | 'unknown';

/** Bytes of a file that are looked at. */
export const SNIFF_BYTES = 2048;

const LINE_ENDINGS = /\.(geojsonl|geojsons|ndjson|jsonl|jsonseq)$/i;
const JSON_LINES = /^\s*\{.*\}[ \t]*\r?\n\s*\{/;

/**
 * What a file is, by its first bytes; the name decides only where these fit more than one sort.
 * A file with the wrong ending is read as what it is.
 * Signatures: PKWARE APPNOTE 4.3.7 (zip), ESRI Shapefile Technical Description 1998 p. 4 (9994),
 * PNG (ISO 15948, 5.2), JPEG (ITU-T T.81, B.1.1.3), TIFF 6.0 section 2, RIFF/WEBP (RFC 9649).
 */
export function sniffFile(name: string, head: Uint8Array): FileSort {
  const [a, b, c, d] = head;
  if (a === 0x50 && b === 0x4b && (c === 3 || c === 5)) return 'zip';
  if (a === 0 && b === 0 && c === 0x27 && d === 0x0a) return 'shp';
  if (isPicture(head)) return 'picture';
  if (/\.dbf$/i.test(name) && (a === 3 || a === 0x83 || a === 0x8b || a === 0x30)) return 'dbf';
  const text = decodeText(head).replace(/^\uFEFF/, '');
  const start = text.trimStart();
  if (start.startsWith('<')) return 'xml';
  if (start.startsWith('\u001e')) return 'json-lines';
  if (start.startsWith('{') || start.startsWith('[')) {
    return LINE_ENDINGS.test(name) || JSON_LINES.test(text) ? 'json-lines' : 'json';
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters tell bytes from text
  if (start === '' || /[\u0000-\u0008\u000e-\u001a]/.test(text)) return start === '' ? 'json' : 'unknown';
  return /[,;\t]/.test(text) ? 'table' : 'unknown';
}

function isPicture(head: Uint8Array): boolean {
  const starts = (...bytes: number[]) => bytes.every((byte, i) => head[i] === byte);
  return (
    starts(0x89, 0x50, 0x4e, 0x47) ||
    starts(0xff, 0xd8, 0xff) ||
    starts(0x49, 0x49, 42, 0) ||
    starts(0x4d, 0x4d, 0, 42) ||
    starts(0x49, 0x49, 43, 0) ||
    starts(0x4d, 0x4d, 0, 43) ||
    (starts(0x52, 0x49, 0x46, 0x46) && head[8] === 0x57 && head[9] === 0x45)
  );
}
