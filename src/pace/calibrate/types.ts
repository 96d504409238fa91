import type { Equipment, Issue } from '../../yard/types';

/** What a calibration can find out; SI (L/s, share, L/m², kg/m², m/s, m). */
export type FigureKey =
  | 'flow'
  | 'product-flow'
  | 'product-share'
  | 'spray-rate'
  | 'product-rate'
  /** product by volume, L/m². */
  | 'product-volume-rate'
  | 'speed'
  | 'swath'
  | 'left-reach'
  | 'right-reach'
  | 'step';

/** One figure found, with the least and most that single readings would give; null: one reading alone. */
export interface CalibrationFigure {
  readonly key: FigureKey;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** What comes out of a calibration as far as it is read. */
export interface CalibrationResult {
  /** empty while too little is read. */
  readonly figures: readonly CalibrationFigure[];
  /** what would change in the equipment. */
  readonly change: Partial<Pick<Equipment, 'flowLPerS' | 'productShare' | 'speedMPerS' | 'swathM'>>;
  /** what one pass lays over its swath at the setting, kg/m² (with overlap more lands: the figure `product-rate`); null: not found out. */
  readonly settingKgPerM2: number | null;
  /** the person's step, m; null: not found out. */
  readonly stepM: number | null;
  /** `readings-apart`, `rate-good`, `rate-off`, `pans-short`, `pans-lopsided`, `draw-too-strong`, `flow-needed`, `settings-stale`, `walk-odd`, `walk-impossible` (nothing is taken), `course-passes`. */
  readonly issues: readonly Issue[];
}
