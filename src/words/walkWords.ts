import type { Leg, ZoneWalk } from '../cover/passTypes';
import { M_PER_FT } from '../units/factors';
import { formatAtPlace, formatLength } from '../units/format';
import type { UnitSystem } from '../yard/types';

/** Shorter walks are told as any length is, m. */
const SHORT_M = 10;

/** A length walked, in whole feet or metres: nobody walks to the centimetre. */
export function formatWalk(lengthM: number, units: UnitSystem): string {
  return lengthM < SHORT_M ? formatLength(lengthM, units) : whole(lengthM / unitOf(units), units);
}

/** Laps of one zone and coat. @param legs of the whole dose */
export function countLaps({ zoneId, coat }: Pick<ZoneWalk, 'zoneId' | 'coat'>, legs: readonly Leg[]): number {
  return legs.filter((leg) => leg.kind === 'lap' && leg.zoneId === zoneId && leg.coat === coat).length;
}

/** Passes and laps in a column: "12, 2", "–, 2" laps alone, "12" passes alone. */
export function countWords(passes: number, laps: number): string {
  if (laps === 0) return String(passes);
  return `${passes === 0 ? '–' : passes}, ${laps}`;
}

/** Parts of a walk, m. */
export interface WalkParts {
  readonly workingM: number;
  readonly turnM: number;
  /** ways, shut, inside zones, and from one to the next. */
  readonly withinM: number;
  readonly betweenM: number;
}

/**
 * "613 m with product going out, 214 m turning, 88 m on ways inside zones, 26 m between zones": all parts of a walk, in
 * whole feet or metres that sum to the whole as `formatWalk` tells it. What rounds to nothing is left out.
 */
export function walkPartsWords({ workingM, turnM, withinM, betweenM }: WalkParts, units: UnitSystem): string {
  const lengths = [workingM, turnM, withinM, betweenM];
  const words = ['with product going out', 'turning', 'on ways inside zones, shut off', 'between zones'];
  return wholeParts(lengths.map((lengthM) => lengthM / unitOf(units)))
    .map((count, i) => ({ count, words: `${whole(count, units)} ${words[i]}` }))
    .filter(({ count }) => count > 0)
    .map((part) => part.words)
    .join(', ');
}

/** Whole numbers near the parts that sum to their rounded sum: those cut most are rounded up. @param parts 0 or more */
export function wholeParts(parts: readonly number[]): readonly number[] {
  const down = parts.map(Math.floor);
  const total = Math.round(parts.reduce((sum, part) => sum + part, 0));
  const missing = total - down.reduce((sum, part) => sum + part, 0);
  const byCut = parts.map((part, i) => ({ i, cut: part - (down[i] ?? 0) })).sort((a, b) => b.cut - a.cut);
  const up = new Set(byCut.slice(0, missing).map(({ i }) => i));
  return down.map((part, i) => (up.has(i) ? part + 1 : part));
}

const unitOf = (units: UnitSystem) => (units === 'us' ? M_PER_FT : 1);
const whole = (count: number, units: UnitSystem) =>
  `${formatAtPlace(count, 0)}\u00a0${units === 'us' ? 'ft' : 'm'}`;
