import type { Yard } from '../yard/types';

/** Most steps kept for undo. */
export const HISTORY_LIMIT = 500;
/** Steps with one merge key closer than this become one step, ms. */
export const MERGE_WINDOW_MS = 1500;

interface Step {
  readonly label: string;
  /** the document on the other side of the step: before it (undo list) or after it (redo list). */
  readonly yard: Yard;
}

/** Undo and redo over immutable documents: one list each way, bounded. */
export interface History {
  readonly present: Yard;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** @param atMs time of the step, ms; only differences matter. */
  push(label: string, yard: Yard, mergeKey: string | undefined, atMs: number): void;
  /** @returns false when there is nothing to take back. */
  undo(): boolean;
  redo(): boolean;
  /** Rewrites every document kept, for a change that undo must not take back (a new id). */
  rewrite(change: (yard: Yard) => Yard): void;
}

/** A history that starts at `first` with nothing to undo. */
export function createHistory(first: Yard): History {
  let present = first;
  let past: Step[] = [];
  let future: Step[] = [];
  let openKey: string | undefined;
  let lastAtMs = 0;

  return {
    get present() {
      return present;
    },
    get undoLabel() {
      return past.at(-1)?.label ?? null;
    },
    get redoLabel() {
      return future.at(-1)?.label ?? null;
    },
    push(label, yard, mergeKey, atMs) {
      const sinceMs = atMs - lastAtMs;
      const merges =
        mergeKey !== undefined && mergeKey === openKey && sinceMs >= 0 && sinceMs <= MERGE_WINDOW_MS;
      if (!merges) {
        past.push({ label, yard: present });
        if (past.length > HISTORY_LIMIT) past.shift();
      }
      future = [];
      present = yard;
      openKey = mergeKey;
      lastAtMs = atMs;
    },
    undo() {
      const step = past.pop();
      if (step === undefined) return false;
      future.push({ label: step.label, yard: present });
      present = step.yard;
      openKey = undefined;
      return true;
    },
    redo() {
      const step = future.pop();
      if (step === undefined) return false;
      past.push({ label: step.label, yard: present });
      present = step.yard;
      openKey = undefined;
      return true;
    },
    rewrite(change) {
      const turn = (step: Step): Step => ({ label: step.label, yard: change(step.yard) });
      past = past.map(turn);
      future = future.map(turn);
      present = change(present);
      openKey = undefined;
    },
  };
}
