import 'fake-indexeddb/auto';
import { createStore, del, get, keys, set } from 'idb-keyval';
import { describe, expect, it, vi } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { rename } from '../yard/edits';
import { createIdbStorage } from './idbStorage';
import { createMemoryDisk, createMemoryStorage } from './memoryStorage';
import { StorageError } from './storageError';
import type { YardStorage } from './types';

const yard = testYard();
let bases = 0;

/** Both storages must behave alike: each makes tabs on one place of its own. */
const kinds: [string, () => () => YardStorage][] = [
  [
    'memory',
    () => {
      const disk = createMemoryDisk();
      return () => createMemoryStorage(disk);
    },
  ],
  [
    'IndexedDB',
    () => {
      const name = `yards-${bases++}`;
      return () => createIdbStorage(name);
    },
  ],
];

describe.each(kinds)('storage in %s', (_name, place) => {
  it('gives back what was saved and lists it, newest first', async () => {
    const tab = place()();
    await tab.save(yard, 1000);
    await tab.save({ ...yard, id: 'y-2', name: 'Second', zones: [] }, 2000);
    expect(await tab.open('y-test')).toEqual({ ok: true, yard, issues: [] });
    expect(await tab.list()).toEqual([
      { id: 'y-2', name: 'Second', savedAt: 2000, zoneCount: 0 },
      { id: 'y-test', name: 'Test yard', savedAt: 1000, zoneCount: 4 },
    ]);
  });

  it('remembers the last open yard and forgets a removed one', async () => {
    const tab = place()();
    expect(await tab.lastOpenId()).toBeNull();
    await tab.save(yard, 1);
    await tab.setLastOpenId('y-test');
    expect(await tab.lastOpenId()).toBe('y-test');
    await tab.remove('y-test');
    expect(await tab.lastOpenId()).toBeNull();
    expect(await tab.list()).toEqual([]);
    expect(await tab.open('y-test')).toMatchObject({ ok: false, issues: [{ code: 'yard-not-stored' }] });
    await tab.save(yard, 2);
    expect((await tab.list()).length).toBe(1);
  });

  it('refuses the save of a tab that another tab has overtaken, and stores nothing of it', async () => {
    const tabs = place();
    const [a, b] = [tabs(), tabs()];
    await a.save(yard, 1);
    await b.open('y-test');
    await b.save(rename(yard, 'by b'), 2);
    const refusal = await a.save(rename(yard, 'by a'), 3).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(StorageError);
    expect((refusal as StorageError).conflict).toBe(true);
    expect(await b.open('y-test')).toMatchObject({ ok: true, yard: { name: 'by b' } });
    await a.open('y-test');
    await a.save(rename(yard, 'by a'), 4);
    expect(await b.open('y-test')).toMatchObject({ ok: true, yard: { name: 'by a' } });
  });

  it('refuses the save of a yard that another tab removed', async () => {
    const tabs = place();
    const [a, b] = [tabs(), tabs()];
    await a.save(yard, 1);
    await b.remove('y-test');
    await expect(a.save(yard, 2)).rejects.toMatchObject({ conflict: true });
  });

  it('tells other tabs of a save, not its own', async () => {
    const tabs = place();
    const [a, b] = [tabs(), tabs()];
    const [heardA, heardB] = [vi.fn(), vi.fn()];
    const ends = [a.watch('y-test', heardA), b.watch('y-test', heardB)];
    await a.save(yard, 1);
    await vi.waitFor(() => expect(heardB).toHaveBeenCalledTimes(1));
    expect(heardA).not.toHaveBeenCalled();
    for (const end of ends) end();
  });
});

