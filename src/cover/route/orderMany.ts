import { costOfRow, doneExtraM, type Links } from './links';
import type { OrderedStop } from './orderStops';

/** Rounds of making ways sure and looking for something better. */
const MOST_ROUNDS = 12;
/** Ways looked up in one search, at most: bounds the time for hundreds of stops. */
const MOST_LOOKUPS = 1e7;
/** Only so many nearest stops are tried beside a stop. */
const NEIGHBOURS = 8;
/** Stops moved together at most. */
const LONGEST_MOVE = 3;
const LEAST_GAIN_M = 1e-6;

interface Tour {
  /** stops in order. */
  readonly stops: readonly number[];
  readonly row: readonly number[];
  readonly costM: number;
}

/**
 * A short order of many stops: the nearest each time, then pieces turned round (2-opt, Croes 1958) and moved
 * (Or-opt, Or 1976; both from memory), each time with the best variant of every stop. An order is judged by ways that are sure.
 */
export function orderMany(links: Links): OrderedStop[] {
  const near = neighboursOf(links);
  const nearest = nearestFirst(links);
  links.makeSure(nearest);
  let best: Tour = { stops: stopsOf(links, nearest), row: nearest, costM: costOfRow(links, nearest) };
  let tour = bestVariants(links, best.stops);
  let lookups = 0;
  for (let round = 0; round < MOST_ROUNDS && lookups < MOST_LOOKUPS; round += 1) {
    [tour, lookups] = improve(links, near, tour, lookups);
    const wasSure = links.makeSure(tour.row);
    tour = { ...tour, costM: costOfRow(links, tour.row) };
    if (tour.costM < best.costM - LEAST_GAIN_M) best = tour;
    if (wasSure) break;
    tour = bestVariants(links, tour.stops);
  }
  return links.toOrder(best.row);
}

function stopsOf(links: Links, row: readonly number[]): number[] {
  return row.map((variant) => links.stopOf[variant] as number);
}

/** Variants in a row by going to the nearest each time, by ways that are sure. */
export function nearestFirst(links: Links): number[] {
  const isDone = new Uint8Array(links.stopCount);
  const row: number[] = [];
  while (row.length < links.stopCount) {
    const from = row.at(-1) ?? -1;
    let [next, least] = [-1, Number.POSITIVE_INFINITY];
    for (let b = 0; b < links.stopOf.length; b += 1) {
      if (isDone[links.stopOf[b] as number] || links.costM(from, b) >= least) continue;
      [next, least] = [b, links.costM(from, b)];
    }
    if (!links.settle(from, next)) continue;
    row.push(next);
    isDone[links.stopOf[next] as number] = 1;
  }
  return row;
}

/** The stops with the shortest ways from each stop, nearest first. */
function neighboursOf(links: Links): readonly (readonly number[])[] {
  const { stopCount, firstOf } = links;
  return Array.from({ length: stopCount }, (_, stop) => {
    const away = Array.from({ length: stopCount }, () => Number.POSITIVE_INFINITY);
    for (let other = 0; other < stopCount; other += 1) {
      if (other === stop) continue;
      for (let a = firstOf[stop] as number; a < (firstOf[stop + 1] as number); a += 1)
        for (let b = firstOf[other] as number; b < (firstOf[other + 1] as number); b += 1)
          away[other] = Math.min(away[other] as number, links.costM(a, b));
    }
    return away
      .map((_m, other) => other)
      .filter((other) => other !== stop)
      .sort((x, y) => (away[x] as number) - (away[y] as number))
      .slice(0, NEIGHBOURS);
  });
}

/** The best variants for stops in an order: shortest path through their variants (Viterbi 1967). */
function bestVariants(links: Links, stops: readonly number[]): Tour {
  const { firstOf } = links;
  let costs: number[] = [0];
  let from: number[] = [-1];
  const chosen: number[][] = [];
  for (const stop of stops) {
    const first = firstOf[stop] as number;
    const next: number[] = [];
    const by: number[] = [];
    for (let b = first; b < (firstOf[stop + 1] as number); b += 1) {
      let [best, least] = [0, Number.POSITIVE_INFINITY];
      for (let i = 0; i < from.length; i += 1) {
        const costM = (costs[i] as number) + links.costM(from[i] as number, b);
        if (costM < least) [best, least] = [i, costM];
      }
      next.push(least);
      by.push(best);
    }
    chosen.push(by);
    from = next.map((_, i) => first + i);
    costs = next;
  }
  costs = costs.map((costM, i) => costM + (stops.length > 0 ? links.homeM(from[i] as number) : 0));
  let index = costs.indexOf(Math.min(...costs));
  const lengthM = costs[index] ?? 0;
  const row = Array.from({ length: stops.length }, () => 0);
  for (let i = stops.length - 1; i >= 0; i -= 1) {
    row[i] = (firstOf[stops[i] as number] as number) + index;
    index = chosen[i]?.[index] ?? 0;
  }
  return { stops, row, costM: lengthM + doneExtraM(links, row) };
}

