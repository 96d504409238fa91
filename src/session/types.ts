import type { RinseEdge, TreatedZone } from '../cover/types';
import type { MeasuredYard, Slip } from '../measure/types';
import type { VisitFigures } from '../plan/types';
import type { SeasonFigures } from '../season/types';
import type { Issue, Yard } from '../yard/types';

/** All figures of one visit. */
export interface DerivedVisit {
  readonly figures: VisitFigures;
  /** by zone id: every zone that some dose of the visit treats; what cannot go out treats none. */
  readonly treated: ReadonlyMap<string, TreatedZone>;
  /** the same with the zones of doses that cannot go out. */
  readonly asked: ReadonlyMap<string, TreatedZone>;
  readonly rinseEdges: readonly RinseEdge[];
  /** geometry's own issues, such as a zone wholly inside a strip. */
  readonly issues: readonly Issue[];
}

/** Everything a person sees, computed on demand and kept while its inputs are the same objects. */
export interface Derived {
  readonly yard: Yard;
  readonly measured: MeasuredYard;
  /** overlaps of one kind and gaps; costly, so computed at the first call. */
  slips(): readonly Slip[];
  /** null when there is no such visit, or the planner is not loaded yet (`loadPlanner`). */
  visit(visitId: string): DerivedVisit | null;
  /** the ledger of all visits and what speaks against it; derives every visit, so at the first call. Empty until the planner is loaded. */
  season(): SeasonFigures;
}

/** How the document stands with storage. */
export type SaveState =
  | { readonly state: 'saved' }
  | { readonly state: 'saving' }
  /**
   * `conflict`: another tab stored a different state of this yard; nothing more is saved until the
   * person chooses `reloadStored()` or `keepAsCopy()`. Any other failure is tried again at the next edit.
   */
  | { readonly state: 'failed'; readonly message: string; readonly conflict: boolean };

/** The open yard with its history. One dispatch is one step of undo. */
export interface YardSession {
  readonly yard: Yard;
  readonly derived: Derived;
  readonly save: SaveState;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /**
   * Applies an edit; returning the same document is no step.
   * @param label what the step is called in "Undo …", such as "Move corner".
   * @param mergeKey steps with the same key in a row within 1.5 s become one (typing in a field).
   */
  dispatch(label: string, edit: (yard: Yard) => Yard, mergeKey?: string): void;
  /** Shows a passing document (a drag under way) without history or saving; null ends it. */
  preview(yard: Yard | null): void;
  undo(): void;
  redo(): void;
  /** @returns a function that ends the subscription. */
  subscribe(listener: () => void): () => void;
  /** Waits until all that was dispatched is stored, or has failed (`save` says which). Tries a failed save once more. */
  flush(): Promise<void>;
  /** Takes the state that is in storage in place of this one (after a conflict). The step can be undone. */
  reloadStored(): Promise<OpenResult>;
  /** Goes on with this document as a yard of its own and stores it (after a conflict). @param newId id of the copy. */
  keepAsCopy(newId: string, name: string): Promise<void>;
  /** Stores what is left and ends the session: later dispatches are a programmer's mistake and throw. */
  close(): Promise<void>;
}

/** One line of the list of stored yards. */
export interface YardEntry {
  readonly id: string;
  readonly name: string;
  /** ms since the epoch. */
  readonly savedAt: number;
  readonly zoneCount: number;
}

/** Result of opening a stored yard. */
export type OpenResult =
  | { readonly ok: true; readonly yard: Yard; readonly issues: readonly Issue[] }
  /** damaged: what could be read, and earlier good states newest first. */
  | {
      readonly ok: false;
      readonly issues: readonly Issue[];
      readonly salvaged: Yard | null;
      readonly earlier: readonly { readonly savedAt: number; readonly yard: Yard }[];
    };

/** Where yards are kept. `idbStorage.ts` is the browser's side, `memoryStorage.ts` the twin for tests. */
export interface YardStorage {
  list(): Promise<readonly YardEntry[]>;
  open(id: string): Promise<OpenResult>;
  /**
   * Writes the newest state and keeps a rolling set of earlier ones, atomically.
   * Rejects with a StorageError whose message is for the person; its `conflict` is true when another
   * tab stored the yard after this storage opened or saved it.
   */
  save(yard: Yard, savedAt: number): Promise<void>;
  remove(id: string): Promise<void>;
  lastOpenId(): Promise<string | null>;
  setLastOpenId(id: string): Promise<void>;
  /**
   * Calls back when another tab stores or removes this yard, so that the person hears of it before
   * the next edit. @returns a function that ends it.
   */
  watch(id: string, changed: () => void): () => void;
}
