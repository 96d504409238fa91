import type { XY } from '../../measure/types';

/**
 * How the signed area of a polygon changes with each corner, m² per m: half the vector between its
 * neighbours, turned by a right angle. Source: derivative of the shoelace formula.
 * @param corners open, in order; 3 or more
 */
export function areaGradient(corners: readonly XY[]): XY[] {
  const count = corners.length;
  return corners.map((_, j) => {
    const before = corners[(j + count - 1) % count] ?? [0, 0];
    const after = corners[(j + 1) % count] ?? [0, 0];
    return [(after[1] - before[1]) / 2, (before[0] - after[0]) / 2];
  });
}

/**
 * The sigma of each corner, in each of x and y, with which the polygon formula of independent corners
 * (variance s²/4·Σd², Chrisman & Yandell 1988) gives a known sigma of the area.
 * @param areaSigmaM2 one standard deviation, m²
 */
export function vertexSigmaFor(areaSigmaM2: number, corners: readonly XY[]): number {
  const sum = areaGradient(corners).reduce((total, [x, y]) => total + x * x + y * y, 0);
  return sum > 0 ? areaSigmaM2 / Math.sqrt(sum) : 0;
}
