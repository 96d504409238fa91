import { describe, expect, it } from 'vitest';
import { unitChoices } from '../../src/units/choices';
import { parseArea, parseLength, parseMass, parseVolume } from '../../src/units/parse';

/*
 * What published examples are typed in with, as their sources have them, and how a table of them is held.
 */

/** A reading that must succeed. */
export function read(parsed: ReturnType<typeof parseMass>): number {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

export const sqft = (value: number) => read(parseArea(`${value} sq ft`, 'us'));
export const acres = (value: number) => read(parseArea(`${value} acre`, 'us'));
export const lb = (value: number) => read(parseMass(`${value} lb`, 'us'));
export const gal = (value: number) => read(parseVolume(`${value} gal`, 'us'));
export const floz = (value: number) => read(parseVolume(`${value} fl oz`, 'us'));
export const pints = (value: number) => gal(value / 8);
export const cuft = (value: number) => read(parseVolume(`${value} cu ft`, 'us'));
export const cuyd = (value: number) => read(parseVolume(`${value} cu yd`, 'us'));
export const inches = (value: number) => read(parseLength(`${value} in`, 'us'));
export const lbPer1000 = (value: number) => lb(value) / sqft(1000);
export const density = (value: number, unit: 'lb/gal' | 'lb/cu ft') =>
  unitChoices('density', 'us')
    .find((choice) => choice.id === unit)
    ?.toSI(value) ?? Number.NaN;

/** What is worked out, by us and by the source; the tolerance is absolute, in the unit of the source. */
export type Row = readonly [what: string, ours: number, published: number, tolerance: number, source: string];

/** Holds each row against its source. */
export function holdRows(name: string, rows: readonly Row[]): void {
  describe(name, () => {
    it.each(rows)('%s', (_what, ours, published, tolerance, source) => {
      expect(Math.abs(ours - published), source).toBeLessThanOrEqual(tolerance);
    });
  });
}
