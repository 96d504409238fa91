import type { PaceFigures } from '../pace/paceFigures';
import { passPace } from '../pace/paceFigures';
import type { DosePace } from '../pace/types';
import { M2_PER_1000_SQFT } from '../units/factors';
import { formatLength } from '../units/format';
import { formatClock, formatSpeed } from '../units/formatPace';
import type { UnitSystem } from '../yard/types';

/** Where a pace is from. */
export const PACE_SOURCE_WORDS: Readonly<Record<DosePace['source'], string>> = {
  flow: 'from what comes out of it',
  measured: 'your own walk',
  usual: 'a usual walk, not measured',
};

/** One figure of a pace, with what it is. */
export interface PaceLine {
  readonly label: string;
  readonly words: string;
}

/** "2.3 mph", "about 3.0 mph" where it is only a usual walk; null where none is known. */
export function speedWords(pace: Pick<DosePace, 'speedMPerS' | 'source'>, units: UnitSystem): string | null {
  if (pace.speedMPerS === null) return null;
  return `${pace.source === 'usual' ? 'about ' : ''}${formatSpeed(pace.speedMPerS, units)}`;
}

/** "52 s per 1,000 sq ft" or per 100 m², one coat; null where no pace is known. */
export function lotWords(figures: Pick<PaceFigures, 'secondsPerM2'>, units: UnitSystem): string | null {
  if (figures.secondsPerM2 === null) return null;
  const [areaM2, label] = units === 'us' ? [M2_PER_1000_SQFT, '1,000\u00a0sq\u00a0ft'] : [100, '100\u00a0m²'];
  return `${formatClock(figures.secondsPerM2 * areaM2)} per ${label}`;
}

/** "120 steps a minute, each 2.5 ft"; null where the person's step is not measured. */
export function stepWords(
  figures: Pick<PaceFigures, 'stepsPerMin' | 'stepM'>,
  units: UnitSystem,
): string | null {
  if (figures.stepsPerMin === null || figures.stepM === null) return null;
  return `${Math.round(figures.stepsPerMin)} steps a minute, each ${formatLength(figures.stepM, units)}`;
}

/** "a pass of 48.0 ft: 14 s, 19 steps"; null where no pace is known. @param lengthM of the pass, m */
export function passPaceWords(pace: DosePace, lengthM: number, units: UnitSystem): string | null {
  const { seconds, steps } = passPace(pace, lengthM);
  if (seconds === null) return null;
  return `a pass of ${formatLength(lengthM, units)}: ${formatClock(seconds)}${steps === null ? '' : `, ${steps} ${steps === 1 ? 'step' : 'steps'}`}`;
}

/** Length of the pass that half are longer than, m; null without any. */
export function usualPassM(
  legs: readonly { readonly kind: string; readonly lengthM: number }[],
): number | null {
  const lengths = legs
    .filter((leg) => leg.kind === 'pass')
    .map((leg) => leg.lengthM)
    .sort((a, b) => a - b);
  return lengths[Math.floor(lengths.length / 2)] ?? null;
}

/** The pace as a short list of figures, for panel and sheet alike; empty where none is known. */
export function paceLines(figures: PaceFigures, units: UnitSystem): readonly PaceLine[] {
  const speed = speedWords(figures, units);
  const lot = lotWords(figures, units);
  if (speed === null || lot === null) return [];
  const eachCoat = figures.coats === 2 ? ', each coat' : '';
  const lines: PaceLine[] = [
    { label: 'Walk', words: `${speed} (${PACE_SOURCE_WORDS[figures.source]})` },
    { label: `Time${eachCoat}`, words: lot },
  ];
  const steps = stepWords(figures, units);
  if (steps !== null) lines.push({ label: 'Steps', words: steps });
  for (const zone of figures.zones)
    if (zone.seconds !== null)
      lines.push({
        label: zone.name || 'Zone',
        words: `${formatClock(zone.seconds)}${figures.coats === 2 ? ', both coats' : ''}`,
      });
  return lines;
}
