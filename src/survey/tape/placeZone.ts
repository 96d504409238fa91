import { NOWHERE } from '../../measure/measureYard';
import { mapZone } from '../../measure/moveZone';
import { createPlane, ringsToPlane } from '../../measure/plane';
import { boxOf, middleOfBox } from '../../measure/planeBox';
import type { ShapeResult } from '../../measure/shapes';
import { turnClockwise } from '../../measure/turnClockwise';
import type { LocalPlane, XY } from '../../measure/types';
import { replaceZone } from '../../yard/edits';
import { lockedIssue } from '../../yard/locks';
import type { Position, Yard, Zone } from '../../yard/types';

/**
 * Gives a zone without a place its place on the ground; size and shape stay as they are.
 * @param at where the middle of its box comes to lie, degrees
 * @param turnDeg how far it is turned clockwise from its sketch, degrees
 * @returns refused when the zone is gone, has its place already, or is locked
 */
export function placeZone(yard: Yard, zoneId: string, at: Position, turnDeg: number): ShapeResult {
  const zone = yard.zones.find((each) => each.id === zoneId);
  if (!zone) return refuse('zone-not-found', 'This zone is no longer in the yard.', zoneId);
  if (zone.isPlaced) return refuse('zone-placed', 'This zone has its place on the map already.', zoneId);
  if (zone.isLocked) return { ok: false, issue: lockedIssue(zone) };
  if (!Number.isFinite(turnDeg))
    return refuse('turn-not-number', 'The direction is degrees from north, such as 90.', zoneId);
  if (!Number.isFinite(at[0]) || !(Math.abs(at[1]) < 90))
    return refuse('place-unusable', 'That is no place on the map.', zoneId);
  return { ok: true, yard: replaceZone(yard, carryZone(zone, createPlane(at), turnDeg)) };
}

function refuse(code: string, message: string, zoneId: string): ShapeResult {
  return { ok: false, issue: { code, severity: 'error', message, place: { zoneId } } };
}

function middleOf(zone: Zone): XY {
  return middleOfBox(boxOf(zone.parts.map((rings) => ringsToPlane(rings, NOWHERE))));
}

/** Carries a zone from nowhere to a plane, metre by metre. */
function carryZone(zone: Zone, to: LocalPlane, turnDeg: number): Zone {
  const [mx, my] = middleOf(zone);
  const turn = turnClockwise(turnDeg);
  const carried = mapZone(zone, (p) => {
    const [x, y] = NOWHERE.toPlane(p);
    return to.toLonLat(turn([x - mx, y - my]));
  });
  return { ...carried, isPlaced: true };
}
