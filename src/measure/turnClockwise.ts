import type { XY } from './types';

/** A turn of the plane about its origin. @param deg degrees, clockwise seen from above, as bearings grow */
export function turnClockwise(deg: number): (p: XY) => XY {
  const rad = (deg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(rad), Math.cos(rad)];
  return ([x, y]) => [x * cos + y * sin, y * cos - x * sin];
}
