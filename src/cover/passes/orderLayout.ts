import type { XY } from '../../measure/types';
import { distanceOf } from './frame';
import { type Item, itemOfWork } from './items';
import { insertWorks } from './joinStops';
import { lapsAfter } from './lapsAfter';
import type { Layout } from './layouts';
import { orderItems, type Stop } from './orderItems';

/** A layout in walking order, ways still straight. */
export interface Tour {
  readonly stops: readonly Stop[];
  /** straight ways to the first stop and between stops included, m. */
  readonly lengthM: number;
}

/** A layout's laps and passes in a short order. @param from, to null: anywhere */
export function orderLayout(
  { laps, passes, extras }: Layout,
  lapsFirst: boolean,
  from: XY | null,
  to: XY | null,
): Tour {
  const order = (some: readonly Item[]): Stop[] => {
    const [one, two] = lapsFirst ? [laps, some] : [some, laps];
    const first = orderItems(one, from, two.length === 0 ? to : null);
    const at = first.at(-1)?.choice.end ?? null;
    return [
      ...first,
      ...(at === null || lapsFirst ? orderItems(two, at ?? from, to) : lapsAfter(two, at, to)),
    ];
  };
  const tourOf = (stops: readonly Stop[]): Tour => ({ stops, lengthM: lengthOfStops(stops, from, to) });
  if (!extras || extras.length === 0) return tourOf(order(passes));
  const inserted = tourOf(insertWorks(order(passes), extras, from, to));
  const together = tourOf(order([...passes, ...extras.map(itemOfWork)]));
  return together.lengthM < inserted.lengthM ? together : inserted;
}

/** All stops with the straight ways to, between and from them, m. */
function lengthOfStops(stops: readonly Stop[], from: XY | null, to: XY | null): number {
  const last = stops.at(-1)?.choice.end;
  const homeM = last && to ? distanceOf(last, to) : 0;
  return stops.reduce((sum, { choice }, i) => {
    const before = stops[i - 1]?.choice.end ?? (i === 0 ? from : null);
    return sum + choice.lengthM + (before ? distanceOf(before, choice.start) : 0);
  }, homeM);
}
