import { bufferOf } from '../../measure/clip';
import { isInsideParts } from '../../measure/isInsideParts';
import type { PlaneRings, XY } from '../../measure/types';

/** Holes narrower than this share of the spacing are small: a lap round them does mostly what lies beside it. */
const SMALL_SHARE = 1.3;

/**
 * Ground with its small holes filled that lie a lap's width inside it, for laps that leave them to the passes.
 * @returns the filled ground and the holes; null: there are none
 */
export function withoutSmallHoles(
  parts: readonly PlaneRings[],
  spacingM: number,
): { readonly filled: readonly PlaneRings[]; readonly holes: readonly PlaneRings[] } | null {
  const isSmall = (ring: readonly XY[]) => {
    const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    return Math.max(wide, high) < SMALL_SHARE * spacingM;
  };
  const split = (isLeft: (ring: readonly XY[]) => boolean) =>
    parts.map((rings): PlaneRings => rings.filter((ring, i) => i === 0 || !isLeft(ring)));
  if (!parts.some((rings) => rings.slice(1).some(isSmall))) return null;
  const inner = bufferOf({ parts: split(isSmall) }, -spacingM);
  const isLeft = (ring: readonly XY[]) => isSmall(ring) && ring.every((p) => isInsideParts(p, inner));
  const holes = parts.flatMap((rings) => rings.slice(1).flatMap((ring) => (isLeft(ring) ? [[ring]] : [])));
  return holes.length > 0 ? { filled: split(isLeft), holes } : null;
}
