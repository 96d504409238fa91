import type { Position, Ring } from '../yard/types';
import type { Item, LinkedRing } from './borderLinks';
import { ON_SIDE_M, placeAt, type Run } from './borderRuns';
import { bendBetween } from './outlineNodes';

/** A run, and the ring of the zone it belongs to. */
export type RingRun = Run & { readonly ring: number; readonly ringM: number };

/** How far into the run, m; null when it lies elsewhere. */
function wayInto(run: RingRun, ring: number, alongM: number): number | null {
  if (ring !== run.ring) return null;
  const way = (alongM - run.startM + run.ringM) % run.ringM;
  if (way <= run.lengthM + ON_SIDE_M) return Math.min(way, run.lengthM);
  return run.ringM - way <= ON_SIDE_M ? 0 : null;
}

function runAt(item: Item, runs: readonly RingRun[]): RingRun | undefined {
  return runs.find((run) => wayInto(run, item.ring, item.alongM) !== null);
}

/** Where a corner goes: an end of a run to the run's new end, another to its share of the way. */
export function placeOf(item: Item, runs: readonly RingRun[]): Position {
  const run = runAt(item, runs);
  const way = run && wayInto(run, item.ring, item.alongM);
  return run && way !== null && way !== undefined ? placeIn(run, way) : item.at;
}

function placeIn(run: RingRun, way: number): Position {
  if (way <= ON_SIDE_M) return run.next[0] ?? [0, 0];
  if (run.lengthM - way <= ON_SIDE_M) return run.next.at(-1) ?? [0, 0];
  return placeAt(run, way / run.lengthM);
}

/** A neighbour's ring on the new course; null when nothing of it moves. */
export function carryRing({ items, follows }: LinkedRing, runs: readonly RingRun[]): Ring | null {
  const n = items.length;
  const at = (i: number) => items[i % n] as Item;
  // The run in which the side after each corner goes along, by the side's middle.
  const runOfSide = items.map((item, i) => {
    const next = at(i + 1);
    if (!follows[i]) return undefined;
    const [a, b] = [item.alongM, next.alongM];
    return runs.find((run) => {
      const isWrapped = Math.abs(a - b) > run.ringM / 2;
      const middle = isWrapped ? ((a + b + run.ringM) / 2) % run.ringM : (a + b) / 2;
      return (
        wayInto(run, item.ring, middle) !== null &&
        wayInto(run, item.ring, a) !== null &&
        wayInto(run, item.ring, b) !== null
      );
    });
  });
  if (runOfSide.every((run) => !run) && items.every((item) => isSame(placeOf(item, runs), item.at)))
    return null;
  const start = firstOf(items, runOfSide);
  const made: Position[] = [];
  const push = (p: Position) => {
    const last = made.at(-1);
    if (!last || !isSame(last, p)) made.push(p);
  };
  for (let k = 0; k < n; ) {
    const i = start + k;
    const item = at(i);
    const run = runOfSide[i % n];
    const place = placeOf(item, runs);
    const isEnd = run !== undefined || runOfSide[(i + n - 1) % n] !== undefined;
    if (!item.isPut || isEnd || !isSame(place, item.at)) push(place);
    if (!run) {
      const next = at(i + 1);
      for (const p of flatOf(item, next, place, placeOf(next, runs))) push(p);
      k += 1;
      continue;
    }
    let count = 1;
    while (count < n && runOfSide[(i + count) % n] === run) count += 1;
    for (const p of alongRun(
      run,
      Array.from({ length: count + 1 }, (_, j) => at(i + j)),
    ))
      push(p);
    k += count;
  }
  const first = made[0];
  const last = made.at(-1);
  if (first && last && made.length > 1 && isSame(first, last)) made.pop();
  return first ? [...made, first] : [];
}

/** A corner where no stretch on a run is under way; on a run that is the whole ring, its start. */
function firstOf(items: readonly Item[], runOfSide: readonly (RingRun | undefined)[]): number {
  const n = items.length;
  const start = items.findIndex((_, i) => {
    const before = runOfSide[(i + n - 1) % n];
    return !before || before !== runOfSide[i];
  });
  if (start >= 0) return start;
  const [run] = runOfSide;
  return Math.max(
    0,
    items.findIndex((item) => run && (wayInto(run, item.ring, item.alongM) ?? 1) <= ON_SIDE_M),
  );
}

/** Corners of a curve of the neighbour's own, laid anew when an end moved. */
function flatOf({ bend, at }: Item, next: Item, from: Position, to: Position): readonly Position[] {
  if (!bend) return [];
  if (isSame(from, at) && isSame(to, next.at)) return bend.flat;
  return bendBetween(from, bend.inner, to, bend.kind)?.flat ?? [];
}

function isSame(a: Position, b: Position): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** New corners strictly between the first and last of a stretch that lies on a run, in its direction. */
function alongRun(run: RingRun, items: readonly Item[]): Position[] {
  const ways = items.map((item) => wayInto(run, item.ring, item.alongM) ?? 0);
  const [second = 0] = ways.slice(1);
  const isWhole = run.lengthM >= run.ringM - ON_SIDE_M;
  // On a run that is the whole ring its start is its end too: the next corner tells which is meant.
  if (isWhole && ways.length > 2) {
    if ((ways[0] ?? 0) <= ON_SIDE_M && second > run.lengthM / 2) ways[0] = run.lengthM;
    const before = ways.at(-2) ?? 0;
    if ((ways.at(-1) ?? 0) <= ON_SIDE_M && before > run.lengthM / 2) ways[ways.length - 1] = run.lengthM;
  }
  const [from, to] = [(ways[0] ?? 0) / run.lengthM, (ways.at(-1) ?? 0) / run.lengthM];
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const edge = ON_SIDE_M / run.lengthM;
  const within = run.next.flatMap((p, i) => {
    const share = run.shares[i] ?? 0;
    return share > low + edge && share < high - edge ? [{ share, p }] : [];
  });
  const guests = items.slice(1, -1).flatMap((item, j) => {
    if (item.isCorner) return [];
    const share = (ways[j + 1] ?? 0) / run.lengthM;
    return [{ share, p: placeAt(run, share) }];
  });
  const all = [...within, ...guests].sort((a, b) => a.share - b.share).map(({ p }) => p);
  return from <= to ? all : all.reverse();
}
