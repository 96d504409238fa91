import type { PictureMeta } from '../survey/picture/types';
import type { PictureStorage } from './pictureStorage';
import { StorageError } from './storageError';

/** The twin of the browser's store of pictures for tests. @param spaceBytes tiles beyond this are refused. */
export function createMemoryPictureStorage(spaceBytes = Number.POSITIVE_INFINITY): PictureStorage {
  const metas = new Map<string, PictureMeta>();
  const tiles = new Map<string, Blob>();
  const start = (pictureId: string) => `${pictureId}:`;
  const key = (pictureId: string, level: number, col: number, row: number) =>
    `${start(pictureId)}${level}:${col}:${row}`;
  const removeTiles = (pictureId: string) => {
    for (const name of [...tiles.keys()]) if (name.startsWith(start(pictureId))) tiles.delete(name);
  };
  return {
    async saveTile(pictureId, level, col, row, tile) {
      const taken = [...tiles.values()].reduce((sum, one) => sum + one.size, 0);
      if (taken + tile.size > spaceBytes)
        throw new StorageError('The picture could not be stored: no space.', false);
      tiles.set(key(pictureId, level, col, row), tile);
    },
    readTile: async (pictureId, level, col, row) => tiles.get(key(pictureId, level, col, row)) ?? null,
    async saveMeta(meta) {
      metas.set(meta.pictureId, structuredClone(meta));
    },
    readMeta: async (pictureId) => metas.get(pictureId) ?? null,
    list: async (yardId) => [...metas.values()].filter((meta) => meta.yardId === yardId),
    async remove(pictureId) {
      removeTiles(pictureId);
      metas.delete(pictureId);
    },
    async removeOfYard(yardId, usedBy = () => null) {
      for (const meta of [...metas.values()].filter((one) => one.yardId === yardId)) {
        const other = usedBy(meta.pictureId);
        if (other !== null) {
          metas.set(meta.pictureId, { ...meta, yardId: other });
          continue;
        }
        removeTiles(meta.pictureId);
        metas.delete(meta.pictureId);
      }
    },
    usage: async () => ({
      pictures: metas.size,
      bytes: [...metas.values()].reduce((sum, meta) => sum + meta.bytes, 0),
      freeBytes: null,
    }),
  };
}
