import fc from 'fast-check';
import type { XY } from '../../src/measure/types';

/* Boxes and faces for tests of edges, each written from its definition, apart from the code under test. */

export type Box = readonly [number, number, number, number];

export const apart = (a: Box, b: Box): boolean =>
  a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];

export const anyBox = fc
  .tuple(
    fc.integer({ min: -120, max: 120 }),
    fc.integer({ min: -120, max: 120 }),
    fc.integer({ min: 5, max: 100 }),
    fc.integer({ min: 5, max: 100 }),
  )
  .map(([x, y, w, h]): Box => [x / 10, y / 10, (x + w) / 10, (y + h) / 10]);

/** A place on an outline, and which way is out: [1, 0] is east. */
export interface Face {
  readonly at: XY;
  readonly out: XY;
}

/** What of a box lies on the outer side of a face's line; null: nothing. Written from its definition. */
export function outerPart([x0, y0, x1, y1]: Box, { at: [x, y], out: [ox, oy] }: Face): Box | null {
  const part: Box = [
    ox > 0 ? Math.max(x0, x) : x0,
    oy > 0 ? Math.max(y0, y) : y0,
    ox < 0 ? Math.min(x1, x) : x1,
    oy < 0 ? Math.min(y1, y) : y1,
  ];
  return part[2] - part[0] > 1e-6 && part[3] - part[1] > 1e-6 ? part : null;
}

/** Whether product from some box comes over a face from outside, as far as it goes. */
export function isReached(face: Face, soft: readonly Box[], spreadM: number): boolean {
  return soft.some((box) => {
    const part = outerPart(box, face);
    return part !== null && toBox(face.at, part) <= spreadM + 1e-6;
  });
}

/** Distance from a point to a box, 0 inside: written from its definition, apart from the code under test. */
export const toBox = ([x, y]: XY, [x0, y0, x1, y1]: Box): number =>
  Math.hypot(Math.max(x0 - x, 0, x - x1), Math.max(y0 - y, 0, y - y1));

/** Whether the way from p to q goes through the inside of a box: the share of it within both pairs of sides. */
export function isBlocked(p: XY, q: XY, built: readonly Box[]): boolean {
  return built.some(([x0, y0, x1, y1]) => {
    let [from, to] = [0, 1];
    for (const [start, end, low, high] of [
      [p[0], q[0], x0 + 1e-3, x1 - 1e-3],
      [p[1], q[1], y0 + 1e-3, y1 - 1e-3],
    ] as const) {
      if (start === end) {
        if (start <= low || start >= high) return false;
        continue;
      }
      const [one, two] = [(low - start) / (end - start), (high - start) / (end - start)];
      from = Math.max(from, Math.min(one, two));
      to = Math.min(to, Math.max(one, two));
    }
    return from < to;
  });
}
