import type { RinseEdge } from '../cover/types';
import type { Yard, Zone } from '../yard/types';

export const KIND_WORDS = {
  turf: 'Turf',
  bed: 'Bed',
  structure: 'Structure',
  water: 'Water',
  hardscape: 'Hardscape',
  other: 'Other ground',
} as const;

/** Number of each zone on the sheet, by id: 1, 2, 3 … in the document's order. */
export function zoneKeys(yard: Yard): ReadonlyMap<string, string> {
  return new Map(yard.zones.map((zone, i) => [zone.id, String(i + 1)]));
}

/** The zone's name, or its kind when it has none. */
export function zoneName(zone: Zone): string {
  return zone.name.trim() || `${KIND_WORDS[zone.kind]} without a name`;
}

/** "Turf, low cut", "Hardscape, pavers", "Bed". */
export function classWords(zone: Zone): string {
  if (zone.kind === 'turf') return zone.mowing === 'low-cut' ? 'Turf, low cut' : 'Turf, regular';
  if (zone.kind === 'hardscape' && zone.material) return `Hardscape, ${zone.material}`;
  return KIND_WORDS[zone.kind];
}

/** "E3": what a rinse edge is called on map and table. */
export function edgeKey(edge: RinseEdge): string {
  return `E${edge.number}`;
}
