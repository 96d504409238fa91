import { M_PER_FT, M_PER_IN } from '../units/factors';
import type { UnitSystem } from '../yard/types';
import type { Paper } from './types';

/** Letter: 8.5 × 11 in (ANSI Y14.1, size A). A4: 210 × 297 mm (ISO 216). */
const SHORT_LONG_MM = { letter: [215.9, 279.4], a4: [210, 297] } as const;
/** wide enough for printers that cannot print to the edge; common practice, no source. */
const MARGIN_MM = 11;

/** A paper lying or standing. */
export function paperOf(name: 'letter' | 'a4', landscape: boolean): Paper {
  const [short, long] = SHORT_LONG_MM[name];
  return {
    name,
    landscape,
    widthMm: landscape ? long : short,
    heightMm: landscape ? short : long,
    marginMm: MARGIN_MM,
  };
}

/** feet to the inch of a US engineer's scale and its tenfolds; common practice, no source. */
const FT_PER_IN = [5, 10, 20, 30, 40, 50, 60, 100, 200, 300, 400, 500, 600, 1000, 2000, 5000, 10000];
/** ISO 5455 (1:50, 1:100, 1:200, 1:500 …; from memory) and those between that stand on metric scale rules; common practice, no source. */
const RATIOS = [
  20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 2000, 2500, 5000, 10000,
  20000, 50000, 100000,
];

/** The round scales of a unit system as second numbers (240 for 1:240), largest scale first. */
export function roundRatios(system: UnitSystem): readonly number[] {
  return system === 'us' ? FT_PER_IN.map((ft) => Math.round((ft * M_PER_FT) / M_PER_IN)) : RATIOS;
}

/**
 * The largest round scale at which ground of this size fits.
 * @param groundM width and height, m. @param roomMm width and height on paper, mm.
 * @returns the scale's second number (240 for 1:240); beyond the round ones, the next whole thousand.
 */
export function roundRatio(
  groundM: readonly [number, number],
  roomMm: readonly [number, number],
  system: UnitSystem,
): number {
  const least = leastRatio(groundM, roomMm);
  return roundRatios(system).find((ratio) => ratio >= least) ?? Math.ceil(least / 12000) * 12000;
}

/** The scale's second number at which the ground just fits. Sizes as for `roundRatio`. */
export function leastRatio(groundM: readonly [number, number], roomMm: readonly [number, number]): number {
  return Math.max((groundM[0] * 1000) / roomMm[0], (groundM[1] * 1000) / roomMm[1]);
}

/** "1 in = 20 ft (1:240)" or "1:200". */
export function scaleWords(ratio: number, system: UnitSystem): string {
  if (system === 'metric') return `1:${ratio}`;
  const feet = (ratio * M_PER_IN) / M_PER_FT;
  return `1 in = ${Math.round(feet * 100) / 100} ft (1:${ratio})`;
}

/** Step of a scale bar of four steps that is at most `mostMm` long: 1, 2 or 5 times a power of ten, in ft or m. */
export function barStep(ratio: number, mostMm: number, system: UnitSystem): { step: number; stepM: number } {
  const unitM = system === 'us' ? M_PER_FT : 1;
  const mostStep = (mostMm / 4 / 1000) * ratio * (1 / unitM);
  const power = 10 ** Math.floor(Math.log10(mostStep));
  const step = [5, 2, 1].map((n) => n * power).find((s) => s <= mostStep) ?? power;
  return { step, stepM: step * unitM };
}
