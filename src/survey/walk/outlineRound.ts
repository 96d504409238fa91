import { roundPosition } from '../../measure/corners';
import { findCrossings } from '../../measure/crossings';
import type { XY } from '../../measure/types';
import type { Ring } from '../../yard/types';
import { closeLoop } from './closeLoop';
import { findBends } from './findBends';
import { type FittedSides, fitSides } from './fitSides';
import { correlationAt, medianOf, type PlaneFix, varianceOfSum } from './fixNoise';
import type { PlacedFixes } from './placeFixes';
import { scaleSigmas } from './placeFixes';
import type { Noise, WalkOptions } from './types';

/** Least tolerance, metres: nobody walks an edge more exactly. Common practice, no source. */
const LEAST_TOLERANCE_M = 0.5;
/** The line wanders from a straight side by up to this many standard deviations. */
const WANDER = 1.8;
/** Time that a side takes to walk, seconds: about 25 m. Common practice, no source. */
const SIDE_S = 20;
/** Longest run of fixes averaged before bends are looked for: in seconds, and in metres walked. */
const SMOOTH_S = 5;
const SMOOTH_M = 6;
/** With errors more alike than this from fix to fix, averaging gains nothing. */
const ALIKE = 0.8;
/** A corner nearer than this share of the tolerance to the line between its neighbours is none. */
const FLAT = 0.5;
/** An end this many sigmas from the start, beyond twice the tolerance, did not come back to it. */
const CLOSE_SIGMAS = 2;
/** A gap under this share of the line may be no gap. */
const SHORT_GAP = 0.2;
const MOST_CORNERS = 120;
const MOST_TRIES = 8;
const LOOSER = 1.4;

export interface RoundOutline {
  readonly ring: Ring;
  readonly corners: readonly XY[];
  readonly areaSigmaM2: number;
  readonly timeConstantS: number;
  readonly gapM: number;
  readonly overlapM: number;
  readonly toleranceM: number;
  readonly largestOffsetM: number;
}

/**
 * The outline of a line walked round: bends found on the line, then sides fitted to all its fixes.
 * When the outline crosses itself, or has more corners than a yard can have, the tolerance is widened.
 * @param placed 3 or more fixes used @returns null when no outline can be made of them
 */
export function outlineRound(placed: PlacedFixes, noise: Noise, options: WalkOptions): RoundOutline | null {
  const loop = closeLoop(scaleSigmas(placed.fixes, noise.scale));
  const { fixes } = loop;
  const count = fixes.length;
  if (count < 3) return null;
  const lastS = fixes[count - 1]?.timeS ?? 0;
  const spanS = lastS - (fixes[0]?.timeS ?? 0);
  // not known: the time constant that does most harm to an area, that of one turn round it
  const timeConstantS = noise.timeConstantS ?? spanS / (2 * Math.PI);
  const { line, wanderM } = smooth(fixes, timeConstantS);
  let toleranceM = options.toleranceM ?? Math.max(LEAST_TOLERANCE_M, WANDER * wanderM);
  const startSigmaM = fixes[0]?.sigmaM ?? 0;
  let isClosed = loop.gapM <= 2 * toleranceM + CLOSE_SIGMAS * startSigmaM;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const fitted = fitWithin(fixes, line, isClosed, toleranceM);
    if (fitted && fitted.corners.length <= MOST_CORNERS) {
      const open = fitted.corners.map((corner) => roundPosition(placed.plane.toLonLat(corner)));
      const ring = [...open, ...open.slice(0, 1)];
      if (findCrossings(ring).length === 0) {
        const variance = varianceOfSum(fixes, fitted.areaWeights, timeConstantS);
        return {
          ring,
          corners: fitted.corners,
          areaSigmaM2: Math.sqrt(variance),
          timeConstantS,
          gapM: loop.gapM,
          overlapM: loop.overlapM,
          toleranceM,
          largestOffsetM: fitted.largestOffsetM,
        };
      }
    }
    // a coarser line with fewer than three bends stays so
    if (!fitted && findBends(line, isClosed, toleranceM).length < 3) return null;
    // the ends crossed each other near the start: they are the same place after all
    if (fitted && !isClosed && loop.gapM < SHORT_GAP * lengthOf(line)) isClosed = true;
    else toleranceM *= LOOSER;
  }
  return null;
}

