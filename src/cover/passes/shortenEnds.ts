import type { XY } from '../../measure/types';
import { distanceOf } from './frame';
import type { Walkable } from './wayWithin';
import { makeWork, type Work } from './work';

/** Ends are found within this, m. */
const NEAR_M = 0.005;

/** What passes became, by ground: they are walked in many layouts. */
const known = new WeakMap<Walkable, WeakMap<Work, Work>>();

/**
 * A pass whose swath reaches no farther than half its width beyond the zone at either end: an end whose
 * corners lie farther out is drawn back along its last straight stretch.
 * @param swathM the same for all passes of a ground
 */
export function shortenEnds(work: Work, walkable: Walkable, swathM: number): Work {
  const kept = known.get(walkable) ?? new WeakMap<Work, Work>();
  known.set(walkable, kept);
  const made = kept.get(work) ?? shorten(work, walkable, swathM);
  kept.set(work, made);
  return made;
}

function shorten(work: Work, walkable: Walkable, swathM: number): Work {
  const tail = drawnBack(work.line, walkable, swathM);
  const head = drawnBack(work.line.toReversed(), walkable, swathM);
  if (tail === 0 && head === 0) return work;
  const line = cutEnd(cutEnd(work.line, tail).toReversed(), head).toReversed();
  return makeWork(
    work.kind,
    line,
    work.knots.map(({ atM, areaM2 }) => ({ atM: Math.max(0, atM - head), areaM2 })),
  );
}

/** How far the last end must be drawn back, m. */
function drawnBack(line: readonly XY[], walkable: Walkable, swathM: number): number {
  const [a, b] = [line.at(-2) as XY, line.at(-1) as XY];
  const lengthM = distanceOf(a, b);
  if (lengthM < 2 * NEAR_M) return 0;
  const [ux, uy] = [(b[0] - a[0]) / lengthM, (b[1] - a[1]) / lengthM];
  const half = swathM / 2;
  const isFar = (back: number): boolean => {
    const [x, y] = [b[0] - ux * back, b[1] - uy * back];
    return [1, -1].some((side) => {
      const corner: XY = [x - uy * side * half, y + ux * side * half];
      return !walkable.isFree(corner) && (walkable.nearest(corner)?.distanceM ?? 0) > half - NEAR_M;
    });
  };
  if (!isFar(0)) return 0;
  // at most to a tenth of the stretch, and no farther than a swath
  let [near, far] = [0, Math.min(0.9 * lengthM, swathM)];
  if (isFar(far)) return 0;
  while (far - near > NEAR_M) {
    const middle = (near + far) / 2;
    if (isFar(middle)) near = middle;
    else far = middle;
  }
  return far;
}

function cutEnd(line: readonly XY[], byM: number): readonly XY[] {
  if (byM === 0) return line;
  const [a, b] = [line.at(-2) as XY, line.at(-1) as XY];
  const share = byM / distanceOf(a, b);
  return [...line.slice(0, -1), [b[0] + (a[0] - b[0]) * share, b[1] + (a[1] - b[1]) * share]];
}
