import { differenceOf, planeAreaOf } from '../../measure/clip';
import { isInsideParts } from '../../measure/isInsideParts';
import type { PlaneRings, XY } from '../../measure/types';
import type { Effort } from './effort';
import { orientedRings } from './frame';
import { estimateOf, headingsToTry, type Tried } from './headings';
import { keepClear } from './keepClear';
import { lengthOfPush, missedAtCorners, turnsOf } from './lapCorners';
import { type LapRound, lapRounds } from './laps';
import { middleLoop } from './middleLoop';
import { middlePass } from './middlePass';
import { MOST_MISSED } from './prices';
import { withoutSmallHoles } from './withoutSmallHoles';
import type { Work } from './work';
import type { ZoneGround } from './zoneGround';

/** Laps so many, and what they leave for straight passes; not yet laid out. */
export interface Outline {
  readonly laps: readonly Work[];
  /** how far the corners of the laps are pushed out; null: not at all. */
  readonly push: { readonly share: number; readonly spacingM: number } | null;
  readonly middles: readonly Work[];
  readonly need: readonly (readonly (readonly XY[])[])[];
  readonly heading: Tried | null;
  readonly costM: number;
  readonly missedM2: number;
  /** ground for straight passes, what is narrow beside laps left aside, m². */
  readonly straightM2: number;
}

/** Laps in so many rounds, and what they leave with each heading worth trying. */
export function outlinesOf(zone: ZoneGround, effort: Effort): Outline[] {
  const { parts, keepOff, options } = zone;
  const { spacingM, swathM, headerLaps, headingDeg } = options;
  const most = headerLaps ?? (headingDeg === null ? effort.rounds : Math.min(2, effort.rounds));
  const outlines = most === 0 || headerLaps === null ? insideOf(zone, [], effort, 0) : [];
  if (most === 0) return outlines;
  const small = withoutSmallHoles(parts, spacingM);
  for (const share of effort.lapShares) {
    // laps nearer to each other leave less at corners: for nothing where little is left there
    const isNeeded = ({ missedM2 }: Outline) => missedM2 > WORTH_PUSHING * MOST_MISSED * zone.areaM2;
    if (share < 1 && outlines.length > 0 && !outlines.some(isNeeded)) break;
    const rounds = lapRounds(parts, keepOff, share * spacingM, swathM, most);
    const around = small
      ? lapsAround(lapRounds(small.filled, keepOff, share * spacingM, swathM, most), small.holes)
      : [];
    for (const each of [rounds, around]) {
      if (each.length === 0) continue;
      const least = headerLaps === null ? 1 : each.length;
      for (let count = least; count <= each.length; count++)
        outlines.push(
          ...insideOf(zone, each.slice(0, count), effort, share).flatMap((outline) =>
            pushed(zone, outline, share * spacingM, effort.pushes),
          ),
        );
    }
  }
  if (outlines.length === 0) return insideOf(zone, [], effort, 0);
  return headingDeg === null ? outlines : alongHeading(zone, outlines, effort);
}

/** Of ground with a chosen heading and laps left free, so much is walked along the heading, as a share. */
const LEAST_STRAIGHT = 0.25;

/**
 * Only those with straight passes at the chosen heading: a heading that someone chose is not given up for laps
 * alone. Where so many laps as were chosen leave no room for passes, there are fewer laps.
 */
function alongHeading(zone: ZoneGround, outlines: readonly Outline[], effort: Effort): Outline[] {
  const { spacingM, swathM, headerLaps } = zone.options;
  const leastM2 =
    headerLaps === null ? LEAST_STRAIGHT * zone.areaM2 : Math.min(spacingM ** 2, zone.areaM2 / 4);
  const isStraight = ({ heading, straightM2 }: Outline): boolean => heading !== null && straightM2 >= leastM2;
  const straight = outlines.filter(isStraight);
  if (straight.length > 0) return straight;
  const rounds = lapRounds(zone.parts, zone.keepOff, spacingM, swathM, (headerLaps ?? 1) - 1);
  for (let count = rounds.length; count > 0; count--) {
    const fewer = insideOf(zone, rounds.slice(0, count), effort, 1).filter(isStraight);
    if (fewer.length > 0) return fewer;
  }
  return insideOf(zone, [], effort, 0);
}

/** Rounds over ground whose holes are filled, as long as none of these comes under a lap. */
function lapsAround(rounds: readonly LapRound[], holes: readonly PlaneRings[]): LapRound[] {
  const isClear = ({ inside }: LapRound) =>
    holes.every((rings) => rings.flat().every((p) => isInsideParts(p, inside)));
  const last = rounds.findIndex((round) => !isClear(round));
  return rounds
    .slice(0, last < 0 ? rounds.length : last)
    .map((round) => ({ ...round, inside: differenceOf(round.inside, holes) }));
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

/** One pass along the middle of what laps leave may miss this share of the zone. */
const MIDDLE_SPARE = 0.003;

/** What rounds of laps leave, with each heading worth trying. */
function insideOf(zone: ZoneGround, rounds: readonly LapRound[], effort: Effort, share: number): Outline[] {
  const { spacingM, swathM, headingDeg } = zone.options;
  const { shy, walkable } = zone;
  const inside = rounds.length > 0 ? (rounds.at(-1) as LapRound).inside : zone.parts;
  const middles: Work[] = [];
  const loops: Work[] = [];
  const need: (readonly (readonly XY[])[])[] = [];
  let straightM2 = 0;
  // a chosen heading goes before a pass along the middle
  const isAlong = headingDeg !== null && rounds.length === 0;
  const spareM2 = rounds.length > 0 ? MIDDLE_SPARE * zone.areaM2 : 0;
  for (const part of [...inside, ...rounds.flatMap((round) => round.narrow)]) {
    const loop = isAlong ? [] : middleLoop(part, spacingM, swathM);
    if (loop.length > 0) {
      loops.push(...loop.flatMap((lap) => (shy ? keepClear(lap, shy, walkable, swathM) : [lap])));
      continue;
    }
    const middle = isAlong ? null : middlePass(part, spacingM, spareM2);
    if (middle) middles.push(...(shy ? keepClear(middle, shy, walkable, swathM) : [middle]));
    else {
      need.push(orientedRings([part]));
      if (inside.includes(part)) straightM2 += planeAreaOf([part]);
    }
  }
  const laps = [...rounds.flatMap((round) => round.laps), ...loops];
  const lapsM = laps.reduce((sum, lap) => sum + lap.lengthM, 0) + laps.length * share * spacingM;
  const middlesM = middles.reduce((sum, work) => sum + work.lengthM + spacingM, 0);
  const missedM2 = rounds.reduce((sum, round) => sum + round.missedM2, 0);
  const known = { laps, push: null, middles, need, missedM2, straightM2 };
  if (need.length === 0) return [{ ...known, heading: null, costM: lapsM + middlesM }];
  const tried =
    headingDeg === null
      ? headingsToTry(need, spacingM, effort.headings)
      : [{ degrees: headingDeg, costM: estimateOf(need, headingDeg, spacingM) }];
  return tried.map((heading) => ({ ...known, heading, costM: lapsM + middlesM + heading.costM }));
}
