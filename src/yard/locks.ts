import type { Issue, Zone } from './types';

/** Whether the outline of a zone must stay as it is, and the zone itself too, until it is unlocked. */
export function isLockedZone(zone: Zone | undefined): boolean {
  return zone?.isLocked === true;
}

/** The first of the zones with these ids that is locked. */
export function lockedZone(zones: readonly Zone[], zoneIds: readonly string[]): Zone | undefined {
  return zones.find((zone) => zoneIds.includes(zone.id) && isLockedZone(zone));
}

/** Says that a locked zone stays as it is, and how to free it. */
export function lockedIssue(zone: Zone): Issue {
  const name = zone.name.trim() === '' ? 'A zone without a name' : `“${zone.name.trim()}”`;
  const message = `${name} is locked, so it stays as it is. Unlock it in its details to change it.`;
  return { code: 'zone-locked', severity: 'warning', message, place: { zoneId: zone.id } };
}
