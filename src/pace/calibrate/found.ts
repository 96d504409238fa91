import { formatPercent } from '../../units/format';
import type { Equipment, Issue, UnitSystem } from '../../yard/types';
import { FASTEST_M_PER_S, SLOWEST_M_PER_S } from '../usual';
import { MOST_SPREAD, type ReadingMean, type Readings, readingOf } from './readings';
import type { CalibrationFigure, CalibrationResult, FigureKey } from './types';

/** What a calibration is done with and for. */
export interface CalibrationCase {
  readonly equipment: Equipment;
  /** what one coat of the chosen product is to lay down, kg/m²; null: none chosen, or not known by weight. */
  readonly wantedKgPerM2: number | null;
  readonly units: UnitSystem;
}

/** What one kind of calibration found, as far as it is read. */
export interface Found {
  readonly figures?: readonly (CalibrationFigure | null)[];
  readonly change?: CalibrationResult['change'];
  readonly settingKgPerM2?: number | null;
  readonly stepM?: number | null;
  readonly issues?: readonly (Issue | null)[];
}

/** Ground of a course, m²; null while a side is not read. */
export function areaOf(readings: Readings): number | null {
  const lengthM = readingOf(readings, 'lengthM');
  const widthM = readingOf(readings, 'widthM');
  return lengthM === null || widthM === null ? null : lengthM * widthM;
}

/** A figure of one reading. */
export function single(key: FigureKey, value: number): CalibrationFigure {
  return { key, value, low: null, high: null };
}

/** A figure with what its lowest and highest reading alone would give. */
export function figure(
  key: FigureKey,
  value: number,
  mean: ReadingMean,
  of: (reading: number) => number,
): CalibrationFigure {
  if (mean.count < 2) return single(key, value);
  const [one, other] = [of(mean.low), of(mean.high)];
  return { key, value, low: Math.min(one, other), high: Math.max(one, other) };
}

/** `readings-apart` where repeated readings lie more than a tenth of their mean apart. @param what in the plural */
export function apart(mean: ReadingMean | null, what: string): Issue | null {
  if (mean === null || mean.count < 2 || mean.spread <= MOST_SPREAD) return null;
  const message = `The ${what} lie ${formatPercent(mean.spread)} apart: take one more, and leave out one that went wrong.`;
  return told('readings-apart', message);
}

/** `walk-odd` for a speed that nobody walks. */
export function odd(speed: CalibrationFigure | null): Issue | null {
  if (speed === null || (speed.value >= SLOWEST_M_PER_S && speed.value <= FASTEST_M_PER_S)) return null;
  return told(
    'walk-odd',
    `That is ${speed.value < SLOWEST_M_PER_S ? 'slower' : 'faster'} than people walk with something in hand: look at distance and times.`,
  );
}

/** An issue without a place. */
export function told(code: string, message: string, severity: Issue['severity'] = 'warning'): Issue {
  return { code, severity, message, place: {} };
}
