import { RATE_TOLERANCE } from '../usual';

/** What was measured against what is wanted. */
export interface RateJudgement {
  /** (measured - wanted) / wanted: -0.08 is 8 % too little. */
  readonly off: number;
  /** within 5 %: good to go. */
  readonly isGood: boolean;
}

/**
 * A measured rate against the wanted one: good within ±5 % of it (UMass Extension, spreader calibration: for a
 * target of 5.00, 4.75 to 5.25).
 * @param measured and @param wanted in one unit, wanted more than 0
 */
export function judgeRate(measured: number, wanted: number): RateJudgement {
  const off = measured / wanted - 1;
  return { off, isGood: Math.abs(off) <= RATE_TOLERANCE + 1e-9 };
}
