import simplify from 'simplify-js';
import type { XY } from '../measure/types';

/**
 * The corners of a line that stay when the others lie within a tolerance of the chords between them
 * (Ramer 1972, Douglas & Peucker 1973, by simplify-js); both ends stay.
 * @param line plane metres @param toleranceM metres
 * @returns indices into `line`, ascending
 */
export function keptCorners(line: readonly XY[], toleranceM: number): number[] {
  const points = line.map(([x, y], index) => ({ x, y, index }));
  // the library gives back the very points that it keeps
  return simplify(points, toleranceM, true).map((point) => (point as (typeof points)[number]).index);
}
