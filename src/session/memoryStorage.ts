import { yardToGeoJson } from '../yard/encode';
import { type Head, headAfterSave, NOT_STORED, openStates, type State } from './storedStates';
import type { YardStorage } from './types';

/** What several memory storages share, as tabs share one browser. Tests may damage it. */
export interface MemoryDisk {
  readonly heads: Map<string, Head>;
  /** by `id:revision`. */
  readonly states: Map<string, State>;
  readonly watchers: Set<(id: string, from: object) => void>;
  lastOpenId: string | null;
}

/** An empty place for yards, to be shared by the storages of one test. */
export function createMemoryDisk(): MemoryDisk {
  return { heads: new Map(), states: new Map(), watchers: new Set(), lastOpenId: null };
}

/** The twin of the browser's storage for tests: one call is one tab on `disk`. Rejects as `YardStorage` says. */
export function createMemoryStorage(disk: MemoryDisk = createMemoryDisk()): YardStorage {
  const known = new Map<string, number>();
  const tab = {};
  const tell = (id: string) => {
    for (const watcher of disk.watchers) watcher(id, tab);
  };
  const remove = (id: string, revision: number) => disk.states.delete(`${id}:${revision}`);

  return {
    async list() {
      return [...disk.heads.values()]
        .map(({ id, name, savedAt, zoneCount }) => ({ id, name, savedAt, zoneCount }))
        .sort((a, b) => b.savedAt - a.savedAt);
    },
    async open(id) {
      const head = disk.heads.get(id);
      if (head === undefined) return NOT_STORED;
      const result = await openStates(
        disk.states.get(`${id}:${head.revision}`),
        head.earlier.map((ref) => disk.states.get(`${id}:${ref.revision}`)),
      );
      known.set(id, head.revision);
      return result;
    },
    async save(yard, savedAt) {
      const { head, drop } = headAfterSave(disk.heads.get(yard.id), known.get(yard.id), yard, savedAt);
      const state = structuredClone({ savedAt, file: yardToGeoJson(yard) });
      disk.states.set(`${yard.id}:${head.revision}`, state);
      for (const revision of drop) remove(yard.id, revision);
      disk.heads.set(yard.id, head);
      known.set(yard.id, head.revision);
      tell(yard.id);
    },
    async remove(id) {
      const head = disk.heads.get(id);
      if (head === undefined) return;
      for (const ref of [head, ...head.earlier]) remove(id, ref.revision);
      disk.heads.delete(id);
      known.delete(id);
      if (disk.lastOpenId === id) disk.lastOpenId = null;
      tell(id);
    },
    async lastOpenId() {
      return disk.lastOpenId;
    },
    async setLastOpenId(id) {
      disk.lastOpenId = id;
    },
    watch(id, changed) {
      const watcher = (changedId: string, from: object) => {
        if (changedId === id && from !== tab) changed();
      };
      disk.watchers.add(watcher);
      return () => disk.watchers.delete(watcher);
    },
  };
}
