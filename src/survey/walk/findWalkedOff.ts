import { createPlane } from '../../measure/plane';
import type { XY } from '../../measure/types';
import { LONGEST_TIME_CONSTANT_S } from './fixNoise';
import { sigmaOfAccuracyM } from './sigmaOfAccuracy';
import type { Fix } from './types';

/** Positions that a stand must have before it can be left, and that show that it was left. */
const LEAST_STANDING = 2;
const LEAST_WALKING = 4;
/** Slower than this is no walking, and nearer than this is no leaving, m/s and m. Common practice, no source. */
const LEAST_SPEED_MS = 0.4;
const LEAST_WAY_M = 2;
/** Nor is a way shorter than this times the 95 % radius told. Common practice, no source. */
const LEAST_RADII = 1.25;
/** A way shorter than so many standard deviations may be error: beyond 5 it is once in 270,000 times, exp(-5²/2), Rayleigh. */
const SURE = 5;
/** A corner is left within so many seconds before it is seen. */
const LONGEST_WAY_S = 30;

interface PlaneFix {
  readonly at: XY;
  readonly timeS: number;
}

/** Standing up to the fix `last`, then walking: what that leaves over, and how far the walk goes. */
interface Hinge {
  readonly last: number;
  readonly residual: number;
  readonly wayM: number;
  readonly waySigma: number;
  readonly walkS: number;
}

/**
 * Whether a person who stood at a corner has walked on. The positions are fitted, by least squares, with a
 * place kept up to one of them and a steady pace in one direction from there; the best such moment is
 * taken. The person has left when the way since is beyond what errors do: those that scatter, taken
 * from what the fit leaves over, and those that drift with the time constant of a standing receiver.
 * Source: least squares with one break, derived here; drift of a first-order autoregressive process.
 * @param fixes good positions since the stand began, in order of time; those without a time are passed over
 * @param assumedAccuracyM for fixes that tell none, metres (95 % radius)
 * @returns the time of the last position at the corner, ms by the clock of the fixes; null: still there
 */
export function findWalkedOff(fixes: readonly Fix[], assumedAccuracyM: number): number | null {
  const timed = fixes.filter((fix) => fix.timeMs !== null);
  const first = timed[0];
  if (!first || timed.length < LEAST_STANDING + LEAST_WALKING) return null;
  const plane = createPlane(first.position);
  const startMs = first.timeMs ?? 0;
  const places = timed.map(({ position, timeMs }) => ({
    at: plane.toPlane(position),
    timeS: ((timeMs ?? 0) - startMs) / 1000,
  }));
  const endS = places.at(-1)?.timeS ?? 0;
  let best: Hinge | null = null;
  for (let last = LEAST_STANDING - 1; last < places.length - LEAST_WALKING; last++) {
    if (endS - (places[last]?.timeS ?? 0) > LONGEST_WAY_S) continue;
    const hinge = fitHinge(places, last);
    if (hinge && (!best || hinge.residual < best.residual)) best = hinge;
  }
  if (!best) return null;
  const { last, residual, wayM, waySigma, walkS } = best;
  const scatterM = Math.sqrt(residual / (2 * places.length - 4)) * waySigma;
  const worstM = Math.max(...timed.map(({ accuracyM }) => accuracyM ?? assumedAccuracyM));
  const driftM = sigmaOfAccuracyM(worstM) * Math.sqrt(2 * (1 - Math.exp(-walkS / LONGEST_TIME_CONSTANT_S)));
  const isWalk = wayM >= Math.max(LEAST_WAY_M, LEAST_RADII * worstM, LEAST_SPEED_MS * walkS);
  return isWalk && wayM > SURE * Math.hypot(scatterM, driftM) ? (timed[last]?.timeMs ?? null) : null;
}

/** Fits x = a + b·max(0, t - t_last) to each axis. */
function fitHinge(places: readonly PlaneFix[], last: number): Hinge | null {
  const fromS = places[last]?.timeS ?? 0;
  const walkS = (places.at(-1)?.timeS ?? 0) - fromS;
  const ramp = places.map(({ timeS }) => Math.max(0, timeS - fromS));
  const count = places.length;
  const mean = ramp.reduce((sum, r) => sum + r, 0) / count;
  const spread = ramp.reduce((sum, r) => sum + (r - mean) ** 2, 0);
  if (!(spread > 0)) return null;
  let residual = 0;
  const pace: number[] = [];
  for (const axis of [0, 1] as const) {
    const middle = places.reduce((sum, { at }) => sum + at[axis], 0) / count;
    const slope =
      places.reduce((sum, { at }, i) => sum + ((ramp[i] ?? 0) - mean) * (at[axis] - middle), 0) / spread;
    places.forEach(({ at }, i) => {
      residual += (at[axis] - middle - slope * ((ramp[i] ?? 0) - mean)) ** 2;
    });
    pace.push(slope);
  }
  const wayM = Math.hypot(pace[0] ?? 0, pace[1] ?? 0) * walkS;
  return { last, residual, wayM, waySigma: walkS / Math.sqrt(spread), walkS };
}
