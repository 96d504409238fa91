import { propagateSigma } from '../propagateSigma';
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
  const figures = calls.map(figuresOf);
  const kinds = figures.flatMap((own) => own.map(({ isAngle }) => isAngle));
  return propagateSigma(
    (readings) => {
      const left = [...readings];
      const changed = calls.map((call, i) => withFigures(call, left.splice(0, figures[i]?.length)));
      return computeTraverse(prepare(changed)).areaM2;
    },
    figures.flat().map(({ value }) => value),
    kinds.map((isAngle) => (isAngle ? sigma.angleDeg : sigma.lengthM)),
    kinds.map((isAngle) => (isAngle ? STEP_DEG : STEP_M)),
  );
}

/** The figures of a call that err on their own: degrees, and metres. */
function figuresOf(call: PlatCall): readonly { readonly value: number; readonly isAngle: boolean }[] {
  const angle = (value: number) => ({ value, isAngle: true });
  const length = (value: number) => ({ value, isAngle: false });
  return call.kind === 'line'
    ? [angle(call.bearingDeg), length(call.lengthM)]
    : [angle(call.entryBearingDeg), angle(call.deltaDeg), length(call.radiusM)];
}

/** The call with other figures, in the order of `figuresOf`. */
function withFigures(call: PlatCall, [first = 0, second = 0, third = 0]: readonly number[]): PlatCall {
  return call.kind === 'line'
    ? { ...call, bearingDeg: first, lengthM: second }
    : { ...call, entryBearingDeg: first, deltaDeg: second, radiusM: third };
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
