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
    findClashes(
      zones.flatMap((zone) => (zone.kind === kind && zone.isPlaced && measured.zones.get(zone.id)) || []),
    ),
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
    const each: MeasuredZone[] = [];
    const placed: MeasuredZone[] = [];
    for (const zone of zones) {
      const own = zone.kind === kind ? measured.get(zone.id) : undefined;
      if (!own) continue;
      each.push(own);
      if (zone.isPlaced) placed.push(own);
    }
    if (each.length === 0) return [];
    const before = previous?.totals.find((total) => total.kind === kind);
    const from = before && sources.get(before);
    if (before && from?.plane === plane && areSame(from.zones, each)) return [before];
    const clashes = findClashes(placed);
    const hasClashes = clashes.length > 0;
    let netM2: number;
    let planeVariance: number;
    if (hasClashes) {
      const added = piecesOf(each, clashes, orderOf(zones), plane, scale);
      netM2 = scale * added.reduce((sum, piece) => sum + piece.areaM2, 0);
      planeVariance = varianceOfGradients(added.map(({ gradient }) => gradient));
    } else {
      netM2 = each.reduce((sum, zone) => sum + zone.netM2, 0);
      planeVariance =
        from?.plane === plane && !from.hasClashes
          ? updateVariance(from.planeVariance, from.zones, each)
          : planeVarianceOf(each);
    }
    const [only] = each;
    const netSigmaM2 = only && each.length === 1 ? only.netSigmaM2 : Math.sqrt(scale * planeVariance);
    const total: KindTotal = { kind, count: each.length, netM2, netSigmaM2 };
    sources.set(total, { zones: each, plane, planeVariance, hasClashes });
    return [total];
  });
}

function areSame(a: readonly MeasuredZone[], b: readonly MeasuredZone[]): boolean {
  return a.length === b.length && a.every((zone, i) => zone === b[i]);
}

/** What one zone adds to a total: ground on the ellipsoid (no elevation yet) and its gradient. */
interface Piece {
  readonly areaM2: number;
  readonly gradient: Gradient;
}
/** Pieces by their zone; good while its rivals are the same objects in the same order. */
const pieces = new WeakMap<MeasuredZone, { rivals: readonly MeasuredZone[]; piece: Piece }>();

/** Each zone less those after it that it clashes with: together their ground once, and its gradient. */
function piecesOf(
  zones: readonly MeasuredZone[],
  clashes: readonly Clash[],
  order: ReadonlyMap<Zone, number>,
  plane: LocalPlane,
  scale: number,
): Piece[] {
  const place = new Map(zones.map((zone, i) => [zone, i]));
  const placeOf = (zone: MeasuredZone) => place.get(zone) ?? 0;
  const rivalsOf = new Map<MeasuredZone, MeasuredZone[]>();
  for (const { a, b } of clashes) {
    rivalsOf.set(a, [...(rivalsOf.get(a) ?? []), b]);
    rivalsOf.set(b, [...(rivalsOf.get(b) ?? []), a]);
  }
  return zones.map((zone) => {
    const rivals = rivalsOf.get(zone);
    if (!rivals) return { areaM2: zone.netM2 / scale, gradient: zone.gradient };
    // The zone stands among its rivals, so that a change of their order is a change of the list.
    const all = [zone, ...rivals].sort((a, b) => placeOf(a) - placeOf(b));
    const kept = pieces.get(zone);
    if (kept && areSame(kept.rivals, all)) return kept.piece;
    const parts = all
      .slice(all.indexOf(zone) + 1)
      .reduce<readonly PlaneRings[]>(
        (left, other) => differenceOf(left, other.netPlaneParts),
        zone.netPlaneParts,
      );
    // A border between two pieces belongs to the same corners from either side, so that it cancels.
    const bounds = [...new Set(all.flatMap(sourcesOf))].sort(
      (a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0),
    );
    const areaM2 = areaOfPartsM2(parts.map((rings) => ringsToLonLat(rings, plane)));
    const piece: Piece = { areaM2, gradient: gradientOfParts(parts, bounds, plane) };
    pieces.set(zone, { rivals: all, piece });
    return piece;
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
