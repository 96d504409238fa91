import { describe, expect, it } from 'vitest';
import { createMemoryPictureStorage } from '../../session/memoryPictureStorage';
import { createMemoryStorage } from '../../session/memoryStorage';
import type { PictureMeta } from '../../survey/picture/types';
import { emptyYard } from '../../yard/defaults';
import type { Yard } from '../../yard/types';
import { cleanPictures, type IdList, noteYardWithPictures } from './picture-cleaning';
import { addPicture, layFlat } from './picture-edits';

function meta(pictureId: string, yardId: string): PictureMeta {
  const levels = [{ widthPx: 10, heightPx: 10, cols: 1, rows: 1 }];
  return {
    pictureId,
    yardId,
    name: `${pictureId}.png`,
    widthPx: 10,
    heightPx: 10,
    levels,
    bytes: 1,
    position: null,
    unplaced: null,
    cameraPosition: null,
    issues: [],
  };
}

function createList(): IdList {
  const kept = new Map<string, string>();
  return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
}

async function setUp() {
  const list = createList();
  const yards = createMemoryStorage();
  const pictures = createMemoryPictureStorage();
  const put = async (pictureId: string, yardId: string) => {
    await pictures.saveMeta(meta(pictureId, yardId));
    noteYardWithPictures(list, yardId);
  };
  const show = (yard: Yard, pictureId: string) =>
    addPicture(yard, layFlat(meta(pictureId, yard.id), `layer-${pictureId}`, [0, 0], 10));
  return { list, yards, pictures, put, show };
}

describe('cleanPictures', () => {
  it('clears what was taken off the list and what belonged to a removed yard', async () => {
    const { list, yards, pictures, put, show } = await setUp();
    const open = show(emptyYard('a', 'A'), 'kept');
    await yards.save(open, 1);
    await put('kept', 'a');
    await put('off', 'a');
    await put('gone', 'removed-yard');
    await cleanPictures(list, yards, pictures, () => [open]);
    expect(await pictures.readMeta('kept')).not.toBeNull();
    expect(await pictures.readMeta('off')).toBeNull();
    expect(await pictures.readMeta('gone')).toBeNull();
  });

  it('a picture of a removed yard that a copy shows becomes the copy’s', async () => {
    const { list, yards, pictures, put, show } = await setUp();
    const copy = show(emptyYard('copy', 'Copy'), 'shared');
    await yards.save(copy, 1);
    await put('shared', 'removed-yard');
    await cleanPictures(list, yards, pictures, () => [copy]);
    expect((await pictures.readMeta('shared'))?.yardId).toBe('copy');
    await cleanPictures(list, yards, pictures, () => [copy]);
    expect(await pictures.readMeta('shared')).not.toBeNull();
  });

  it('touches nothing when the list of yards is empty or cannot be read', async () => {
    const { list, yards, pictures, put } = await setUp();
    await put('only', 'a');
    await cleanPictures(list, yards, pictures, () => [emptyYard('b', 'B')]);
    expect(await pictures.readMeta('only')).not.toBeNull();
    const failing = { ...yards, list: () => Promise.reject(new Error('no database')) };
    await expect(cleanPictures(list, failing, pictures, () => [emptyYard('b', 'B')])).rejects.toThrow();
    expect(await pictures.readMeta('only')).not.toBeNull();
  });
});
