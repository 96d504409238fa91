import type { PlaneRings, XY } from '../../measure/types';
import type { PassOptions } from '../passTypes';
import { cellsOf, hasLevels } from './cells';
import { distanceOf, frameOf, orientedRings } from './frame';
import { estimateOf, headingsToTry, type Tried } from './headings';
import { type Item, itemOfCell, itemOfLap, itemOfWork } from './items';
import { keepClear } from './keepClear';
import { lengthOfPush, missedAtCorners, pushCorners, turnsOf } from './lapCorners';
import { type LapRound, lapRounds } from './laps';
import { middleLoop } from './middleLoop';
import { middlePass } from './middlePass';
import { orderItems, type Stop } from './orderItems';
import type { Walkable } from './wayWithin';
import { endOf, startOf, type Work } from './work';

/** Everything that candidates of one zone share. */
export interface ZoneGround {
  readonly parts: readonly PlaneRings[];
  readonly rings: readonly (readonly XY[])[];
  readonly keepOff: readonly PlaneRings[];
  /** everywhere but the ground to be kept off; null: there is none. */
  readonly shy: Walkable | null;
  readonly walkable: Walkable;
  readonly areaM2: number;
  readonly options: PassOptions;
}

/** A way of laying a zone out, in walking order, ways still straight. */
export interface Candidate {
  readonly headingDeg: number | null;
  readonly cells: number;
  readonly stops: readonly Stop[];
  /** straight ways between stops included, m. */
  readonly guessM: number;
  /** laps and passes alone, m. */
  readonly workingM: number;
  /** ground known to be missed, m². */
  readonly missedM2: number;
}

/** Laps so many, and what they leave for straight passes; not yet laid out. */
interface Outline {
  readonly laps: readonly Work[];
  /** how far the corners of the laps are pushed out; null: not at all. */
  readonly push: { readonly share: number; readonly spacingM: number } | null;
  readonly middles: readonly Work[];
  readonly need: readonly (readonly (readonly XY[])[])[];
  readonly heading: Tried | null;
  readonly costM: number;
  readonly missedM2: number;
}

/** What may be missed, and done twice beyond the plan, as shares of the ground. */
export const MOST_MISSED = 0.0047;
export const MOST_DOUBLE = 0.05;
/** What each of them beyond that is worth in walk: so much of the walk for all of the ground. */
export const MISSED_PRICE = 150;
export const DOUBLE_PRICE = 10;

/** How much is tried: all of it for plain shapes, less for those of many corners. */
export interface Effort {
  readonly rounds: number;
  /** distances between laps, as shares of the spacing: nearer ones leave less at corners. */
  readonly lapShares: readonly number[];
  /** corners of laps pushed out by these shares of their tips, too. */
  readonly pushes: readonly number[];
  readonly headings: number;
  readonly outlines: number;
  readonly measured: number;
  readonly lapStarts: number;
}

const EFFORTS: readonly (readonly [number, Effort])[] = [
  [
    80,
    {
      rounds: 60,
      lapShares: [1, 0.98, 0.96, 0.94],
      pushes: [0.2, 0.35, 0.5, 0.7],
      headings: 4,
      outlines: 16,
      measured: 14,
      lapStarts: 20,
    },
  ],
  [400, { rounds: 3, lapShares: [1], pushes: [0.4], headings: 4, outlines: 4, measured: 3, lapStarts: 12 }],
  [Infinity, { rounds: 1, lapShares: [1], pushes: [], headings: 3, outlines: 3, measured: 2, lapStarts: 6 }],
];

/** @param corners of all rings of the zone */
export function effortFor(corners: number): Effort {
  return (EFFORTS.find(([most]) => corners <= most) as (typeof EFFORTS)[number])[1];
}

