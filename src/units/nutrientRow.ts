import type { UnitSystem } from '../yard/types';
import { KG_PER_M2_OF_LB_PER_1000_SQFT } from './factors';
import { formatAtPlace, placeOf } from './format';

/*
 * Tables of nutrient laid down: plain numbers of one unit, at one decimal place, so that columns line up and
 * rows add up as printed. The unit stands in the heading.
 */

/** The unit of a nutrient rate: "lb per 1,000 sq ft" or "g/m²". */
export function nutrientUnit(system: UnitSystem): string {
  return system === 'us' ? 'lb per 1,000\u00a0sq\u00a0ft' : 'g/m²';
}

/** A nutrient rate as a number of that unit. @param kgPerM2 kg/m² */
export function inNutrientUnit(kgPerM2: number, system: UnitSystem): number {
  return system === 'us' ? kgPerM2 / KG_PER_M2_OF_LB_PER_1000_SQFT : kgPerM2 * 1000;
}

/** Decimals of a table whose largest rate this is: two digits of it, two decimals at least in lb and one in g, four at most. */
export function nutrientPlace(largestKgPerM2: number, system: UnitSystem): number {
  const least = system === 'us' ? 2 : 1;
  const largest = inNutrientUnit(largestKgPerM2, system);
  return largest > 0 ? Math.min(4, Math.max(least, placeOf(largest, 2))) : least;
}

/** One rate of a table; a minus before what is less than nought, and "<0.01" for what is there but rounds to nothing. */
export function formatNutrientCell(kgPerM2: number, place: number, system: UnitSystem): string {
  const value = inNutrientUnit(kgPerM2, system);
  if (!Number.isFinite(value)) return '–';
  const step = 10 ** -place;
  if (value === 0) return '0';
  if (value > 0 && value < step / 2) return `<${formatAtPlace(step, place)}`;
  const text = formatAtPlace(Math.abs(value), place);
  return value <= -step / 2 ? `−${text}` : text;
}
