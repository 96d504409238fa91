import type { PictureMeta } from '../survey/picture/types';
import type { Issue } from '../yard/types';
import {
  type CutTile,
  type PictureIds,
  type PictureProgress,
  type PictureResult,
  type PictureSink,
  pictureIssue,
} from './types';

/** What the page tells the worker. */
export type ToWorker =
  | { readonly type: 'read'; readonly files: readonly File[]; readonly ids: PictureIds }
  /** tiles were stored: the worker may cut on. */
  | { readonly type: 'stored'; readonly count: number };

/** What the worker tells the page. */
export type FromWorker =
  | { readonly type: 'progress'; readonly progress: PictureProgress }
  | { readonly type: 'tile'; readonly tile: CutTile }
  | { readonly type: 'done'; readonly meta: PictureMeta }
  | { readonly type: 'failed'; readonly issue: Issue };

const CANCELLED = pictureIssue(
  'picture-cancelled',
  'Reading the picture was called off. Nothing of it was kept.',
);

/**
 * Reads a picture with its side files in a worker, cuts it into tiles and stores them as they come; the
 * page's own thread only passes them on. PNG, JPEG, WebP, TIFF and GeoTIFF; a world file (.tfw, .pgw, .jgw,
 * .wld and their like) and a .prj file beside the picture are used. After a failure or a cancel nothing of
 * the picture is left in the store.
 * @param files the picture and any files beside it, in any order
 * @param sink the store of pictures; its rejections come back as issues in its own words
 * @param progress called some times a second
 * @param signal calls the reading off
 */
export function openPicture(
  files: readonly File[],
  ids: PictureIds,
  sink: PictureSink,
  progress: (progress: PictureProgress) => void = () => undefined,
  signal?: AbortSignal,
): Promise<PictureResult> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' });
    const send = (message: ToWorker) => worker.postMessage(message);
    const saves = new Set<Promise<void>>();
    let isOver = false;

    const end = (result: PictureResult) => {
      if (isOver) return;
      isOver = true;
      worker.terminate();
      signal?.removeEventListener('abort', cancel);
      if (result.ok) {
        resolve(result);
        return;
      }
      // a tile still on its way to the store must not come in after the picture was cleared out
      Promise.allSettled(saves)
        .then(() => sink.remove(ids.pictureId))
        .then(
          () => resolve(result),
          () => resolve(result),
        );
    };
    const fail = (error: unknown) => end({ ok: false, issue: issueOf(error) });
    const cancel = () => end({ ok: false, issue: CANCELLED });
    const save = ({ level, col, row, tile }: CutTile) => {
      const saved = sink.saveTile(ids.pictureId, level, col, row, tile);
      saves.add(saved);
      saved.then(() => send({ type: 'stored', count: 1 }), fail).finally(() => saves.delete(saved));
    };

    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      if (isOver) return;
      if (data.type === 'progress') progress(data.progress);
      else if (data.type === 'tile') save(data.tile);
      else if (data.type === 'failed') end({ ok: false, issue: data.issue });
      else {
        Promise.all(saves)
          .then(() => (isOver ? undefined : sink.saveMeta(data.meta)))
          .then(() => end({ ok: true, meta: data.meta }), fail);
      }
    };
    worker.onerror = (event) => {
      event.preventDefault();
      fail(new Error('the browser ran out of memory or could not start the reading'));
    };
    worker.onmessageerror = worker.onerror as unknown as typeof worker.onmessageerror;
    if (signal?.aborted) {
      cancel();
      return;
    }
    signal?.addEventListener('abort', cancel);
    send({ type: 'read', files, ids });
  });
}

function issueOf(error: unknown): Issue {
  const reason = error instanceof Error ? error.message : String(error);
  const isWords = error instanceof Error && error.name === 'StorageError';
  return pictureIssue(
    isWords ? 'picture-not-stored' : 'picture-failed',
    isWords ? reason : `The picture could not be read: ${reason}.`,
  );
}
