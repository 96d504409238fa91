import 'fake-indexeddb/auto';
import { describe, expect, it, vi } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import type { PictureMeta } from '../survey/picture/types';
import type { BaseLayer, Yard } from '../yard/types';
import { createIdbStorage } from './idbStorage';
import { createMemoryPictureStorage } from './memoryPictureStorage';
import { createPictureStorage, type PictureStorage } from './pictureStorage';
import { StorageError } from './storageError';

let bases = 0;
const kinds: [string, () => PictureStorage][] = [
  ['memory', () => createMemoryPictureStorage()],
  ['IndexedDB', () => createPictureStorage(`pictures-${bases++}`)],
];
const metaOf = (pictureId: string, yardId: string, bytes = 10): PictureMeta => ({
  pictureId,
  yardId,
  name: 'back yard.jpg',
  widthPx: 600,
  heightPx: 400,
  levels: [
    { widthPx: 600, heightPx: 400, cols: 2, rows: 1 },
    { widthPx: 300, heightPx: 200, cols: 1, rows: 1 },
  ],
  bytes,
  position: null,
  unplaced: null,
  cameraPosition: null,
  issues: [],
});
const blob = (text: string) => new Blob([text], { type: 'image/webp' });
async function fill(storage: PictureStorage, pictureId: string, yardId: string): Promise<void> {
  await storage.saveTile(pictureId, 0, 0, 0, blob(`${pictureId} left`));
  await storage.saveTile(pictureId, 0, 1, 0, blob(`${pictureId} right`));
  await storage.saveMeta(metaOf(pictureId, yardId));
}
const text = async (storage: PictureStorage, pictureId: string, col: number) =>
  (await storage.readTile(pictureId, 0, col, 0))?.text() ?? null;

describe.each(kinds)('pictures in %s', (_, place) => {
  it('gives back tiles and what is known of the picture', async () => {
    const storage = place();
    await fill(storage, 'p-1', 'y-1');
    expect(await text(storage, 'p-1', 1)).toBe('p-1 right');
    expect((await storage.readTile('p-1', 0, 0, 0))?.type).toBe('image/webp');
    expect(await storage.readTile('p-1', 1, 0, 0)).toBeNull();
    expect(await storage.readTile('p-1', 0, 10, 0)).toBeNull();
    expect(await storage.readMeta('p-1')).toEqual(metaOf('p-1', 'y-1'));
    expect(await storage.readMeta('p-2')).toBeNull();
  });

  it('lists by yard and tells the space', async () => {
    const storage = place();
    await fill(storage, 'p-1', 'y-1');
    await fill(storage, 'p-2', 'y-2');
    expect((await storage.list('y-1')).map((meta) => meta.pictureId)).toEqual(['p-1']);
    expect(await storage.usage()).toMatchObject({ pictures: 2, bytes: 20 });
  });

  it('removes one picture, also one half read, and no other whose id begins alike', async () => {
    const storage = place();
    await fill(storage, 'p-1', 'y-1');
    await fill(storage, 'p-10', 'y-1');
    await storage.saveTile('p-3', 0, 0, 0, blob('half'));
    await storage.remove('p-1');
    await storage.remove('p-3');
    await storage.remove('gone');
    expect(await text(storage, 'p-1', 0)).toBeNull();
    expect(await text(storage, 'p-3', 0)).toBeNull();
    expect(await storage.readMeta('p-1')).toBeNull();
    expect(await text(storage, 'p-10', 0)).toBe('p-10 left');
  });

  it('removes those of a yard but for those that another yard shows', async () => {
    const storage = place();
    await fill(storage, 'p-1', 'y-1');
    await fill(storage, 'p-2', 'y-1');
    await fill(storage, 'p-3', 'y-2');
    await storage.removeOfYard('y-1', (id) => (id === 'p-2' ? 'y-9' : null));
    expect(await storage.readMeta('p-1')).toBeNull();
    expect(await text(storage, 'p-1', 0)).toBeNull();
    expect((await storage.list('y-9')).map((meta) => meta.pictureId)).toEqual(['p-2']);
    expect(await text(storage, 'p-2', 0)).toBe('p-2 left');
    expect((await storage.list('y-2')).length).toBe(1);
    await storage.removeOfYard('y-9');
    expect((await storage.usage()).pictures).toBe(1);
  });
});

describe('a yard that is removed', () => {
  const layer: BaseLayer = {
    kind: 'own-picture',
    id: 'own-1',
    name: 'Drawing',
    attribution: '',
    pictureId: 'p-1',
    widthPx: 600,
    heightPx: 400,
    origin: [-97, 33],
    toGround: [0.05, 0, 0, 0, -0.05, 0],
    opacity: 1,
    sigmaM: 0.05,
    scaleSigma: 0.001,
    fit: null,
  };
  const shown = (id: string): Yard => {
    const yard = testYard();
    return { ...yard, id, settings: { ...yard.settings, ownLayers: [layer] } };
  };

  it('takes its pictures with it', async () => {
    const name = `hook-${bases++}`;
    const [yards, pictures] = [createIdbStorage(name), createPictureStorage(name)];
    await yards.save(shown('y-1'), 1);
    await fill(pictures, 'p-1', 'y-1');
    await fill(pictures, 'p-2', 'y-other');
    await yards.remove('y-1');
    expect(await pictures.readMeta('p-1')).toBeNull();
    expect(await text(pictures, 'p-1', 0)).toBeNull();
    expect(await pictures.readMeta('p-2')).not.toBeNull();
  });

  it('leaves a picture that its copy shows, until the copy goes too', async () => {
    const name = `hook-${bases++}`;
    const [yards, pictures] = [createIdbStorage(name), createPictureStorage(name)];
    await yards.save(shown('y-1'), 1);
    await yards.save(shown('y-copy'), 2);
    await fill(pictures, 'p-1', 'y-1');
    await yards.remove('y-1');
    expect(await pictures.readMeta('p-1')).toMatchObject({ yardId: 'y-copy' });
    await yards.remove('y-copy');
    expect(await pictures.usage()).toMatchObject({ pictures: 0 });
  });
});

describe('no space', () => {
  it('is told as such', async () => {
    const full = createMemoryPictureStorage(5);
    await expect(full.saveTile('p', 0, 0, 0, blob('far too long'))).rejects.toThrow(StorageError);
  });

  it('in IndexedDB with what to do about it', async () => {
    const storage = createPictureStorage(`full-${bases++}`);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(storage.saveTile('p', 0, 0, 0, blob('x'))).rejects.toThrow(
      /space for this page is full.*Remove pictures/,
    );
    put.mockRestore();
    await storage.saveTile('p', 0, 0, 0, blob('x'));
    expect(await text(storage, 'p', 0)).toBe('x');
  });
});
