import type { Yard } from '../yard/types';
import { StorageError } from './storageError';
import type { SaveState, YardStorage } from './types';

/** Saves one after another; while one runs, only the newest of those that wait is kept. */
export interface Autosave {
  readonly state: SaveState;
  /** Asks for `yard` to be stored. Does nothing while a conflict stands. */
  request(yard: Yard): void;
  /** Resolves when nothing waits; tries a failed save once more. Never rejects. */
  flush(): Promise<void>;
  /** Sets the conflict state: another tab was heard of. */
  block(message: string): void;
  /** Drops what waits and any conflict: the document came from storage just now. */
  reset(): void;
}

/** @param changed called at each change of `state`. */
export function createAutosave(storage: YardStorage, now: () => number, changed: () => void): Autosave {
  let state: SaveState = { state: 'saved' };
  let waiting: Yard | null = null;
  let failed: Yard | null = null;
  let running: Promise<void> | null = null;

  const set = (next: SaveState) => {
    const same = next.state === state.state && next.state !== 'failed';
    state = next;
    if (!same) changed();
  };
  const blocked = () => state.state === 'failed' && state.conflict;

  async function run(): Promise<void> {
    while (waiting !== null && !blocked()) {
      const yard: Yard = waiting;
      waiting = null;
      failed = null;
      set({ state: 'saving' });
      try {
        await storage.save(yard, now());
        if (waiting === null && !blocked()) set({ state: 'saved' });
      } catch (error) {
        failed = yard;
        const conflict = error instanceof StorageError && error.conflict;
        if (waiting === null || conflict) set({ state: 'failed', message: messageOf(error), conflict });
      }
    }
  }

  function start(): void {
    if (running !== null || blocked()) return;
    running = run().finally(() => {
      running = null;
    });
  }

  return {
    get state() {
      return state;
    },
    request(yard) {
      waiting = yard;
      start();
    },
    async flush() {
      while (running !== null) await running;
      if (blocked()) return;
      waiting ??= failed;
      start();
      while (running !== null) await running;
    },
    block(message) {
      set({ state: 'failed', message, conflict: true });
    },
    reset() {
      waiting = null;
      failed = null;
      set({ state: 'saved' });
    },
  };
}

function messageOf(error: unknown): string {
  if (error instanceof StorageError) return error.message;
  const reason = error instanceof Error && error.message !== '' ? ` (${error.message})` : '';
  return `The yard could not be saved in this browser${reason}. Export it to a file to be safe.`;
}
