import { planeAreaOf } from '../../measure/clip';
import type { PlaneRings, XY } from '../../measure/types';
import type { Issue } from '../../yard/types';
import { orientedRings } from '../passes/frame';
import { headingsToTry } from '../passes/headings';
import { middleLoop } from '../passes/middleLoop';
import { middlePass } from '../passes/middlePass';
import type { CoverDose, CoverZone, Leg, PassGround, PassOptions, ZonePasses } from '../passTypes';
import { distanceToSegment, sidesOf } from '../segments';
import { WET_DETOUR } from './dryWay';
import { overWet } from './overWet';

/** What lays passes over one piece of ground (see `planPasses`). */
export type PlanPasses = (
  ground: PassGround,
  options: PassOptions,
  from: XY | null,
  to: XY | null,
) => ZonePasses;

/** One piece of a zone: it is walked in one go. */
export interface StopGround {
  readonly zone: CoverZone;
  readonly part: PlaneRings;
}

/** The walk over one piece of ground, one coat or both. */
export interface StopPlan {
  readonly walks: readonly { readonly coat: 1 | 2; readonly passes: ZonePasses }[];
  readonly entry: XY;
  readonly exit: XY;
  /** walks and the straight way from one coat to the next, m; what goes over wet ground counts dearer (WET_DETOUR). */
  readonly lengthM: number;
}

/** How many walks are tried: from the corners of the ground, or there and back alone. */
export type Variety = 'corners' | 'there-and-back';

/** Walks that begin and end this near to each other are the same, m. */
const SAME_M = 0.75;
/** A walk that misses more than this share of the ground beyond the first one's is none to choose. */
const WORSE_SHARE = 0.002;

/** A piece cut off from a larger one is walked from this share of the spacing squared on. */
const LEAST_PIECE = 0.3;

/**
 * The pieces of a dose's zones: parts that lie apart are walked one by one, round what is between them.
 * @returns `tiny`: pieces much smaller than a step of the walk, beside larger ones of their zone: no way leads there
 */
export function stopGrounds(
  zones: readonly CoverZone[],
  spacingM: number,
): { readonly stops: readonly StopGround[]; readonly tiny: readonly StopGround[] } {
  const pieces = zones.flatMap((zone) => {
    const areas = zone.parts.map((part) => planeAreaOf([part]));
    const isTiny = (areaM2: number): boolean =>
      areaM2 < LEAST_PIECE * spacingM * spacingM && areaM2 < Math.max(...areas);
    return zone.parts.map((part, i) => ({ zone, part, isTiny: isTiny(areas[i] as number) }));
  });
  const pick = (isTiny: boolean): StopGround[] =>
    pieces.filter((piece) => piece.isTiny === isTiny).map(({ zone, part }) => ({ zone, part }));
  return { stops: pick(false), tiny: pick(true) };
}

/** A piece that is not walked, as what is missed. */
export function leftOut({ part }: StopGround, spacingM: number): ZonePasses {
  const areaM2 = planeAreaOf([part]);
  const none = {
    cells: 0,
    passes: 0,
    turns: 0,
    lengthM: 0,
    workingM: 0,
    doubleM2: 0,
    outsideM2: 0,
    outsideM: 0,
  };
  return {
    legs: [],
    headingDeg: null,
    pattern: 'straight',
    ...none,
    leastM: areaM2 / spacingM,
    areaM2,
    missedM2: areaM2,
    issues: [],
  };
}

/** First point of a walk, or its last. */
function endOf(legs: readonly Leg[], isLast: boolean): XY | null {
  const line = legs.at(isLast ? -1 : 0)?.line;
  return line?.at(isLast ? -1 : 0) ?? null;
}

/**
 * The walk over one piece of ground.
 * @param coats in order; the second is laid across the first, or straight where that went round and round
 * @param across heading of the first coat, where it is laid before; null: none is
 * @param known heading found before for this ground, so that it is not looked for again
 * @returns null where no pass has room; `walks` then still says why
 */
export function planStop(
  { zone, part }: StopGround,
  dose: CoverDose,
  coats: readonly (1 | 2)[],
  ends: { readonly from: XY | null; readonly to: XY | null },
  known: { readonly headingDeg: number | null; readonly across: number | null },
  plan: PlanPasses,
): { readonly walks: StopPlan['walks']; readonly stop: StopPlan | null } {
  const ground: PassGround = { parts: [part], keepOff: zone.keepOff };
  const walks: { coat: 1 | 2; passes: ZonePasses }[] = [];
  const legs: Leg[] = [];
  let { from } = ends;
  let { across } = known;
  let lengthM = 0;
  coats.forEach((coat, i) => {
    const headingDeg = coat === 2 ? secondHeading(part, dose, across, known.headingDeg) : known.headingDeg;
    const { spacingM, swathM, headerLaps, lapsFirst } = dose;
    const options = { spacingM, swathM, headerLaps, lapsFirst, headingDeg };
    const first = plan(ground, options, from, i === coats.length - 1 ? ends.to : null);
    const isAlike = coat === 2 && (headingDeg === null || first.headingDeg === null);
    const laid = isAlike ? { ...first, issues: [...first.issues, coatsAlike(zone)] } : first;
    const passes = dose.staysWet ? endOutside(laid, part) : laid;
    const entry = endOf(passes.legs, false);
    const before = endOf(legs, true);
    if (entry && before) lengthM += Math.hypot(entry[0] - before[0], entry[1] - before[1]);
    lengthM += passes.lengthM;
    walks.push({ coat, passes });
    legs.push(...passes.legs);
    from = endOf(legs, true) ?? from;
    across = passes.headingDeg;
  });
  const [entry, exit] = [endOf(legs, false), endOf(legs, true)];
  const costM = lengthM + (dose.staysWet ? WET_DETOUR * overWet(legs, dose.swathM) : 0);
  return { walks, stop: entry && exit ? { walks, entry, exit, lengthM: costM } : null };
}

