import { ZONE_KINDS, type Zone } from '../yard/types';
import { differenceOf, intersectionOf, planeAreaOf } from './clip';
import { findNear } from './findNear';
import { areaOfPartsM2 } from './geodesic';
import { ringsToLonLat } from './plane';
import { type Box, boxOf } from './planeBox';
import type { KindTotal, LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from './types';
import { planeVarianceOf, updateVariance } from './uncertainty';

/** Overlaps smaller than this are noise of the clipping grid, m² of the plane. */
const NOISE_M2 = 1e-4;

/** Ground that two zones both claim, in the plane. */
export interface Overlap {
  readonly parts: readonly PlaneRings[];
  /** in the plane, m². */
  readonly planeAreaM2: number;
}

const NONE: Overlap = { parts: [], planeAreaM2: 0 };
const overlaps = new WeakMap<MeasuredZone, WeakMap<MeasuredZone, Overlap>>();

/** Ground that two zones of one kind both claim. Kept for the pair of measured zones. */
export function overlapOf(a: MeasuredZone, b: MeasuredZone): Overlap {
  const kept = overlaps.get(a)?.get(b);
  if (kept) return kept;
  const parts = intersectionOf(a.netPlaneParts, b.netPlaneParts);
  const made = parts.length === 0 ? NONE : { parts, planeAreaM2: planeAreaOf(parts) };
  const row = overlaps.get(a) ?? new WeakMap<MeasuredZone, Overlap>();
  row.set(b, made);
  overlaps.set(a, row);
  return made;
}

/** Pairs of the zones, as listed, that overlap by more than the noise of the grid. */
export function findClashes(
  zones: readonly MeasuredZone[],
): { readonly a: MeasuredZone; readonly b: MeasuredZone; readonly overlap: Overlap }[] {
  const near = findNear(zones.map(netBoxOf), 0);
  return zones.flatMap((a, i) =>
    (near[i] ?? []).flatMap((j) => {
      const b = zones[j];
      if (!b || j < i) return [];
      const overlap = overlapOf(a, b);
      return overlap.planeAreaM2 > NOISE_M2 ? [{ a, b, overlap }] : [];
    }),
  );
}

interface Kept {
  readonly zones: readonly MeasuredZone[];
  readonly plane: LocalPlane;
  readonly planeVariance: number;
}
const sources = new WeakMap<KindTotal, Kept>();

/**
 * Totals of the kinds that occur, in the order of ZONE_KINDS; ground under two zones of one kind counts
 * once. A total whose measured zones are the same objects is taken over from `previous`.
 */
export function totalsByKind(
  zones: readonly Zone[],
  measured: ReadonlyMap<string, MeasuredZone>,
  plane: LocalPlane,
  scale: number,
  previous?: MeasuredYard,
): KindTotal[] {
  return ZONE_KINDS.flatMap((kind) => {
    const ids = zones.filter((zone) => zone.kind === kind).map((zone) => zone.id);
    const each = ids.map((id) => measured.get(id)).filter((zone) => zone !== undefined);
    if (each.length === 0) return [];
    const before = previous?.totals.find((total) => total.kind === kind);
    const from = before && sources.get(before);
    if (before && from?.plane === plane && areSame(from.zones, each)) return [before];
    const netM2 = groundOf(each, plane, scale);
    const planeVariance =
      from?.plane === plane ? updateVariance(from.planeVariance, from.zones, each) : planeVarianceOf(each);
    const netSigmaM2 = Math.sqrt(scale * planeVariance);
    const total: KindTotal = { kind, count: each.length, netM2, netSigmaM2 };
    sources.set(total, { zones: each, plane, planeVariance });
    return [total];
  });
}

function areSame(a: readonly MeasuredZone[], b: readonly MeasuredZone[]): boolean {
  return a.length === b.length && a.every((zone, i) => zone === b[i]);
}

/**
 * Ground of the zones, each zone less those after it that it clashes with. Not the union of all at once:
 * on pieces that abut within the grid's rounding the clipping library's union errs by up to 2 % of the
 * area in about 2 of 1,000 random yards, its differences in none of 3,000.
 */
function groundOf(zones: readonly MeasuredZone[], plane: LocalPlane, scale: number): number {
  const later = new Map<MeasuredZone, MeasuredZone[]>();
  for (const { a, b } of findClashes(zones)) later.set(a, [...(later.get(a) ?? []), b]);
  let sum = 0;
  for (const zone of zones) {
    const over = later.get(zone);
    if (!over) {
      sum += zone.netM2;
      continue;
    }
    const left = over.reduce<readonly PlaneRings[]>(
      (parts, other) => differenceOf(parts, other.netPlaneParts),
      zone.netPlaneParts,
    );
    sum += scale * areaOfPartsM2(left.map((rings) => ringsToLonLat(rings, plane)));
  }
  return sum;
}

const boxes = new WeakMap<MeasuredZone, Box>();

function netBoxOf(zone: MeasuredZone): Box {
  const kept = boxes.get(zone);
  if (kept) return kept;
  const box = boxOf(zone.netPlaneParts);
  boxes.set(zone, box);
  return box;
}