/** Ways to lay out a zone, the most promising first. */
export function candidatesOf(zone: ZoneGround, effort: Effort, from: XY | null, to: XY | null): Candidate[] {
  const outlines = outlinesOf(zone, effort).sort((a, b) => priceOf(zone, a) - priceOf(zone, b));
  return outlines
    .slice(0, effort.outlines)
    .flatMap((outline) => layOut(zone, outline, effort, from, to))
    .map((candidate) => ({ candidate, price: priceOfCandidate(zone, candidate) }))
    .sort((a, b) => a.price - b.price)
    .map(({ candidate }) => candidate);
}

/** The same for a candidate, with what it does twice: more walk times spacing than ground. */
function priceOfCandidate(zone: ZoneGround, { guessM, workingM, missedM2 }: Candidate): number {
  const twiceM2 = workingM * zone.options.spacingM - (zone.areaM2 - missedM2);
  // some of it may lie outside
  const double = Math.max(0, twiceM2 / zone.areaM2 - MOST_DOUBLE) / 2;
  return priceOf(zone, { costM: guessM, missedM2 }) + guessM * DOUBLE_PRICE * double;
}

/** Length with a price on what is missed beyond the allowed. */
function priceOf({ areaM2 }: ZoneGround, { costM, missedM2 }: { costM: number; missedM2: number }): number {
  return costM * (1 + MISSED_PRICE * Math.max(0, missedM2 / areaM2 - MOST_MISSED));
}

function outlinesOf(zone: ZoneGround, effort: Effort): Outline[] {
  const { parts, keepOff, options } = zone;
  const { spacingM, swathM, headerLaps, headingDeg } = options;
  const most = headerLaps ?? (headingDeg === null ? effort.rounds : Math.min(2, effort.rounds));
  const outlines = most === 0 || headerLaps === null ? insideOf(zone, [], effort, 0) : [];
  if (most === 0) return outlines;
  // beside ground to be kept off no lap leaves its line
  const pushes = keepOff.length > 0 ? [] : effort.pushes;
  for (const share of effort.lapShares) {
    const rounds = lapRounds(parts, keepOff, share * spacingM, swathM, most);
    if (rounds.length === 0) continue;
    const least = headerLaps === null ? 1 : rounds.length;
    for (let count = least; count <= rounds.length; count++)
      outlines.push(
        ...insideOf(zone, rounds.slice(0, count), effort, share).flatMap((outline) =>
          pushed(zone, outline, share * spacingM, pushes),
        ),
      );
  }
  return outlines.length > 0 ? outlines : insideOf(zone, [], effort, 0);
}

/** Corners are pushed out where they miss more than this share of what may be missed. */
const WORTH_PUSHING = 0.5;

/** The same laps, and with their corners pushed out. */
function pushed(zone: ZoneGround, outline: Outline, spacingM: number, pushes: readonly number[]): Outline[] {
  const { swathM } = zone.options;
  if (outline.missedM2 < WORTH_PUSHING * MOST_MISSED * zone.areaM2) return [outline];
  const turns = outline.laps.flatMap((lap) => turnsOf(lap.line)).filter((turn) => turn > 0);
  const missedOf = (push: number) => missedAtCorners(turns, spacingM, swathM, push);
  const others = pushes.map((push): Outline => {
    const costM = outline.costM + lengthOfPush(turns, push, spacingM);
    return {
      ...outline,
      push: { share: push, spacingM },
      costM,
      missedM2: outline.missedM2 - missedOf(0) + missedOf(push),
    };
  });
  return [outline, ...others];
}

