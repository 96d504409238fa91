import { formatArea } from '../../units/format';
import type { Issue, Place, UnitSystem } from '../../yard/types';
import type { Vessel } from '../passTypes';

/** Ground without a vessel below this share of the dose is rounding. */
const SLACK = 1e-6;

/**
 * Tells where all that a dose is known to be drawn from does only part of its ground.
 * @param areaM2 ground of the dose, m²
 * @returns null where it does all, and where nothing is known to draw from
 */
export function shortVessels(
  vessels: readonly Vessel[],
  areaM2: number,
  units: UnitSystem,
  place: Place = {},
): Issue | null {
  const doneM2 = vessels.reduce((sum, vessel) => sum + vessel.areaM2, 0);
  if (vessels.length === 0 || doneM2 >= areaM2 * (1 - SLACK)) return null;
  const message = `What it is known to be drawn from does only ${formatArea(doneM2, units)} of ${formatArea(areaM2, units)}: the rest of the ground has no run-out marks. Enter what else there is, or the sizes it is sold in.`;
  return { code: 'vessels-short', severity: 'warning', message, place };
}
