import { type Rings, ZONE_KINDS, type Zone } from '../yard/types';
import { intersectionOf, unionOf } from './clip';
import { areaOfPartsM2 } from './geodesic';
import { ringsToLonLat } from './plane';
import type { KindTotal, LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from './types';
import { sigmaOfZones } from './uncertainty';

/** Overlaps smaller than this are noise of the clipping grid, m². */
const NOISE_M2 = 1e-4;

const overlaps = new WeakMap<MeasuredZone, WeakMap<MeasuredZone, readonly PlaneRings[]>>();

/**
 * Ground that two zones of one kind both claim, in the plane; empty when there is none. Kept for the
 * pair of measured zones.
 */
export function overlapOf(a: MeasuredZone, b: MeasuredZone): readonly PlaneRings[] {
  const kept = overlaps.get(a)?.get(b);
  if (kept) return kept;
  const shared = boxesMeet(a, b) ? intersectionOf(a.netPlaneParts, b.netPlaneParts) : [];
  const row = overlaps.get(a) ?? new WeakMap<MeasuredZone, readonly PlaneRings[]>();
  row.set(b, shared);
  overlaps.set(a, row);
  return shared;
}

/** Totals of the kinds that occur, in the order of ZONE_KINDS; ground under two zones of one kind counts once. */
export function totalsByKind(
  zones: readonly Zone[],
  measured: ReadonlyMap<string, MeasuredZone>,
  plane: LocalPlane,
  scale: number,
): KindTotal[] {
  const yard: MeasuredYard = { plane, zones: measured, totals: [], issues: [] };
  return ZONE_KINDS.flatMap((kind) => {
    const ids = zones.filter((zone) => zone.kind === kind).map((zone) => zone.id);
    if (ids.length === 0) return [];
    const each = ids.map((id) => measured.get(id)).filter((zone) => zone !== undefined);
    const netM2 = groundOf(each, plane, scale);
    return [{ kind, count: ids.length, netM2, netSigmaM2: sigmaOfZones(yard, ids) }];
  });
}

function groundOf(zones: readonly MeasuredZone[], plane: LocalPlane, scale: number): number {
  const clashing = new Set<MeasuredZone>();
  zones.forEach((a, i) => {
    for (const b of zones.slice(i + 1)) {
      if (areaOfPartsM2(toLonLat(overlapOf(a, b), plane)) > NOISE_M2) clashing.add(a).add(b);
    }
  });
  const apart = zones.filter((zone) => !clashing.has(zone)).reduce((sum, zone) => sum + zone.netM2, 0);
  if (clashing.size === 0) return apart;
  const together = unionOf([...clashing].flatMap((zone) => zone.netPlaneParts));
  return apart + scale * areaOfPartsM2(toLonLat(together, plane));
}

function toLonLat(parts: readonly PlaneRings[], plane: LocalPlane): Rings[] {
  return parts.map((rings) => ringsToLonLat(rings, plane));
}

const boxes = new WeakMap<MeasuredZone, readonly [number, number, number, number]>();

function boxOf(zone: MeasuredZone): readonly [number, number, number, number] {
  const kept = boxes.get(zone);
  if (kept) return kept;
  const points = zone.netPlaneParts.flatMap((rings) => rings[0] ?? []);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  boxes.set(zone, box);
  return box;
}

function boxesMeet(a: MeasuredZone, b: MeasuredZone): boolean {
  const [ax0, ay0, ax1, ay1] = boxOf(a);
  const [bx0, by0, bx1, by1] = boxOf(b);
  return ax0 < bx1 && bx0 < ax1 && ay0 < by1 && by0 < ay1;
}
