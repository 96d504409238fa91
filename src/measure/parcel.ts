import { newZone } from '../yard/defaults';
import {
  type Issue,
  type Parcel,
  type Rings,
  type Yard,
  ZONE_KINDS,
  type Zone,
  type ZoneKind,
} from '../yard/types';
import { areaScale } from './areaScale';
import { bufferOf, differenceOf, intersectionOf, planeAreaOf, unionOf } from './clip';
import { areaOfPartsM2 } from './geodesic';
import { sharedLengthM } from './outline';
import { ringsToLonLat } from './plane';
import { boxesNear, boxOf, middleOfBox } from './planeBox';
import { layZone } from './planeZone';
import { LEAST_SLIP_M2 } from './slips';
import { findClashes } from './totals';
import type { LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from './types';
import { gradientOfParts, ownSigmaOfWhole, sigmaOfGradients } from './uncertainty';

/** Zones that share less border with a piece do not bound it, m. */
const LEAST_BORDER_M = 0.02;
/** Ground outside of less than this is the noise of the clipping grid, m² of the plane. */
const NOISE_M2 = 1e-4;

/** Ground of the property that belongs to no zone. */
export interface UnassignedPiece {
  /** by where it lies: the same for the same ground. */
  readonly id: string;
  readonly areaM2: number;
  readonly parts: readonly Rings[];
  /** the zones along it, longest border first. */
  readonly neighbourIds: readonly string[];
  /** nowhere wider than the gap that counts as a slip of drawing. */
  readonly isSliver: boolean;
}

/** Ground of a zone beyond the outline of the property. */
export interface OutsidePiece {
  readonly zoneId: string;
  readonly areaM2: number;
  readonly parts: readonly Rings[];
}

export interface KindInside {
  readonly kind: ZoneKind;
  readonly count: number;
  /** ground inside the outline, each square metre once. */
  readonly areaM2: number;
}

/** The account of a property: every square metre inside its outline is of a kind, or listed. */
export interface ParcelCheck {
  readonly parcelM2: number;
  /** one standard deviation of the area of the outline itself, m². */
  readonly sigmaM2: number;
  readonly kinds: readonly KindInside[];
  /** pieces of 0.01 m² or more, largest first. */
  readonly unassigned: readonly UnassignedPiece[];
  /** all unassigned ground, also pieces too small to list. */
  readonly unassignedM2: number;
  readonly unassignedSigmaM2: number;
  /** 0.01 m² or more, largest first. */
  readonly outside: readonly OutsidePiece[];
  /** ground inside that two zones of one kind both claim, counted once in `kinds`. */
  readonly overlapsM2: number;
  /** parcel less kinds less unassigned: the noise of reckoning, under 1e-6 of the parcel. */
  readonly balanceM2: number;
  /** why the outline cannot be measured; then all areas are 0. */
  readonly issues: readonly Issue[];
}

/** The outline of the property in the guise of a zone, for what works on zones; kept for the parcel. */
export function parcelAsZone(parcel: Parcel): Zone {
  const kept = guises.get(parcel);
  if (kept) return kept;
  const { parts, curves, survey } = parcel;
  const made = newZone('parcel', 'other', parts, { name: 'Outline of the property', curves, survey });
  guises.set(parcel, made);
  return made;
}
const guises = new WeakMap<Parcel, Zone>();

/**
 * Holds the zones against the outline of the property: what is inside, by kind; what belongs to no
 * zone; what lies beyond. Areas are geodesic, at the yard's elevation; zones without a place do not count.
 * @returns null when the yard has no outline
 */
export function checkParcel(yard: Yard, measured: MeasuredYard): ParcelCheck | null {
  if (yard.parcel === null) return null;
  const { plane } = measured;
  const scale = areaScale(yard.settings.elevationM);
  const guise = parcelAsZone(yard.parcel);
  const laid = layZone(guise, plane);
  if (!laid.isSound) return { ...NOTHING, issues: laid.issues };
  const areaOf = (parts: readonly PlaneRings[]) =>
    scale * areaOfPartsM2(parts.map((rings) => ringsToLonLat(rings, plane)));
  const toRings = (parts: readonly PlaneRings[]) => parts.map((rings) => ringsToLonLat(rings, plane));

  const placed = yard.zones.filter((zone) => zone.isPlaced && measured.zones.has(zone.id));
  const outside: OutsidePiece[] = [];
  const inside = new Map<Zone, { readonly own: MeasuredZone; readonly areaM2: number }>();
  for (const zone of placed) {
    const own = measured.zones.get(zone.id);
    if (!own || own.netPlaneParts.length === 0) continue;
    const beyond = differenceOf(own.netPlaneParts, laid.parts);
    const beyondM2 = planeAreaOf(beyond) > NOISE_M2 ? areaOf(beyond) : 0;
    if (beyondM2 >= LEAST_SLIP_M2)
      outside.push({ zoneId: zone.id, areaM2: beyondM2, parts: toRings(beyond) });
    inside.set(zone, { own, areaM2: own.netM2 - beyondM2 });
  }
  let overlapsM2 = 0;
  const kinds = ZONE_KINDS.flatMap((kind): KindInside[] => {
    const own = [...inside].filter(([zone, { areaM2 }]) => zone.kind === kind && areaM2 > 0);
    if (own.length === 0) return [];
    const sumM2 = own.reduce((sum, [, { areaM2 }]) => sum + areaM2, 0);
    const clashes = findClashes(own.map(([, one]) => one.own));
    const areaM2 =
      clashes.length === 0
        ? sumM2
        : areaOf(intersectionOf(laid.parts, unionOf(own.flatMap(([, one]) => one.own.netPlaneParts))));
    overlapsM2 += Math.max(0, sumM2 - areaM2);
    return [{ kind, count: own.length, areaM2 }];
  });

  const box = boxOf(laid.parts);
  const covers = [...inside.values()].flatMap(({ own }) => own.netPlaneParts);
  const near = covers.filter((rings) => boxesNear(box, boxOf([rings]), 0));
  const free = near.length === 0 ? laid.parts : differenceOf(laid.parts, unionOf(near));
  const pieces = free.map((rings) => pieceOf(rings, placed, yard, plane, areaOf([rings])));
  const unassignedM2 = pieces.reduce((sum, piece) => sum + piece.areaM2, 0);
  const parcelM2 = scale * areaOfPartsM2(laid.lonLatParts);
  const linear = Math.sqrt(scale);
  const gradient = gradientOfParts(free, [...placed, guise], plane);
  return {
    parcelM2,
    sigmaM2: linear * ownSigmaOfWhole(laid.parts, guise, plane),
    kinds,
    unassigned: pieces.filter((piece) => piece.areaM2 >= LEAST_SLIP_M2).sort((a, b) => b.areaM2 - a.areaM2),
    unassignedM2,
    unassignedSigmaM2: sigmaOfGradients([gradient], linear),
    outside: outside.sort((a, b) => b.areaM2 - a.areaM2),
    overlapsM2,
    balanceM2: parcelM2 - unassignedM2 - kinds.reduce((sum, { areaM2 }) => sum + areaM2, 0),
    issues: laid.issues,
  };
}

const NOTHING: ParcelCheck = {
  parcelM2: 0,
  sigmaM2: 0,
  kinds: [],
  unassigned: [],
  unassignedM2: 0,
  unassignedSigmaM2: 0,
  outside: [],
  overlapsM2: 0,
  balanceM2: 0,
  issues: [],
};

function pieceOf(
  rings: PlaneRings,
  placed: readonly Zone[],
  { settings }: Yard,
  plane: LocalPlane,
  areaM2: number,
): UnassignedPiece {
  const box = boxOf([rings]);
  const neighbourIds = placed
    .flatMap((zone) => {
      const laid = layZone(zone, plane);
      if (!boxesNear(box, laid.box, 1e-3)) return [];
      return { id: zone.id, borderM: sharedLengthM([rings], laid.parts) };
    })
    .filter(({ borderM }) => borderM >= LEAST_BORDER_M)
    .sort((a, b) => b.borderM - a.borderM)
    .map(({ id }) => id);
  const toleranceM = settings.gapToleranceM;
  const isSliver = toleranceM > 0 && planeAreaOf(bufferOf({ parts: [rings] }, -toleranceM * 0.52)) <= 1e-6;
  const [lon, lat] = plane.toLonLat(middleOfBox(box));
  const id = `free:${neighbourIds[0] ?? ''}:${lon.toFixed(7)},${lat.toFixed(7)}`;
  return { id, areaM2, parts: [ringsToLonLat(rings, plane)], neighbourIds, isSliver };
}
