import type { Yard, Zone } from '../yard/types';
import { createPlane } from './plane';
import type { LocalPlane, MeasuredYard } from './types';

/** A plane is kept while the yard's middle stays this near to its origin, m: new planes redo every zone. */
const PLANE_REACH_M = 300;

/** West, south, east and north limits in degrees. */
type Extent = readonly [number, number, number, number];

const extents = new WeakMap<Zone, Extent | null>();

/**
 * The plane of a yard: the previous one while the middle of the zones' extent lies within 300 m of its
 * origin, else one at that middle. Zones without a place do not count. Without zones the marks count; without either, the previous plane or
 * one at 0, 0. Corners that are no position are passed over. A yard across 180° is taken together.
 */
export function planeFor(yard: Yard, previous: MeasuredYard | undefined): LocalPlane {
  const boxes = yard.zones
    .map((zone) => (zone.isPlaced ? extentOf(zone) : null))
    .filter((box) => box !== null);
  if (boxes.length === 0) {
    for (const { position } of yard.marks) {
      if (isPosition(position)) boxes.push([position[0], position[1], position[0], position[1]]);
    }
  }
  const first = boxes[0];
  if (!first) return previous?.plane ?? createPlane([0, 0]);
  let [west, south, east, north] = first;
  for (const box of boxes) {
    const turn = 360 * Math.round((first[0] - box[0]) / 360);
    west = Math.min(west, box[0] + turn);
    south = Math.min(south, box[1]);
    east = Math.max(east, box[2] + turn);
    north = Math.max(north, box[3]);
  }
  const lon = (west + east) / 2;
  const middle = [lon - 360 * Math.round(lon / 360), (south + north) / 2] as const;
  if (previous) {
    const [x, y] = previous.plane.toPlane(middle);
    if (Math.hypot(x, y) <= PLANE_REACH_M) return previous.plane;
  }
  return createPlane(middle);
}

function extentOf(zone: Zone): Extent | null {
  const kept = extents.get(zone);
  if (kept !== undefined) return kept;
  let extent: Extent | null = null;
  for (const ring of zone.parts.flat()) {
    for (const p of ring) {
      if (!isPosition(p)) continue;
      if (!extent) extent = [p[0], p[1], p[0], p[1]];
      const lon: number = p[0] + 360 * Math.round((extent[0] - p[0]) / 360);
      extent = [
        Math.min(extent[0], lon),
        Math.min(extent[1], p[1]),
        Math.max(extent[2], lon),
        Math.max(extent[3], p[1]),
      ];
    }
  }
  extents.set(zone, extent);
  return extent;
}

function isPosition(p: readonly [number, number]): boolean {
  return Number.isFinite(p[0]) && Math.abs(p[1]) < 90;
}
