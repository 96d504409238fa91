import type { Position, Ring } from '../yard/types';
import { roundPosition } from './corners';
import { createPlane } from './plane';
import type { XY } from './types';

const RAD = Math.PI / 180;
/** A traverse that ends this near its start is closed, m. */
const CLOSED_M = 0.005;

/** One side of a traverse: its length, m, and its bearing, degrees clockwise from true north. */
export interface Side {
  readonly lengthM: number;
  readonly bearingDeg: number;
}

function toRing(origin: Position, corners: readonly XY[]): Ring {
  const plane = createPlane(origin);
  return ringFromCorners(corners.map((corner) => roundPosition(plane.toLonLat(corner))));
}

/** Closes corners to a ring; a closing corner already there stays one. Empty for none. */
export function ringFromCorners(corners: readonly Position[]): Ring {
  const [first, last] = [corners[0], corners.at(-1)];
  if (!first || !last) return [];
  const isClosed = corners.length > 1 && first[0] === last[0] && first[1] === last[1];
  return isClosed ? corners : [...corners, first];
}

/**
 * Rectangle round its middle. @param sideM length along `bearing`, m @param otherM length across, m
 * @param bearing of the first side, degrees clockwise from true north
 */
export function makeRectangle(middle: Position, sideM: number, otherM: number, bearing: number): Ring {
  const [along, across] = axes(bearing);
  const at = (u: number, v: number): XY => [
    (u * sideM * along[0] + v * otherM * across[0]) / 2,
    (u * sideM * along[1] + v * otherM * across[1]) / 2,
  ];
  return toRing(middle, [at(-1, -1), at(-1, 1), at(1, 1), at(1, -1)]);
}

/** Rectangle from a corner: the first side runs along `bearing`, the other to its right. Lengths in m. */
export function makeRectangleFromCorner(
  corner: Position,
  sideM: number,
  otherM: number,
  bearing: number,
): Ring {
  const [along, across] = axes(bearing);
  const at = (u: number, v: number): XY => [
    u * sideM * along[0] + v * otherM * across[0],
    u * sideM * along[1] + v * otherM * across[1],
  ];
  const [, second, third, fourth] = toRing(corner, [at(0, 0), at(1, 0), at(1, 1), at(0, 1)]);
  return second && third && fourth ? [corner, second, third, fourth, corner] : [];
}

/** Unit vectors along a bearing and to the right of it. */
function axes(bearing: number): [XY, XY] {
  const [sin, cos] = [Math.sin(bearing * RAD), Math.cos(bearing * RAD)];
  return [
    [sin, cos],
    [cos, -sin],
  ];
}

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
  return toRing(
    middle,
    Array.from({ length: count }, (_, i): XY => [reach * Math.cos(i * turn), reach * Math.sin(i * turn)]),
  );
}

/**
 * Ring by lengths and bearings from a first corner. The last side, back to the start, comes by itself
 * when the sides do not end there (within 5 mm); `closureOfSides` tells by how much they miss.
 */
export function ringFromSides(start: Position, sides: readonly Side[]): Ring {
  const corners = cornersOfSides(sides);
  const end = corners.at(-1);
  if (end && corners.length > 1 && Math.hypot(end[0], end[1]) <= CLOSED_M) corners.pop();
  return [start, ...toRing(start, corners).slice(1, -1), start];
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
