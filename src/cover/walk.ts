import type { XY } from '../measure/types';

interface Walkable {
  readonly line: readonly XY[];
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
 * @returns the same items, each once, but for those without a point; a turned one is a copy with its line reversed
 */
export function orderWalk<T extends Walkable>(items: readonly T[], from: XY | null = null): T[] {
  const all = items.filter(({ line }) => line.length > 0);
  if (all.length === 0) return [];
  const ways = waysBetween(all, from);
  const walk = nearestNext(ways, all.length, from !== null);
  if (walk.length <= MOST_IMPROVED) improve(walk, ways);
  return walk.flatMap((entry) => {
    const item = all[entry >> 1];
    if (!item) return [];
    return entry % 2 === 0 ? item : { ...item, line: [...item.line].reverse() };
  });
}

/** Metres walked from line to line, and from the start to the first one where there is a start. */
export function wayBetween(items: readonly Walkable[], from: XY | null = null): number {
  let here = from;
  let sum = 0;
  for (const { line } of items) {
    sum += here ? distance(here, line[0] as XY) : 0;
    here = line.at(-1) as XY;
  }
  return sum;
}

/*
 * A line is entered at its first point (2 · index) or at its last (2 · index + 1) and left at the other, one
 * of these numbers with its lowest bit turned. A walk is the list of the points entered.
 */

/** Metres from each point to each; `NONE` stands for where the walk begins, or for no place at all. */
interface Ways {
  readonly count: number;
  readonly metres: Float64Array;
}
const NONE = -1;
const OPEN_END = -2;

function waysBetween(items: readonly Walkable[], from: XY | null): Ways {
  const points = items.flatMap(({ line }) => [line[0] as XY, line.at(-1) as XY]);
  const count = points.length;
  const metres = new Float64Array(count * (count + 1));
  for (const [i, p] of points.entries())
    for (const [j, q] of points.entries()) metres[i * count + j] = distance(p, q);
  for (const [j, q] of points.entries()) metres[count * count + j] = from ? distance(from, q) : 0;
  return { count, metres };
}

/** Metres from a point that was left to one that is entered; nothing where the walk ends. */
function way({ count, metres }: Ways, left: number, entered: number): number {
  if (entered === OPEN_END) return 0;
  return metres[(left === NONE ? count : left) * count + entered] as number;
}

function nearestNext(ways: Ways, items: number, hasStart: boolean): number[] {
  const isOpen = new Uint8Array(items).fill(1);
  const walk: number[] = [];
  // without a start the first line is walked first, as it lies
  let here = hasStart ? NONE : 0;
  while (walk.length < items) {
    let best = NONE;
    let least = Number.POSITIVE_INFINITY;
    for (let entry = 0; entry < ways.count; entry += 1) {
      if (!isOpen[entry >> 1]) continue;
      const metres = way(ways, here, entry);
      if (metres < least) [least, best] = [metres, entry];
    }
    isOpen[best >> 1] = 0;
    walk.push(best);
    here = best ^ 1;
  }
  return walk;
}

function improve(walk: number[], ways: Ways): void {
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const isShorter = reverseRuns(walk, ways);
    if (!moveRuns(walk, ways) && !isShorter) return;
  }
}

/** @returns whether some run was turned round. */
function reverseRuns(walk: number[], ways: Ways): boolean {
  let isShorter = false;
  for (let i = 0; i < walk.length; i += 1) {
    for (let j = i; j < walk.length; j += 1) {
      const [before, after] = [leftBefore(walk, i), walk[j + 1] ?? OPEN_END];
      const [first, last] = [walk[i] as number, walk[j] as number];
      const now = way(ways, before, first) + way(ways, last ^ 1, after);
      const turned = way(ways, before, last ^ 1) + way(ways, first, after);
      if (now - turned <= LEAST_GAIN_M) continue;
      walk.splice(i, j - i + 1, ...backwards(walk.slice(i, j + 1)));
      isShorter = true;
    }
  }
  return isShorter;
}

/** Takes runs of one to three lines out and puts them, either way round, where the walk becomes shortest. */
function moveRuns(walk: number[], ways: Ways): boolean {
  let isShorter = false;
  for (let size = 1; size <= Math.min(3, walk.length - 1); size += 1) {
    for (let i = 0; i + size <= walk.length; i += 1) {
      const run = walk.splice(i, size);
      const [first, last] = [run[0] as number, run[size - 1] as number];
      const cost = (k: number, isTurned: boolean): number => {
        const [before, after] = [leftBefore(walk, k), walk[k] ?? OPEN_END];
        const [enter, leave] = isTurned ? [last ^ 1, first] : [first, last ^ 1];
        return way(ways, before, enter) + way(ways, leave, after) - way(ways, before, after);
      };
      let least = cost(i, false) - LEAST_GAIN_M;
      let place = { k: i, isTurned: false, isBetter: false };
      for (let k = 0; k <= walk.length; k += 1) {
        for (const isTurned of [false, true]) {
          const metres = cost(k, isTurned);
          if (metres < least) [least, place] = [metres, { k, isTurned, isBetter: true }];
        }
      }
      walk.splice(place.k, 0, ...(place.isTurned ? backwards(run) : run));
      isShorter ||= place.isBetter;
    }
  }
  return isShorter;
}

/** The point left before the line at a place of the walk. */
function leftBefore(walk: readonly number[], place: number): number {
  const before = walk[place - 1];
  return before === undefined ? NONE : before ^ 1;
}

function backwards(run: readonly number[]): number[] {
  return [...run].reverse().map((entry) => entry ^ 1);
}

function distance(p: XY, q: XY): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1]);
}
