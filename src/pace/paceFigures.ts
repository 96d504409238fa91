import type { DoseFigures } from '../plan/types';
import type { Equipment } from '../yard/types';
import type { DosePace } from './types';
import { spacingOf } from './usual';

/** The pace of a dose in the figures a person walks by; null where it is not known. */
export interface PaceFigures {
  readonly speedMPerS: number | null;
  readonly source: DosePace['source'];
  readonly coats: 1 | 2;
  /** time of work on each zone, all coats, without turns and ways, s. */
  readonly zones: readonly {
    readonly zoneId: string;
    readonly name: string;
    readonly seconds: number | null;
  }[];
  /** of all zones, s. */
  readonly seconds: number | null;
  /** of one m², one coat, s. */
  readonly secondsPerM2: number | null;
  readonly stepM: number | null;
  readonly stepsPerMin: number | null;
  /** product put down in a minute of work, kg or L as the dose counts it. */
  readonly productPerMin: number | null;
}

/**
 * Times and steps of a dose: one m² takes 1 / (speed · spacing) seconds in each coat. Ground walked over is the
 * dose's own; what passes overlap beyond the plan, turns and ways are the walk's (`DoseCoverage`), not counted here.
 * @param equipment as `equipmentOfDose` gives it
 */
export function paceFigures(
  pace: DosePace,
  figures: Pick<DoseFigures, 'zones' | 'areaM2' | 'dose'>,
  equipment: Pick<Equipment, 'swathM' | 'overlapShare'>,
): PaceFigures {
  const { coats } = figures.dose.passes;
  const { speedMPerS, stepsPerM } = pace;
  const secondsPerM2 = speedMPerS === null ? null : 1 / (speedMPerS * spacingOf(equipment));
  const seconds = (areaM2: number) => (secondsPerM2 === null ? null : areaM2 * secondsPerM2 * coats);
  return {
    speedMPerS,
    source: pace.source,
    coats,
    zones: figures.zones.map(({ zoneId, name, areaM2 }) => ({ zoneId, name, seconds: seconds(areaM2) })),
    seconds: seconds(figures.areaM2),
    secondsPerM2,
    stepM: stepsPerM === null ? null : 1 / stepsPerM,
    stepsPerMin: speedMPerS === null || stepsPerM === null ? null : speedMPerS * stepsPerM * 60,
    productPerMin: pace.productPerS === null ? null : pace.productPerS * 60,
  };
}

/** Seconds and steps of one pass; null where the pace, or the person's step, is not known. @param lengthM of the pass, m */
export function passPace(
  pace: DosePace,
  lengthM: number,
): { readonly seconds: number | null; readonly steps: number | null } {
  return {
    seconds: pace.speedMPerS === null ? null : lengthM / pace.speedMPerS,
    steps: pace.stepsPerM === null ? null : Math.round(lengthM * pace.stepsPerM),
  };
}
