import type { Position, Ring } from '../yard/types';
import { ringFromOffsets } from './ringFromCorners';
import type { XY } from './types';

/**
 * Circle as a ring that encloses the circle's own area, πr².
 * @param radiusM more than 0 @param toleranceM most that a side may stray from the circle (24 to 360 sides)
 */
export function makeCircle(middle: Position, radiusM: number, toleranceM = 0.005): Ring {
  const wanted = radiusM > toleranceM ? Math.PI / Math.acos(1 - toleranceM / radiusM) : 0;
  const count = Math.min(360, Math.max(24, Math.ceil(wanted)));
  const turn = (2 * Math.PI) / count;
  // n/2 R² sin(2π/n) = πr²
  const reach = radiusM * Math.sqrt(turn / Math.sin(turn));
  return ringFromOffsets(
    middle,
    Array.from({ length: count }, (_, i): XY => [reach * Math.cos(i * turn), reach * Math.sin(i * turn)]),
  );
}
