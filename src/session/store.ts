import type { Yard } from '../yard/types';
import { createAutosave } from './autosave';
import { deriveYard } from './derive';
import { createHistory } from './history';
import { CONFLICT_MESSAGE } from './storageError';
import type { Derived, YardSession, YardStorage } from './types';

/** What a session is told from outside: the clock, and who hears of faults. */
export interface SessionOptions {
  /** clock, ms since the epoch. */
  readonly now: () => number;
  /** true for a yard that is not in storage yet: it is stored at once. */
  readonly isNew?: boolean;
  /** hears of errors thrown by listeners; without it they are rethrown in a task of their own. */
  readonly onListenerError?: (error: unknown) => void;
}

/**
 * Opens a yard for editing: document, history, derived figures and autosave in one place.
 * The document is never changed in place. @throws nothing; trouble with storage shows in `save`.
 */
export function openSession(yard: Yard, storage: YardStorage, options: SessionOptions): YardSession {
  const history = createHistory(yard);
  const listeners = new Set<() => void>();
  let passing: Yard | null = null;
  let derived: Derived | null = null;
  let closed = false;

  const report =
    options.onListenerError ??
    ((error: unknown) => {
      queueMicrotask(() => {
        throw error;
      });
    });
  const tell = () => {
    for (const listener of [...listeners]) {
      try {
        listener();
      } catch (error) {
        report(error);
      }
    }
  };
  const autosave = createAutosave(storage, options.now, tell);
  const watchStored = () => storage.watch(history.present.id, () => autosave.block(CONFLICT_MESSAGE));
  let unwatch = watchStored();

  const shown = () => passing ?? history.present;
  const needOpen = () => {
    if (closed) throw new Error('The session is closed.');
  };
  const committed = () => {
    passing = null;
    autosave.request(history.present);
    tell();
  };

  if (options.isNew) autosave.request(history.present);
  // Only a convenience for the next start: when it fails, the save itself fails too and says so.
  storage.setLastOpenId(yard.id).catch(() => undefined);

  return {
    get yard() {
      return shown();
    },
    get derived() {
      const yardShown = shown();
      if (derived?.yard === yardShown) return derived;
      const next = deriveYard(yardShown, derived ?? undefined);
      derived = next;
      return next;
    },
    get save() {
      return autosave.state;
    },
    get undoLabel() {
      return history.undoLabel;
    },
    get redoLabel() {
      return history.redoLabel;
    },
    dispatch(label, edit, mergeKey) {
      needOpen();
      const next = edit(history.present);
      if (next === history.present) {
        if (passing !== null) {
          passing = null;
          tell();
        }
        return;
      }
      history.push(label, next, mergeKey, options.now());
      committed();
    },
    preview(next) {
      needOpen();
      if (next === passing) return;
      passing = next;
      tell();
    },
    undo() {
      needOpen();
      if (history.undo()) committed();
    },
    redo() {
      needOpen();
      if (history.redo()) committed();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    flush: () => autosave.flush(),
    async reloadStored() {
      needOpen();
      await autosave.flush();
      const result = await storage.open(history.present.id);
      if (result.ok) {
        autosave.reset();
        passing = null;
        history.push('Load the other tab’s state', result.yard, undefined, options.now());
        tell();
      }
      return result;
    },
    async keepAsCopy(newId, name) {
      needOpen();
      unwatch();
      autosave.reset();
      history.rewrite((old) => ({ ...old, id: newId }));
      history.push('Keep as a copy', { ...history.present, name }, undefined, options.now());
      unwatch = watchStored();
      committed();
      storage.setLastOpenId(newId).catch(() => undefined);
      await autosave.flush();
    },
    async close() {
      if (closed) return;
      closed = true;
      await autosave.flush();
      unwatch();
      listeners.clear();
    },
  };
}
