import { zoneClass } from '../yard/choose';
import { type Yard, ZONE_CLASSES, type ZoneChoice, type ZoneClass } from '../yard/types';
import { zonesWithoutTest } from './testOfZone';

/** All turf: what a yard's first test is taken from, as a rule. */
const ALL_TURF: readonly ZoneClass[] = ['turf-low-cut', 'turf-regular'];

/**
 * The ground that a new soil test is made ready for: all turf for the first, else what no test covers yet. A class
 * without a test on any of its zones is chosen as such, so that a later zone of it belongs to it; of the others
 * the zones are named.
 */
export function groundOfNewTest(yard: Yard): ZoneChoice {
  if (yard.soilTests.length === 0) return { classes: ALL_TURF, include: [], exclude: [] };
  const without = zonesWithoutTest(yard);
  const open = new Set(without.map(({ id }) => id));
  const classes = ZONE_CLASSES.filter((one) => {
    const own = yard.zones.filter((zone) => zoneClass(zone) === one);
    return own.length > 0 && own.every(({ id }) => open.has(id));
  });
  const include = without.flatMap((zone) => {
    const own = zoneClass(zone);
    return own !== null && classes.includes(own) ? [] : zone.id;
  });
  return { classes, include, exclude: [] };
}
