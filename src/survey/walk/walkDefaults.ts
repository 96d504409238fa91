import type { FixLimits, WalkOptions } from './types';

/**
 * Radius that a phone under open sky usually holds, metres: 4.9 m (16 ft), worse near buildings and
 * trees. Source: GPS.gov, "GPS Accuracy", which cites van Diggelen & Enge, ION 2015. Taken as a 95 %
 * radius for fixes that tell no accuracy; the page names no percentage.
 */
export const OPEN_SKY_ACCURACY_M = 4.9;

/**
 * 10 m: twice the open-sky figure. 4 m/s is a jog; 1.2 to 1.5 m/s is walking (common practice, no
 * source). 10 s: a position older than that is a remembered one.
 */
export const DEFAULT_LIMITS: FixLimits = { maxAccuracyM: 10, maxSpeedMS: 4, maxAgeMs: 10_000 };

export const DEFAULT_WALK_OPTIONS: WalkOptions = {
  mode: 'round',
  limits: DEFAULT_LIMITS,
  assumedAccuracyM: OPEN_SKY_ACCURACY_M,
  toleranceM: null,
};
