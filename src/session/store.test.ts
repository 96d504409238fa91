import { describe, expect, it, vi } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { rename } from '../yard/edits';
import type { Yard } from '../yard/types';
import { HISTORY_LIMIT } from './history';
import { createMemoryDisk, createMemoryStorage } from './memoryStorage';
import { StorageError } from './storageError';
import { openSession } from './store';
import type { YardStorage } from './types';

// The store's own work only; what is derived is held by derive.test.ts.
vi.mock('./derive', () => ({ deriveYard: (of: Yard) => ({ yard: of }) }));

const yard = testYard();
const named = (name: string) => (old: Yard) => rename(old, name);

function open(storage: YardStorage = createMemoryStorage(), isNew = true) {
  const clock = { ms: 0 };
  const session = openSession(yard, storage, { now: () => clock.ms, isNew });
  return { session, clock, storage };
}

describe('history', () => {
  it('undoes and redoes to the very same documents, with the step’s label', () => {
    const { session } = open();
    session.dispatch('Rename', named('A'));
    const a = session.yard;
    session.dispatch('Rename again', named('B'));
    expect([session.undoLabel, session.redoLabel]).toEqual(['Rename again', null]);
    session.undo();
    expect(session.yard).toBe(a);
    expect([session.undoLabel, session.redoLabel]).toEqual(['Rename', 'Rename again']);
    session.undo();
    expect(session.yard).toBe(yard);
    session.undo();
    session.redo();
    session.redo();
    session.redo();
    expect(session.yard.name).toBe('B');
    session.undo();
    session.dispatch('Other way', named('C'));
    expect(session.redoLabel).toBeNull();
  });

  it('makes no step of an edit that returns the same document', () => {
    const { session } = open();
    const listener = vi.fn();
    session.subscribe(listener);
    session.dispatch('Nothing', (old) => old);
    expect(session.undoLabel).toBeNull();
    expect(listener).not.toHaveBeenCalled();
  });

  it('merges steps of one key within 1.5 s, and no others', () => {
    const { session, clock } = open();
    session.dispatch('Type', named('a'), 'name');
    clock.ms = 1500;
    session.dispatch('Type', named('ab'), 'name');
    clock.ms = 3001;
    session.dispatch('Type', named('abc'), 'name');
    session.dispatch('Type', named('abcd'), 'other');
    const names: string[] = [];
    while (session.undoLabel !== null) {
      session.undo();
      names.push(session.yard.name);
    }
    expect(names).toEqual(['abc', 'ab', 'Test yard']);
  });

  it('does not merge across an undo', () => {
    const { session } = open();
    session.dispatch('Type', named('a'), 'name');
    session.dispatch('Other', named('b'));
    session.undo();
    session.dispatch('Type', named('c'), 'name');
    session.undo();
    expect(session.yard.name).toBe('a');
  });

  it(`keeps ${HISTORY_LIMIT} steps`, () => {
    const { session } = open();
    for (let i = 0; i < HISTORY_LIMIT + 20; i++) session.dispatch('Step', named(`n${i}`));
    let steps = 0;
    for (; session.undoLabel !== null; steps++) session.undo();
    expect(steps).toBe(HISTORY_LIMIT);
    expect(session.yard.name).toBe('n19');
  });

  it('shows a passing document without history or saving, until null or the next edit', async () => {
    const { session, storage } = open();
    session.preview(rename(yard, 'passing'));
    expect(session.yard.name).toBe('passing');
    expect(session.undoLabel).toBeNull();
    session.preview(null);
    expect(session.yard).toBe(yard);
    session.preview(rename(yard, 'passing'));
    session.dispatch('Note', (old) => ({ ...old, products: [] }));
    expect(session.yard.name).toBe('Test yard');
    await session.flush();
    expect(await storage.open(yard.id)).toMatchObject({
      ok: true,
      yard: { name: 'Test yard', products: [] },
    });
  });
});

describe('derived figures', () => {
  it('follow the document shown and are kept while it stays', () => {
    const { session } = open();
    const first = session.derived;
    expect(first.yard).toBe(yard);
    expect(session.derived).toBe(first);
    session.dispatch('Rename', named('A'));
    expect(session.derived.yard).toBe(session.yard);
  });
});

