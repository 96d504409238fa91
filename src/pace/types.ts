import type { Issue } from '../yard/types';

/** How fast one dose is walked with its equipment, and where that is from. */
export interface DosePace {
  /** walking speed while product goes out, m/s; null: neither flow nor speed is known. */
  readonly speedMPerS: number | null;
  /** `flow`: what comes out decides how fast to walk; `measured`: the person's own speed with it; `usual`: a usual walking speed stands in. */
  readonly source: 'flow' | 'measured' | 'usual';
  /** walking speed with the applicator shut, m/s. */
  readonly shutSpeedMPerS: number;
  /** time lost in each turn at the end of a pass, s. */
  readonly turnS: number;
  /** steps per metre; null: the person's step is not measured. */
  readonly stepsPerM: number | null;
  /** product that is to go out in a second while walking, kg/s or L/s as the dose counts it; null: not known. */
  readonly productPerS: number | null;
  /** such as `pace-too-slow`, `pace-too-fast`, `flow-not-measured`, `setting-not-found`. */
  readonly issues: readonly Issue[];
}
