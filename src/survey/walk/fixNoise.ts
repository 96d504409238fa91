import type { XY } from '../../measure/types';
import type { Noise } from './types';

/** A fix used, in the plane. */
export interface PlaneFix {
  readonly at: XY;
  /** standard deviation in each of x and y, metres. */
  readonly sigmaM: number;
  /** seconds from the first fix. */
  readonly timeS: number;
}

/**
 * Longest time constant taken, seconds. Errors of a standing receiver are alike over about a minute
 * and drift slowly beyond it: D. L. Wilson, "GPS error when averaging position" and "Correlation of
 * errors" (bend of the autocorrelation at about 1 min). That errors follow an Ornstein-Uhlenbeck or
 * autoregressive process: Schumayer et al. 2020, Sensors 20(21):6050, doi 10.3390/s20216050.
 */
export const LONGEST_TIME_CONSTANT_S = 60;
/** Fixes further apart than this, seconds, tell more of the way walked than of the noise. */
const LONGEST_STEP_S = 2.1;
/** Fixes that scatter by more than this times their accuracy are bends of the way, not noise. */
const MOST_SCALE = 3;
/** Fewer second differences than this tell nothing of the noise. */
const LEAST_TRIPLES = 8;
/** A median of squares of a standard normal (chi-square with one degree of freedom). */
const MEDIAN_CHI2 = 0.4549;
/** q of independent errors with the sigma that is told. */
const Q_WHITE = 6;

/**
 * How the errors hang together, from the fixes themselves. On a straight line at a steady pace (and when
 * standing) the second difference of three fixes in a row holds nothing but error: its variance
 * is q·sigma² with q = 6 - 8ρ + 2ρ² = 2(1-ρ)(3-ρ) for errors whose correlation falls by ρ from fix to
 * fix, 6 for independent ones. The median of the squares leaves bends out. Then ρ = 2 - sqrt(1 + q/2), and
 * the time constant is -Δt / ln ρ, at most `LONGEST_TIME_CONSTANT_S`: receivers smooth their positions,
 * which hides how the error moves within a few seconds. q above 6 says that the fixes scatter more than
 * their accuracy allows, and `scale` grows.
 * Source: variance of a second difference of a first-order autoregressive process, derived here.
 * @param runs fixes in a row, in order of time
 * @param isStanding each run was taken at one place: then the mean of the squares serves, which is surer
 */
export function estimateNoise(runs: readonly (readonly PlaneFix[])[], isStanding = false): Noise {
  const squares: number[] = [];
  const steps: number[] = [];
  for (const run of runs) {
    for (let i = 2; i < run.length; i++) {
      const [a, b, c] = [run[i - 2], run[i - 1], run[i]];
      if (!a || !b || !c) continue;
      const [first, second] = [b.timeS - a.timeS, c.timeS - b.timeS];
      const isEven = first > 0 && second > 0 && Math.max(first, second) < 1.5 * Math.min(first, second);
      if (!isEven || Math.max(first, second) > LONGEST_STEP_S) continue;
      steps.push((first + second) / 2);
      for (const axis of [0, 1] as const)
        squares.push(((a.at[axis] - 2 * b.at[axis] + c.at[axis]) / b.sigmaM) ** 2);
    }
  }
  if (steps.length < LEAST_TRIPLES) return { scale: 1, timeConstantS: null };
  const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
  const q = isStanding ? mean : medianOf(squares) / MEDIAN_CHI2;
  const rho = 2 - Math.sqrt(1 + Math.min(q, Q_WHITE) / 2);
  const timeConstantS = rho > 0 ? Math.min(LONGEST_TIME_CONSTANT_S, -medianOf(steps) / Math.log(rho)) : 0;
  return { scale: Math.min(MOST_SCALE, Math.sqrt(Math.max(1, q / Q_WHITE))), timeConstantS };
}

/** @param values any number; 0 for none */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
}

/** Correlation of two errors that lie `lagS` seconds apart: exp(-lag/T); 0 for independent ones. */
export function correlationAt(lagS: number, timeConstantS: number): number {
  if (lagS === 0) return 1;
  return timeConstantS > 0 ? Math.exp(-Math.abs(lagS) / timeConstantS) : 0;
}

/**
 * Variance of a weighted sum Σ hᵢ·eᵢ of the errors of fixes in order of time: Σᵢⱼ hᵢ·hⱼ·σᵢ·σⱼ·ρ(tᵢ-tⱼ), x and y
 * independent. The correlation is a product over the steps between, so one pass is enough.
 * @param weights one [x, y] weight for each fix @param timeConstantS 0 for independent errors
 */
export function varianceOfSum(
  fixes: readonly PlaneFix[],
  weights: readonly XY[],
  timeConstantS: number,
): number {
  let variance = 0;
  let [carryX, carryY] = [0, 0];
  let before: PlaneFix | undefined;
  for (const [i, fix] of fixes.entries()) {
    const weight = weights[i] ?? [0, 0];
    const kept = before ? correlationAt(fix.timeS - before.timeS, timeConstantS) : 0;
    carryX *= kept;
    carryY *= kept;
    const [x, y] = [weight[0] * fix.sigmaM, weight[1] * fix.sigmaM];
    variance += x * x + y * y + 2 * (x * carryX + y * carryY);
    carryX += x;
    carryY += y;
    before = fix;
  }
  return Math.max(0, variance);
}
