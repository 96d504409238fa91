import type { PlaneRings, XY } from '../../measure/types';
import type { PassOptions } from '../passTypes';
import { cellsOf } from './cells';
import { frameOf, orientedRings } from './frame';
import { headingsToTry } from './headings';
import { type Item, itemOfCell, itemOfLap, itemOfWork } from './items';
import { type LapRound, lapRounds } from './laps';
import { middlePass } from './middlePass';
import { orderItems, type Stop } from './orderItems';

/** A way of laying a zone out, in walking order, ways still straight. */
export interface Candidate {
  readonly laps: number;
  readonly headingDeg: number | null;
  readonly cells: number;
  readonly stops: readonly Stop[];
  /** straight ways between stops included, m. */
  readonly guessM: number;
}

/** Everything that candidates of one zone share. */
export interface ZoneGround {
  readonly parts: readonly PlaneRings[];
  readonly rings: readonly (readonly XY[])[];
  readonly keepOff: readonly PlaneRings[];
  readonly options: PassOptions;
}

/** Headings laid out in full for each count of laps. */
const HEADINGS = 4;

/** Ways to lay out a zone with so many rounds of laps: one for each heading worth it. */
export function candidatesWith(zone: ZoneGround, laps: number, from: XY | null, to: XY | null): Candidate[] {
  const { parts, keepOff, options } = zone;
  const rounds = lapRounds(parts, keepOff, options.spacingM, options.swathM, laps);
  const inside = rounds.length > 0 ? (rounds.at(-1) as LapRound).inside : parts;
  const narrow = rounds.flatMap((round) => round.narrow);
  const middles: Item[] = [];
  const need: (readonly (readonly XY[])[])[] = [];
  for (const part of [...inside, ...narrow]) {
    const middle = middlePass(part, options.spacingM);
    if (middle) middles.push(itemOfWork(middle));
    else need.push(orientedRings([part]));
  }
  const headings =
    need.length === 0
      ? [null]
      : options.headingDeg !== null
        ? [options.headingDeg]
        : headingsToTry(need, options.spacingM, HEADINGS);
  const lapItems = rounds.flatMap((round) => round.laps.map(itemOfLap));
  return headings.map((headingDeg) => {
    const ground = { ...zone, need, zone: zone.rings, keepOff: orientedRings(keepOff) };
    const cells =
      headingDeg === null
        ? []
        : cellsOf(
            { ...ground, swathM: options.swathM, spacingM: options.spacingM },
            frameOf(headingDeg),
            options.spacingM,
          );
    const cellItems = [...cells.map(itemOfCell), ...middles];
    const stops = inOrder(lapItems, cellItems, options.lapsFirst, from, to);
    const guessM = stops.reduce((sum, stop, i) => {
      const before = stops[i - 1];
      const way = before
        ? gap(before.choice.end, stop.choice.start)
        : from
          ? gap(from, stop.choice.start)
          : 0;
      return sum + stop.choice.lengthM + way;
    }, 0);
    return { laps: rounds.length, headingDeg, cells: cells.length + middles.length, stops, guessM };
  });
}

const gap = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function inOrder(
  laps: readonly Item[],
  cells: readonly Item[],
  lapsFirst: boolean,
  from: XY | null,
  to: XY | null,
): Stop[] {
  if (laps.length === 0) return orderItems(cells, from, to);
  if (lapsFirst) {
    const first = orderItems(laps, from, null);
    return [...first, ...orderItems(cells, first.at(-1)?.choice.end ?? from, to)];
  }
  const first = orderItems(cells, from, null);
  return [...first, ...orderItems(laps, first.at(-1)?.choice.end ?? from, to)];
}
