import { get, promisifyRequest, set, type UseStore } from 'idb-keyval';
import type { PictureMeta } from '../survey/picture/types';
import { openStore } from './openStore';

/**
 * Where pictures are kept, cut into tiles. `createPictureStorage` is the browser's side,
 * `memoryPictureStorage.ts` the twin for tests. Every call rejects with a StorageError whose message is
 * for the person: no space left, storage not allowed, database failed.
 */
export interface PictureStorage {
  saveTile(pictureId: string, level: number, col: number, row: number, tile: Blob): Promise<void>;
  /** null when there is no such tile, or not on this device. */
  readTile(pictureId: string, level: number, col: number, row: number): Promise<Blob | null>;
  /** Saved last: a picture without it was not read to its end. */
  saveMeta(meta: PictureMeta): Promise<void>;
  /** null when the picture is not on this device. */
  readMeta(pictureId: string): Promise<PictureMeta | null>;
  /** The pictures that were opened for a yard. */
  list(yardId: string): Promise<readonly PictureMeta[]>;
  /** Tiles and entry; nothing happens when there are none. */
  remove(pictureId: string): Promise<void>;
  /** The pictures of a yard, but for those that `usedBy` says another yard (its id) shows: they become its. */
  removeOfYard(yardId: string, usedBy?: (pictureId: string) => string | null): Promise<void>;
  /** @returns how many pictures there are, bytes of their tiles, and bytes the browser still grants (null: not told). */
  usage(): Promise<{ readonly pictures: number; readonly bytes: number; readonly freeBytes: number | null }>;
}

const ADVICE = 'Remove pictures or yards that you no longer need, or take a smaller picture.';
const META = 'meta:';
const metaKey = (pictureId: string) => `${META}${pictureId}`;
const tileKeyStart = (pictureId: string) => `tile:${pictureId}:`;
const tileKey = (pictureId: string, level: number, col: number, row: number) =>
  `${tileKeyStart(pictureId)}${level}:${col}:${row}`;

/**
 * Pictures in this browser's IndexedDB, by idb-keyval, in a database of their own: one entry a tile and
 * one for what is known of the picture. Every call rejects with a StorageError, its message for the person.
 * @param name of the yards' database; the pictures' is named after it
 */
export function createPictureStorage(name = 'measured-yard'): PictureStorage {
  const withStore = openStore(`${name}-pictures`, 'pictures', ADVICE);

  const metas = (from: UseStore) =>
    from('readonly', async (objects) => {
      const range = IDBKeyRange.bound(META, `${META}\uffff`);
      return (await promisifyRequest<unknown[]>(objects.getAll(range))).filter(isMeta);
    });

  return {
    saveTile: (pictureId, level, col, row, tile) =>
      withStore('The picture could not be stored', (into) =>
        set(tileKey(pictureId, level, col, row), tile, into),
      ),

    readTile: (pictureId, level, col, row) =>
      withStore('The picture could not be read', async (from) => {
        const tile = await get<unknown>(tileKey(pictureId, level, col, row), from);
        return tile instanceof Blob ? tile : null;
      }),

    saveMeta: (meta) =>
      withStore('The picture could not be stored', (into) => set(metaKey(meta.pictureId), meta, into)),

    readMeta: (pictureId) =>
      withStore('The picture could not be read', async (from) => {
        const meta = await get<unknown>(metaKey(pictureId), from);
        return isMeta(meta) ? meta : null;
      }),

    list: (yardId) =>
      withStore('The list of pictures could not be read', async (from) =>
        (await metas(from)).filter((meta) => meta.yardId === yardId),
      ),

    remove: (pictureId) =>
      withStore('The picture could not be removed', (from) =>
        from('readwrite', (objects) => {
          deletePicture(objects, pictureId);
          return promisifyRequest(objects.transaction);
        }),
      ),

    removeOfYard: (yardId, usedBy = () => null) =>
      withStore('The yard’s pictures could not be removed', async (from) => {
        const own = (await metas(from)).filter((meta) => meta.yardId === yardId);
        await from('readwrite', (objects) => {
          for (const meta of own) {
            const other = usedBy(meta.pictureId);
            if (other === null) deletePicture(objects, meta.pictureId);
            else objects.put({ ...meta, yardId: other } satisfies PictureMeta, metaKey(meta.pictureId));
          }
          return promisifyRequest(objects.transaction);
        });
      }),

    usage: () =>
      withStore('The space that pictures take could not be read', async (from) => {
        const all = await metas(from);
        return {
          pictures: all.length,
          bytes: all.reduce((sum, meta) => sum + meta.bytes, 0),
          freeBytes: await freeBytes(),
        };
      }),
  };
}

/** The entry of a picture and all its tiles, whether or not its reading came to an end. */
function deletePicture(objects: IDBObjectStore, pictureId: string): void {
  const start = tileKeyStart(pictureId);
  objects.delete(IDBKeyRange.bound(start, `${start}\uffff`));
  objects.delete(metaKey(pictureId));
}

/** What the browser still grants this page; null when it does not say. */
async function freeBytes(): Promise<number | null> {
  if (typeof navigator === 'undefined' || navigator.storage?.estimate === undefined) return null;
  const { quota, usage } = await navigator.storage.estimate();
  return quota === undefined || usage === undefined ? null : Math.max(0, quota - usage);
}

/** Whether an entry has what is needed to list, draw and remove its picture. */
function isMeta(value: unknown): value is PictureMeta {
  const meta = value as Partial<PictureMeta> | null | undefined;
  return (
    typeof meta === 'object' &&
    meta !== null &&
    typeof meta.pictureId === 'string' &&
    typeof meta.yardId === 'string' &&
    Array.isArray(meta.levels) &&
    typeof meta.bytes === 'number'
  );
}
