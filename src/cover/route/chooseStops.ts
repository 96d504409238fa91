import type { XY } from '../../measure/types';
import type { Outline } from '../outline';
import type { CoverDose } from '../passTypes';
import type { CarryGround } from './carryGround';
import { metresOver, WET_DETOUR } from './dryWay';
import { orderStops } from './orderStops';
import { headingOf, isAsGood, type PlanPasses, planStop, type StopGround, type StopPlan } from './stopPlans';

/** A piece of ground with the ways it may be walked. */
export interface StopChoice {
  readonly ground: StopGround;
  readonly outline: Outline;
  readonly plans: readonly StopPlan[];
  /** heading of a first coat that was laid before. */
  readonly across: number | null;
}

/** A piece of ground with the way it is walked. */
export interface ChosenStop {
  readonly choice: StopChoice;
  readonly plan: StopPlan;
}

/** Where a round begins and ends; null: anywhere. */
export interface RoundEnds {
  readonly start: XY | null;
  readonly end: XY | null;
}

/** Beyond so many pieces of ground each walk is taken as it was tried, without being fitted to its neighbours. */
const MOST_FITTED = 60;

/**
 * Order and walks of one round over all pieces of ground: the shortest found (see `orderStops`), then each walk
 * fitted to where the one before ends and the next begins, where that is shorter.
 */
export function chooseStops(
  choices: readonly StopChoice[],
  dose: CoverDose,
  coats: readonly (1 | 2)[],
  ends: RoundEnds,
  ground: CarryGround,
  plan: PlanPasses,
): ChosenStop[] {
  const outlines = choices.map(({ outline }) => outline);
  const order = orderStops({
    stops: choices.map(({ plans }) => ({ variants: plans })),
    ...ends,
    doneCosts: dose.staysWet ? WET_DETOUR : 0,
    wayOf: (from, to) => {
      const { line, lengthM } = ground.between(from, to);
      const over = dose.staysWet
        ? outlines.flatMap((outline, stop): (readonly [number, number])[] => {
            const over = metresOver(line, [outline]);
            return over > 0 ? [[stop, over]] : [];
          })
        : [];
      return { lengthM, over };
    },
  });
  const chosen = order.map(({ stop, variant }): ChosenStop => {
    const choice = choices[stop] as StopChoice;
    return { choice, plan: choice.plans[variant] as StopPlan };
  });
  if (chosen.length > MOST_FITTED) return chosen;
  const wayM = (from: XY | null, to: XY | null): number =>
    from && to ? ground.between(from, to).lengthM : 0;
  for (let i = 0; i < chosen.length; i += 1) {
    const { choice, plan: now } = chosen[i] as ChosenStop;
    const from = chosen[i - 1]?.plan.exit ?? ends.start;
    const to = chosen[i + 1]?.plan.entry ?? ends.end;
    if (!from && !to) continue;
    const known = { headingDeg: headingOf(now) ?? choice.ground.zone.headingDeg, across: choice.across };
    const { stop } = planStop(choice.ground, dose, coats, { from, to }, known, plan);
    const costM = (each: StopPlan): number => wayM(from, each.entry) + each.lengthM + wayM(each.exit, to);
    if (stop && isAsGood(stop, now) && costM(stop) < costM(now)) chosen[i] = { choice, plan: stop };
  }
  return chosen;
}