describe('listeners', () => {
  it('hear of every change though one of them throws', () => {
    const seen: unknown[] = [];
    const session = openSession(yard, createMemoryStorage(), {
      now: () => 0,
      onListenerError: (error) => seen.push(error),
    });
    const fault = new Error('listener');
    session.subscribe(() => {
      throw fault;
    });
    const good = vi.fn();
    const end = session.subscribe(good);
    session.preview(rename(yard, 'x'));
    expect(good).toHaveBeenCalledTimes(1);
    expect(seen).toEqual([fault]);
    end();
    session.preview(null);
    expect(good).toHaveBeenCalledTimes(1);
  });
});

describe('autosave', () => {
  it('saves one at a time and skips what a newer state overtakes', async () => {
    const inner = createMemoryStorage();
    const saved: string[] = [];
    let release: () => void = () => undefined;
    let running = 0;
    const slow: YardStorage = {
      ...inner,
      async save(doc, at) {
        expect(++running).toBe(1);
        await new Promise<void>((resolve) => {
          release = resolve;
        });
        await inner.save(doc, at);
        saved.push(doc.name);
        running--;
      },
    };
    const { session } = open(slow, false);
    for (const name of ['a', 'b', 'c']) session.dispatch('Rename', named(name));
    expect(session.save.state).toBe('saving');
    release();
    await vi.waitFor(() => expect(saved).toEqual(['a']));
    release();
    await session.flush();
    expect(saved).toEqual(['a', 'c']);
    expect(session.save.state).toBe('saved');
  });

  it('tells a failure and tries again at the next edit', async () => {
    const inner = createMemoryStorage();
    let full = true;
    const { session } = open(
      {
        ...inner,
        save: (doc, at) =>
          full ? Promise.reject(new StorageError('No space.', false)) : inner.save(doc, at),
      },
      false,
    );
    session.dispatch('Rename', named('a'));
    await vi.waitFor(() =>
      expect(session.save).toEqual({ state: 'failed', message: 'No space.', conflict: false }),
    );
    full = false;
    session.dispatch('Rename', named('b'));
    await vi.waitFor(() => expect(session.save.state).toBe('saved'));
    expect(await inner.open(yard.id)).toMatchObject({ ok: true, yard: { name: 'b' } });
  });

  it('tries a failed save once more at close, and refuses edits after it', async () => {
    const inner = createMemoryStorage();
    let full = true;
    const { session } = open(
      { ...inner, save: (doc, at) => (full ? Promise.reject(new Error('x')) : inner.save(doc, at)) },
      false,
    );
    session.dispatch('Rename', named('a'));
    await vi.waitFor(() => expect(session.save.state).toBe('failed'));
    full = false;
    await session.close();
    expect(await inner.open(yard.id)).toMatchObject({ ok: true, yard: { name: 'a' } });
    expect(() => session.dispatch('Rename', named('b'))).toThrow('closed');
  });
});

describe('two tabs on one yard', () => {
  async function tabs() {
    const disk = createMemoryDisk();
    const [sa, sb] = [createMemoryStorage(disk), createMemoryStorage(disk)];
    const a = openSession(yard, sa, { now: () => 1, isNew: true });
    await a.flush();
    await sb.open(yard.id);
    const b = openSession(yard, sb, { now: () => 2 });
    a.dispatch('Rename', named('by a'));
    await a.flush();
    return { a, b, disk };
  }

  it('the other tab hears of it at once and stores nothing over it', async () => {
    const { b, disk } = await tabs();
    expect(b.save).toMatchObject({ state: 'failed', conflict: true });
    b.dispatch('Rename', named('by b'));
    await b.flush();
    expect(b.save).toMatchObject({ state: 'failed', conflict: true, message: /Another tab/ });
    expect(disk.heads.get(yard.id)?.name).toBe('by a');
  });

  it('can load the other’s state, undo back to its own, and go on', async () => {
    const { b, disk } = await tabs();
    b.dispatch('Rename', named('by b'));
    expect((await b.reloadStored()).ok).toBe(true);
    expect([b.yard.name, b.save.state]).toEqual(['by a', 'saved']);
    b.undo();
    await b.flush();
    expect(disk.heads.get(yard.id)?.name).toBe('by b');
  });

  it('can keep its own as a copy: both are stored, undo keeps the new id', async () => {
    const { a, b, disk } = await tabs();
    b.dispatch('Rename', named('by b'));
    await b.keepAsCopy('y-copy', 'Copy');
    expect(b.save.state).toBe('saved');
    expect([disk.heads.get(yard.id)?.name, disk.heads.get('y-copy')?.name]).toEqual(['by a', 'Copy']);
    b.undo();
    b.undo();
    expect([b.yard.id, b.yard.name]).toEqual(['y-copy', 'Test yard']);
    await b.flush();
    expect(a.save.state).toBe('saved');
  });
});
