import type { RinseEdge, TreatedZone } from '../cover/types';
import type { MeasuredYard, Slip } from '../measure/types';
import type { VisitFigures } from '../plan/types';
import type { Issue, Yard } from '../yard/types';

/** All figures of one visit. */
export interface DerivedVisit {
  readonly figures: VisitFigures;
  /** by zone id: every zone that some dose of the visit treats. */
  readonly treated: ReadonlyMap<string, TreatedZone>;
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
  /** null when there is no such visit. */
  visit(visitId: string): DerivedVisit | null;
}

export type SaveState =
  | { readonly state: 'saved' }
  | { readonly state: 'saving' }
  | { readonly state: 'failed'; readonly message: string };

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
  /** Waits until all that was dispatched is stored. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

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
  /** Writes the newest state and keeps a rolling set of earlier ones, atomically. */
  save(yard: Yard, savedAt: number): Promise<void>;
  remove(id: string): Promise<void>;
  lastOpenId(): Promise<string | null>;
  setLastOpenId(id: string): Promise<void>;
}
