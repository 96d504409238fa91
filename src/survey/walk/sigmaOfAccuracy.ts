/**
 * Radius of a circle that holds 95 % of a bivariate normal with equal sigma in x and y, in sigmas:
 * sqrt(-2 ln 0.05) = 2.4477 (Rayleigh distribution).
 */
export const RADIUS_95 = Math.sqrt(-2 * Math.log(0.05));

/**
 * Standard deviation of a fix in each of x and y, metres.
 * Source: W3C Geolocation, `accuracy` is in metres at a 95 % confidence level; errors taken as normal
 * and alike in x and y. Some receivers tell a 68 % radius instead: then this is too small by 1.62.
 * @param accuracyM 95 % radius, metres; more than 0
 */
export function sigmaOfAccuracyM(accuracyM: number): number {
  return accuracyM / RADIUS_95;
}
