import { unionOf } from './clip';
import type { PlaneZone } from './planeZone';
import type { PlaneRings } from './types';

/** About so many zones are put together and kept together. */
const GROUP_SIZE = 12;

interface Kept {
  readonly members: readonly PlaneZone[];
  readonly ground: readonly PlaneRings[];
}
/** By the first zone of a group. */
const groups = new WeakMap<PlaneZone, Kept>();

/**
 * All ground that sound zones cover, as drawn. Neighbours are put together tile by tile, and a tile
 * whose laid zones are the same objects as before is not put together again.
 */
export function coveredGround(zones: readonly PlaneZone[]): PlaneRings[] {
  const tileM = tileSizeOf(zones);
  const tiles = new Map<string, PlaneZone[]>();
  for (const zone of zones) {
    const { minX, minY, maxX, maxY } = zone.box;
    const key = `${Math.floor((minX + maxX) / 2 / tileM)},${Math.floor((minY + maxY) / 2 / tileM)}`;
    const members = tiles.get(key);
    if (members) members.push(zone);
    else tiles.set(key, [zone]);
  }
  return unionOf([...tiles.values()].flatMap(groundOf));
}

/** A power of two, m, so that a small change of the yard leaves the tiles as they are. */
function tileSizeOf(zones: readonly PlaneZone[]): number {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { box } of zones) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  const wanted = Math.sqrt(((maxX - minX) * (maxY - minY) * GROUP_SIZE) / zones.length);
  return wanted > 0 && Number.isFinite(wanted) ? 2 ** Math.round(Math.log2(wanted)) : 1;
}

function groundOf(members: readonly PlaneZone[]): readonly PlaneRings[] {
  const [first] = members;
  if (!first) return [];
  const kept = groups.get(first);
  if (kept?.members.length === members.length && kept.members.every((zone, i) => zone === members[i])) {
    return kept.ground;
  }
  const ground = unionOf(members.flatMap((zone) => zone.parts));
  groups.set(first, { members, ground });
  return ground;
}
