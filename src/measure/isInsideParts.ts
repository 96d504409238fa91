import type { PlaneRings, XY } from './types';

/** Whether a point lies on ground covered by any of the parts, holes excepted (even-odd rule in each part). */
export function isInsideParts([x, y]: XY, parts: readonly PlaneRings[]): boolean {
  return parts.some((rings) => {
    let isIn = false;
    for (const ring of rings) {
      for (let i = 1; i < ring.length; i++) {
        const [a, b] = [ring[i - 1], ring[i]];
        if (!a || !b || a[1] > y === b[1] > y) continue;
        if (x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) isIn = !isIn;
      }
    }
    return isIn;
  });
}
