/** Walking speed, m/s, over a known distance: mph = ft · 60 / (s · 88) (UF/IFAS Marion County, 2017; Oklahoma State). */
export function speedOfWalk(distanceM: number, timeS: number): number {
  return distanceM / timeS;
}

/** Length of one step, m, by the steps counted on a known distance; common practice, no source. */
export function stepOfWalk(distanceM: number, steps: number): number {
  return distanceM / steps;
}
