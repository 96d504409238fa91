import type { XY } from '../../measure/types';
import { distanceOf } from './frame';
import { beginAt, type Choice, type Item } from './items';
import { orderItems, type Stop } from './orderItems';
import { reverseWork, type Work } from './work';

/** What a metre from the last pass to the first lap counts: it goes over ground just done, and nothing is spread there. */
const WAY_SHARE = 4;
/** Laps that begin within this of a place begin there, m. */
const NEAR_M = 0.05;

/**
 * Laps that follow passes: they begin beside where the last pass ends, so that no way leads over what has just been
 * done, unless that makes the walk much longer.
 * @param at where the last pass ends
 */
export function lapsAfter(laps: readonly Item[], at: XY, to: XY | null): Stop[] {
  if (laps.length === 0) return [];
  const near = laps.map((lap) => withStartNear(lap, at));
  const tried = (to ? [to, null] : [null]).map((end) => orderItems(near, at, end));
  return tried.reduce((a, b) => (costOf(b, at, to) < costOf(a, at, to) ? b : a));
}

function costOf(stops: readonly Stop[], at: XY, to: XY | null): number {
  const [first, last] = [stops[0]?.choice.start ?? at, stops.at(-1)?.choice.end ?? at];
  return stops.reduce(
    (sum, { choice }, i) => {
      const before = stops[i - 1]?.choice.end;
      return sum + choice.lengthM + (before ? distanceOf(before, choice.start) : 0);
    },
    WAY_SHARE * distanceOf(at, first) + (to ? distanceOf(last, to) : 0),
  );
}

/** What items walk, so that it is not begun anew each time. */
const known = new WeakMap<Item, Work>();

/** A closed lap that may also begin at the place of it that is nearest to another; others as they are. */
function withStartNear(item: Item, at: XY): Item {
  const work = known.get(item) ?? item.choices[0]?.rows()[0]?.[0];
  if (work) known.set(item, work);
  const first = work?.line[0];
  if (!work || !first || item.kind !== 'lap' || distanceOf(first, work.line.at(-1) as XY) > 1e-6) return item;
  const { side, on } = nearestOn(work.line, at);
  if (item.choices.some(({ start }) => distanceOf(start, on) < NEAR_M)) return item;
  const make = (): Work => beginAt({ ...work, line: work.line.toSpliced(side, 0, on) }, side);
  const count = item.choices.length;
  const choiceOf = (isBack: boolean): Choice => ({
    start: on,
    end: on,
    lengthM: work.lengthM,
    reverse: count + (isBack ? 0 : 1),
    rows: () => [[isBack ? reverseWork(make()) : make()]],
  });
  return { ...item, choices: [...item.choices, choiceOf(false), choiceOf(true)] };
}

/** The place of a line nearest to another, and the corner that follows it. */
function nearestOn(line: readonly XY[], [x, y]: XY): { readonly side: number; readonly on: XY } {
  let best = { side: 1, on: line[0] as XY };
  let leastM = Infinity;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as XY, line[i] as XY];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const size = dx * dx + dy * dy;
    const t = size > 0 ? Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / size)) : 0;
    const on: XY = [a[0] + t * dx, a[1] + t * dy];
    const gapM = distanceOf(on, [x, y]);
    if (gapM < leastM) [best, leastM] = [{ side: i, on }, gapM];
  }
  return best;
}
