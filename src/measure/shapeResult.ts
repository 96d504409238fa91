import { isLockedZone, lockedIssue } from '../yard/locks';
import type { Issue, Position, Yard, Zone } from '../yard/types';
import { planeAreaOf } from './clip';
import { insertCorners } from './corners';
import { layZone } from './planeZone';
import type { LocalPlane, PlaneRings } from './types';

/** A new document, or why the edit cannot be made. */
export type ShapeResult =
  | { readonly ok: true; readonly yard: Yard }
  | { readonly ok: false; readonly issue: Issue };

/** Pieces smaller than this are noise of the grid, m². */
const NOISE_M2 = 1e-4;

/** A refusal with its sentence and place. */
export function refuse(
  code: string,
  message: string,
  zoneId?: string,
  position?: Position,
): Extract<ShapeResult, { ok: false }> {
  return { ok: false, issue: { code, severity: 'error', message, place: { zoneId, position } } };
}

/** Runs an edit on a zone that is there, sound and not locked; else says why not. @param mayBeLocked the edit leaves its outline */
export function withZone(
  yard: Yard,
  zoneId: string,
  plane: LocalPlane,
  edit: (zone: Zone, parts: readonly PlaneRings[]) => ShapeResult,
  mayBeLocked = false,
): ShapeResult {
  const zone = yard.zones.find((one) => one.id === zoneId);
  if (!zone) return refuse('zone-not-found', 'This zone is no longer in the yard.', zoneId);
  if (!mayBeLocked && isLockedZone(zone))
    return { ok: false, issue: { ...lockedIssue(zone), severity: 'error' } };
  const laid = layZone(zone, plane);
  const fault = laid.issues[0];
  return laid.isSound || !fault ? edit(zone, laid.parts) : { ok: false, issue: fault };
}

/** Without the pieces that are noise of the grid. */
export function notNoise(parts: readonly PlaneRings[]): PlaneRings[] {
  return parts.filter((rings) => planeAreaOf([rings]) >= NOISE_M2);
}

/** Puts the corners into the edges of neighbours that they lie on; locked zones and those without a place stay as they are. */
export function matchCorners(
  yard: Yard,
  corners: readonly Position[],
  plane: LocalPlane,
  skipIds: readonly string[] = [],
): Yard {
  const left = yard.zones.flatMap((zone) => (isLockedZone(zone) || !zone.isPlaced ? [zone.id] : []));
  // a closed ring tells its first corner twice
  const once = [...new Map(corners.map((p) => [String(p), p])).values()];
  return insertCorners(yard, once, plane, [...skipIds, ...left]);
}
