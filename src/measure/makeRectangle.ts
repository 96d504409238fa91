import type { Position, Ring } from '../yard/types';
import { ringFromOffsets } from './ringFromCorners';
import type { XY } from './types';

const RAD = Math.PI / 180;

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
  return ringFromOffsets(middle, [at(-1, -1), at(-1, 1), at(1, 1), at(1, -1)]);
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
  const [, second, third, fourth] = ringFromOffsets(corner, [at(0, 0), at(1, 0), at(1, 1), at(0, 1)]);
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
