import type { XY } from '../measure/types';

interface Walkable {
  readonly line: readonly XY[];
}

/** One line of a walk, and whether it is walked from its last point to its first. */
interface Step<T> {
  readonly item: T;
  readonly isTurned: boolean;
}

/** Rounds of improvement; each goes through all pairs. A yard's edges need two or three. */
const MOST_ROUNDS = 20;
/** Walks of more lines than this are left as the nearest ends make them: pairs are too many for each frame. */
const MOST_IMPROVED = 150;
/** A walk must become shorter by this to count, m. */
const LEAST_GAIN_M = 1e-6;

/**
 * Puts lines in the order of a walk that is short between them. First always on to the line with the nearest
 * end (turned round where its far end is the nearer); then, while that shortens the walk, a run of lines is
 * walked the other way round (2-opt: Croes 1958, doi 10.1287/opre.6.6.791) or one to three lines are taken
 * at another time (Or 1976), either way round.
 * @param from where the walk begins, in the plane; null: where it is shortest
 * @returns the same items, each once; a turned one is a copy with its line reversed
 */
export function orderWalk<T extends Walkable>(items: readonly T[], from: XY | null = null): T[] {
  const all = items.filter(({ line }) => line.length > 0);
  const first = all[0]?.line[0];
  if (!first) return [];
  let walk = nearestNext(all, from ?? first);
  if (walk.length <= MOST_IMPROVED) walk = improve(walk, from);
  return walk.map(({ item, isTurned }) => (isTurned ? { ...item, line: [...item.line].reverse() } : item));
}

/** Metres walked from line to line, and from the start to the first one where there is a start. */
export function wayBetween(items: readonly Walkable[], from: XY | null = null): number {
  return lengthOf(
    items.map((item) => ({ item, isTurned: false })),
    from,
  );
}

function nearestNext<T extends Walkable>(items: readonly T[], from: XY): Step<T>[] {
  const left = [...items];
  const walk: Step<T>[] = [];
  let here = from;
  while (left.length > 0) {
    let best = 0;
    let isTurned = false;
    let least = Number.POSITIVE_INFINITY;
    for (const [index, { line }] of left.entries()) {
      const start = distance(here, line[0]);
      const end = distance(here, line.at(-1));
      if (Math.min(start, end) < least) {
        least = Math.min(start, end);
        best = index;
        isTurned = end < start;
      }
    }
    const [item] = left.splice(best, 1);
    if (!item) break;
    walk.push({ item, isTurned });
    here = endOf({ item, isTurned });
  }
  return walk;
}

function improve<T extends Walkable>(walk: readonly Step<T>[], from: XY | null): Step<T>[] {
  let best = [...walk];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const before = lengthOf(best, from);
    best = reverseRuns(best, from);
    best = moveRuns(best, from);
    if (lengthOf(best, from) > before - LEAST_GAIN_M) break;
  }
  return best;
}

function reverseRuns<T extends Walkable>(walk: Step<T>[], from: XY | null): Step<T>[] {
  for (let i = 0; i < walk.length; i += 1) {
    for (let j = i; j < walk.length; j += 1) {
      const before = i === 0 ? from : endOf(walk[i - 1] as Step<T>);
      const after = walk[j + 1] ? startOf(walk[j + 1] as Step<T>) : null;
      const [start, end] = [startOf(walk[i] as Step<T>), endOf(walk[j] as Step<T>)];
      const gain = gap(before, start) + gap(end, after) - gap(before, end) - gap(start, after);
      if (gain > LEAST_GAIN_M) walk.splice(i, j - i + 1, ...backwards(walk.slice(i, j + 1)));
    }
  }
  return walk;
}

/** Takes runs of one to three lines out and puts them, either way round, where the walk becomes shortest. */
function moveRuns<T extends Walkable>(walk: Step<T>[], from: XY | null): Step<T>[] {
  let best = walk;
  for (let size = 1; size <= Math.min(3, walk.length - 1); size += 1) {
    for (let i = 0; i + size <= best.length; i += 1) {
      const run = best.slice(i, i + size);
      const rest = [...best.slice(0, i), ...best.slice(i + size)];
      const [start, end] = [startOf(run[0] as Step<T>), endOf(run.at(-1) as Step<T>)];
      const at = (k: number) => [
        k === 0 ? from : endOf(rest[k - 1] as Step<T>),
        rest[k] ? startOf(rest[k] as Step<T>) : null,
      ];
      const cost = (k: number, isTurned: boolean): number => {
        const [before, after] = at(k) as [XY | null, XY | null];
        const own = isTurned ? gap(before, end) + gap(start, after) : gap(before, start) + gap(end, after);
        return own - gap(before, after);
      };
      let least = cost(i, false) - LEAST_GAIN_M;
      let place: { k: number; isTurned: boolean } | null = null;
      for (let k = 0; k <= rest.length; k += 1) {
        for (const isTurned of [false, true]) {
          const now = cost(k, isTurned);
          if (now < least) [least, place] = [now, { k, isTurned }];
        }
      }
      if (place)
        best = [
          ...rest.slice(0, place.k),
          ...(place.isTurned ? backwards(run) : run),
          ...rest.slice(place.k),
        ];
    }
  }
  return best;
}

function backwards<T extends Walkable>(run: readonly Step<T>[]): Step<T>[] {
  return [...run].reverse().map(({ item, isTurned }) => ({ item, isTurned: !isTurned }));
}

function lengthOf<T extends Walkable>(walk: readonly Step<T>[], from: XY | null): number {
  let here = from;
  let sum = 0;
  for (const step of walk) {
    sum += gap(here, startOf(step));
    here = endOf(step);
  }
  return sum;
}

function startOf<T extends Walkable>({ item: { line }, isTurned }: Step<T>): XY {
  return (isTurned ? line.at(-1) : line[0]) as XY;
}

function endOf<T extends Walkable>({ item: { line }, isTurned }: Step<T>): XY {
  return (isTurned ? line[0] : line.at(-1)) as XY;
}

/** Metres between two places; none where one of them is not set. */
function gap(p: XY | null, q: XY | null): number {
  return p && q ? Math.hypot(p[0] - q[0], p[1] - q[1]) : 0;
}

function distance(p: XY, q: XY | undefined): number {
  return q ? Math.hypot(p[0] - q[0], p[1] - q[1]) : Number.POSITIVE_INFINITY;
}
