import { bufferOf, differenceOf, planeAreaOf } from '../../measure/clip';
import type { PlaneRings } from '../../measure/types';
import { ARC_M } from './laps';

/** Arcs of buffers stray by so much, m. */
const NEAR_M = 0.01;

/**
 * Ground that no walk reaches: farther than half a swath from every place on the ground that is itself half a swath
 * off what is kept off (an opening of mathematical morphology beside the strips), m².
 */
export function unreachableOf(
  parts: readonly PlaneRings[],
  keepOff: readonly PlaneRings[],
  swathM: number,
): number {
  if (keepOff.length === 0) return 0;
  const walked = differenceOf(parts, bufferOf({ parts: keepOff }, swathM / 2 + ARC_M));
  if (walked.length === 0) return planeAreaOf(parts);
  return planeAreaOf(differenceOf(parts, bufferOf({ parts: walked }, swathM / 2 + NEAR_M)));
}
