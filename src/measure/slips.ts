import { replaceZone } from '../yard/edits';
import type { Yard, Zone, ZoneKind } from '../yard/types';
import { bufferOf, closingOf, differenceOf, planeAreaOf, unionOf } from './clip';
import { createCornerBook, insertCorners } from './corners';
import { areaOfPartsM2 } from './geodesic';
import { sharedLengthM } from './outline';
import { ringsToLonLat, ringsToPlane } from './plane';
import { boxesNear, boxOf, layZone } from './planeZone';
import { joinParts } from './shapes';
import { overlapOf } from './totals';
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
  yard.zones.forEach((zoneA, i) => {
    const a = measured.zones.get(zoneA.id);
    if (!a) return;
    for (let j = i + 1; j < yard.zones.length; j++) {
      const zoneB = yard.zones[j];
      const b = zoneB?.kind === zoneA.kind ? measured.zones.get(zoneB.id) : undefined;
      if (!b) continue;
      const parts = overlapOf(a, b).map((rings) => ringsToLonLat(rings, measured.plane));
      const areaM2 = areaOfPartsM2(parts);
      if (areaM2 < LEAST_SLIP_M2) continue;
      const zoneIds = [a.zoneId, b.zoneId] as const;
      found.push({ type: 'overlap', id: `overlap:${zoneIds.join(':')}`, zoneIds, areaM2, parts });
    }
  });
  return found;
}

function findGaps(yard: Yard, measured: MeasuredYard): Slip[] {
  const toleranceM = yard.settings.gapToleranceM;
  if (!(toleranceM > 0)) return [];
  const laid = yard.zones.flatMap((zone) => {
    const one = layZone(zone, measured.plane);
    return one.isSound ? [{ zone, parts: one.parts, box: one.box }] : [];
  });
  const covered = unionOf(laid.flatMap((one) => one.parts));
  const closed = differenceOf(closingOf(covered, toleranceM / 2), covered);
  const gaps: Slip[] = [];
  for (const gap of closed) {
    if (planeAreaOf([gap]) < LEAST_SLIP_M2) continue;
    // Nowhere wider than the tolerance: shrunk by a little more than half of it, nothing is left.
    if (planeAreaOf(bufferOf({ parts: [gap] }, -toleranceM * 0.52)) > 1e-6) continue;
    const box = boxOf([gap]);
    const zoneIds = laid
      .filter((one) => boxesNear(box, one.box, 1e-3) && sharedLengthM([gap], one.parts) >= LEAST_BORDER_M)
      .map((one) => one.zone.id);
    if (zoneIds.length < 2) continue;
    const parts = [ringsToLonLat(gap, measured.plane)];
    const [lon, lat] = measured.plane.toLonLat([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
    const id = `gap:${zoneIds.join(':')}:${lon.toFixed(7)},${lat.toFixed(7)}`;
    gaps.push({ type: 'gap', id, zoneIds, areaM2: areaOfPartsM2(parts), parts });
  }
  return gaps.sort((a, b) => b.areaM2 - a.areaM2);
}

/**
 * Mends a slip: the earlier drawn zone loses an overlap; a gap goes to the neighbour with the longest
 * border on it, turf, bed or other before structure, water or hardscape.
 * @returns the same document when the slip is no longer there
 */
export function mendSlip(yard: Yard, slip: Slip, measured: MeasuredYard): Yard {
  const { plane } = measured;
  const ground = slip.parts.map((rings) => ringsToPlane(rings, plane));
  if (slip.type === 'overlap') {
    const [earlier, later] = yard.zones.filter((zone) => slip.zoneIds.includes(zone.id));
    if (!earlier || !later) return yard;
    const cut = layZone(later, plane).parts;
    const left = differenceOf(layZone(earlier, plane).parts, cut);
    return reshape(yard, earlier, left, plane);
  }
  const owner = ownerOf(yard, slip.zoneIds, ground, plane);
  return owner ? reshape(yard, owner, joinParts(layZone(owner, plane).parts, ground), plane) : yard;
}

function ownerOf(
  yard: Yard,
  zoneIds: readonly string[],
  ground: readonly PlaneRings[],
  plane: LocalPlane,
): Zone | undefined {
  return yard.zones
    .filter((zone) => zoneIds.includes(zone.id))
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
  const parts = book.toRings(planeParts.filter((rings) => planeAreaOf([rings]) >= 1e-4));
  if (parts.length === 0) return { ...yard, zones: yard.zones.filter((one) => one.id !== zone.id) };
  const made = replaceZone(yard, { ...zone, parts });
  return insertCorners(made, book.added(), plane, [zone.id]);
}
