import { isInsideParts } from './isInsideParts';
import { boxOf, middleOfBox } from './planeBox';
import type { PlaneRings, XY } from './types';

/** An end this near the outline lies on it, m. */
const ON_M = 1e-3;

/**
 * The half of the plane to the left of a line carried on straight at both ends, as one ring large
 * enough for `parts`. Null when the carried-on line would cut the ground at a second place: an end
 * outside (or on) the outline must have nothing more ahead, an end inside exactly one side.
 */
export function leftOfLine(line: readonly XY[], parts: readonly PlaneRings[]): PlaneRings | null {
  const [first, second] = line;
  const [last, previous] = [line.at(-1), line.at(-2)];
  if (!first || !second || !last || !previous) return null;
  const box = boxOf([...parts, [line]]);
  const [cx, cy] = middleOfBox(box);
  const reach = 4 * (Math.hypot(box.maxX - box.minX, box.maxY - box.minY) + 1);
  const farStart = carryOn(second, first, reach);
  const farEnd = carryOn(previous, last, reach);
  if (!farStart || !farEnd) return null;
  for (const [end, far] of [
    [first, farStart],
    [last, farEnd],
  ] as const) {
    if (crossingsAhead(end, far, parts) > (isInside(end, parts) ? 1 : 0)) return null;
  }
  const angleOf = ([x, y]: XY) => Math.atan2(y - cy, x - cx);
  const from = angleOf(farEnd);
  let to = angleOf(farStart);
  while (to <= from) to += 2 * Math.PI;
  const steps = 16;
  const arc = Array.from({ length: steps + 1 }, (_, i): XY => {
    const angle = from + ((to - from) * i) / steps;
    return [cx + 4 * reach * Math.cos(angle), cy + 4 * reach * Math.sin(angle)];
  });
  return [[farStart, ...line, farEnd, ...arc, farStart]];
}

function carryOn(from: XY, through: XY, lengthM: number): XY | null {
  const [dx, dy] = [through[0] - from[0], through[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return length === 0 ? null : [through[0] + (dx / length) * lengthM, through[1] + (dy / length) * lengthM];
}

/** Sides that the ray crosses further than ON_M ahead of its start. */
function crossingsAhead(from: XY, to: XY, parts: readonly PlaneRings[]): number {
  const [rx, ry] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(rx, ry);
  let count = 0;
  for (const ring of parts.flat()) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1], ring[i]];
      if (!a || !b) continue;
      const [sx, sy] = [b[0] - a[0], b[1] - a[1]];
      const det = rx * sy - ry * sx;
      if (det === 0) continue;
      const t = ((a[0] - from[0]) * sy - (a[1] - from[1]) * sx) / det;
      const u = ((a[0] - from[0]) * ry - (a[1] - from[1]) * rx) / det;
      if (u >= 0 && u < 1 && t * length > ON_M && t <= 1) count++;
    }
  }
  return count;
}

/** Inside and further than ON_M from every side. */
function isInside([x, y]: XY, parts: readonly PlaneRings[]): boolean {
  for (const ring of parts.flat()) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1], ring[i]];
      if (!a || !b) continue;
      const squared = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
      const t = squared === 0 ? 0 : ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / squared;
      const c = Math.min(1, Math.max(0, t));
      if (Math.hypot(x - a[0] - c * (b[0] - a[0]), y - a[1] - c * (b[1] - a[1])) <= ON_M) return false;
    }
  }
  return isInsideParts([x, y], parts);
}
