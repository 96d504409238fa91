import type { Yard } from '../yard/types';
import { CONFLICT_MESSAGE, StorageError } from './storageError';
import type { OpenResult, YardEntry } from './types';

/** Small record kept beside the states of a yard: what the list shows, and which states there are. */
export interface Head extends YardEntry {
  readonly format: 1;
  /** grows by one at each save; the newest state has this number. */
  readonly revision: number;
  /** states before the newest, newest first. */
  readonly earlier: readonly StateRef[];
}

/** One earlier state by its number; `savedAt` in ms since the epoch. */
export interface StateRef {
  readonly revision: number;
  readonly savedAt: number;
}

/** One stored state: the yard as its file's object. */
export interface State {
  readonly savedAt: number;
  readonly file: unknown;
}

const MINUTE_MS = 60_000;
/** ages, ms, at which one bucket of earlier states ends and the next begins: 1 and 10 min, 1 and 6 h, 1 and 7 days. */
const BUCKET_ENDS_MS = [1, 10, 60, 360, 1440, 10_080].map((minutes) => minutes * MINUTE_MS);
const ALWAYS_KEPT = 3;

/**
 * Chooses which earlier states to keep: the 3 newest, and the oldest in each bucket of age (under
 * 1 min, 10 min, 1 h, 6 h, 1 day, 7 days, older): 10 at most.
 * @param earlier newest first @returns those kept, newest first
 */
export function thinStates(earlier: readonly StateRef[], nowMs: number): readonly StateRef[] {
  const oldestOfBucket = new Map<number, StateRef>();
  for (const ref of earlier.slice(ALWAYS_KEPT)) {
    const ageMs = nowMs - ref.savedAt;
    const bucket = BUCKET_ENDS_MS.findIndex((end) => ageMs < end);
    oldestOfBucket.set(bucket, ref);
  }
  const kept = new Set(oldestOfBucket.values());
  return earlier.filter((ref, i) => i < ALWAYS_KEPT || kept.has(ref));
}

/**
 * The head after a save, and the states to delete.
 * @param head what is stored now; undefined when nothing is
 * @param known revision this tab last opened or saved; undefined when it never did
 * @throws StorageError (conflict) when another tab stored or removed the yard since
 */
export function headAfterSave(
  head: Head | undefined,
  known: number | undefined,
  yard: Yard,
  savedAt: number,
): { readonly head: Head; readonly drop: readonly number[] } {
  if (head?.revision !== known) throw new StorageError(CONFLICT_MESSAGE, true);
  const all = head === undefined ? [] : [{ revision: head.revision, savedAt: head.savedAt }, ...head.earlier];
  const earlier = thinStates(all, savedAt);
  return {
    head: {
      format: 1,
      id: yard.id,
      name: yard.name,
      savedAt,
      zoneCount: yard.zones.length,
      revision: (head?.revision ?? 0) + 1,
      earlier,
    },
    drop: all.filter((ref) => !earlier.includes(ref)).map((ref) => ref.revision),
  };
}

/** True for a value that can be used as a head. */
export function isHead(value: unknown): value is Head {
  const head = value as Head | null | undefined;
  return (
    typeof head === 'object' &&
    head !== null &&
    head.format === 1 &&
    typeof head.id === 'string' &&
    typeof head.name === 'string' &&
    Number.isFinite(head.savedAt) &&
    Number.isFinite(head.zoneCount) &&
    Number.isInteger(head.revision) &&
    Array.isArray(head.earlier)
  );
}

/**
 * Checks the newest state against the schema; when it is damaged, gathers what can be read of it
 * and the earlier states that are whole. The checker is loaded at the first call.
 * @param newest undefined when it is missing @param earlier newest first
 */
export async function openStates(
  newest: State | undefined,
  earlier: readonly (State | undefined)[],
): Promise<OpenResult> {
  const { yardFromGeoJson } = await import('../yard/decode');
  const read = (state: State | undefined) =>
    state === undefined
      ? { yard: null, issues: [MISSING] }
      : yardFromGeoJson((state as { file?: unknown } | null)?.file);
  const { yard, issues } = read(newest);
  if (yard !== null && !issues.some((issue) => issue.severity === 'error')) return { ok: true, yard, issues };
  const whole: { savedAt: number; yard: Yard }[] = [];
  for (const state of earlier) {
    const before = read(state);
    const sound = before.yard !== null && !before.issues.some((issue) => issue.severity === 'error');
    if (state !== undefined && before.yard !== null && sound) {
      whole.push({ savedAt: state.savedAt, yard: before.yard });
    }
  }
  return { ok: false, issues, salvaged: yard, earlier: whole };
}

const MISSING = {
  code: 'state-missing',
  severity: 'error',
  message: 'The newest saved state of this yard is missing.',
  place: {},
} as const;

/** Result for an id that storage does not know. */
export const NOT_STORED: OpenResult = {
  ok: false,
  issues: [
    {
      code: 'yard-not-stored',
      severity: 'error',
      message: 'This yard is not stored in this browser. It may have been removed in another tab.',
      place: {},
    },
  ],
  salvaged: null,
  earlier: [],
};
