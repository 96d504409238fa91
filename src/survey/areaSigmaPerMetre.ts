import { measureYard } from '../measure/measureYard';
import { emptyYard, newZone } from '../yard/defaults';
import type { Curve, Rings, Survey } from '../yard/types';

/**
 * Standard deviation of the area of an outline, m², for one metre of error of its corners in each of x and
 * y: what turns a corner error into the area's and back, by the same reckoning as every zone's.
 * @returns 0 when the outline cannot be measured
 */
export function areaSigmaPerMetre(laid: {
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
}): number {
  const survey: Survey = { method: 'typed', vertexSigmaM: 1, scaleSigma: 0, source: '' };
  const zone = newZone('outline', 'turf', laid.parts, { curves: laid.curves, survey });
  return measureYard({ ...emptyYard('outline', ''), zones: [zone] }).zones.get(zone.id)?.netSigmaM2 ?? 0;
}
