import type { XY } from '../../measure/types';
import type { OrderedStop, OrderInput, StopWay } from './orderStops';

/**
 * Ways between all variants of all stops, as costs. They begin as straight lines, which no way is shorter than,
 * and become sure when asked for: so only those are worked out that a good order may have.
 */
export interface Links {
  readonly stopCount: number;
  /** stop of each variant, all stops' variants in one row. */
  readonly stopOf: readonly number[];
  /** first variant of each stop in that row; one entry more, for the end. */
  readonly firstOf: readonly number[];
  /** m to walk from variant a's end to the end of variant b; a -1: from the start. */
  costM(a: number, b: number): number;
  /** m of the walk over variant b itself. */
  lengthM(b: number): number;
  /** m from variant a's end to where the walk ends. */
  homeM(a: number): number;
  /** ground that the way crosses, where it is sure and crosses any. */
  over(a: number, b: number): StopWay['over'] | undefined;
  /** m dearer, for each metre over ground that is done. */
  readonly doneCosts: number;
  /** Works a way out. @returns whether it was sure before. */
  settle(a: number, b: number): boolean;
  /** @returns whether all ways of an order (variants in their row) were sure before. */
  makeSure(row: readonly number[]): boolean;
  toOrder(row: readonly number[]): OrderedStop[];
}

const straight = (a: XY, b: XY): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Costs of an order's ways. @param input see `orderStops` */
export function createLinks({ stops, start, end, doneCosts, wayOf }: OrderInput): Links {
  const variants = stops.flatMap(({ variants: own }) => own);
  const stopOf = stops.flatMap(({ variants: own }, stop) => own.map(() => stop));
  const firstOf = [0];
  for (const { variants: own } of stops) firstOf.push((firstOf.at(-1) as number) + own.length);
  const count = variants.length;
  // row 0: from the start; column 0: to the end
  const width = count + 1;
  const costs = new Float64Array(width * width);
  const isSure = new Uint8Array(width * width);
  const crossed = new Map<number, StopWay['over']>();
  const ends = (a: number, b: number): readonly [XY | null, XY | null] => [
    a < 0 ? start : (variants[a]?.exit ?? null),
    b < 0 ? end : (variants[b]?.entry ?? null),
  ];
  const at = (a: number, b: number): number => (a + 1) * width + b + 1;
  for (let a = -1; a < count; a += 1) {
    for (let b = -1; b < count; b += 1) {
      const [from, to] = ends(a, b);
      const wayM = from && to ? straight(from, to) : 0;
      costs[at(a, b)] = wayM + (variants[b]?.lengthM ?? 0);
      if (!from || !to) isSure[at(a, b)] = 1;
    }
  }
  const settle = (a: number, b: number): boolean => {
    const index = at(a, b);
    if (isSure[index]) return true;
    isSure[index] = 1;
    const [from, to] = ends(a, b);
    if (!from || !to) return true;
    const way = wayOf(from, to);
    costs[index] = way.lengthM + (variants[b]?.lengthM ?? 0);
    const over = way.over.filter(([stop]) => stop !== stopOf[a]);
    if (over.length > 0) crossed.set(index, over);
    return false;
  };
  return {
    stopCount: stops.length,
    stopOf,
    firstOf,
    doneCosts,
    settle,
    costM: (a, b) => costs[at(a, b)] as number,
    lengthM: (b) => variants[b]?.lengthM ?? 0,
    homeM: (a) => costs[at(a, -1)] as number,
    over: (a, b) => (crossed.size === 0 ? undefined : crossed.get(at(a, b))),
    makeSure(row) {
      let wasSure = true;
      row.forEach((b, i) => {
        wasSure = settle(i === 0 ? -1 : (row[i - 1] as number), b) && wasSure;
      });
      return row.length === 0 || (settle(row.at(-1) as number, -1) && wasSure);
    },
    toOrder: (row) =>
      row.map((variant) => {
        const stop = stopOf[variant] as number;
        return { stop, variant: variant - (firstOf[stop] as number) };
      }),
  };
}

/** What the ways of an order cost beyond their length for ground that is done, m. */
export function doneExtraM(links: Links, row: readonly number[]): number {
  const done = new Set<number>();
  let sum = 0;
  row.forEach((b, i) => {
    const over = links.over(i === 0 ? -1 : (row[i - 1] as number), b) ?? [];
    for (const [stop, lengthM] of over) if (done.has(stop)) sum += links.doneCosts * lengthM;
    done.add(links.stopOf[b] as number);
  });
  for (const [, lengthM] of links.over(row.at(-1) ?? -1, -1) ?? []) sum += links.doneCosts * lengthM;
  return sum;
}

/** Whole cost of an order of variants, m. */
export function costOfRow(links: Links, row: readonly number[]): number {
  let sum = 0;
  row.forEach((b, i) => {
    sum += links.costM(i === 0 ? -1 : (row[i - 1] as number), b);
  });
  return sum + (row.length > 0 ? links.homeM(row.at(-1) as number) : 0) + doneExtraM(links, row);
}
