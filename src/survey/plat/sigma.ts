import { computeTraverse } from './traverse';
import type { CallSigma, PlatCall } from './types';

/** steps of the difference quotients: small beside any yard, large beside rounding. */
const STEP_M = 1e-3;
const STEP_DEG = 1e-4;

/**
 * One standard deviation of the area of a traverse, m², when every direction, central angle and length of
 * its calls errs on its own: the law of propagation, σ² = Σ (∂A/∂x · σx)², with the derivatives as
 * difference quotients. An arc errs by its direction, its central angle and its radius.
 * Source: Ghilani, Adjustment Computations, ch. 6 (special law of propagation of variances) and ch. 8.
 * @param prepare what is done to the calls before the area is taken, such as the compass rule
 */
export function areaSigma(
  calls: readonly PlatCall[],
  sigma: CallSigma,
  prepare: (calls: readonly PlatCall[]) => readonly PlatCall[] = (same) => same,
): number {
  const areaOf = (changed: PlatCall, index: number) =>
    computeTraverse(prepare(calls.with(index, changed))).areaM2;
  let variance = 0;
  const add = (index: number, step: number, s: number, changed: (by: number) => PlatCall) => {
    const slope = (areaOf(changed(step), index) - areaOf(changed(-step), index)) / (2 * step);
    variance += (slope * s) ** 2;
  };
  for (const [i, call] of calls.entries()) {
    if (call.kind === 'line') {
      add(i, STEP_DEG, sigma.angleDeg, (by) => ({ ...call, bearingDeg: call.bearingDeg + by }));
      add(i, STEP_M, sigma.lengthM, (by) => ({ ...call, lengthM: call.lengthM + by }));
    } else {
      add(i, STEP_DEG, sigma.angleDeg, (by) => ({ ...call, entryBearingDeg: call.entryBearingDeg + by }));
      add(i, STEP_DEG, sigma.angleDeg, (by) => ({ ...call, deltaDeg: call.deltaDeg + by }));
      add(i, STEP_M, sigma.lengthM, (by) => ({ ...call, radiusM: call.radiusM + by }));
    }
  }
  return Math.sqrt(variance);
}

/**
 * One standard deviation of each corner in each of x and y, m, as far as the closure of n calls tells:
 * gap · √((n² - 1)/24) / n. The gap is the sum of n call errors, so each call errs by gap/√(2n) in each of
 * x and y; after the gap is spread, corner k errs by that times √(k(n-k)/n), a bridge pinned at both ends,
 * and against the mean of all corners the mean square is (n² - 1)/(12n). About a fifth of the gap.
 * One closure alone is a weak witness: errors may cancel in it.
 * Source: the derivation here, by the law of propagation (Ghilani, Adjustment Computations, ch. 6 and 8).
 * @returns 0 for fewer than 3 calls
 */
export function cornerSigmaOfClosure(gapM: number, callCount: number): number {
  return callCount < 3 ? 0 : (gapM * Math.sqrt((callCount ** 2 - 1) / 24)) / callCount;
}
