import { replaceZone } from '../yard/edits';
import { isLockedZone, lockedIssue, lockedZone } from '../yard/locks';
import type { Yard, Zone, ZoneKind } from '../yard/types';
import { areaScale } from './areaScale';
import { bufferOf, closingOf, differenceOf, planeAreaOf, quickDifferenceOf } from './clip';
import { createCornerBook, insertCorners } from './corners';
import { coveredGround } from './coveredGround';
import { dropStaleCurves } from './curves';
import { areaOfPartsM2 } from './geodesic';
import { nameInText } from './nameInText';
import { sharedLengthM } from './outline';
import { ringsToLonLat, ringsToPlane } from './plane';
import { boxesNear, boxOf, middleOfBox } from './planeBox';
import { layZone, type PlaneZone } from './planeZone';
import { joinParts, type ShapeResult } from './shapes';
import { clashesOf } from './totals';
import type { LocalPlane, MeasuredYard, PlaneRings, Slip } from './types';

/** Slips smaller than this are drawing noise, m². */
export const LEAST_SLIP_M2 = 0.01;
/** A neighbour of a gap shares at least this much of its outline, m. */
const LEAST_BORDER_M = 0.02;
/** Kinds that a gap is joined to before any other. */
const SOFT: readonly ZoneKind[] = ['turf', 'bed', 'other'];

/**
 * Slips of drawing: overlaps of two zones of one kind where neither cuts the other, and gaps between
 * two or more neighbours, nowhere wider than `settings.gapToleranceM`, that no zone covers.
 * Slips under 0.01 m² are left out. In order: overlaps by list order, then gaps, largest first.
 */
export function findSlips(yard: Yard, measured: MeasuredYard): Slip[] {
  return [...findOverlaps(yard, measured), ...findGaps(yard, measured)];
}

function findOverlaps(yard: Yard, measured: MeasuredYard): Slip[] {
  const found: Slip[] = [];
  const scale = areaScale(yard.settings.elevationM);
  for (const { a, b, overlap } of clashesOf(yard.zones, measured)) {
    if (overlap.planeAreaM2 < LEAST_SLIP_M2 / 2) continue;
    const parts = overlap.parts.map((rings) => ringsToLonLat(rings, measured.plane));
    const areaM2 = scale * areaOfPartsM2(parts);
    if (areaM2 < LEAST_SLIP_M2) continue;
    const zoneIds = [a.zoneId, b.zoneId] as const;
    found.push({ type: 'overlap', id: `overlap:${zoneIds.join(':')}`, zoneIds, areaM2, parts });
  }
  const place = new Map(yard.zones.map((zone, i) => [zone.id, i]));
  const placeOf = (slip: Slip, end: number) => place.get(slip.zoneIds[end] ?? '') ?? 0;
  return found.sort((a, b) => placeOf(a, 0) - placeOf(b, 0) || placeOf(a, 1) - placeOf(b, 1));
}

function findGaps(yard: Yard, measured: MeasuredYard): Slip[] {
  const toleranceM = yard.settings.gapToleranceM;
  if (!(toleranceM > 0)) return [];
  const scale = areaScale(yard.settings.elevationM);
  const placed = yard.zones.filter((zone) => zone.isPlaced);
  const laid = placed.flatMap((zone) => {
    const one = layZone(zone, measured.plane);
    return one.isSound ? [one] : [];
  });
  const zoneOf = new Map(placed.map((zone) => [layZone(zone, measured.plane), zone.id]));
  const covered = coveredGround(laid);
  const closed = gainOf(closingOf(covered, toleranceM / 2), covered);
  const gaps: Slip[] = [];
  for (const found of closed) {
    if (planeAreaOf([found]) < LEAST_SLIP_M2) continue;
    // Nowhere wider than the tolerance: shrunk by a little more than half of it, nothing is left.
    if (planeAreaOf(bufferOf({ parts: [found] }, -toleranceM * 0.52)) > 1e-6) continue;
    const box = boxOf([found]);
    const near = laid.filter((one) => boxesNear(box, one.box, 1e-3));
    for (const gap of lessZones([found], near)) {
      if (planeAreaOf([gap]) < LEAST_SLIP_M2) continue;
      const zoneIds = near
        .filter((one) => sharedLengthM([gap], one.parts) >= LEAST_BORDER_M)
        .flatMap((one) => zoneOf.get(one) ?? []);
      if (zoneIds.length < 2) continue;
      const parts = [ringsToLonLat(gap, measured.plane)];
      const [lon, lat] = measured.plane.toLonLat(middleOfBox(boxOf([gap])));
      const id = `gap:${zoneIds.join(':')}:${lon.toFixed(7)},${lat.toFixed(7)}`;
      gaps.push({ type: 'gap', id, zoneIds, areaM2: scale * areaOfPartsM2(parts), parts });
    }
  }
  return gaps.sort((a, b) => b.areaM2 - a.areaM2);
}

