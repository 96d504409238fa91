import type { XY } from '../../measure/types';
import { areaGradient } from './areaGradient';
import type { PlaneFix } from './fixNoise';
import { createSymmetricSolver } from './solveSymmetric';

/** Rounds of fitting: places along the sides, then the sides. */
const ROUNDS = 4;
/** Weight, as a share of that of its fixes, that holds a corner where it was: keeps each round's step small. */
const HOLD = 0.01;
/** The same for a flat bend along the line: two sides that nearly run on hardly say where they meet. */
const HOLD_ALONG = 1;
/** Bends flatter than this (cosine of the turn, 45°) keep the fix at which they were found. */
const FLAT_COSINE = 0.7;
/** A side with fewer fixes keeps its ends. */
const LEAST_ON_SIDE = 4;

export interface FittedSides {
  /** open ring of corners. */
  readonly corners: readonly XY[];
  /** index of the fix at which each side begins. */
  readonly bends: readonly number[];
  /** d(signed area)/d(place of each fix), m² per m. */
  readonly areaWeights: readonly XY[];
  /** largest distance of a fix from its side, metres. */
  readonly largestOffsetM: number;
}

/** A fix on a side: `share` is its place along it, 0 at its first corner and 1 at its second. */
interface OnSide {
  readonly fix: number;
  readonly share: number;
  readonly weight: number;
}

/**
 * The closed polygon that lies nearest to the fixes: the fixes between two bends belong to one side, the
 * sides are joined at their corners, and the sum of the squared distances across the sides, weighted by
 * 1/sigma², is least. So no single fix decides a corner, and the ground on both sides of the line
 * walked evens out: the area is kept also where a curve becomes chords.
 * Source: weighted least squares (Gauss-Newton), a first-degree spline with its knots at the bends.
 * @param fixes in order round the ground @param line their places with the errors averaged out, where the
 * corners begin @param bends indices of 3 or more fixes, ascending
 * @returns null when the fixes do not hold such a polygon
 */
export function fitSides(
  fixes: readonly PlaneFix[],
  line: readonly XY[],
  bends: readonly number[],
): FittedSides | null {
  let knots = [...bends];
  let corners: readonly XY[] = bends.map((bend) => line[bend] ?? [0, 0]);
  const held = corners;
  for (let round = 0; round < ROUNDS; round++) {
    if (round > 0) knots = moveKnots(fixes, knots, corners);
    const sides = knots.map((_, side) => membersOf(fixes, knots, corners, side));
    const system = buildSystem(fixes, sides, corners, held);
    const solve = createSymmetricSolver(system.matrix);
    if (!solve) return null;
    const found = solve(system.right);
    const before = corners;
    corners = corners.map((_, j): XY => [found[2 * j] ?? 0, found[2 * j + 1] ?? 0]);
    if (!corners.flat().every(Number.isFinite)) return null;
    if (round === ROUNDS - 1) return finish(fixes, knots, before, corners, sides, solve);
  }
  return null;
}

type Solve = (right: readonly number[]) => number[];

/** Direction and length of a side; null for one without length. */
function frameOf(corners: readonly XY[], side: number) {
  const a = corners[side] ?? [0, 0];
  const b = corners[(side + 1) % corners.length] ?? [0, 0];
  const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (!(lengthM > 0)) return null;
  return { a, lengthM, tx: (b[0] - a[0]) / lengthM, ty: (b[1] - a[1]) / lengthM };
}

/** Direction from the corner before to the corner after, and the cosine of the turn (1: straight on). */
function turnAt(corners: readonly XY[], j: number) {
  const count = corners.length;
  const here = corners[j] ?? [0, 0];
  const before = corners[(j + count - 1) % count] ?? here;
  const after = corners[(j + 1) % count] ?? here;
  const [ax, ay, bx, by] = [here[0] - before[0], here[1] - before[1], after[0] - here[0], after[1] - here[1]];
  const lengthM = Math.hypot(ax + bx, ay + by) || 1;
  const cosine = (ax * bx + ay * by) / (Math.hypot(ax, ay) * Math.hypot(bx, by) || 1);
  return { tx: (ax + bx) / lengthM, ty: (ay + by) / lengthM, cosine };
}

function membersOf(
  fixes: readonly PlaneFix[],
  knots: readonly number[],
  corners: readonly XY[],
  side: number,
): OnSide[] {
  const frame = frameOf(corners, side);
  const [from, to] = rangeOf(knots, side, fixes.length);
  const members: OnSide[] = [];
  for (let i = from; i <= to; i++) {
    const index = i % fixes.length;
    const fix = fixes[index];
    if (!fix) continue;
    const along = frame ? (fix.at[0] - frame.a[0]) * frame.tx + (fix.at[1] - frame.a[1]) * frame.ty : 0;
    const share = frame ? Math.max(-0.5, Math.min(1.5, along / frame.lengthM)) : 0.5;
    // a fix at a corner counts half on either side
    const weight = (i === from || i === to ? 0.5 : 1) / (fix.sigmaM * fix.sigmaM);
    members.push({ fix: index, share, weight });
  }
  return members;
}

/** First and last fix of a side; the last may run on beyond the count. */
function rangeOf(knots: readonly number[], side: number, count: number): [number, number] {
  const from = knots[side] ?? 0;
  const to = knots[side + 1] ?? (knots[0] ?? 0) + count;
  return [from, to];
}

