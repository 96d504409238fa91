import type { Yard } from '../yard/types';
import { StorageError } from './storageError';
import type { SaveState, YardStorage } from './types';

/** Saves one after another; while one runs, only the newest of those that wait is kept. */
export interface Autosave {
  /** how the newest state of the document stands with storage. */
  readonly state: SaveState;
  /**
   * Asks for `yard` to be stored in place of any that waits. While a conflict stands nothing is stored
   * and `state` keeps saying so; the yard waits until `reset` drops it.
   */
  request(yard: Yard): void;
  /** Resolves when nothing waits; tries a failed save once more. Never rejects. */
  flush(): Promise<void>;
  /** Sets the conflict state: another tab was heard of. A save under way does not lift it, however it ends. */
  block(message: string): void;
  /**
   * Drops what waits and any conflict: the document came from storage just now, or goes on under a new
   * id. How a save that still runs ends is of no account from here on.
   */
  reset(): void;
}

/**
 * An autosave with nothing to store yet.
 * @param storage where yards are kept; its rejections become `state`, none is passed on
 * @param now clock, ms since the epoch
 * @param changed called at each change of `state`; must not throw
 */
export function createAutosave(storage: YardStorage, now: () => number, changed: () => void): Autosave {
  let state: SaveState = { state: 'saved' };
  let waiting: Yard | null = null;
  let failed: Yard | null = null;
  let running: Promise<void> | null = null;
  /** raised by each reset; a save that began under an earlier number has no say any more. */
  let round = 0;

  const set = (next: SaveState) => {
    const same = next.state === state.state && next.state !== 'failed';
    state = next;
    if (!same) changed();
  };
  const blocked = () => state.state === 'failed' && state.conflict;

  async function run(): Promise<void> {
    while (waiting !== null && !blocked()) {
      const yard: Yard = waiting;
      const own = round;
      waiting = null;
      failed = null;
      set({ state: 'saving' });
      const trouble = await saveOne(yard);
      if (own !== round) continue;
      if (trouble === null) {
        if (waiting === null && !blocked()) set({ state: 'saved' });
        continue;
      }
      failed = yard;
      // a conflict once heard of stands until the person chose: no other failure hides it
      if (!blocked() && (waiting === null || trouble.conflict)) set({ state: 'failed', ...trouble });
    }
    running = null;
  }

  /** @returns what went wrong, in words for the person; null when it is stored. */
  async function saveOne(yard: Yard): Promise<{ message: string; conflict: boolean } | null> {
    try {
      await storage.save(yard, now());
      return null;
    } catch (error) {
      return { message: messageOf(error), conflict: error instanceof StorageError && error.conflict };
    }
  }

  function start(): void {
    if (waiting === null || blocked()) return;
    set({ state: 'saving' });
    running ??= run();
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
      round++;
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
