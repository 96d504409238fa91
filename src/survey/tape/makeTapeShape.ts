import type { Issue, UnitSystem } from '../../yard/types';
import { propagateSigma } from '../propagateSigma';
import { dimensionIssue } from './issues';
import type { Dimensions, TapeError, TapeResult, TapeWay } from './types';

/** A dimension longer than this is a slip of the finger or of the unit, m. */
export const LONGEST_DIMENSION_M = 10_000;
/** A share of one sigma in the area from which on first-order figures say little. */
const POORLY_KNOWN = 0.15;

/**
 * The shape that some typed dimensions make.
 * @param d by the keys of `way.fields`: metres, degrees for angles; optional ones may be missing
 * @returns issues with the field's key as their path: missing, not more than 0, too large, impossible together
 */
export function makeTapeShape(way: TapeWay, d: Dimensions, error: TapeError, system: UnitSystem): TapeResult {
  const faults = [...missing(way, d), ...outOfRange(way, d)];
  const issues = faults.length > 0 ? faults : way.check(d, system);
  if (issues.length > 0) return { ok: false, issues };
  const areaM2 = way.areaM2(d);
  const needed = way.fields.filter((field) => !field.isOptional);
  const randomSigmaM2 = propagateSigma(
    (readings) => way.areaM2(Object.fromEntries(needed.map((field, i) => [field.key, readings[i] ?? 0]))),
    needed.map((field) => d[field.key] ?? 0),
    needed.map((field) => (field.quantity === 'angle' ? error.angleSigmaDeg : error.readingSigmaM)),
  );
  const areaSigmaM2 = Math.hypot(randomSigmaM2, scaleSigmaM2(areaM2, error));
  const outline = way.outline(d);
  const isPoor = areaSigmaM2 > POORLY_KNOWN * areaM2;
  const notes = isPoor ? [...outline.notes, POOR_WORDS] : outline.notes;
  return { ok: true, shape: { ...outline, notes, areaM2, randomSigmaM2, areaSigmaM2 } };
}

const POOR_WORDS =
  'A small error of the tape changes this area much: tape the shape another way, or in two parts.';

/** What the scale of the tape alone adds to the error of an area, m²: an area goes with the square of the scale. */
export function scaleSigmaM2(areaM2: number, error: TapeError): number {
  return 2 * Math.abs(areaM2) * error.scaleSigma;
}

function missing(way: TapeWay, d: Dimensions): Issue[] {
  return way.fields
    .filter((field) => !field.isOptional && d[field.key] === undefined)
    .map((field) =>
      dimensionIssue('dimension-missing', field.key, `Type ${field.key}: ${field.words.toLowerCase()}.`),
    );
}

function outOfRange(way: TapeWay, d: Dimensions): Issue[] {
  return way.fields.flatMap((field) => {
    const value = d[field.key];
    if (value === undefined) return [];
    const isLow = field.isOptional ? value < 0 : value <= 0;
    if (isLow || !Number.isFinite(value)) {
      const message = `${field.key} must be ${field.isOptional ? '0 or more' : 'more than 0'}.`;
      return [dimensionIssue('dimension-not-positive', field.key, message)];
    }
    if (field.quantity === 'length' && value > LONGEST_DIMENSION_M) {
      return [
        dimensionIssue('dimension-too-long', field.key, `${field.key} is longer than 10 km (6.2 miles).`),
      ];
    }
    return [];
  });
}
