import { distanceM } from '../../measure/geodesic';
import type { Fix, FixLimits, JudgedFixes, PoorFix } from './types';

/** Beyond 1.5 times the joint 95 % radius two fixes of one place lie apart once in about 850 times: 0.05^(1.5²), Rayleigh. */
const ALLOWANCE = 1.5;
/** Faster than a person runs over a yard, m/s: the receiver jumped. Common practice, no source. */
const JUMP_MS = 12;

/**
 * Whether a fix can be used after the last one used. Speed is judged by what the two accuracies
 * leave of the distance: noise alone makes a standing receiver seem to run.
 * @param before the last fix used; null for the first
 * @param assumedAccuracyM for fixes that tell none
 * @param ageMs how old it was when it arrived; 0 when not live
 * @returns null when it is good, else the reason
 */
export function judgeFix(
  fix: Fix,
  before: Fix | null,
  limits: FixLimits,
  assumedAccuracyM: number,
  ageMs = 0,
): PoorFix | null {
  const [lon, lat] = fix.position;
  const accuracyM = fix.accuracyM ?? assumedAccuracyM;
  if (!Number.isFinite(lon) || !(Math.abs(lat) < 90) || Math.abs(lon) > 180) return 'not-a-place';
  if (!(accuracyM > 0) || (fix.timeMs !== null && !Number.isFinite(fix.timeMs))) return 'not-a-place';
  if (accuracyM > limits.maxAccuracyM) return 'inaccurate';
  if (ageMs > limits.maxAgeMs) return 'too-old';
  if (!before) return null;
  if (before.position[0] === lon && before.position[1] === lat) return 'repeated';
  if (fix.timeMs === null || before.timeMs === null) return null;
  const elapsedS = (fix.timeMs - before.timeMs) / 1000;
  if (elapsedS < 0) return 'too-old';
  if (elapsedS === 0) return 'repeated';
  const allowedM = ALLOWANCE * Math.hypot(accuracyM, before.accuracyM ?? assumedAccuracyM);
  const speedMS = (distanceM(before.position, fix.position) - allowedM) / elapsedS;
  if (speedMS > JUMP_MS) return 'jump';
  return speedMS > limits.maxSpeedMS ? 'too-fast' : null;
}

export const NONE_REJECTED: JudgedFixes['rejected'] = {
  'not-a-place': 0,
  inaccurate: 0,
  'too-old': 0,
  repeated: 0,
  'too-fast': 0,
  jump: 0,
};

/** Judges fixes in their order, each after the last one used. Age is not judged: they are not live. */
export function judgeFixes(fixes: readonly Fix[], limits: FixLimits, assumedAccuracyM: number): JudgedFixes {
  const accepted: Fix[] = [];
  const rejected = { ...NONE_REJECTED };
  for (const fix of fixes) {
    const fault = judgeFix(fix, accepted.at(-1) ?? null, limits, assumedAccuracyM);
    if (fault) rejected[fault] += 1;
    else accepted.push(fix);
  }
  return { accepted, rejected };
}
