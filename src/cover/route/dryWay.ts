import type { XY } from '../../measure/types';
import type { Outline } from '../outline';
import { sidesOf } from '../segments';
import type { Carry, CarryGround } from './carryGround';
import { isWellInside, metresInside } from './metresInside';
import { bendsOf, nearestOn } from './ways';

/**
 * A metre over wet ground is worth a detour of so many metres beyond it: up to six metres on dry ground are
 * walked for each one spared. Common practice, no source.
 */
export const WET_DETOUR = 5;
/** Less than this on wet ground is not worth a look, m. */
const STEP_M = 0.3;
/** Zones that a detour may meet one after another before it is taken as it is. */
const MOST_TRIES = 6;

/** How much of a line lies on wet ground, m. */
export function metresOver(line: readonly XY[], wet: readonly Outline[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i += 1) {
    for (const ground of wet) sum += metresInside([line[i - 1] as XY, line[i] as XY], ground);
  }
  return sum;
}

/**
 * A way with the applicator shut that keeps off wet ground where the detour is worth it (WET_DETOUR): the
 * shortest way is tried first, then ways round what it meets.
 */
export function dryWay(ground: CarryGround, from: XY, to: XY, wet: readonly Outline[]): Carry {
  let best = ground.between(from, to);
  if (best.how === 'straight' || wet.length === 0) return best;
  let metAtAll: readonly Outline[] = [];
  let way = best;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < MOST_TRIES; i += 1) {
    const met = wet.filter((each) => metresOver(way.line, [each]) > STEP_M);
    const costM = way.lengthM + WET_DETOUR * metresOver(way.line, met);
    if (costM < least) [best, least] = [way, costM];
    const known: readonly Outline[] = metAtAll;
    const fresh = met.filter((each) => !known.includes(each));
    if (fresh.length === 0) break;
    metAtAll = [...metAtAll, ...fresh];
    const round = metAtAll;
    way = ground.between(from, to, {
      corners: round.flatMap((each) => [
        ...bendsOf(each.parts),
        ...stepsOff(each, from),
        ...stepsOff(each, to),
      ]),
      extraM: (a, b) => WET_DETOUR * metresOver([a, b], round),
    });
  }
  return best;
}

/** A way with more room beside houses, where that leads over no more wet ground. */
export function easyWay(ground: CarryGround, way: Carry, wet: readonly Outline[]): Carry {
  const wide = ground.atEase(way);
  if (wide === way || wet.length === 0) return wide;
  return metresOver(wide.line, wet) <= metresOver(way.line, wet) + STEP_M ? wide : way;
}

/** The shortest step off wet ground for one who stands on it. */
function stepsOff(ground: Outline, place: XY): XY[] {
  return isWellInside(place, ground) ? [nearestOn(place, sidesOf(ground.parts))] : [];
}
