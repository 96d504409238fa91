import type { XY } from '../../measure/types';
import { distanceOf } from './frame';
import { partOf } from './trimWorks';
import type { Walkable } from './wayWithin';
import type { Work } from './work';

/** Places looked at along a pass lie this share of the swath apart. */
const STEP_SHARE = 0.05;
/** Less is not beyond, m. */
const NEAR_M = 0.006;
/** A stretch is no shorter than this share of the swath. */
const LEAST_SHARE = 0.1;

/** The stretches of a pass where its swath reaches no farther than half its width beyond the zone. */
export function keepNear(work: Work, walkable: Walkable, swathM: number): readonly Work[] {
  const half = swathM / 2;
  const isFar = (p: XY): boolean =>
    !walkable.isFree(p) && (walkable.nearest(p)?.distanceM ?? 0) > half + NEAR_M;
  const step = STEP_SHARE * swathM;
  const runs: { from: number; to: number }[] = [];
  let open: { from: number; to: number } | null = null;
  let walked = 0;
  let isWhole = true;
  for (let k = 1; k < work.line.length; k++) {
    const [a, b] = [work.line[k - 1] as XY, work.line[k] as XY];
    const lengthM = distanceOf(a, b);
    if (!(lengthM > 0)) continue;
    const [ux, uy] = [(b[0] - a[0]) / lengthM, (b[1] - a[1]) / lengthM];
    const count = Math.max(1, Math.ceil(lengthM / step));
    for (let i = 0; i <= count; i++) {
      const s = (lengthM * i) / count;
      const [x, y] = [a[0] + ux * s, a[1] + uy * s];
      if ([1, -1].some((side) => isFar([x - uy * side * half, y + ux * side * half]))) {
        isWhole = false;
        open = null;
      } else if (open) open.to = walked + s;
      else {
        open = { from: walked + s, to: walked + s };
        runs.push(open);
      }
    }
    walked += lengthM;
  }
  if (isWhole) return [work];
  return runs
    .filter(({ from, to }) => to - from > LEAST_SHARE * swathM)
    .map(({ from, to }) => partOf(work, from, to));
}
