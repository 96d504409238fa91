import type { SoilLevel } from '../yard/types';
import { inLabUnit } from './labUnits';
import type { Band } from './types';

/*
 * Ways in which sources print the bounds of levels; figures are in the unit of their table. The levels
 * follow the document's meaning: `high` is enough, `very-high` more than enough; a table that counts only
 * what is enough ("optimum") has no `medium`. Bounds are as printed: "0-24, 25-45" gives 24 and 45, each
 * included, and what lies between two printed numbers belongs to the upper band; "below 45" gives 45, not
 * included.
 */

/** Bands whose printed upper bounds belong to them; the last has none. */
export function bandsUpTo(
  ...rows: readonly (readonly [level: SoilLevel, word: string, upTo?: number])[]
): readonly Band[] {
  return rows.map(([level, word, upTo]) => ({ level, word, upTo: upTo ?? null, isUpToIncluded: true }));
}

/** Five levels of Rutgers NJAES by the upper bounds of the first four. */
export function bandsOfRutgers(a: number, b: number, c: number, d: number): readonly Band[] {
  return bandsUpTo(
    ['very-low', 'very low', a],
    ['low', 'low', b],
    ['medium', 'medium', c],
    ['high', 'high (optimum)', d],
    ['very-high', 'very high (excessive)'],
  );
}

/** Micronutrients of Rutgers NJAES, printed in ppm beside a table in lb/acre: critical level and high. */
export function bandsOfRutgersMicro(criticalPpm: number, highPpm: number): readonly Band[] {
  const critical = inLabUnit(criticalPpm, 'lb-per-acre');
  return [
    { level: 'low', word: 'below the critical level', upTo: critical, isUpToIncluded: false },
    ...bandsUpTo(['high', 'enough', inLabUnit(highPpm, 'lb-per-acre')], ['very-high', 'high']),
  ];
}

/** Four categories of the University of Delaware by the upper bounds of the first three. */
export function bandsOfDelaware(a: number, b: number, c: number): readonly Band[] {
  return bandsUpTo(
    ['low', 'low', a],
    ['medium', 'medium', b],
    ['high', 'optimum', c],
    ['very-high', 'excessive'],
  );
}

/** A range of sufficiency "27-54": below it low, in it (both ends) medium, above it high. */
export function bandsOfRange(from: number, to: number): readonly Band[] {
  return [
    { level: 'low', word: 'low', upTo: from, isUpToIncluded: false },
    ...bandsUpTo(['medium', 'medium', to], ['high', 'high']),
  ];
}

/** "Optimum 4-14": below it low, in it (both ends) enough, above it more than enough. */
export function bandsOfOptimum(from: number, to: number): readonly Band[] {
  return [
    { level: 'low', word: 'below optimum', upTo: from, isUpToIncluded: false },
    ...bandsUpTo(['high', 'optimum', to], ['very-high', 'above optimum']),
  ];
}

/** A least level: below it low, from it on enough. */
export function bandsOfFloor(least: number): readonly Band[] {
  return [
    { level: 'low', word: 'below the minimum', upTo: least, isUpToIncluded: false },
    ...bandsUpTo(['high', 'at or above the minimum']),
  ];
}
