import { describe, expect, it, vi } from 'vitest';
import { emptyYard } from '../yard/defaults';
import type { Yard } from '../yard/types';
import { createAutosave } from './autosave';
import { createMemoryStorage } from './memoryStorage';
import { StorageError } from './storageError';
import { openSession } from './store';
import type { YardStorage } from './types';

// The store's own work only; what is derived is held by derive.test.ts.
vi.mock('./derive', () => ({ deriveYard: (of: Yard) => ({ yard: of }) }));

/** A storage whose saves end when and how the test says. */
function heldStorage() {
  const inner = createMemoryStorage();
  const saves: { readonly yard: Yard; end(error?: Error): Promise<void> }[] = [];
  const storage: YardStorage = {
    ...inner,
    save: (yard, at) =>
      new Promise<void>((resolve, reject) => {
        saves.push({
          yard,
          async end(error) {
            if (error) reject(error);
            else await inner.save(yard, at).then(resolve, reject);
            // the saver hears of it some microtasks later
            await new Promise((next) => setTimeout(next));
          },
        });
      }),
  };
  return { inner, saves, storage };
}
const yard = emptyYard('y-1', 'One');
const full = new StorageError('No space.', false);
const overtaken = new StorageError('Overtaken.', true);

describe('autosave', () => {
  it('keeps a conflict heard of while a save runs, when that save fails otherwise or succeeds', async () => {
    for (const outcome of [full, undefined]) {
      const { saves, storage } = heldStorage();
      const autosave = createAutosave(storage, Date.now, () => undefined);
      autosave.request(yard);
      autosave.block('Another tab.');
      await saves[0]?.end(outcome);
      expect(autosave.state).toEqual({ state: 'failed', message: 'Another tab.', conflict: true });
      autosave.request({ ...yard, name: 'Two' });
      await autosave.flush();
      expect(saves.length).toBe(1);
      expect(autosave.state).toMatchObject({ conflict: true });
    }
  });

  it('after a reset stores the copy, though the save under way ends in a conflict', async () => {
    const { inner, saves, storage } = heldStorage();
    const autosave = createAutosave(
      storage,
      () => 1,
      () => undefined,
    );
    autosave.request(yard);
    autosave.reset();
    autosave.request({ ...yard, id: 'y-copy' });
    expect(autosave.state.state).toBe('saving');
    await saves[0]?.end(overtaken);
    expect(autosave.state.state).toBe('saving');
    await saves[1]?.end();
    expect(autosave.state.state).toBe('saved');
    expect((await inner.open('y-copy')).ok).toBe(true);
  });

  it('after a reset a failure of the save under way is not tried again', async () => {
    const { saves, storage } = heldStorage();
    const autosave = createAutosave(
      storage,
      () => 1,
      () => undefined,
    );
    autosave.request(yard);
    autosave.reset();
    await saves[0]?.end(full);
    await autosave.flush();
    expect(saves.length).toBe(1);
    expect(autosave.state.state).toBe('saved');
  });

  it('stores what was asked for at the very moment the last save ended', async () => {
    const { saves, storage } = heldStorage();
    let asked = false;
    const autosave = createAutosave(
      storage,
      () => 1,
      () => {
        if (autosave.state.state !== 'saved' || asked) return;
        asked = true;
        queueMicrotask(() => autosave.request({ ...yard, name: 'Two' }));
      },
    );
    autosave.request(yard);
    await saves[0]?.end();
    expect(saves.map((save) => save.yard.name)).toEqual(['One', 'Two']);
  });
});

it('a yard kept as a copy is stored, though its old save ends in a conflict later', async () => {
  const { inner, saves, storage } = heldStorage();
  const session = openSession(yard, storage, { now: () => 1, isNew: true });
  const kept = session.keepAsCopy('y-copy', 'Copy');
  await saves[0]?.end(overtaken);
  await saves[1]?.end();
  await kept;
  expect(session.save.state).toBe('saved');
  expect(await inner.open('y-copy')).toMatchObject({ ok: true, yard: { name: 'Copy' } });
});
