import type { Issue, Rings, Zone } from '../yard/types';
import { differenceOf, planeAreaOf, unionOf } from './clip';
import { checkRing } from './crossings';
import { nameInText } from './nameInText';
import { ringsToLonLat, ringsToPlane } from './plane';
import { type Box, boxOf } from './planeBox';
import type { LocalPlane, PlaneRings } from './types';

export { type Box, boxesNear, boxOf } from './planeBox';

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
  const issues = [...faultsOf(zone)];
  const drawn = zone.parts.map((rings) => ringsToPlane(rings, plane));
  const box = boxOf(drawn);
  if (issues.length > 0) {
    return { plane, drawn, parts: [], lonLatParts: [], box, issues, isSound: false };
  }
  const clean = isPlain(drawn) ? null : coverOnce(drawn);
  if (!clean) return { plane, drawn, parts: drawn, lonLatParts: zone.parts, box, issues, isSound: true };
  issues.push({
    code: 'zone-parts-overlap',
    severity: 'warning',
    message: `${nameInText(zone, 'start')}: parts overlap, or a hole reaches outside its outline or over another hole; each square metre is counted once.`,
    place: { zoneId: zone.id },
  });
  const lonLatParts = clean.map((rings) => ringsToLonLat(rings, plane));
  return { plane, drawn, parts: clean, lonLatParts, box, issues, isSound: true };
}

const faults = new WeakMap<Zone, readonly Issue[]>();

/** Why a zone cannot be measured; kept for the zone object, whatever the plane. */
function faultsOf(zone: Zone): readonly Issue[] {
  const kept = faults.get(zone);
  if (kept) return kept;
  const place = { zoneId: zone.id };
  const isEmpty = zone.parts.length === 0 || zone.parts.some((rings) => rings.length === 0);
  const message = `${nameInText(zone, 'start')} has no outline and is not measured.`;
  const found: Issue[] = isEmpty
    ? [{ code: 'zone-without-outline', severity: 'error', message, place }]
    : zone.parts.flat().flatMap((ring) =>
        checkRing(ring).map((issue) => ({
          ...issue,
          message: `${nameInText(zone, 'start')} is not measured: ${issue.message.charAt(0).toLowerCase()}${issue.message.slice(1)}`,
          place: { ...issue.place, ...place },
        })),
      );
  faults.set(zone, found);
  return found;
}

function isPlain(drawn: readonly PlaneRings[]): boolean {
  return drawn.length === 1 && drawn[0]?.length === 1;
}

/**
 * Each part less its holes, then all parts together; null when the drawn rings say the same already:
 * every hole inside its outline and apart from the others, every part apart from the others.
 */
function coverOnce(drawn: readonly PlaneRings[]): PlaneRings[] | null {
  const pieces = drawn.map((rings) =>
    differenceOf(
      rings.slice(0, 1).map((ring) => [ring]),
      rings.slice(1).map((ring) => [ring]),
    ),
  );
  const whole = unionOf(pieces.flat());
  const areEqual = (a: readonly PlaneRings[], b: readonly PlaneRings[]) => {
    const areaM2 = planeAreaOf(a);
    return Math.abs(areaM2 - planeAreaOf(b)) <= 1e-6 * areaM2 + 1e-4;
  };
  const isSame =
    drawn.every((rings, i) => areEqual(pieces[i] ?? [], [rings])) && areEqual(whole, pieces.flat());
  return isSame ? null : whole;
}