/** m between any two stops by their nearest variants; -1: the start, or the end. */
type Apart = (from: number, to: number) => number;

function apartOf(links: Links): Apart {
  const { stopCount, stopOf } = links;
  const width = stopCount + 1;
  const least = new Float64Array(width * width).fill(Number.POSITIVE_INFINITY);
  for (let a = -1; a < stopOf.length; a += 1) {
    for (let b = -1; b < stopOf.length; b += 1) {
      const index = ((stopOf[a] ?? -1) + 1) * width + (stopOf[b] ?? -1) + 1;
      least[index] = Math.min(least[index] as number, links.costM(a, b) - links.lengthM(b));
    }
  }
  return (from, to) => least[(from + 1) * width + to + 1] as number;
}

/** Takes moves that shorten a tour until none does, or the lookups are used up. */
function improve(
  links: Links,
  near: readonly (readonly number[])[],
  begun: Tour,
  used: number,
): [Tour, number] {
  const perTour = links.stopOf.length ** 2 / Math.max(1, links.stopCount);
  const apart = apartOf(links);
  let tour = begun;
  let lookups = used;
  for (let isBetter = true; isBetter && lookups < MOST_LOOKUPS; ) {
    isBetter = false;
    for (let stop = 0; stop < links.stopCount && lookups < MOST_LOOKUPS; stop += 1) {
      for (const move of movesOf(tour.stops, stop, near[stop] ?? [])) {
        if (mostGainM(links, apart, tour, move) <= LEAST_GAIN_M) continue;
        lookups += perTour;
        const tried = bestVariants(links, move.make());
        if (tried.costM >= tour.costM - LEAST_GAIN_M) continue;
        tour = tried;
        isBetter = true;
        break;
      }
    }
  }
  return [tour, lookups];
}

/** What a move could gain where it cuts a tour, were all new ways as short as any between those stops, m. */
function mostGainM(links: Links, apart: Apart, { row, stops }: Tour, { cuts, joins }: Move): number {
  let gainM = 0;
  for (const at of cuts) {
    const [a, b] = [row[at - 1] ?? -1, row[at] ?? -1];
    gainM += links.costM(a, b) - links.lengthM(b);
  }
  for (const [from, to] of joins) gainM -= apart(stops[from] ?? -1, stops[to] ?? -1);
  return gainM;
}

/** A change of an order. */
interface Move {
  /** places before which the order is cut. */
  readonly cuts: readonly number[];
  /** places in the old order that come to follow each other; outside of it: start or end. */
  readonly joins: readonly (readonly [number, number])[];
  make(): number[];
}

/** Turns round what stands at the places from `low` to `high`. */
function turn(stops: readonly number[], low: number, high: number): Move {
  return {
    cuts: [low, high + 1],
    joins: [
      [low - 1, high],
      [low, high + 1],
    ],
    make: () => [...stops.slice(0, low), ...stops.slice(low, high + 1).reverse(), ...stops.slice(high + 1)],
  };
}

/** Moves what stands at the places from `low` to `high` to before the place `to`, outside of them, turned round or not. */
function shift(stops: readonly number[], low: number, high: number, to: number, isTurned: boolean): Move {
  const [first, last] = isTurned ? [high, low] : [low, high];
  return {
    cuts: [low, high + 1, to],
    joins: [
      [low - 1, high + 1],
      [to - 1, first],
      [last, to],
    ],
    make: () => {
      const moved = stops.slice(low, high + 1);
      if (isTurned) moved.reverse();
      const rest = [...stops.slice(0, low), ...stops.slice(high + 1)];
      return rest.toSpliced(to > high ? to - moved.length : to, 0, ...moved);
    },
  };
}

/** Changes by which a stop comes to stand beside one of its neighbours, or at either end. */
function* movesOf(stops: readonly number[], stop: number, near: readonly number[]): Generator<Move> {
  const i = stops.indexOf(stop);
  yield turn(stops, 0, i);
  yield turn(stops, i, stops.length - 1);
  for (const other of near) {
    const j = stops.indexOf(other);
    const [low, high] = i < j ? [i, j] : [j, i];
    yield turn(stops, low + 1, high);
    yield turn(stops, low, high - 1);
    for (let last = i; last < Math.min(i + LONGEST_MOVE, stops.length); last += 1) {
      if (j >= i && j <= last) break;
      for (const to of [j, j + 1]) {
        if (to >= i && to <= last + 1) continue;
        yield shift(stops, i, last, to, false);
        if (last > i) yield shift(stops, i, last, to, true);
      }
    }
  }
}
