import { costOfRow, type Links } from './links';
import type { OrderedStop } from './orderStops';

/** Rounds of making sure before the best order so far is taken as it is. */
const MOST_ROUNDS = 80;

/**
 * The best of all orders, by dynamic programming over sets of stops (Bellman 1962, doi 10.1145/321105.321111;
 * Held & Karp 1962, doi 10.1137/0110015; both from memory). Ways not yet sure count as straight lines, so once all
 * ways of the best order are sure, no other can be better.
 */
export function orderFew(links: Links): OrderedStop[] {
  let [best, leastM]: [number[], number] = [[], Number.POSITIVE_INFINITY];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const row = bestRow(links);
    const wasSure = links.makeSure(row);
    const costM = costOfRow(links, row);
    if (costM < leastM) [best, leastM] = [row, costM];
    if (wasSure) break;
  }
  return links.toOrder(best);
}

function bestRow(links: Links): number[] {
  const { stopCount, stopOf, firstOf } = links;
  const count = stopOf.length;
  const whole = 2 ** stopCount - 1;
  const costs = new Float64Array((whole + 1) * count).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array((whole + 1) * count).fill(-1);
  for (let b = 0; b < count; b += 1) costs[(1 << (stopOf[b] as number)) * count + b] = links.costM(-1, b);
  const doneOver = (set: number, a: number, b: number): number => {
    let sum = 0;
    for (const [stop, lengthM] of links.over(a, b) ?? [])
      if (set & (1 << stop)) sum += links.doneCosts * lengthM;
    return sum;
  };
  for (let set = 1; set <= whole; set += 1) {
    for (let a = 0; a < count; a += 1) {
      const soFar = costs[set * count + a] as number;
      if (soFar === Number.POSITIVE_INFINITY) continue;
      for (let stop = 0; stop < stopCount; stop += 1) {
        if (set & (1 << stop)) continue;
        const next = (set | (1 << stop)) * count;
        for (let b = firstOf[stop] as number; b < (firstOf[stop + 1] as number); b += 1) {
          const costM = soFar + links.costM(a, b) + doneOver(set, a, b);
          if (costM >= (costs[next + b] as number)) continue;
          costs[next + b] = costM;
          before[next + b] = a;
        }
      }
    }
  }
  let [last, least] = [-1, Number.POSITIVE_INFINITY];
  for (let a = 0; a < count; a += 1) {
    const costM = (costs[whole * count + a] as number) + links.homeM(a) + doneOver(whole, a, -1);
    if (costM < least) [last, least] = [a, costM];
  }
  const row: number[] = [];
  for (let set = whole; last >= 0; ) {
    row.unshift(last);
    const previous = before[set * count + last] as number;
    set &= ~(1 << (stopOf[last] as number));
    last = previous;
  }
  return row;
}