describe('damage', () => {
  it('in the newest state gives what can be read and the earlier good states, newest first', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    for (let i = 1; i <= 3; i++) await tab.save(rename(yard, `state ${i}`), i * 1000);
    const raw = createStore(name, 'yards');
    const state = await get('state:y-test:3', raw);
    state.file.features[0].geometry.coordinates[0][0] = 'torn';
    await set('state:y-test:3', state, raw);
    await set('state:y-test:2', { savedAt: 2000, file: 'torn' }, raw);
    const result = await tab.open('y-test');
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.issues.map((issue) => issue.place.path)).toEqual([
      'features[0].geometry.coordinates[0][0]',
    ]);
    expect(result.salvaged?.zones.map((zone) => zone.id)).toEqual(['z-bed', 'z-walk', 'z-strip']);
    expect(result.earlier.map((state) => [state.savedAt, state.yard.name])).toEqual([[1000, 'state 1']]);
    await tab.save(yard, 4000);
    expect((await tab.open('y-test')).ok).toBe(true);
  });

  it('of the head loses no state: the yard is listed, opened and saved over', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    await tab.save(rename(yard, 'state 1'), 1000);
    await tab.save(rename(yard, 'state 2'), 2000);
    await set('head:y-test', 'torn', createStore(name, 'yards'));
    const other = createIdbStorage(name);
    expect(await other.list()).toMatchObject([{ id: 'y-test', savedAt: 2000 }]);
    expect(await other.open('y-test')).toMatchObject({ ok: true, yard: { name: 'state 2' } });
    await other.save(rename(yard, 'state 3'), 3000);
    expect(await other.open('y-test')).toMatchObject({ ok: true, yard: { name: 'state 3' } });
  });

  it.each([
    ['lost', undefined],
    ['damaged', 'torn'],
  ])(
    'a %s head is made again by the save: no false conflict, the earlier states stay with their dates',
    async (_what, head) => {
      const name = `yards-${bases++}`;
      const tab = createIdbStorage(name);
      for (let i = 1; i <= 3; i++) await tab.save(rename(yard, `state ${i}`), i * 1000);
      const raw = createStore(name, 'yards');
      await (head === undefined ? del('head:y-test', raw) : set('head:y-test', head, raw));
      const late = createIdbStorage(name);
      await late.open('y-test');
      await tab.save(rename(yard, 'state 4'), 4000);
      await tab.save(rename(yard, 'state 5'), 5000);
      expect(await get('head:y-test', raw)).toMatchObject({
        name: 'state 5',
        revision: 5,
        earlier: [4, 3, 2, 1].map((n) => ({ revision: n, savedAt: n * 1000 })),
      });
      // the check against other tabs holds all the same
      await expect(late.save(yard, 6000)).rejects.toMatchObject({ conflict: true });
      await set('state:y-test:5', 'torn', raw);
      expect(await tab.open('y-test')).toMatchObject({
        ok: false,
        earlier: [4, 3, 2, 1].map((n) => ({ savedAt: n * 1000, yard: { name: `state ${n}` } })),
      });
    },
  );

  it('of a head without any state does not hinder saving', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    await tab.save(yard, 1000);
    const raw = createStore(name, 'yards');
    await del('state:y-test:1', raw);
    await set('head:y-test', 'torn', raw);
    await tab.save(yard, 2000);
    expect(await tab.list()).toMatchObject([{ id: 'y-test', name: yard.name, savedAt: 2000 }]);
    expect((await tab.open('y-test')).ok).toBe(true);
  });

  it('of the head does not mix up yards whose ids begin alike', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    await tab.save({ ...yard, id: 'a', name: 'short' }, 1000);
    for (const at of [2000, 3000]) await tab.save({ ...yard, id: 'a:1', name: 'long' }, at);
    await del('head:a', createStore(name, 'yards'));
    await tab.save({ ...yard, id: 'a', name: 'short 2' }, 4000);
    expect(await get('head:a', createStore(name, 'yards'))).toMatchObject({
      revision: 2,
      earlier: [{ revision: 1, savedAt: 1000 }],
    });
  });

  it('a missing newest state is said, with the earlier one offered', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    await tab.save(yard, 1000);
    await tab.save(yard, 2000);
    await del('state:y-test:2', createStore(name, 'yards'));
    expect(await tab.open('y-test')).toMatchObject({
      ok: false,
      salvaged: null,
      issues: [{ code: 'state-missing' }],
      earlier: [{ savedAt: 1000 }],
    });
  });

  it('keeps 10 earlier states at most, of all ages', async () => {
    const name = `yards-${bases++}`;
    const tab = createIdbStorage(name);
    // 400 saves, 3 hours apart: 50 days.
    for (let i = 0; i < 400; i++) await tab.save({ ...yard, zones: [] }, i * 3 * 3600_000);
    const raw = createStore(name, 'yards');
    const states = (await keys(raw)).filter((key) => String(key).startsWith('state:'));
    expect(states.length).toBeGreaterThanOrEqual(6);
    expect(states.length).toBeLessThanOrEqual(11);
    const ages: number[] = [];
    for (const key of states) ages.push(399 * 3 - (await get(key, raw)).savedAt / 3600_000);
    // hours: one state within each of 6 h, 1 day, 7 days and older than 7 days
    expect(ages.some((age) => age > 0 && age < 6)).toBe(true);
    expect(ages.some((age) => age >= 6 && age < 24)).toBe(true);
    expect(ages.some((age) => age >= 24 && age < 168)).toBe(true);
    expect(ages.some((age) => age >= 168)).toBe(true);
  });
});

it('says that a browser without storage cannot store, and tries anew afterwards', async () => {
  const real = globalThis.indexedDB;
  const tab = createIdbStorage(`yards-${bases++}`);
  vi.stubGlobal('indexedDB', {
    open() {
      throw new DOMException('no', 'SecurityError');
    },
  });
  await expect(tab.save(yard, 1)).rejects.toThrow(/does not let the page store/);
  vi.stubGlobal('indexedDB', real);
  await tab.save(yard, 2);
  expect((await tab.open('y-test')).ok).toBe(true);
  vi.unstubAllGlobals();
});
