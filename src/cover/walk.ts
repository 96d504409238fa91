import type { XY } from '../measure/types';

interface Walkable {
  readonly line: readonly XY[];
}

/**
 * Puts lines in the order of a walk: from the first one on, always to the line with the nearest end,
 * turned round where its far end is the nearer. Good enough to follow on foot; not the shortest walk.
 * @returns the same items, each once; a turned one is a copy with its line reversed
 */
export function orderWalk<T extends Walkable>(items: readonly T[]): T[] {
  const left = [...items];
  const walk: T[] = [];
  let here: XY | undefined = left[0]?.line[0];
  while (left.length > 0 && here) {
    let best = 0;
    let turned = false;
    let least = Number.POSITIVE_INFINITY;
    for (const [index, item] of left.entries()) {
      const start = distance(here, item.line[0]);
      const end = distance(here, item.line.at(-1));
      if (Math.min(start, end) < least) {
        least = Math.min(start, end);
        best = index;
        turned = end < start;
      }
    }
    const [next] = left.splice(best, 1);
    if (!next) break;
    const placed = turned ? { ...next, line: [...next.line].reverse() } : next;
    walk.push(placed);
    here = placed.line.at(-1);
  }
  return walk;
}

function distance(p: XY, q: XY | undefined): number {
  return q ? Math.hypot(p[0] - q[0], p[1] - q[1]) : Number.POSITIVE_INFINITY;
}
