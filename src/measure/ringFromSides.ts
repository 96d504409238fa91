import type { Position, Ring } from '../yard/types';
import { ringFromOffsets } from './ringFromCorners';
import type { XY } from './types';

const RAD = Math.PI / 180;
/** A traverse that ends this near its start is closed, m. */
const CLOSED_M = 0.005;

/** One side of a traverse: its length, m, and its bearing, degrees clockwise from true north. */
export interface Side {
  readonly lengthM: number;
  readonly bearingDeg: number;
}

/**
 * Ring by lengths and bearings from a first corner. The last side, back to the start, comes by itself
 * when the sides do not end there (within 5 mm); `closureOfSides` tells by how much they miss.
 */
export function ringFromSides(start: Position, sides: readonly Side[]): Ring {
  const corners = cornersOfSides(sides);
  const end = corners.at(-1);
  if (end && corners.length > 1 && Math.hypot(end[0], end[1]) <= CLOSED_M) corners.pop();
  return [start, ...ringFromOffsets(start, corners).slice(1, -1), start];
}

/** How far the end of the sides lies from their start. */
export interface Closure {
  readonly gapM: number;
  readonly lengthM: number;
  /** length walked for each metre of gap, as surveyors write 1:n; Infinity when closed. */
  readonly ratio: number;
}

/** Linear closure of a traverse. Textbook formula: gap over length of the sides (from memory). */
export function closureOfSides(sides: readonly Side[]): Closure {
  const [x, y] = cornersOfSides(sides).at(-1) ?? [0, 0];
  const gapM = Math.hypot(x, y);
  const lengthM = sides.reduce((sum, side) => sum + side.lengthM, 0);
  return { gapM, lengthM, ratio: gapM > 1e-9 ? lengthM / gapM : Infinity };
}

function cornersOfSides(sides: readonly Side[]): XY[] {
  const corners: XY[] = [[0, 0]];
  let [x, y] = [0, 0];
  for (const { lengthM, bearingDeg } of sides) {
    x += lengthM * Math.sin(bearingDeg * RAD);
    y += lengthM * Math.cos(bearingDeg * RAD);
    corners.push([x, y]);
  }
  return corners;
}
