/** Rise over run from degrees; null outside 0 (included) to 90. */
export function slopeFromDegrees(degrees: number): number | null {
  return degrees >= 0 && degrees < 90 ? Math.tan((degrees * Math.PI) / 180) : null;
}

/** Degrees from rise over run. */
export function degreesFromSlope(slope: number): number {
  return (Math.atan(slope) * 180) / Math.PI;
}

/** Rise over run from both, any one unit; null when the run is not more than 0 or the rise is less. */
export function slopeFromRise(rise: number, run: number): number | null {
  return run > 0 && rise >= 0 && Number.isFinite(rise / run) ? rise / run : null;
}

/**
 * Rise over run from the heights of two places and the distance between them, m.
 * @param distanceM level, as on a map, or as a tape lies along the slope
 * @returns null when the distance is not more than 0, or a tape no longer than the rise
 */
export function slopeFromHeights(
  firstM: number,
  secondM: number,
  distanceM: number,
  distanceIs: 'level' | 'along',
): number | null {
  const rise = Math.abs(secondM - firstM);
  if (distanceIs === 'level') return slopeFromRise(rise, distanceM);
  return distanceM > rise ? slopeFromRise(rise, Math.sqrt(distanceM * distanceM - rise * rise)) : null;
}
