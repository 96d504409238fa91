import { formatNumber } from '../../units/format';
import type { Issue, Place } from '../../yard/types';
import type { Vessel } from '../passTypes';

/** Most vessels that one dose is marked by: nobody fills more often, and a slip in what is held would draw thousands of marks. */
export const MOST_VESSELS = 200;

/** What a dose is drawn from, and how many vessels that would be; without any where they are more than `MOST_VESSELS`. */
export interface Drawn {
  readonly vessels: readonly Vessel[];
  readonly count: number;
}

/** The vessels, where they are not too many to be marked. @param make called only then */
export function upToMost(count: number, make: () => readonly Vessel[]): Drawn {
  return { count, vessels: count > MOST_VESSELS ? [] : make() };
}

/** `too-many-fills` where a dose would take more vessels than are marked; null where it does not. */
export function tooManyFills(count: number, place: Place = {}): Issue | null {
  if (!(count > MOST_VESSELS)) return null;
  const message = `It would take about ${formatNumber(count)} fills or packs, too many to mark on the ground: look at what the equipment is said to hold, the tank of the visit and the sizes of the packs.`;
  return { code: 'too-many-fills', severity: 'warning', message, place };
}
