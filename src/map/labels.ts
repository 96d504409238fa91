import polylabel from 'polylabel';
import type { PlaneRings, XY } from '../measure/types';

export interface LabelSpot {
  /** plane, m. */
  readonly at: XY;
  /** radius of the largest circle inside, m. */
  readonly roomM: number;
  readonly part: PlaneRings;
}

/**
 * Where a label sits best: the pole of inaccessibility (polylabel, ISC licence) of the roomiest part.
 * @param parts plane metres; @returns null when nothing is left to label
 */
export function labelSpot(parts: readonly PlaneRings[]): LabelSpot | null {
  let best: LabelSpot | null = null;
  for (const part of parts) {
    if ((part[0]?.length ?? 0) < 4) continue;
    const pole = polylabel(part, 0.05);
    if (Number.isFinite(pole.distance) && (!best || pole.distance > best.roomM)) {
      best = { at: [pole[0], pole[1]], roomM: pole.distance, part };
    }
  }
  return best;
}

function isInside(p: XY, part: PlaneRings): boolean {
  let inside = false;
  for (const ring of part) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const a = ring[i];
      const b = ring[j];
      if (!a || !b) continue;
      if (a[1] > p[1] !== b[1] > p[1] && p[0] < ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1]) + a[0]) {
        inside = !inside;
      }
    }
  }
  return inside;
}

function sideMeetsBox(a: XY, b: XY, left: number, bottom: number, right: number, top: number): boolean {
  let from = 0;
  let to = 1;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  for (const [p, q] of [
    [-dx, a[0] - left],
    [dx, right - a[0]],
    [-dy, a[1] - bottom],
    [dy, top - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const t = q / p;
    if (p < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
    if (from > to) return false;
  }
  return true;
}

/**
 * Whether a label box lies wholly inside the shape.
 * @param widthM, heightM the box as it is at the present scale, metres on the ground
 */
export function labelFits(spot: LabelSpot, widthM: number, heightM: number): boolean {
  const halfW = widthM / 2;
  const halfH = heightM / 2;
  if (Math.hypot(halfW, halfH) <= spot.roomM) return true;
  if (!isInside(spot.at, spot.part)) return false;
  const [x, y] = spot.at;
  for (const ring of spot.part) {
    for (let i = 1; i < ring.length; i++) {
      const a = ring[i - 1];
      const b = ring[i];
      if (a && b && sideMeetsBox(a, b, x - halfW, y - halfH, x + halfW, y + halfH)) return false;
    }
  }
  return true;
}