/**
 * Heading of a second coat: across the first one's passes; where that one went round and round, along the sides of the
 * ground, so that the second is not laid the same.
 * @returns null: the ground is no wider than a swath, there is one way to walk it
 */
function secondHeading(
  part: PlaneRings,
  { spacingM, swathM }: CoverDose,
  across: number | null,
  chosenDeg: number | null,
): number | null {
  if (across !== null) return (across + 90) % 180;
  if (chosenDeg !== null) return chosenDeg;
  if (middlePass(part, spacingM) || middleLoop(part, spacingM, swathM).length > 0) return null;
  return headingsToTry([orientedRings([part])], spacingM, 1)[0]?.degrees ?? null;
}

function coatsAlike({ name }: CoverZone): Issue {
  const message = `Both coats of “${name}” are walked the same way, as its ground leaves no room for passes across: shift the second by half a swath where you can.`;
  return { code: 'coats-alike', severity: 'note', message, place: {} };
}

/** Laps round and round of what stays wet are walked from the middle outwards, so that the way out is dry. */
function endOutside(passes: ZonePasses, part: PlaneRings): ZonePasses {
  const [entry, exit] = [endOf(passes.legs, false), endOf(passes.legs, true)];
  if (passes.pattern !== 'round' || !entry || !exit) return passes;
  const sides = sidesOf([part]);
  const depth = (place: XY): number => Math.min(...sides.map((side) => distanceToSegment(place, side)));
  return depth(exit) > depth(entry) ? { ...passes, legs: passes.legs.toReversed().map(turnLeg) } : passes;
}

function turnLeg(leg: Leg): Leg {
  const areaM2 = leg.knots.at(-1)?.areaM2 ?? 0;
  const knots = leg.knots
    .toReversed()
    .map((knot) => ({ atM: leg.lengthM - knot.atM, areaM2: areaM2 - knot.areaM2 }));
  return { ...leg, line: leg.line.toReversed(), knots };
}

/** Heading that a plan has where it can be chosen; a second coat's is the first one's, turned. */
export function headingOf({ walks }: StopPlan): number | null {
  return walks[0]?.passes.headingDeg ?? null;
}

/**
 * Ways to walk one piece of ground that begin and end in different places, the first as it is shortest by itself.
 * @returns one or more, all that are as good; none where no pass has room
 */
export function stopPlans(
  ground: StopGround,
  dose: CoverDose,
  coats: readonly (1 | 2)[],
  across: number | null,
  variety: Variety,
  plan: PlanPasses,
): { readonly walks: StopPlan['walks']; readonly plans: readonly StopPlan[] } {
  const tryFrom = (from: XY | null, headingDeg: number | null) =>
    planStop(ground, dose, coats, { from, to: null }, { headingDeg, across }, plan);
  const base = tryFrom(null, ground.zone.headingDeg);
  if (!base.stop) return { walks: base.walks, plans: [] };
  const plans = [base.stop];
  const headingDeg =
    coats[0] === 2 ? ground.zone.headingDeg : (headingOf(base.stop) ?? ground.zone.headingDeg);
  const starts = variety === 'corners' ? cornersOf(ground.part, headingDeg ?? 0) : [base.stop.exit];
  for (const from of starts) {
    const { stop } = tryFrom(from, headingDeg);
    if (stop && isAsGood(stop, base.stop) && !plans.some((other) => isSame(stop, other))) plans.push(stop);
  }
  return { walks: base.walks, plans };
}

/** Whether a plan leaves no more of the ground out than another. */
export function isAsGood(plan: StopPlan, other: StopPlan): boolean {
  const missed = (of: StopPlan) => of.walks.reduce((sum, { passes }) => sum + passes.missedM2, 0);
  const areaM2 = other.walks.reduce((sum, { passes }) => sum + passes.areaM2, 0);
  return missed(plan) <= missed(other) + WORSE_SHARE * areaM2;
}

function isSame(a: StopPlan, b: StopPlan): boolean {
  const near = (p: XY, q: XY) => Math.hypot(p[0] - q[0], p[1] - q[1]) < SAME_M;
  return near(a.entry, b.entry) && near(a.exit, b.exit);
}

/** The outermost corners of a piece of ground, seen along a heading: four or fewer. */
function cornersOf(part: PlaneRings, headingDeg: number): XY[] {
  const ring = part[0] ?? [];
  const turn = (headingDeg * Math.PI) / 180;
  const [ux, uy] = [Math.sin(turn), Math.cos(turn)];
  const found: XY[] = [];
  for (const [along, across] of [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ] as const) {
    const reach = ([x, y]: XY): number => along * (x * ux + y * uy) + across * (x * uy - y * ux);
    const corner = ring.reduce<XY | null>((best, p) => (best && reach(best) >= reach(p) ? best : p), null);
    if (corner && !found.includes(corner)) found.push(corner);
  }
  return found;
}