/** Sides fitted between the bends of a tolerance, without corners that lie on the line between their neighbours. */
function fitWithin(
  fixes: readonly PlaneFix[],
  line: readonly XY[],
  isClosed: boolean,
  toleranceM: number,
): FittedSides | null {
  let bends: readonly number[] = findBends(line, isClosed, toleranceM);
  for (;;) {
    if (bends.length < 3) return null;
    const fitted = fitSides(fixes, line, bends);
    if (!fitted) return null;
    const { corners } = fitted;
    const flat = corners
      .map((corner, j) => {
        const before = corners[(j + corners.length - 1) % corners.length] ?? corner;
        const after = corners[(j + 1) % corners.length] ?? corner;
        const isEnd = !isClosed && (bends[j] === 0 || bends[j] === fixes.length - 1);
        return { j, offsetM: isEnd ? Number.POSITIVE_INFINITY : offsetFrom(corner, before, after) };
      })
      .sort((a, b) => a.offsetM - b.offsetM)[0];
    if (corners.length === 3 || !flat || flat.offsetM >= FLAT * toleranceM) return fitted;
    bends = fitted.bends.filter((_, j) => j !== flat.j);
  }
}

function lengthOf(line: readonly XY[]): number {
  return line.reduce((sum, [x, y], i) => {
    const before = line[i - 1];
    return before ? sum + Math.hypot(x - before[0], y - before[1]) : sum;
  }, 0);
}

/** Distance of a point from the line through two others, or from the first where they are one place. */
function offsetFrom(p: XY, a: XY, b: XY): number {
  const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (lengthM === 0) return Math.hypot(p[0] - a[0], p[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / lengthM;
}

/**
 * The line with errors that differ from fix to fix averaged out, for finding bends only.
 * @returns also by how much it wanders from a straight side (one standard deviation, metres): of the error at the
 * middle of a side less the mean of those at its ends
 */
function smooth(fixes: readonly PlaneFix[], timeConstantS: number) {
  const count = fixes.length;
  const stepS = medianOf(fixes.slice(1).map(({ timeS }, i) => timeS - (fixes[i]?.timeS ?? 0))) || 1;
  const reach = Math.min(10, count - 1);
  const stepM = medianOf(
    fixes.slice(reach).map(({ at }, i) => {
      const from = fixes[i]?.at ?? at;
      return Math.hypot(at[0] - from[0], at[1] - from[1]) / reach;
    }),
  );
  const isAlike = correlationAt(stepS, timeConstantS) > ALIKE || count < 20;
  const wide = isAlike ? 1 : Math.min(SMOOTH_S / stepS, SMOOTH_M / Math.max(stepM, 0.1));
  const half = Math.max(0, Math.floor((wide - 1) / 2));
  const line = fixes.map((_, i): XY => {
    const each = Math.min(half, i, count - 1 - i);
    const near = fixes.slice(i - each, i + each + 1);
    return [
      near.reduce((sum, { at }) => sum + at[0], 0) / near.length,
      near.reduce((sum, { at }) => sum + at[1], 0) / near.length,
    ];
  });
  let alike = 0;
  for (let a = -half; a <= half; a++)
    for (let b = -half; b <= half; b++) alike += correlationAt((a - b) * stepS, timeConstantS);
  alike /= (2 * half + 1) ** 2;
  const bend =
    1.5 - 2 * correlationAt(SIDE_S / 2, timeConstantS) + 0.5 * correlationAt(SIDE_S, timeConstantS);
  const sigmaM = medianOf(fixes.map((fix) => fix.sigmaM));
  return { line, wanderM: sigmaM * Math.sqrt(alike * bend) };
}
