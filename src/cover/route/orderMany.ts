import { costOfRow, doneExtraM, type Links } from './links';
import type { OrderedStop } from './orderStops';

/** Rounds of making ways sure and looking for something better. */
const MOST_ROUNDS = 12;
/** Ways looked up in one search, at most: bounds the time for hundreds of stops. */
const MOST_LOOKUPS = 6e7;
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
 * (Or-opt, Or 1976), each time with the best variant of every stop. An order is judged by ways that are sure.
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

/** Takes moves that shorten a tour until none does, or the lookups are used up. */
function improve(
  links: Links,
  near: readonly (readonly number[])[],
  begun: Tour,
  used: number,
): [Tour, number] {
  const perTour = links.stopOf.length ** 2 / Math.max(1, links.stopCount);
  let tour = begun;
  let lookups = used;
  for (let isBetter = true; isBetter && lookups < MOST_LOOKUPS; ) {
    isBetter = false;
    for (let stop = 0; stop < links.stopCount && lookups < MOST_LOOKUPS; stop += 1) {
      for (const stops of movesOf(tour.stops, stop, near[stop] ?? [])) {
        lookups += perTour;
        const tried = bestVariants(links, stops);
        if (tried.costM >= tour.costM - LEAST_GAIN_M) continue;
        tour = tried;
        isBetter = true;
        break;
      }
    }
  }
  return [tour, lookups];
}

/** Orders in which a stop comes to stand beside one of its neighbours, or at either end. */
function* movesOf(stops: readonly number[], stop: number, near: readonly number[]): Generator<number[]> {
  const i = stops.indexOf(stop);
  yield [...stops.slice(0, i + 1).reverse(), ...stops.slice(i + 1)];
  yield [...stops.slice(0, i), ...stops.slice(i).reverse()];
  for (const other of near) {
    const j = stops.indexOf(other);
    const [low, high] = i < j ? [i, j] : [j, i];
    yield [...stops.slice(0, low + 1), ...stops.slice(low + 1, high + 1).reverse(), ...stops.slice(high + 1)];
    yield [...stops.slice(0, low), ...stops.slice(low, high).reverse(), ...stops.slice(high)];
    for (let length = 1; length <= LONGEST_MOVE; length += 1) {
      const moved = stops.slice(i, i + length);
      if (moved.length < length || moved.includes(other)) continue;
      const rest = [...stops.slice(0, i), ...stops.slice(i + length)];
      const at = rest.indexOf(other);
      yield [...rest.slice(0, at + 1), ...moved, ...rest.slice(at + 1)];
      yield [...rest.slice(0, at), ...moved, ...rest.slice(at)];
      if (length === 1) continue;
      const turned = moved.toReversed();
      yield [...rest.slice(0, at + 1), ...turned, ...rest.slice(at + 1)];
      yield [...rest.slice(0, at), ...turned, ...rest.slice(at)];
    }
  }
}
