import { Unzip, UnzipInflate } from 'fflate';
import type { Issue } from '../yard/types';
import { importIssue } from './importTypes';

/** All files of an archive together may inflate to so many bytes. */
export const MOST_INFLATED = 256 * 1024 * 1024;
/** and each to so many times its packed size, once it is larger than 1 MB: text packs 20 times at most as a rule. */
const MOST_RATIO = 200;
const MOST_ENTRIES = 1_000;
const PIECE = 64 * 1024;

/** One file of an archive. */
export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * Unpacks an archive (PKWARE APPNOTE) by the fflate library, piece by piece, and stops as soon as it
 * grows beyond the limits: what the archive says of its sizes is not trusted.
 * @param wanted whether a file of that name is needed; the others are not inflated
 * @returns the wanted files, or why the archive is not read
 */
export function readZip(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
):
  | { readonly ok: true; readonly entries: readonly ZipEntry[] }
  | { readonly ok: false; readonly issue: Issue } {
  const fail = (code: string, message: string) => ({
    ok: false as const,
    issue: importIssue(code, 'error', message),
  });
  if (!hasEnd(bytes)) {
    return fail(
      'zip-cut-off',
      'The archive has no end: it was cut off while it was copied or loaded. It is not read.',
    );
  }
  const entries: ZipEntry[] = [];
  let total = 0;
  let count = 0;
  let open = 0;
  let trouble: [string, string] | null = null;
  const unzip = new Unzip((file) => {
    count += 1;
    if (count > MOST_ENTRIES)
      trouble ??= ['zip-too-many', `The archive holds more than ${MOST_ENTRIES} files and is not read.`];
    if (trouble !== null || file.name.endsWith('/') || file.name.includes('__MACOSX') || !wanted(file.name))
      return;
    const pieces: Uint8Array[] = [];
    let size = 0;
    open += 1;
    file.ondata = (error, piece, isLast) => {
      if (error !== null) {
        trouble ??= ['zip-damaged', `“${file.name}” in the archive is damaged: ${error.message}.`];
        return;
      }
      if (trouble !== null) return;
      size += piece.length;
      total += piece.length;
      if (total > MOST_INFLATED || (size > 1_000_000 && size > MOST_RATIO * bytes.length)) {
        trouble = [
          'zip-too-big',
          'The archive grows beyond all measure when it is unpacked, and is not read.',
        ];
        file.terminate();
        return;
      }
      pieces.push(piece);
      if (isLast) {
        open -= 1;
        entries.push({ name: file.name, bytes: joined(pieces, size) });
      }
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && trouble === null; at += PIECE) {
      unzip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
    }
  } catch (error) {
    trouble ??= [
      'zip-damaged',
      `The archive is damaged: ${error instanceof Error ? error.message : String(error)}.`,
    ];
  }
  if (trouble !== null) return fail(...(trouble as [string, string]));
  if (open > 0) return fail('zip-cut-off', 'A file in the archive has no end. It is not read.');
  return { ok: true, entries };
}

/** The end-of-central-directory record stands in the last 65,557 bytes (APPNOTE 4.3.16). */
function hasEnd(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 22; at >= Math.max(0, bytes.length - 65_557); at--) {
    if (bytes[at] === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 5 && bytes[at + 3] === 6)
      return true;
  }
  return false;
}

function joined(pieces: readonly Uint8Array[], size: number): Uint8Array {
  const all = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
