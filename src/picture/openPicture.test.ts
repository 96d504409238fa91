import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createMemoryPictureStorage } from '../session/memoryPictureStorage';
import type { PictureMeta } from '../survey/picture/types';
import { type FromWorker, openPicture, type ToWorker } from './openPicture';

/* The page's side, with a worker that the test speaks for. */
const ids = { pictureId: 'p-1', yardId: 'y-1' };
const meta = { ...ids, name: 'a.png', levels: [], bytes: 3 } as unknown as PictureMeta;
const tile = (col: number): FromWorker => ({
  type: 'tile',
  tile: { level: 0, col, row: 0, tile: new Blob(['abc']) },
});
let worker: { told: ToWorker[]; ended: boolean; say(message: FromWorker): void; crash(): void };

beforeEach(() => {
  vi.stubGlobal(
    'Worker',
    class {
      onmessage: (event: { data: FromWorker }) => void = () => undefined;
      onerror: (event: { preventDefault(): void }) => void = () => undefined;
      constructor() {
        worker = {
          told: [],
          ended: false,
          say: (data) => this.onmessage({ data }),
          crash: () => this.onerror({ preventDefault: () => undefined }),
        };
      }
      postMessage(message: ToWorker) {
        worker.told.push(message);
      }
      terminate() {
        worker.ended = true;
      }
    },
  );
});
afterEach(() => vi.unstubAllGlobals());
const turn = () => new Promise((resolve) => setTimeout(resolve));

describe('opening a picture', () => {
  it('stores tiles as they come, then what is known of it, and tells the worker', async () => {
    const storage = createMemoryPictureStorage();
    const shares: number[] = [];
    const opened = openPicture([], ids, storage, ({ share }) => shares.push(share));
    worker.say({ type: 'progress', progress: { share: 0.5, step: 'cutting' } });
    worker.say(tile(0));
    worker.say(tile(1));
    worker.say({ type: 'done', meta });
    expect(await opened).toEqual({ ok: true, meta });
    expect(shares).toEqual([0.5]);
    expect(worker.told.map((message) => message.type)).toEqual(['read', 'stored', 'stored']);
    expect(worker.ended).toBe(true);
    expect(await storage.readTile('p-1', 0, 1, 0)).not.toBeNull();
    expect(await storage.readMeta('p-1')).toEqual(meta);
  });

  it('a cancel leaves nothing, also of tiles still on their way', async () => {
    const storage = createMemoryPictureStorage();
    const save = storage.saveTile;
    const slow = {
      ...storage,
      saveTile: async (...args: Parameters<typeof save>) => turn().then(() => save(...args)),
    };
    const cancel = new AbortController();
    const opened = openPicture([], ids, slow, undefined, cancel.signal);
    worker.say(tile(0));
    cancel.abort();
    expect(await opened).toMatchObject({ ok: false, issue: { code: 'picture-cancelled' } });
    await turn();
    expect(await storage.readTile('p-1', 0, 0, 0)).toBeNull();
    worker.say(tile(1));
    await turn();
    expect(await storage.readTile('p-1', 0, 1, 0)).toBeNull();
  });

  it('called off before it began', async () => {
    const opened = openPicture([], ids, createMemoryPictureStorage(), undefined, AbortSignal.abort());
    expect(await opened).toMatchObject({ ok: false, issue: { code: 'picture-cancelled' } });
    expect(worker.told).toEqual([]);
  });

  it('no space: in the store’s own words, and cleared out', async () => {
    const storage = createMemoryPictureStorage(4);
    const opened = openPicture([], ids, storage);
    worker.say(tile(0));
    worker.say(tile(1));
    const result = await opened;
    expect(result).toMatchObject({
      ok: false,
      issue: { code: 'picture-not-stored', message: expect.stringContaining('no space') },
    });
    expect(await storage.readTile('p-1', 0, 0, 0)).toBeNull();
  });

  it('the worker’s refusal comes through; a crash is told', async () => {
    const refused = openPicture([], ids, createMemoryPictureStorage());
    worker.say({ type: 'failed', issue: { code: 'x', severity: 'error', message: 'No.', place: {} } });
    expect(await refused).toMatchObject({ ok: false, issue: { message: 'No.' } });
    const crashed = openPicture([], ids, createMemoryPictureStorage());
    worker.crash();
    expect(await crashed).toMatchObject({ ok: false, issue: { code: 'picture-failed' } });
  });
});
