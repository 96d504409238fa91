import type { PlaneRings, XY } from './types';

/** West, south, east and north limits in the plane, m. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Limits of all rings; inverted and infinite when there are none. */
export function boxOf(parts: readonly PlaneRings[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const rings of parts) {
    for (const ring of rings) {
      for (const [x, y] of ring) {
        if (x < minX) minX = x;
        if (x > maxX) maxX = x;
        if (y < minY) minY = y;
        if (y > maxY) maxY = y;
      }
    }
  }
  return { minX, minY, maxX, maxY };
}

/** The middle of a box. */
export function middleOfBox({ minX, minY, maxX, maxY }: Box): XY {
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** Whether two boxes come within `marginM` of each other. */
export function boxesNear(a: Box, b: Box, marginM: number): boolean {
  return (
    a.minX <= b.maxX + marginM &&
    b.minX <= a.maxX + marginM &&
    a.minY <= b.maxY + marginM &&
    b.minY <= a.maxY + marginM
  );
}
