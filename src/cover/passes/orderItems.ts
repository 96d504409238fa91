import type { XY } from '../../measure/types';
import { distanceOf, gapOf } from './frame';
import type { Choice, Item } from './items';

/** An item with the way it is walked. */
export interface Stop {
  readonly item: Item;
  readonly choice: Choice;
}

/** Rounds of betterment; each looks at every item and place. */
const MOST_ROUNDS = 12;
/** Tours of more items than this are taken as they first come. */
const MOST_ITEMS = 400;

/**
 * Order of items, and the way each is walked, for a short tour: the nearest next item first, then items moved
 * to better places and stretches of the tour turned round (2-opt: Croes 1958, doi 10.1287/opre.6.6.791; or-opt: Or 1976; both from memory)
 * until nothing gets shorter, and at last the best way of each item for the order found (dynamic programming).
 * Distances are straight lines.
 * @param from where the tour begins; null: anywhere
 * @param to where it ends; null: anywhere
 */
export function orderItems(items: readonly Item[], from: XY | null, to: XY | null): Stop[] {
  const tour = nearestFirst(items, from);
  if (tour.length > 1 && tour.length <= MOST_ITEMS) {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const isMoved = moveItems(tour, from, to);
      const isTurned = turnStretches(tour, from, to);
      if (!isMoved && !isTurned) break;
    }
  }
  return bestChoices(
    tour.map(({ item }) => item),
    from,
    to,
  );
}

function nearestFirst(items: readonly Item[], from: XY | null): Stop[] {
  const left = [...items];
  const tour: Stop[] = [];
  let at = from;
  while (left.length > 0) {
    let best: { index: number; choice: Choice; gap: number } | undefined;
    for (const [index, item] of left.entries()) {
      for (const choice of item.choices) {
        const gap = at === null ? 0 : distanceOf(at, choice.start);
        if (!best || gap < best.gap) best = { index, choice, gap };
      }
    }
    if (!best) break;
    const [item] = left.splice(best.index, 1);
    if (item) tour.push({ item, choice: best.choice });
    at = best.choice.end;
  }
  return tour;
}

/** One go through all items: each to the place and way that shorten the tour most. */
function moveItems(tour: Stop[], from: XY | null, to: XY | null): boolean {
  let isBetter = false;
  for (let i = 0; i < tour.length; i++) {
    const { item, choice } = tour[i] as Stop;
    const [before, after] = [
      i > 0 ? tour[i - 1]?.choice.end : from,
      i + 1 < tour.length ? tour[i + 1]?.choice.start : to,
    ];
    const saved = gapOf(before, choice.start) + gapOf(choice.end, after) - gapOf(before, after);
    let best = { place: i, choice, gain: 1e-6 };
    const rest = [...tour.slice(0, i), ...tour.slice(i + 1)];
    for (let place = 0; place <= rest.length; place++) {
      const a = place > 0 ? rest[place - 1]?.choice.end : from;
      const b = place < rest.length ? rest[place]?.choice.start : to;
      const direct = gapOf(a, b);
      for (const other of item.choices) {
        const gain =
          saved + choice.lengthM - other.lengthM - (gapOf(a, other.start) + gapOf(other.end, b) - direct);
        if (gain > best.gain) best = { place, choice: other, gain };
      }
    }
    if (best.gain <= 1e-6) continue;
    tour.splice(i, 1);
    tour.splice(best.place, 0, { item, choice: best.choice });
    isBetter = true;
  }
  return isBetter;
}

/** One go through all stretches of the tour: turned round where that is shorter. */
function turnStretches(tour: Stop[], from: XY | null, to: XY | null): boolean {
  let isBetter = false;
  for (let i = 0; i < tour.length - 1; i++) {
    const before = i > 0 ? tour[i - 1]?.choice.end : from;
    let turnedLength = 0;
    let length = 0;
    for (let j = i; j < tour.length; j++) {
      const last = tour[j] as Stop;
      turnedLength += turnedOf(last).choice.lengthM;
      length += last.choice.lengthM;
      const after = j + 1 < tour.length ? tour[j + 1]?.choice.start : to;
      const first = tour[i] as Stop;
      const now = gapOf(before, first.choice.start) + gapOf(last.choice.end, after) + length;
      const then =
        gapOf(before, turnedOf(last).choice.start) + gapOf(turnedOf(first).choice.end, after) + turnedLength;
      if (then > now - 1e-6) continue;
      const turned = tour
        .slice(i, j + 1)
        .map(turnedOf)
        .reverse();
      tour.splice(i, turned.length, ...turned);
      isBetter = true;
      break;
    }
  }
  return isBetter;
}

function turnedOf({ item, choice }: Stop): Stop {
  return { item, choice: item.choices[choice.reverse] ?? choice };
}

/** The best way of each item, the order kept. */
export function bestChoices(items: readonly Item[], from: XY | null, to: XY | null): Stop[] {
  let costs: number[] = [];
  const cameFrom: number[][] = [];
  let before: Item | undefined;
  for (const item of items) {
    const back: number[] = [];
    costs = item.choices.map((choice, i) => {
      let [best, least] = [0, Infinity];
      if (!before) least = gapOf(from, choice.start);
      before?.choices.forEach((other, k) => {
        const cost = (costs[k] as number) + gapOf(other.end, choice.start);
        if (cost < least) [best, least] = [k, cost];
      });
      back[i] = best;
      return least + choice.lengthM;
    });
    cameFrom.push(back);
    before = item;
  }
  let at = 0;
  before?.choices.forEach((choice, i) => {
    const total = (costs[i] as number) + gapOf(choice.end, to);
    const bestTotal = (costs[at] as number) + gapOf(before?.choices[at]?.end, to);
    if (total < bestTotal) at = i;
  });
  const stops: Stop[] = [];
  for (let i = items.length - 1; i >= 0; i--) {
    const item = items[i] as Item;
    stops.unshift({ item, choice: item.choices[at] as Choice });
    at = cameFrom[i]?.[at] as number;
  }
  return stops;
}
