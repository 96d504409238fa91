import { M_PER_FT } from '../units/factors';
import type { UnitSystem } from '../yard/types';

const METRIC_STEPS_M = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 50_000];
const US_STEPS_FT = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 50_000, 200_000];

export interface GridSpacing {
  /** metres between fine lines. */
  readonly minorM: number;
  /** every how many fine lines a strong one stands. */
  readonly majorEvery: number;
  /** metres in the unit of the labels. */
  readonly unitM: number;
  readonly unitName: string;
}

/**
 * Spacing of the drafting grid: the finest round step at least `leastPx` apart.
 * @param metresPerPx ground resolution of the screen, m
 */
export function gridSpacing(metresPerPx: number, units: UnitSystem, leastPx = 14): GridSpacing {
  const unitM = units === 'us' ? M_PER_FT : 1;
  const steps = units === 'us' ? US_STEPS_FT : METRIC_STEPS_M;
  const step = steps.find((s) => (s * unitM) / metresPerPx >= leastPx) ?? steps[steps.length - 1] ?? 1;
  const lead = Number(step.toExponential().charAt(0));
  return {
    minorM: step * unitM,
    majorEvery: lead === 2 ? 5 : 10,
    unitM,
    unitName: units === 'us' ? 'ft' : 'm',
  };
}
