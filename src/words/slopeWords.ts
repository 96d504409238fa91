import { surfaceFactor } from '../measure/slope';
import { degreesFromSlope } from '../measure/slopeEntry';
import { formatAreaPm, formatNumber } from '../units/format';
import type { UnitSystem } from '../yard/types';

/** A slope steeper than this tips mowers and sheds what is spread, rise over run; 3 to 1 is common practice, no source. */
export const STEEP_SLOPE = 1 / 3;

/** "12 % (6.8°)". @param slope rise over run */
export function slopeWords(slope: number): string {
  return `${formatNumber(slope * 100, 3)} % (${formatNumber(degreesFromSlope(slope), 2)}°)`;
}

/** "3,270 ± 45 sq ft along the slope, 0.7 % more". @param areaM2 flat @param sigmaM2 of the flat area, one standard deviation */
export function surfaceWords(areaM2: number, sigmaM2: number, slope: number, units: UnitSystem): string {
  const factor = surfaceFactor(slope);
  const area = formatAreaPm(factor * areaM2, factor * sigmaM2, units);
  return `${area} along the slope, ${formatNumber((factor - 1) * 100, 2)} % more`;
}

/** By which area doses go, for a yard with slopes. */
export function doseAreaWords({ doseBySurface }: { readonly doseBySurface: boolean }): string {
  return doseBySurface
    ? 'Areas and amounts go by the ground along the slope of each zone.'
    : 'Areas and amounts go by the flat area, as on a map; the ground along a slope is larger.';
}
