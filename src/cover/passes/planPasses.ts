import { differenceOf, planeAreaOf } from '../../measure/clip';
import type { PlaneRings, XY } from '../../measure/types';
import type { Issue } from '../../yard/types';
import type { Leg, PassGround, PassOptions, ZonePasses } from '../passTypes';
import {
  type Candidate,
  candidatesOf,
  DOUBLE_PRICE,
  effortFor,
  MISSED_PRICE,
  MOST_DOUBLE,
  MOST_MISSED,
  type ZoneGround,
} from './candidates';
import { orientedRings } from './frame';
import { layLegs } from './layLegs';
import { measurePasses, type Reached } from './measurePasses';
import { countCorners, plainGround } from './plainGround';
import { makeWalkable, type Walkable } from './wayWithin';

/** Ground smaller than this is none, m². */
const LEAST_M2 = 1e-4;

/**
 * Passes over a zone: straight ones by cells, laps beside the outline, or both, whichever is the shortest
 * walk that covers. See `cellsOf`, `lapRounds`, `orderItems`, `wayWithin` for the methods.
 * @param from where the walk comes from; @param to where it goes on to; null: anywhere. The ways there are no part of it.
 * @returns never throws for odd ground: what is left of it is walked; `passes-nothing` when there is none
 */
export function planPasses(
  ground: PassGround,
  options: PassOptions,
  from: XY | null,
  to: XY | null,
): ZonePasses {
  const parts = differenceOf(ground.parts, ground.keepOff).filter((part) => planeAreaOf([part]) > LEAST_M2);
  const areaM2 = planeAreaOf(parts);
  if (parts.length === 0) return nothing(options);
  const shy = ground.keepOff.length > 0 ? makeWalkable(null, ground.keepOff) : null;
  // planned and measured on few corners, its ground shared out by the true area
  const plain = plainGround(parts, ground.keepOff, options.spacingM);
  const walkable = makeWalkable(plain, []);
  const zone: ZoneGround = {
    parts: plain,
    rings: orientedRings(plain),
    keepOff: ground.keepOff,
    shy,
    walkable,
    areaM2,
    options,
  };
  const effort = effortFor(countCorners(plain));
  const candidates = candidatesOf(zone, effort, from, to);
  let best: { plan: ZonePasses; score: number } | undefined;
  let measured = 0;
  for (const candidate of candidates) {
    // straight ways are the shortest: it cannot become better
    if (best && candidate.guessM >= best.score) continue;
    // on until one covers, within bounds
    const isShort = best !== undefined && best.plan.missedM2 > 0.005 * areaM2;
    if (measured++ >= (isShort ? MORE_MEASURED : 1) * effort.measured) break;
    const plan = finish(candidate, plain, options, walkable, areaM2);
    const score = scoreOf(plan);
    if (!best || score < best.score) best = { plan, score };
  }
  return best?.plan ?? nothing(options);
}

/** So many times as many candidates are measured while none covers. */
const MORE_MEASURED = 4;

/** Length, with a price on ground missed or done twice beyond what is allowed. */
function scoreOf({ lengthM, missedM2, doubleM2, areaM2 }: ZonePasses): number {
  const over = (partM2: number, most: number) => Math.max(0, partM2 / areaM2 - most);
  return (
    lengthM * (1 + MISSED_PRICE * over(missedM2, MOST_MISSED) + DOUBLE_PRICE * over(doubleM2, MOST_DOUBLE))
  );
}

function finish(
  candidate: Candidate,
  parts: readonly PlaneRings[],
  options: PassOptions,
  walkable: Walkable,
  areaM2: number,
): ZonePasses {
  const laid = layLegs(candidate.stops, walkable, options);
  const legs = shareAll(laid, areaM2);
  const reached: Reached = measurePasses(legs, parts, walkable, options.spacingM, options.swathM);
  const count = (kind: Leg['kind']) => legs.filter((leg) => leg.kind === kind).length;
  const working = legs.filter((leg) => leg.knots.length > 0);
  const sum = (some: readonly Leg[]) => some.reduce((total, leg) => total + leg.lengthM, 0);
  const [laps, passes] = [count('lap'), count('pass')];
  const issues = issuesOf(reached.missedM2 / areaM2);
  return {
    legs,
    headingDeg: passes > 0 ? candidate.headingDeg : null,
    pattern: laps === 0 ? 'straight' : passes === 0 ? 'round' : 'both',
    cells: candidate.cells,
    passes,
    turns: count('turn'),
    lengthM: sum(legs),
    workingM: sum(working),
    leastM: areaM2 / options.spacingM,
    areaM2,
    ...reached,
    issues,
  };
}

/** Ground left out, as a share, from which it is told. */
const TOLD_MISSED = 0.01;

function issuesOf(missed: number): Issue[] {
  if (missed <= TOLD_MISSED) return [];
  const share = `${Math.round(missed * 100)} %`;
  const message = `The passes leave about ${share} of this ground out: corners, narrow places or edges beside a strip that the swath may not reach over. See to them by hand, or choose other laps.`;
  return [{ code: 'passes-missed', severity: 'note', message, place: {} }];
}

/** Ground shared out so that all knots sum to the whole: what is too small to be walked falls to all alike. */
function shareAll(legs: readonly Leg[], areaM2: number): Leg[] {
  const sum = legs.reduce((total, leg) => total + (leg.knots.at(-1)?.areaM2 ?? 0), 0);
  if (!(sum > 0)) return [...legs];
  const factor = areaM2 / sum;
  return legs.map((leg) => ({
    ...leg,
    knots: leg.knots.map(({ atM, areaM2: own }) => ({ atM, areaM2: own * factor })),
  }));
}

function nothing(_options: PassOptions): ZonePasses {
  const none = { cells: 0, passes: 0, turns: 0, lengthM: 0, workingM: 0, leastM: 0, areaM2: 0 };
  const reached = { missedM2: 0, doubleM2: 0, outsideM2: 0, outsideM: 0 };
  const issues: Issue[] = [
    {
      code: 'passes-nothing',
      severity: 'warning',
      message: 'There is no ground here to walk over.',
      place: {},
    },
  ];
  return { legs: [], headingDeg: null, pattern: 'straight', ...none, ...reached, issues };
}
