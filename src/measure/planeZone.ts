import type { Issue, Rings, Zone } from '../yard/types';
import { differenceOf, planeAreaOf, unionOf } from './clip';
import { checkRing } from './crossings';
import { ringsToLonLat, ringsToPlane } from './plane';
import type { LocalPlane, PlaneRings } from './types';

/** West, south, east and north limits in the plane, m. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A zone laid in a plane; kept while the zone and the plane are the same objects. */
export interface PlaneZone {
  readonly plane: LocalPlane;
  /** rings as drawn. */
  readonly drawn: readonly PlaneRings[];
  /** ground covered, each square metre once; the drawn rings themselves when they are sound. */
  readonly parts: readonly PlaneRings[];
  /** the same in degrees. */
  readonly lonLatParts: readonly Rings[];
  readonly box: Box;
  readonly issues: readonly Issue[];
  /** false: cannot be measured; the issues say why. */
  readonly isSound: boolean;
}

const laid = new WeakMap<Zone, PlaneZone>();

/** Lays a zone in the plane and checks its rings. Never throws. */
export function layZone(zone: Zone, plane: LocalPlane): PlaneZone {
  const kept = laid.get(zone);
  if (kept?.plane === plane) return kept;
  const made = lay(zone, plane);
  laid.set(zone, made);
  return made;
}

function lay(zone: Zone, plane: LocalPlane): PlaneZone {
  const name = zone.name.trim() || 'Zone without a name';
  const faults: Issue[] = zone.parts.flatMap((rings) =>
    rings.flatMap((ring) =>
      checkRing(ring).map((issue) => ({
        ...issue,
        message: `${name}: ${issue.message}`,
        place: { ...issue.place, zoneId: zone.id },
      })),
    ),
  );
  if (zone.parts.length === 0 || zone.parts.some((rings) => rings.length === 0)) {
    faults.push({
      code: 'zone-without-outline',
      severity: 'error',
      message: `${name} has no outline.`,
      place: { zoneId: zone.id },
    });
  }
  const drawn = zone.parts.map((rings) => ringsToPlane(rings, plane));
  const box = boxOf(drawn);
  if (faults.length > 0) {
    return { plane, drawn, parts: [], lonLatParts: [], box, issues: faults, isSound: false };
  }
  if (drawn.length === 1 && drawn[0]?.length === 1) {
    return { plane, drawn, parts: drawn, lonLatParts: zone.parts, box, issues: [], isSound: true };
  }
  const clean = coverOnce(drawn);
  const cleanM2 = planeAreaOf(clean);
  const areSound = Math.abs(cleanM2 - planeAreaOf(drawn)) <= 1e-6 * cleanM2 + 1e-4;
  if (areSound)
    return { plane, drawn, parts: drawn, lonLatParts: zone.parts, box, issues: [], isSound: true };
  const issue: Issue = {
    code: 'zone-parts-overlap',
    severity: 'warning',
    message: `${name}: parts overlap, or a hole reaches outside its outline; each square metre is counted once.`,
    place: { zoneId: zone.id },
  };
  const lonLatParts = clean.map((rings) => ringsToLonLat(rings, plane));
  return { plane, drawn, parts: clean, lonLatParts, box, issues: [issue], isSound: true };
}

/** Each part less its holes, then all parts together. */
function coverOnce(drawn: readonly PlaneRings[]): PlaneRings[] {
  return unionOf(
    drawn.flatMap((rings) =>
      differenceOf(
        rings.slice(0, 1).map((ring) => [ring]),
        rings.slice(1).map((ring) => [ring]),
      ),
    ),
  );
}

/** Limits of all rings; inverted and infinite when there are none. */
export function boxOf(parts: readonly PlaneRings[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const rings of parts) {
    for (const ring of rings) {
      for (const [x, y] of ring) {
        if (x < minX) minX = x;
        if (x > maxX) maxX = x;
        if (y < minY) minY = y;
        if (y > maxY) maxY = y;
      }
    }
  }
  return { minX, minY, maxX, maxY };
}

/** Whether two boxes come within `marginM` of each other. */
export function boxesNear(a: Box, b: Box, marginM: number): boolean {
  return (
    a.minX <= b.maxX + marginM &&
    b.minX <= a.maxX + marginM &&
    a.minY <= b.maxY + marginM &&
    b.minY <= a.maxY + marginM
  );
}
