import { PER_M } from '../../measure/clipPaths';
import { areaOfPaths, booleanOp, ClipType, FillRule } from '../../measure/clipper';
import type { PlaneRings } from '../../measure/types';
import type { Leg, ZonePasses } from '../passTypes';
import { groundFacts } from './groundFacts';
import type { Walkable } from './wayWithin';

export { swathOf } from './swathOf';

/** What the swaths of a walk reach. */
export type Reached = Pick<ZonePasses, 'missedM2' | 'doubleM2' | 'outsideM2' | 'outsideM'>;

/** Beyond the ground by less is not, m. */
const NEAR_M = 0.002;

/**
 * What is missed, done twice and reached beyond the ground, from the shapes of the swaths: a swath ends
 * square where a pass ends and turns round at its corners (the outer corner of a bend is an arc, not a point).
 * Done twice is what the swaths, each as wide as the spacing, have in common inside the ground: the overlap
 * of the plan is not counted, what passes lie closer than planned is.
 * @param legs in any order, walked either way: that changes nothing
 * @param parts the ground, each square metre once; of the same array what was worked out before is used again
 * @returns what lies outside is worked out when it is asked for
 */
export function measurePasses(
  legs: readonly Pick<Leg, 'kind' | 'line' | 'lengthM'>[],
  parts: readonly PlaneRings[],
  walkable: Walkable,
  spacingM: number,
  swathM: number,
): Reached {
  const ground = groundFacts(parts, walkable);
  const perM2 = PER_M * PER_M;
  const laps = legs.filter((leg) => leg.kind === 'lap');
  const passes = legs.filter((leg) => leg.kind === 'pass');
  /** ground that swaths of a width leave. */
  const leftBy = (widthM: number): number => {
    const beside = ground.leftBeside(laps.map((lap) => ground.factsOf(lap, widthM)));
    const swaths = passes.flatMap((pass) => ground.factsOf(pass, widthM).paths);
    const left =
      swaths.length === 0 ? beside : booleanOp(ClipType.Difference, beside, swaths, FillRule.NonZero);
    return Math.max(0, areaOfPaths(left) / perM2);
  };
  const working = [...laps, ...passes];
  const missedM2 = leftBy(swathM);
  const onceM2 = ground.areaM2 - (spacingM === swathM ? missedM2 : leftBy(spacingM));
  const insideM2 = working.reduce((sum, leg) => sum + ground.factsOf(leg, spacingM).insideM2, 0);
  let outsideM2: number | undefined;
  return {
    missedM2,
    doubleM2: Math.max(0, insideM2 - onceM2),
    get outsideM2() {
      if (outsideM2 !== undefined) return outsideM2;
      const wide = working.flatMap((leg) => ground.factsOf(leg, swathM).paths);
      outsideM2 = Math.max(
        0,
        areaOfPaths(booleanOp(ClipType.Difference, wide, ground.paths, FillRule.NonZero)) / perM2,
      );
      return outsideM2;
    },
    get outsideM() {
      const farthestM = working.reduce(
        (most, leg) => Math.max(most, ground.factsOf(leg, swathM).outsideM),
        0,
      );
      return farthestM > NEAR_M ? farthestM : 0;
    },
  };
}
