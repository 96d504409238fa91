import type { XY } from './types';

/** Planar area of a closed ring, m² of the plane: positive when the ring turns left (counter-clockwise). */
export function signedArea(ring: readonly XY[]): number {
  let twice = 0;
  for (let i = 1; i < ring.length; i++) {
    const a = ring[i - 1];
    const b = ring[i];
    if (a && b) twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice / 2;
}
