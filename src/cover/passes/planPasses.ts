import type { XY } from '../../measure/types';
import type { Issue } from '../../yard/types';
import type { Leg, PassGround, PassOptions, ZonePasses } from '../passTypes';
import { distanceOf } from './frame';
import { layLegs } from './layLegs';
import { orderLayout } from './orderLayout';
import { type PreparedZone, prepareZone } from './prepareZone';
import type { RankedLayout } from './rankLayouts';

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
  return planPrepared(prepareZone(ground, options), options.lapsFirst, from, to);
}

/** The same over a zone made ready before. @param prepared null: there is no ground */
export function planPrepared(
  prepared: PreparedZone | null,
  lapsFirst: boolean,
  from: XY | null,
  to: XY | null,
): ZonePasses {
  const ranked = prepared?.ranked(lapsFirst) ?? [];
  const [best] = ranked;
  if (!prepared || !best) return nothing();
  if (!from && !to) return finish(best, best.legs, prepared);
  const tried = ranked
    .slice(0, MOST_TRIED)
    .filter(({ price }) => price < WORSE_SHARE * best.price)
    .map((each) => {
      const { stops } = orderLayout(each.layout, lapsFirst, from, to);
      const legs = layLegs(stops, prepared.zone.walkable, prepared.zone.options);
      const lengthM = lengthOf(each.legs);
      const [start, end] = [legs[0]?.line[0], legs.at(-1)?.line.at(-1)];
      const wayM = (from && start ? distanceOf(from, start) : 0) + (to && end ? distanceOf(end, to) : 0);
      // what it leaves out weighs as much as it did
      return { each, legs, price: (each.price / lengthM) * lengthOf(legs) + wayM };
    });
  const chosen = tried.reduce((a, b) => (b.price < a.price ? b : a));
  return finish(chosen.each, chosen.legs, prepared);
}

/** So many layouts are tried for a walk from one place to another, */
const MOST_TRIED = 3;
/** none of them dearer by itself than the best by more than this. */
const WORSE_SHARE = 1.1;

const lengthOf = (legs: readonly Leg[]): number => legs.reduce((sum, { lengthM }) => sum + lengthM, 0);

function finish(
  { layout, reached }: RankedLayout,
  laid: readonly Leg[],
  { zone: { areaM2, options } }: PreparedZone,
): ZonePasses {
  const legs = shareAll(laid, areaM2);
  const count = (kind: Leg['kind']) => legs.filter((leg) => leg.kind === kind).length;
  const [laps, passes] = [count('lap'), count('pass')];
  return {
    legs,
    headingDeg: passes > 0 ? layout.headingDeg : null,
    pattern: laps === 0 ? 'straight' : passes === 0 ? 'round' : 'both',
    cells: layout.cells,
    passes,
    turns: count('turn'),
    lengthM: lengthOf(legs),
    workingM: lengthOf(legs.filter((leg) => leg.knots.length > 0)),
    leastM: areaM2 / options.spacingM,
    areaM2,
    ...reached,
    issues: issuesOf(reached.missedM2 / areaM2),
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

function nothing(): ZonePasses {
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
