import { M_PER_IN } from '../units/factors';
import type { UnitSystem } from '../yard/types';
import { USUAL_DEPTH_M } from './newSoilTest';

/** The usual depth where centimetres are read: 10 cm for 4 in, m; common practice, no source. */
const USUAL_METRIC_M = 0.1;
const SAME_M = 1e-6;

/**
 * The depth of a sample in round figures of the units it is read in: 4 in and 10 cm stand for each other, any
 * other depth is told to the millimetre or the tenth of an inch. What is kept is untouched.
 * @returns m, to be shown only
 */
export function depthShown(depthM: number, system: UnitSystem): number {
  const usual = [USUAL_DEPTH_M, USUAL_METRIC_M].some((each) => Math.abs(each - depthM) < SAME_M);
  if (system === 'us') return usual ? USUAL_DEPTH_M : (Math.round((depthM / M_PER_IN) * 10) / 10) * M_PER_IN;
  return usual ? USUAL_METRIC_M : Math.round(depthM * 1000) / 1000;
}
