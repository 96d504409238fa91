import type { LedgerEntry } from './types';

/** Where a running sum passes a limit: at this visit, on these zones, in this stretch of time. */
export interface LedgerExcess {
  readonly visitId: string;
  readonly stretch: string;
  readonly zoneIds: readonly string[];
  /** the largest sum of any of these zones over the whole stretch, and the limit of that zone, kg/m². */
  readonly sum: number;
  readonly limit: number;
}

/** What is summed, over which stretches of time, against what. */
export interface ExcessTest {
  /** kg/m² of an entry. */
  amountOf(entry: LedgerEntry): number;
  /** name of the stretch an entry falls in; null: in none, it does not count. */
  stretchOf(entry: LedgerEntry): string | null;
  /** most over a stretch, kg/m²; null: no limit. */
  limitOf(zoneId: string): number | null;
}

const TOLERANCE = 1e-9;

/** In order of days, those without one last; entries of one day keep their order. The very list where it is so. */
export function inOrderOfDays(entries: readonly LedgerEntry[]): readonly LedgerEntry[] {
  const key = ({ date }: LedgerEntry) => date ?? '9999-99-99';
  if (entries.every((entry, i) => i === 0 || key(entries[i - 1] as LedgerEntry) <= key(entry)))
    return entries;
  return [...entries].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/**
 * Sums entries by zone and stretch in order of days and tells which visit passes the limit.
 * @returns one for each visit and stretch, with every zone where that visit passes it
 */
export function findExcess(entries: readonly LedgerEntry[], test: ExcessTest): readonly LedgerExcess[] {
  interface Run {
    readonly zoneId: string;
    readonly stretch: string;
    readonly limit: number;
    sum: number;
    passedBy: string | null;
  }
  const runs = new Map<string, Run>();
  for (const entry of inOrderOfDays(entries)) {
    const amount = test.amountOf(entry);
    const limit = test.limitOf(entry.zoneId);
    const stretch = test.stretchOf(entry);
    if (!(amount > 0) || limit === null || stretch === null) continue;
    const key = `${stretch} ${entry.zoneId}`;
    const run = runs.get(key) ?? { zoneId: entry.zoneId, stretch, limit, sum: 0, passedBy: null };
    runs.set(key, run);
    run.sum += amount;
    if (run.passedBy === null && run.sum > limit * (1 + TOLERANCE)) run.passedBy = entry.visitId;
  }
  const found = new Map<string, { visitId: string; stretch: string; runs: Run[] }>();
  for (const run of runs.values()) {
    if (run.passedBy === null) continue;
    const key = `${run.stretch} ${run.passedBy}`;
    const own = found.get(key) ?? { visitId: run.passedBy, stretch: run.stretch, runs: [] };
    found.set(key, own);
    own.runs.push(run);
  }
  return [...found.values()].map(({ visitId, stretch, runs: own }) => {
    const worst = own.reduce((most, run) => (run.sum > most.sum ? run : most));
    const zoneIds = own.map((run) => run.zoneId);
    return { visitId, stretch, zoneIds, sum: worst.sum, limit: worst.limit };
  });
}
