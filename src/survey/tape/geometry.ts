import type { XY } from '../../measure/types';

/** Length of a closed or open path in the plane, m. */
export function pathLength(path: readonly XY[]): number {
  let length = 0;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1];
    const b = path[i];
    if (a && b) length += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return length;
}

/** Closes corners to a ring. */
export function closeRing(corners: readonly XY[]): XY[] {
  const [first] = corners;
  return first ? [...corners, first] : [];
}

/** Area of a triangle by its three sides, m²; 0 when they make none. Source: Heron's formula, in Kahan's stable order (W. Kahan, "Miscalculating Area and Angles of a Needle-like Triangle", from memory). */
export function heronArea(a: number, b: number, c: number): number {
  const [z = 0, y = 0, x = 0] = [a, b, c].sort((p, q) => p - q);
  const product = (x + (y + z)) * (z - (x - y)) * (z + (x - y)) * (x + (y - z));
  return product > 0 ? Math.sqrt(product) / 4 : 0;
}

/**
 * The corner above a base from (0, 0) to (baseM, 0), by its distances from both ends, m.
 * @returns with y ≥ 0; y = 0 when the three lengths lie in one line or make no triangle
 */
export function apexOver(baseM: number, fromStartM: number, fromEndM: number): XY {
  const x = (baseM * baseM + fromStartM * fromStartM - fromEndM * fromEndM) / (2 * baseM);
  return [x, (2 * heronArea(baseM, fromStartM, fromEndM)) / baseM];
}
