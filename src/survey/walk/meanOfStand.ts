import type { XY } from '../../measure/types';
import { type PlaneFix, varianceOfSum } from './fixNoise';

export interface StandMean {
  readonly at: XY;
  /** share of each fix in the mean; they sum to 1. */
  readonly shares: readonly number[];
  /** standard deviation of the mean in each of x and y, metres. */
  readonly sigmaM: number;
  /** independent fixes with the same sigma, 1 or more. */
  readonly effectiveCount: number;
}

/**
 * Mean of the fixes of one stand, weighted by 1/sigma². Errors that follow one another are alike, so the
 * mean does not gain by sqrt(n): its variance is the double sum of their correlations.
 * Source: variance of the mean of a first-order autoregressive process, e.g. Bayley & Hammersley 1946,
 * J. R. Stat. Soc. Suppl. 8(2):184-197 (from memory).
 * @param fixes one or more, in order of time
 * @param timeConstantS 0: independent; null: not known, then the mean is no better than its best fix
 */
export function meanOfStand(fixes: readonly PlaneFix[], timeConstantS: number | null): StandMean {
  const weights = fixes.map(({ sigmaM }) => 1 / (sigmaM * sigmaM));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const shares = weights.map((weight) => weight / total);
  let [x, y] = [0, 0];
  fixes.forEach(({ at }, i) => {
    x += (shares[i] ?? 0) * at[0];
    y += (shares[i] ?? 0) * at[1];
  });
  const oneSigmaM = Math.sqrt(fixes.length / total);
  if (timeConstantS === null) return { at: [x, y], shares, sigmaM: oneSigmaM, effectiveCount: 1 };
  const variance = varianceOfSum(
    fixes,
    shares.map((share): XY => [share, 0]),
    timeConstantS,
  );
  return {
    at: [x, y],
    shares,
    sigmaM: Math.sqrt(variance),
    effectiveCount: (oneSigmaM * oneSigmaM) / variance,
  };
}
