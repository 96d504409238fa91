/*
 * Slope is rise over run, a pure number: 0.1 is 10 % is 5.71 degrees. Plane trigonometry: the ground
 * along a slope of angle a is longer than its plan by 1 / cos a = sqrt(1 + slope²).
 */

/** Ground along the slope for each unit of flat ground. @param slope rise over run; null is flat */
export function surfaceFactor(slope: number | null): number {
  return slope === null ? 1 : Math.hypot(1, slope);
}
