import { formatNumber } from '../units/format';
import type { SoilTest } from '../yard/types';
import { LAB_UNIT_WORDS } from './soilNames';

/**
 * Pounds of an element per acre that one mg/kg (ppm) stands for: an acre furrow slice, the upper 6.7 in,
 * is taken as 2,000,000 lb of soil, and labs multiply ppm by 2. Penn State Extension, "What is an Acre
 * Furrow Slice of Soil?"; Ohio State Univ., "Understanding Soil Test Reports for Phosphorus Values"
 * (60 lb/acre is 30 ppm). The figure is an index: labs use it for any depth of sample, so depth is not reckoned in.
 */
export const LB_PER_ACRE_PER_PPM = 2;

/** How many of the unit make one mg/kg. */
export function labFactor(unit: SoilTest['labUnit']): number {
  return unit === 'ppm' ? 1 : LB_PER_ACRE_PER_PPM;
}

/** A lab's figure in mg/kg (ppm). @param value in `unit` */
export function mgPerKgOf(value: number, unit: SoilTest['labUnit']): number {
  return value / labFactor(unit);
}

/** mg/kg in a lab's unit. */
export function inLabUnit(mgPerKg: number, unit: SoilTest['labUnit']): number {
  return mgPerKg * labFactor(unit);
}

/** "92 ppm" or "184 lb/acre". */
export function formatSoil(mgPerKg: number, unit: SoilTest['labUnit']): string {
  return `${formatNumber(inLabUnit(mgPerKg, unit), 4)}\u00a0${LAB_UNIT_WORDS[unit]}`;
}
