import { isLockedZone, lockedIssue } from '../../yard/locks';
import type { Zone } from '../../yard/types';
import type { App } from '../app';

/** Whether the zone's outline may change; a locked one is told. */
export function isFree(app: App, zone: Zone): boolean {
  if (!isLockedZone(zone)) return true;
  app.tell(lockedIssue(zone));
  return false;
}
