import type { XY } from '../../measure/types';
import type { PassGround, PassOptions, ZonePasses } from '../passTypes';
import { planPrepared } from './planPasses';
import { type PreparedZone, prepareZone } from './prepareZone';

/** Zones kept ready. */
const MOST_ZONES = 400;

/**
 * `planPasses` that keeps zones ready: walks over the same ground by the same options from other places, in
 * other doses or coats, need no more than an order.
 */
export function createPassPlanner(): (
  ground: PassGround,
  options: PassOptions,
  from: XY | null,
  to: XY | null,
) => ZonePasses {
  const kept = new Map<string, PreparedZone | null>();
  return (ground, { lapsFirst, ...options }, from, to) => {
    const key = JSON.stringify([ground, options]);
    const known = kept.get(key);
    const prepared = known === undefined ? prepareZone(ground, options) : known;
    // what was not asked for longest goes
    kept.delete(key);
    kept.set(key, prepared);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST_ZONES) break;
      kept.delete(oldest);
    }
    return planPrepared(prepared, lapsFirst, from, to);
  };
}