/** What rounds of laps leave, with each heading worth trying. */
function insideOf(zone: ZoneGround, rounds: readonly LapRound[], effort: Effort, share: number): Outline[] {
  const { spacingM, swathM, headingDeg } = zone.options;
  const { shy, walkable } = zone;
  const inside = rounds.length > 0 ? (rounds.at(-1) as LapRound).inside : zone.parts;
  const middles: Work[] = [];
  const loops: Work[] = [];
  const need: (readonly (readonly XY[])[])[] = [];
  for (const part of [...inside, ...rounds.flatMap((round) => round.narrow)]) {
    const loop = middleLoop(part, spacingM);
    if (loop.length > 0) {
      loops.push(...loop.flatMap((lap) => (shy ? keepClear(lap, shy, walkable, swathM) : [lap])));
      continue;
    }
    const middle = middlePass(part, spacingM);
    if (middle) middles.push(...(shy ? keepClear(middle, shy, walkable, swathM) : [middle]));
    else need.push(orientedRings([part]));
  }
  const laps = [...rounds.flatMap((round) => round.laps), ...loops];
  const lapsM = laps.reduce((sum, lap) => sum + lap.lengthM, 0) + laps.length * share * spacingM;
  const middlesM = middles.reduce((sum, work) => sum + work.lengthM + spacingM, 0);
  const missedM2 = rounds.reduce((sum, round) => sum + round.missedM2, 0);
  const known = { laps, push: null, middles, need, missedM2 };
  if (need.length === 0) return [{ ...known, heading: null, costM: lapsM + middlesM }];
  const tried =
    headingDeg === null
      ? headingsToTry(need, spacingM, effort.headings)
      : [{ degrees: headingDeg, costM: estimateOf(need, headingDeg, spacingM) }];
  return tried.map((heading) => ({ ...known, heading, costM: lapsM + middlesM + heading.costM }));
}

/** Passes may end where the ground of their slab is narrower than this share of it. */
const TRIMS = [0, 0.2, 0.4];

function layOut(
  zone: ZoneGround,
  outline: Outline,
  effort: Effort,
  from: XY | null,
  to: XY | null,
): Candidate[] {
  const { options, keepOff, rings } = zone;
  const { heading, need, push, middles } = outline;
  const laps = push ? outline.laps.map((lap) => pushCorners(lap, push.share, push.spacingM)) : outline.laps;
  const lapItems = laps.map((lap) =>
    isOpen(lap) ? itemOfWork(lap) : itemOfLap(lap, laps.length > 12 ? 6 : effort.lapStarts),
  );
  const middleItems = middles.map(itemOfWork);
  const finish = (cellItems: readonly Item[], cells: number, missedM2: number): Candidate => {
    const stops = inOrder(lapItems, cellItems, options.lapsFirst, from, to);
    const headingDeg = heading?.degrees ?? null;
    return {
      headingDeg,
      cells,
      stops,
      guessM: lengthOfStops(stops, from),
      workingM: stops.reduce((sum, { item }) => sum + item.workingM, 0),
      missedM2: outline.missedM2 + missedM2,
    };
  };
  if (heading === null) return [finish(middleItems, middles.length, 0)];
  const frame = frameOf(heading.degrees);
  const levels = need.some((piece) => hasLevels(piece, frame, options.spacingM)) ? [false, true] : [false];
  return levels.flatMap((atSides) =>
    TRIMS.map((trimShare) => {
      const ground = { need, zone: rings, keepOff: orientedRings(keepOff), ...options, trimShare, atSides };
      const cells = cellsOf(ground, frame, options.spacingM);
      const missedM2 = cells.reduce((sum, cell) => sum + cell.missedM2, 0);
      return finish([...cells.map(itemOfCell), ...middleItems], cells.length + middles.length, missedM2);
    }),
  );
}

const isOpen = (lap: Work): boolean => distanceOf(startOf(lap), endOf(lap)) > 1e-6;

/** All stops with the straight ways to and between them, m. */
function lengthOfStops(stops: readonly Stop[], from: XY | null): number {
  return stops.reduce((sum, { choice }, i) => {
    const before = stops[i - 1]?.choice.end ?? (i === 0 ? from : null);
    return sum + choice.lengthM + (before ? distanceOf(before, choice.start) : 0);
  }, 0);
}

function inOrder(
  laps: readonly Item[],
  cells: readonly Item[],
  lapsFirst: boolean,
  from: XY | null,
  to: XY | null,
): Stop[] {
  const [one, two] = lapsFirst ? [laps, cells] : [cells, laps];
  const first = orderItems(one, from, two.length === 0 ? to : null);
  return [...first, ...orderItems(two, first.at(-1)?.choice.end ?? from, to)];
}
