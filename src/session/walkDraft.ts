import { createStore, del, get, set, type UseStore } from 'idb-keyval';
import type { Fix, FixLimits, Stand, WalkMode } from '../survey/walk/types';

/** A walk that is not finished: all that was recorded of it. */
export interface WalkDraft {
  readonly yardId: string;
  readonly startedMs: number;
  readonly mode: WalkMode;
  readonly limits: FixLimits;
  readonly toleranceM: number | null;
  /** seconds to stand at each corner. */
  readonly standS: number;
  /** every position that came while walking, poor ones too. */
  readonly fixes: readonly Fix[];
  /** corners stood at, or stretches of the edge walked. */
  readonly stands: readonly Stand[];
  /** when the stand or stretch under way began, milliseconds by the clock of the fixes; null for none. */
  readonly openFromMs: number | null;
}

/** Keeps the unfinished walk of each yard, so that it survives a reload or an empty battery. */
export interface WalkStore {
  /** null when the yard has none, or what is stored is no walk. @throws when the store cannot be read */
  load(yardId: string): Promise<WalkDraft | null>;
  /** Stores the newest state; states that come while one is being written are passed over but the last. @throws when it cannot be written */
  save(draft: WalkDraft): Promise<void>;
  /** Forgets a yard's walk once all saves before it are done. */
  drop(yardId: string): Promise<void>;
}

/** @param name of the IndexedDB database, for tests */
export function createWalkStore(name = 'measured-yard-walks'): WalkStore {
  let store: UseStore | null = null;
  const open = () => {
    store ??= createStore(name, 'walks');
    return store;
  };
  let writing: Promise<void> | null = null;
  let waiting: WalkDraft | null = null;

  async function writeAll(): Promise<void> {
    while (waiting) {
      const draft = waiting;
      waiting = null;
      await set(draft.yardId, draft, open());
    }
  }

  return {
    async load(yardId) {
      const found = await get<unknown>(yardId, open());
      return isDraft(found, yardId) ? found : null;
    },
    save(draft) {
      waiting = draft;
      writing ??= writeAll().finally(() => {
        writing = null;
      });
      return writing;
    },
    async drop(yardId) {
      if (waiting?.yardId === yardId) waiting = null;
      await writing?.catch(() => undefined);
      await del(yardId, open());
    },
  };
}

function isDraft(value: unknown, yardId: string): value is WalkDraft {
  if (typeof value !== 'object' || value === null) return false;
  const draft = value as Partial<WalkDraft>;
  const isList = (list: unknown): list is readonly unknown[] => Array.isArray(list);
  return (
    draft.yardId === yardId &&
    typeof draft.startedMs === 'number' &&
    (draft.mode === 'corners' || draft.mode === 'round') &&
    typeof draft.standS === 'number' &&
    (draft.toleranceM === null || typeof draft.toleranceM === 'number') &&
    typeof draft.limits === 'object' &&
    draft.limits !== null &&
    isList(draft.fixes) &&
    draft.fixes.every((fix) => isList((fix as Partial<Fix> | null)?.position)) &&
    isList(draft.stands) &&
    draft.stands.every((stand) => isStand(stand)) &&
    (draft.openFromMs === null || typeof draft.openFromMs === 'number')
  );
}

function isStand(value: unknown): boolean {
  const stand = value as Partial<Stand> | null;
  return typeof stand?.fromMs === 'number' && typeof stand.toMs === 'number';
}