/**
 * What a closing added. Where it kept all of the ground, the gain has the area by which it grew; else
 * (sharp corners lost their points) the difference is proved in the longer way.
 */
function gainOf(closing: readonly PlaneRings[], ground: readonly PlaneRings[]): readonly PlaneRings[] {
  const gain = quickDifferenceOf(closing, ground);
  const miss = planeAreaOf(gain) + planeAreaOf(ground) - planeAreaOf(closing);
  return Math.abs(miss) < LEAST_SLIP_M2 / 10 ? gain : differenceOf(closing, ground);
}

/** Ground less each of the zones, one after the other, so that none of it lies under any. */
function lessZones(ground: readonly PlaneRings[], zones: readonly PlaneZone[]): readonly PlaneRings[] {
  return zones.reduce((left, zone) => (left.length > 0 ? differenceOf(left, zone.parts) : left), ground);
}

/**
 * Mends a slip: the earlier drawn zone loses an overlap; a gap goes to the neighbour with the longest
 * border on it, turf, bed or other before structure, water or hardscape.
 * @returns the new document; or why it stays as it is: `slip-gone` when the slip is no longer there,
 * `mend-zone-covered` when nothing of the earlier zone would be left
 */
export function mendSlip(yard: Yard, slip: Slip, measured: MeasuredYard): ShapeResult {
  const { plane } = measured;
  const ground = slip.parts.map((rings) => ringsToPlane(rings, plane));
  if (slip.type === 'overlap') {
    const [earlier, later] = yard.zones.filter((zone) => slip.zoneIds.includes(zone.id));
    if (!earlier || !later) return gone(slip);
    if (isLockedZone(earlier)) return { ok: false, issue: lockedIssue(earlier) };
    const before = layZone(earlier, plane).parts;
    const left = differenceOf(before, layZone(later, plane).parts).filter(isGround);
    if (planeAreaOf(before) - planeAreaOf(left) < LEAST_SLIP_M2 / 2) return gone(slip);
    if (left.length === 0) {
      const message = `${nameInText(later, 'start')} covers all of ${nameInText(earlier)}, so nothing of it would be left. Delete one of the two, or join them.`;
      return refuse('mend-zone-covered', message, earlier.id, slip);
    }
    return { ok: true, yard: reshape(yard, earlier, left, plane) };
  }
  const owner = ownerOf(yard, slip.zoneIds, ground, plane);
  if (!owner) {
    const locked = lockedZone(yard.zones, slip.zoneIds);
    return locked ? { ok: false, issue: lockedIssue(locked) } : gone(slip);
  }
  const before = layZone(owner, plane).parts;
  const box = boxOf(ground);
  const near = yard.zones
    .flatMap((zone) => (zone.isPlaced ? layZone(zone, plane) : []))
    .filter((one) => boxesNear(box, one.box, 0));
  const free = lessZones(ground, near);
  if (planeAreaOf(free) < LEAST_SLIP_M2 / 2) return gone(slip);
  return { ok: true, yard: reshape(yard, owner, joinParts(before, free).filter(isGround), plane) };
}

function gone(slip: Slip): ShapeResult {
  const what = slip.type === 'overlap' ? 'overlap' : 'gap';
  return refuse('slip-gone', `This ${what} is no longer there.`, slip.zoneIds[0], slip);
}

function refuse(code: string, message: string, zoneId: string | undefined, slip: Slip): ShapeResult {
  const position = slip.parts[0]?.[0]?.[0];
  return { ok: false, issue: { code, severity: 'warning', message, place: { zoneId, position } } };
}

function isGround(rings: PlaneRings): boolean {
  return planeAreaOf([rings]) >= 1e-4;
}

function ownerOf(
  yard: Yard,
  zoneIds: readonly string[],
  ground: readonly PlaneRings[],
  plane: LocalPlane,
): Zone | undefined {
  return yard.zones
    .filter((zone) => zoneIds.includes(zone.id) && !isLockedZone(zone))
    .map((zone) => ({
      zone,
      isSoft: SOFT.includes(zone.kind),
      borderM: sharedLengthM(ground, layZone(zone, plane).parts),
    }))
    .filter((one) => one.borderM > 0)
    .sort((a, b) => Number(b.isSoft) - Number(a.isSoft) || b.borderM - a.borderM)[0]?.zone;
}

function reshape(yard: Yard, zone: Zone, planeParts: readonly PlaneRings[], plane: LocalPlane): Yard {
  const book = createCornerBook(yard.zones, plane);
  const made = replaceZone(yard, dropStaleCurves({ ...zone, parts: book.toRings(planeParts) }));
  return insertCorners(made, book.added(), plane, [zone.id]);
}
