import type L from 'leaflet';
import type { LocalPlane } from '../../measure/types';
import type { Issue, Position } from '../../yard/types';
import type { MapEvents, MapPicture } from '../types';

/** How near the pointer must come to a corner or edge, px. */
export const SNAP_PX = 12;

/** What a tool at work needs of the map. */
export interface DrawContext {
  readonly map: L.Map;
  readonly events: MapEvents;
  picture(): MapPicture | null;
  /** metric plane of the ground in view. */
  plane(): LocalPlane;
  /** `isSuspended`: the Alt key is held, and nothing snaps meanwhile. */
  readonly hold: { rightAngle: boolean; snapping: boolean; isSuspended: boolean };
  /** the tool ends by itself; the map goes back to `select`. */
  end(): void;
}

/** One tool at work, from setTool() until it ends; it leaves out what it has no use for. */
export interface DrawSession {
  finish(): void;
  /** takes back the last point; false when there is none. */
  backOnePoint?(): boolean;
  addSide?(lengthM: number, bearingDeg: number | null): void;
  /** a point by the crosshair, as a click would put it. */
  addPointAt?(at: L.LatLng): void;
  /** the crosshair moved, as a pointer would. */
  pointAt?(at: L.LatLng): void;
  /** gives up a drag under way; false when there is none. */
  cancelDrag?(): boolean;
  pictureChanged?(): void;
  /** takes everything off the map; calls no events but live(null). */
  stop(): void;
}

/** Makes an issue for the person. */
export function tellIssue(code: string, message: string, position?: Position): Issue {
  return { code, severity: 'warning', message, place: position ? { position } : {} };
}
