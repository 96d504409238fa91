import simplify from 'simplify-js';
import type { XY } from '../../measure/types';
import { distanceOf, lengthOfLine } from './frame';
import { ARC_M } from './laps';
import type { Walkable } from './wayWithin';
import { areaOfWork, makeWork, type Work } from './work';

/** Places looked at along a line lie this share of the swath apart. */
const STEP_SHARE = 0.06;
const MOST_STEPS = 4000;
/** Places so near to the ground are on it, m. */
const NEAR_M = 0.005;
/** Lines are drawn with fewer corners where they stray less, m. */
const SMOOTH_M = 0.002;

/**
 * A stretch moved aside where its swath would touch ground to be kept off, and left out where it cannot be.
 * @param shy everywhere but the ground to be kept off
 * @param zone the ground, which its line does not leave
 * @returns what is left of it, its ground shared by length
 */
export function keepClear(work: Work, shy: Walkable, zone: Walkable, swathM: number): Work[] {
  const clear = swathM / 2 + ARC_M;
  const isTouched = work.line.some((p) => !isClear(p, shy, clear)) || touches(work, shy, clear);
  if (!isTouched) return [work];
  const runs: XY[][] = [[]];
  for (const p of stepsOf(work.line, STEP_SHARE * swathM)) {
    const aside = movedAside(p, shy, clear);
    const moved = aside && isOn(aside, zone) ? aside : null;
    const last = runs.at(-1)?.at(-1);
    // a gap, or a leap round a corner, begins another stretch
    if (moved === null || (last && distanceOf(last, moved) > swathM / 2)) runs.push([]);
    if (moved) runs.at(-1)?.push(moved);
  }
  const lines = runs
    .filter((run) => lengthOfLine(run) > STEP_SHARE * swathM)
    .map((run) =>
      simplify(
        run.map(([x, y]) => ({ x, y })),
        SMOOTH_M,
        true,
      ).map(({ x, y }): XY => [x, y]),
    );
  const whole = lines.reduce((sum, line) => sum + lengthOfLine(line), 0);
  return lines.map((line) => {
    const share = (areaOfWork(work) * lengthOfLine(line)) / whole;
    return makeWork(work.kind, line, [{ atM: lengthOfLine(line), areaM2: share }]);
  });
}

/** Off the ground, a swath would reach more than half its width beyond it. */
function isOn(p: XY, zone: Walkable): boolean {
  return zone.isFree(p) || (zone.nearest(p)?.distanceM ?? Infinity) < NEAR_M;
}

function touches(work: Work, shy: Walkable, clear: number): boolean {
  return stepsOf(work.line, clear / 2).some((p) => !isClear(p, shy, clear));
}

function isClear(p: XY, shy: Walkable, clear: number): boolean {
  return shy.isFree(p) && (shy.nearest(p)?.distanceM ?? Infinity) >= clear - 1e-6;
}

function movedAside(p: XY, shy: Walkable, clear: number): XY | null {
  let at = p;
  for (let tries = 0; tries < 4; tries++) {
    const nearest = shy.nearest(at);
    if (nearest === null) return at;
    if (!shy.isFree(at)) return null;
    if (nearest.distanceM >= clear - 1e-6) return at;
    const size = distanceOf(at, nearest.on);
    if (size < 1e-9) return null;
    const by = (clear - nearest.distanceM) / size;
    at = [at[0] + (at[0] - nearest.on[0]) * by, at[1] + (at[1] - nearest.on[1]) * by];
  }
  return null;
}

function stepsOf(line: readonly XY[], stepM: number): XY[] {
  const step = Math.max(stepM, lengthOfLine(line) / MOST_STEPS);
  const steps: XY[] = line[0] ? [line[0]] : [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as XY, line[i] as XY];
    const count = Math.max(1, Math.ceil(distanceOf(a, b) / step));
    for (let k = 1; k <= count; k++)
      steps.push([a[0] + ((b[0] - a[0]) * k) / count, a[1] + ((b[1] - a[1]) * k) / count]);
  }
  return steps;
}
