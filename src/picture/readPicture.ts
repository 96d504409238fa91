import { composeAffine } from '../survey/picture/affine';
import type { Affine, PictureMeta } from '../survey/picture/types';
import type { Issue } from '../yard/types';
import { openBitmap } from './bitmapSource';
import { encodeTile } from './encodeTile';
import { shownToStored } from './orientation';
import { readPictureHeader } from './pictureHeader';
import { type FilePlace, placeByFiles } from './placeByFiles';
import { createTilePyramid, levelsOf } from './tilePyramid';
import {
  type CutTile,
  type PictureIds,
  type PictureProgress,
  type PictureResult,
  pictureIssue,
  type RowSource,
} from './types';
import { belongsTo, endingOf, isWorldFileName, readWorldFile } from './worldFile';

/** Tiles that are being encoded at one time. */
const AT_ONCE = 4;

/** A picture opened, before it is cut. */
interface Opened {
  readonly source: RowSource;
  readonly place: FilePlace;
  readonly cameraPosition: PictureMeta['cameraPosition'];
  readonly issues: readonly Issue[];
}
type OpenedResult =
  | { readonly ok: true; readonly opened: Opened }
  | { readonly ok: false; readonly issue: Issue };

/**
 * Reads a picture and cuts it into tiles; runs in a worker (`openPicture` is the page's side).
 * @param files one picture, and world or .prj files beside it
 * @param give called with every tile that has a visible pixel; its promise holds the reading back
 */
export async function readPicture(
  files: readonly File[],
  { pictureId, yardId }: PictureIds,
  give: (tile: CutTile) => Promise<void>,
  progress: (progress: PictureProgress) => void,
): Promise<PictureResult> {
  const pictures = files.filter((file) => !isSideFile(file.name));
  const [picture] = pictures;
  if (picture === undefined || pictures.length > 1) {
    const message =
      picture === undefined
        ? 'There is no picture among the files: PNG, JPEG, WebP or TIFF.'
        : `Open one picture at a time: ${pictures.map((file) => `“${file.name}”`).join(', ')}.`;
    return { ok: false, issue: pictureIssue('picture-count', message) };
  }
  progress({ share: 0, step: 'opening' });
  const result = await open(
    picture,
    files.filter((file) => file !== picture),
  );
  if (!result.ok) return result;
  const { source, place, cameraPosition, issues } = result.opened;
  const { widthPx, heightPx } = source;
  try {
    const bytes = await cut(source, give, progress);
    const meta: PictureMeta = {
      pictureId,
      yardId,
      name: picture.name,
      widthPx,
      heightPx,
      levels: levelsOf(widthPx, heightPx),
      bytes,
      position: place.position,
      unplaced: place.unplaced,
      cameraPosition,
      issues,
    };
    return { ok: true, meta };
  } finally {
    source.close();
  }
}

async function open(picture: File, beside: readonly File[]): Promise<OpenedResult> {
  const header = await readPictureHeader(picture);
  if (!header.ok) return header;
  const own = beside.filter((file) => belongsTo(file.name, picture.name));
  const issues = beside
    .filter((file) => !own.includes(file))
    .map((file) =>
      note(
        'picture-side-file',
        `“${file.name}” does not belong to “${picture.name}” by its name and was left out.`,
      ),
    );
  const worldFile = own.find((file) => isWorldFileName(file.name));
  const prjFile = own.find((file) => endingOf(file.name) === 'prj');
  const world = worldFile === undefined ? null : readWorldFile(await worldFile.text());
  if (world !== null && !world.ok) issues.push({ ...world.issue, severity: 'warning' });
  const prj = prjFile === undefined ? null : await prjFile.text();
  const toProjected = world?.ok ? world.toProjected : null;

  if (header.header.type === 'tiff') {
    const { openGeoTiff } = await import('./geoTiffSource');
    const tiff = await openGeoTiff(picture);
    if (!tiff.ok) return tiff;
    const { source, scale, position } = tiff;
    // a world file beside a TIFF without a position of its own; its numbers are of the full-size picture
    const pixels: Affine | null =
      position?.toProjected ?? (toProjected && composeAffine([scale[0], 0, 0, 0, scale[1], 0], toProjected));
    const place = await placeByFiles(pixels, position?.crs ?? prj, source.widthPx, source.heightPx);
    return { ok: true, opened: { source, place, cameraPosition: null, issues: [...issues, ...tiff.issues] } };
  }
  const { widthPx, heightPx, orientation, cameraPosition } = header.header;
  const source = await openBitmap(picture);
  const shown = toProjected && composeAffine(shownToStored(orientation, widthPx, heightPx), toProjected);
  const place = await placeByFiles(shown, prj, source.widthPx, source.heightPx);
  return { ok: true, opened: { source, place, cameraPosition, issues } };
}

/** @returns stored size of all tiles, bytes. */
async function cut(
  source: RowSource,
  give: (tile: CutTile) => Promise<void>,
  progress: (progress: PictureProgress) => void,
): Promise<number> {
  let bytes = 0;
  let failure: { readonly error: unknown } | null = null;
  const running = new Set<Promise<void>>();
  const pyramid = createTilePyramid(source.widthPx, source.heightPx, async (raw) => {
    if (running.size >= AT_ONCE) await Promise.race(running);
    if (failure !== null) throw failure.error;
    const work = encodeTile(raw)
      .then((tile) => {
        if (tile === null) return undefined;
        bytes += tile.size;
        return give({ level: raw.level, col: raw.col, row: raw.row, tile });
      })
      .catch((error: unknown) => {
        failure ??= { error };
      })
      .finally(() => running.delete(work));
    running.add(work);
  });
  for (let from = 0; from < source.heightPx; ) {
    const count = Math.min(source.bandRows, source.heightPx - from);
    await pyramid.push(await source.readRows(from, count));
    from += count;
    progress({ share: from / source.heightPx, step: 'cutting' });
  }
  await Promise.all(running);
  if (failure !== null) throw (failure as { readonly error: unknown }).error;
  return bytes;
}

function isSideFile(name: string): boolean {
  return isWorldFileName(name) || endingOf(name) === 'prj' || /\.(aux\.xml|cpg|qpj|ovr|xml|txt)$/i.test(name);
}

function note(code: string, message: string): Issue {
  return { code, severity: 'note', message, place: {} };
}