function buildSystem(
  fixes: readonly PlaneFix[],
  sides: readonly (readonly OnSide[])[],
  corners: readonly XY[],
  held: readonly XY[],
) {
  const count = corners.length;
  const matrix = Array.from({ length: 2 * count }, () => new Array<number>(2 * count).fill(0));
  const right = new Array<number>(2 * count).fill(0);
  const add = (row: number, column: number, value: number) => {
    const line = matrix[row];
    if (line) line[column] = (line[column] ?? 0) + value;
  };
  const addRight = (row: number, value: number) => {
    right[row] = (right[row] ?? 0) + value;
  };
  const weightAt = new Array<number>(count).fill(0);
  sides.forEach((members, j) => {
    const frame = frameOf(corners, j);
    const [p, q] = [2 * j, 2 * ((j + 1) % count)];
    let total = 0;
    for (const { fix, share, weight } of members) {
      total += weight;
      if (!frame) continue;
      const n = [-frame.ty, frame.tx] as const;
      const [x, y] = fixes[fix]?.at ?? [0, 0];
      const across = n[0] * x + n[1] * y;
      const parts = [
        [p, 1 - share],
        [q, share],
      ] as const;
      for (const [at, one] of parts) {
        for (const axis of [0, 1] as const) {
          addRight(at + axis, weight * one * n[axis] * across);
          for (const [other, two] of parts)
            for (const second of [0, 1] as const)
              add(at + axis, other + second, weight * one * two * n[axis] * n[second]);
        }
      }
    }
    for (const at of [p, q]) weightAt[at / 2] = (weightAt[at / 2] ?? 0) + total;
  });
  corners.forEach((corner, j) => {
    const weight = weightAt[j] ?? 0;
    const { tx, ty, cosine } = turnAt(corners, j);
    const along = HOLD_ALONG * weight * Math.max(0, cosine) ** 2;
    const at = 2 * j;
    const place = tx * (held[j]?.[0] ?? 0) + ty * (held[j]?.[1] ?? 0);
    add(at, at, HOLD * weight + along * tx * tx);
    add(at + 1, at + 1, HOLD * weight + along * ty * ty);
    add(at, at + 1, along * tx * ty);
    add(at + 1, at, along * tx * ty);
    addRight(at, HOLD * weight * corner[0] + along * tx * place);
    addRight(at + 1, HOLD * weight * corner[1] + along * ty * place);
  });
  return { matrix, right };
}

/** Each bend goes to where the fixes of its two sides part best. */
function moveKnots(fixes: readonly PlaneFix[], knots: readonly number[], corners: readonly XY[]): number[] {
  const count = knots.length;
  const moved = [...knots];
  for (let j = 0; j < count; j++) {
    const before = (j + count - 1) % count;
    const from = j === 0 ? (moved[count - 1] ?? 0) - fixes.length : (moved[before] ?? 0);
    const here = moved[j] ?? 0;
    const to = j === count - 1 ? (moved[0] ?? 0) + fixes.length : (moved[j + 1] ?? 0);
    if (here - from < LEAST_ON_SIDE || to - here < LEAST_ON_SIDE) continue;
    if (turnAt(corners, j).cosine > FLAT_COSINE) continue;
    const offset = (index: number, side: number) => {
      const frame = frameOf(corners, side);
      const at = fixes[(index + fixes.length) % fixes.length]?.at;
      if (!frame || !at) return 0;
      return ((at[1] - frame.a[1]) * frame.tx - (at[0] - frame.a[0]) * frame.ty) ** 2;
    };
    let cost = 0;
    for (let i = from + 1; i < to; i++) cost += offset(i, j);
    let [best, least] = [here, Number.POSITIVE_INFINITY];
    for (let i = from + 1; i < to - 2; i++) {
      cost += offset(i, before) - offset(i, j);
      if (i >= from + 2 && cost < least) [best, least] = [i, cost];
    }
    // the first and the last bend stay on their own side of the start
    moved[j] = best >= 0 && best < fixes.length ? best : here;
  }
  return moved.every((knot, j) => j === 0 || knot > (moved[j - 1] ?? 0)) ? moved : [...knots];
}

function finish(
  fixes: readonly PlaneFix[],
  bends: readonly number[],
  before: readonly XY[],
  corners: readonly XY[],
  sides: readonly (readonly OnSide[])[],
  solve: Solve,
): FittedSides {
  const u = solve(areaGradient(corners).flat());
  const weights: [number, number][] = fixes.map(() => [0, 0]);
  let largestOffsetM = 0;
  sides.forEach((members, j) => {
    const [old, frame] = [frameOf(before, j), frameOf(corners, j)];
    const [p, q] = [2 * j, 2 * ((j + 1) % corners.length)];
    for (const { fix, share, weight } of members) {
      const [x, y] = fixes[fix]?.at ?? [0, 0];
      if (frame) {
        const offset = Math.abs((y - frame.a[1]) * frame.tx - (x - frame.a[0]) * frame.ty);
        largestOffsetM = Math.max(largestOffsetM, offset);
      }
      const sum = weights[fix];
      if (!old || !sum) continue;
      const [nx, ny] = [-old.ty, old.tx];
      const pull =
        weight *
        (nx * ((1 - share) * (u[p] ?? 0) + share * (u[q] ?? 0)) +
          ny * ((1 - share) * (u[p + 1] ?? 0) + share * (u[q + 1] ?? 0)));
      sum[0] += pull * nx;
      sum[1] += pull * ny;
    }
  });
  return { corners, bends, areaWeights: weights, largestOffsetM };
}
