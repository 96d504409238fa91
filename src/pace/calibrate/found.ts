import { formatLength, formatNumber, formatPercent } from '../../units/format';
import { formatSpeed } from '../../units/formatPace';
import type { Equipment, Issue, UnitSystem } from '../../yard/types';
import {
  FASTEST_M_PER_S,
  MOST_STEP_M,
  MOST_WALK_M_PER_S,
  RATE_TOLERANCE,
  SLOWEST_M_PER_S,
  spacingOf,
} from '../usual';
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

/** `walk-impossible`, an error: by a speed or a step that nobody walks, so what was read cannot be right. */
export function impossible(figures: readonly CalibrationFigure[], units: UnitSystem): Issue | null {
  const speed = figures.find(({ key, value }) => key === 'speed' && value > MOST_WALK_M_PER_S);
  const step = figures.find(({ key, value }) => key === 'step' && value > MOST_STEP_M);
  const slip = speed
    ? `Nobody walks ${formatSpeed(speed.value, units)}: look at the lengths, their units and the times.`
    : step
      ? `No step is ${formatLength(step.value, units)} long: look at the distance, its unit and the count.`
      : null;
  if (slip === null) return null;
  return told(
    'walk-impossible',
    `${slip} Until they are right, nothing of it goes into the equipment.`,
    'error',
  );
}

/** `course-passes` where a course is not a whole number of passes wide, to within 5 %: the walk found is off by as much. */
export function broken(widthM: number, { equipment, units }: CalibrationCase): Issue | null {
  const spacingM = spacingOf(equipment);
  const passes = widthM / spacingM;
  const whole = Math.max(1, Math.round(passes));
  if (Math.abs(passes - whole) <= RATE_TOLERANCE * whole) return null;
  const fitting = [Math.floor(passes), Math.ceil(passes)].filter((count) => count > 0);
  const widths = fitting.map((count) => formatLength(count * spacingM, units)).join(' or ');
  return told(
    'course-passes',
    `That width is ${formatNumber(passes, 2)} passes of ${formatLength(spacingM, units)}. Passes are walked whole, so the walk found is off: make the course ${widths} wide.`,
  );
}

/** An issue without a place. */
export function told(code: string, message: string, severity: Issue['severity'] = 'warning'): Issue {
  return { code, severity, message, place: {} };
}
