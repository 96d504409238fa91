import { changeSettings } from '../yard/edits';
import type { Position, Yard } from '../yard/types';
import { distanceM } from './geodesic';
import { moveYard } from './moveYard';
import { planeFor } from './planeFor';

/** Nothing of one yard lies further than this from the rest of it, m. */
const FAR_M = 2000;

/** A place that cannot well belong to the yard as it lies. */
export interface FarPlace {
  /** middle of the yard's zones; without zones, of the outline of the property. */
  readonly from: Position;
  readonly to: Position;
  /** along the ellipsoid from `to` to the nearest corner of the yard, m. */
  readonly distanceM: number;
  /** what the yard has on the ground. */
  readonly has: 'zones' | 'parcel';
}

/**
 * Whether new ground lies more than 2 km from all that the yard has on the ground: its placed zones, or
 * the outline of the property while there are none.
 * @param corners of the new ground, degrees
 * @returns null when it lies near, or when there is nothing to lie far from
 */
export function findFarPlace(yard: Yard, corners: readonly Position[]): FarPlace | null {
  const zones = yard.zones.filter((zone) => zone.isPlaced);
  const has = zones.length > 0 ? 'zones' : 'parcel';
  const there = (has === 'zones' ? zones : yard.parcel ? [yard.parcel] : []).flatMap(({ parts }) =>
    parts.flat(2),
  );
  const [to] = corners;
  if (!to || there.length === 0) return null;
  let nearestM = Number.POSITIVE_INFINITY;
  for (const corner of there) {
    nearestM = Math.min(nearestM, distanceM(to, corner));
    if (nearestM <= FAR_M) return null;
  }
  const parcel = yard.parcel?.parts[0]?.[0]?.[0];
  const from = has === 'zones' ? planeFor({ ...yard, marks: [] }, undefined).origin : (parcel ?? to);
  return { from, to, distanceM: nearestM, has };
}

/** The yard moved to the new ground with all sizes kept; it is a drawing without a place no more. */
export function bringYard(yard: Yard, { from, to }: FarPlace): Yard {
  return changeSettings(moveYard(yard, from, to, 0), { isLocal: false });
}
