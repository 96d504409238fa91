import 'fake-indexeddb/auto';
import { createStore, set } from 'idb-keyval';
import { expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '../survey/walk/walkDefaults';
import { createWalkStore, type WalkDraft } from './walkDraft';

const draft = (yardId: string, count: number): WalkDraft => ({
  yardId,
  startedMs: 1,
  mode: 'round',
  limits: DEFAULT_LIMITS,
  toleranceM: null,
  standS: 15,
  fixes: Array.from({ length: count }, (_, i) => ({
    position: [i / 1e5, 40] as const,
    accuracyM: 4,
    timeMs: i,
  })),
  stands: [],
  openFromMs: null,
});

it('keeps the newest state of each yard through a new opening, and forgets what is dropped', async () => {
  const store = createWalkStore('walks-a');
  expect(await store.load('one')).toBeNull();
  const saves = [1, 2, 3, 4].map((count) => store.save(draft('one', count)));
  await Promise.all(saves);
  await store.save(draft('two', 7));
  const again = createWalkStore('walks-a');
  expect((await again.load('one'))?.fixes).toHaveLength(4);
  expect(await again.load('two')).toEqual(draft('two', 7));
  await again.drop('one');
  expect(await store.load('one')).toBeNull();
  expect((await store.load('two'))?.fixes).toHaveLength(7);
});

it('a drop during a save leaves nothing behind', async () => {
  const store = createWalkStore('walks-b');
  const save = store.save(draft('one', 5));
  const late = store.save(draft('one', 6));
  await store.drop('one');
  await Promise.all([save, late]);
  expect(await store.load('one')).toBeNull();
});

it('what is no walk is not taken for one', async () => {
  const raw = createStore('walks-c', 'walks');
  for (const bad of [
    7,
    {},
    { ...draft('one', 1), fixes: [null] },
    { ...draft('one', 1), stands: [{ fromMs: 1 }] },
    draft('other', 1),
  ]) {
    await set('one', bad, raw);
    expect(await createWalkStore('walks-c').load('one')).toBeNull();
  }
});
