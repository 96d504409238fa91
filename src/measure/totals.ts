import { ZONE_KINDS, type Zone } from '../yard/types';
import { differenceOf, intersectionOf, planeAreaOf } from './clip';
import { findNear } from './findNear';
import { areaOfPartsM2 } from './geodesic';
import { ringsToLonLat } from './plane';
import { type Box, boxOf } from './planeBox';
import type { KindTotal, LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from './types';
import {
  type Gradient,
  gradientOfParts,
  planeVarianceOf,
  sourcesOf,
  updateVariance,
  varianceOfGradients,
} from './uncertainty';

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

/** Two zones of one kind on the same ground. */
export interface Clash {
  readonly a: MeasuredZone;
  readonly b: MeasuredZone;
  readonly overlap: Overlap;
}

/**
 * Pairs of zones of one kind whose net ground overlaps by more than the noise of the grid: ground that a
 * visit to both would treat twice. Cheap after the first time: the overlap of a pair of measured zones is
 * kept. Zones that were not measured are passed over.
 */
export function clashesOf(zones: readonly Zone[], measured: MeasuredYard): Clash[] {
  return ZONE_KINDS.flatMap((kind) =>
    findClashes(zones.flatMap((zone) => (zone.kind === kind && measured.zones.get(zone.id)) || [])),
  );
}

/** Pairs of the zones, as listed, that overlap by more than the noise of the grid. */
export function findClashes(zones: readonly MeasuredZone[]): Clash[] {
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
  readonly hasClashes: boolean;
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
    const clashes = findClashes(each);
    const hasClashes = clashes.length > 0;
    let netM2: number;
    let planeVariance: number;
    if (hasClashes) {
      const pieces = piecesOf(each, clashes, orderOf(zones), plane);
      netM2 = pieces.reduce(
        (sum, { whole, parts }) =>
          sum + (whole?.netM2 ?? scale * areaOfPartsM2(parts.map((rings) => ringsToLonLat(rings, plane)))),
        0,
      );
      planeVariance = varianceOfGradients(pieces.map(({ gradient }) => gradient));
    } else {
      netM2 = each.reduce((sum, zone) => sum + zone.netM2, 0);
      planeVariance =
        from?.plane === plane && !from.hasClashes
          ? updateVariance(from.planeVariance, from.zones, each)
          : planeVarianceOf(each);
    }
    const netSigmaM2 = Math.sqrt(scale * planeVariance);
    const total: KindTotal = { kind, count: each.length, netM2, netSigmaM2 };
    sources.set(total, { zones: each, plane, planeVariance, hasClashes });
    return [total];
  });
}

function areSame(a: readonly MeasuredZone[], b: readonly MeasuredZone[]): boolean {
  return a.length === b.length && a.every((zone, i) => zone === b[i]);
}

/** Ground that one zone adds to a total. */
interface Piece {
  /** the zone, when it adds all of its net shape. */
  readonly whole?: MeasuredZone;
  readonly parts: readonly PlaneRings[];
  readonly gradient: Gradient;
}

/** Each zone less those after it that it clashes with: together their ground once, and its gradient. */
function piecesOf(
  zones: readonly MeasuredZone[],
  clashes: readonly Clash[],
  order: ReadonlyMap<Zone, number>,
  plane: LocalPlane,
): Piece[] {
  const later = new Map<MeasuredZone, MeasuredZone[]>();
  const all = new Map<MeasuredZone, MeasuredZone[]>();
  for (const { a, b } of clashes) {
    later.set(a, [...(later.get(a) ?? []), b]);
    all.set(a, [...(all.get(a) ?? []), b]);
    all.set(b, [...(all.get(b) ?? []), a]);
  }
  return zones.map((zone) => {
    const rivals = all.get(zone);
    if (!rivals) return { whole: zone, parts: zone.netPlaneParts, gradient: zone.gradient };
    const parts = (later.get(zone) ?? []).reduce<readonly PlaneRings[]>(
      (left, other) => differenceOf(left, other.netPlaneParts),
      zone.netPlaneParts,
    );
    // A border between two pieces belongs to the same corners from either side, so that it cancels.
    const bounds = [...new Set([zone, ...rivals].flatMap(sourcesOf))].sort(
      (a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0),
    );
    return { parts, gradient: gradientOfParts(parts, bounds, plane) };
  });
}

/** The one order of all zones: by kind, then by list. */
function orderOf(zones: readonly Zone[]): Map<Zone, number> {
  return new Map(zones.map((zone, i) => [zone, ZONE_KINDS.indexOf(zone.kind) * zones.length + i]));
}

const boxes = new WeakMap<MeasuredZone, Box>();

function netBoxOf(zone: MeasuredZone): Box {
  const kept = boxes.get(zone);
  if (kept) return kept;
  const box = boxOf(zone.netPlaneParts);
  boxes.set(zone, box);
  return box;
}
