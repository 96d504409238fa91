import { bufferOf, differenceOf, planeAreaOf, unionOf } from '../../measure/clip';
import { boxesNear, boxOf } from '../../measure/planeBox';
import type { PlaneRings, XY } from '../../measure/types';
import type { CoverZone } from '../passTypes';
import { createWays, type Toll, type Way } from './ways';

/** Walls, banks and beds are passed at this distance, m; gaps of less than twice that are no way through. Common practice, no source. */
const CLEARANCE_M = 0.15;
/** What is left of an obstacle on treated ground counts from here, m². */
const LEAST_M2 = 0.01;

/**
 * How a way with the applicator shut had to be taken: on open ground; over a no-apply strip, as there is none
 * round it; or straight, as there is none at all.
 */
export type CarryHow = 'open' | 'over-strip' | 'straight';

/** A way between zones. */
export interface Carry extends Way {
  readonly how: CarryHow;
}

/** Ground that is walked with the applicator shut. */
export interface CarryGround {
  between(from: XY, to: XY, toll?: Toll): Carry;
  /** the shortest round obstacles, over strips too; null: walls stand all round one of the places. */
  roundWalls(from: XY, to: XY): Way | null;
}

/** Obstacles without what a dose treats of them: a bed that is treated is walked. */
export function standingObstacles(
  obstacles: readonly PlaneRings[],
  zones: readonly CoverZone[],
): PlaneRings[] {
  const boxes = zones.map(({ parts }) => boxOf(parts));
  return obstacles.flatMap((obstacle) => {
    const box = boxOf([obstacle]);
    const near = zones.filter((_, i) => boxesNear(box, boxes[i] as typeof box, -CLEARANCE_M));
    if (near.length === 0) return [obstacle];
    return differenceOf(
      [obstacle],
      near.flatMap(({ parts }) => parts),
    ).filter((part) => planeAreaOf([part]) > LEAST_M2);
  });
}

/**
 * Open ground for ways with the applicator shut: round obstacles, and round no-apply strips where that can be.
 * @param obstacles houses, water, beds that are not treated
 * @param strips no-apply strips
 */
export function createCarryGround(
  obstacles: readonly PlaneRings[],
  strips: readonly PlaneRings[],
): CarryGround {
  const walls = obstacles.length === 0 ? [] : bufferOf({ parts: obstacles }, CLEARANCE_M);
  const roundWalls = createWays(walls);
  const roundAll = strips.length === 0 ? roundWalls : createWays(unionOf([...walls, ...strips]));
  /** whether a place can be joined to open ground without going through a wall. */
  const canLeave = (place: XY): boolean =>
    roundAll === roundWalls ||
    roundWalls.isClear(roundWalls.standOutside(place), roundAll.standOutside(place));
  return {
    roundWalls: (from, to) => roundWalls.between(from, to),
    between(from, to, toll) {
      const open = canLeave(from) && canLeave(to) ? roundAll.between(from, to, toll) : null;
      if (open) return { ...open, how: 'open' };
      const over = roundAll === roundWalls ? null : roundWalls.between(from, to, toll);
      if (over) return { ...over, how: 'over-strip' };
      const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
      return { line: [from, to], lengthM, how: 'straight' };
    },
  };
}
