import type { Issue, Position, Rings, ZoneKind } from '../yard/types';

/** A point of the local plane, metres east and north of its origin. */
export type XY = readonly [number, number];
/** Rings in the plane: outer first, then holes; closed. */
export type PlaneRings = readonly (readonly XY[])[];

/**
 * Metric plane round a yard: an affine map of (lon, lat), so an edge that is straight in the file
 * stays straight, and a point cut on it lies on it. Lengths at r metres north or south of the origin
 * err by r·tan|lat|/R, R the Earth's radius, because the parallels grow shorter: at 500 m by 7e-5 at
 * latitude 40, 1.4e-4 at 60, 9e-4 at 85. Use it for set operations and buffers, never for the areas shown (those are geodesic).
 */
export interface LocalPlane {
  readonly origin: Position;
  toPlane(p: Position): XY;
  toLonLat(p: XY): Position;
}

export interface CutBy {
  readonly zoneId: string;
  /** geodesic m² that the other zone takes from this one and no zone before it took. */
  readonly areaM2: number;
}

export interface MeasuredZone {
  readonly zoneId: string;
  readonly grossM2: number;
  readonly netM2: number;
  /** one standard deviation of the net area, m². */
  readonly netSigmaM2: number;
  /** length of the net outline, holes included, m. */
  readonly netPerimeterM: number;
  /** what is left after the cuts, [lon, lat]; empty when nothing is left. */
  readonly netParts: readonly Rings[];
  /** the same in the yard's plane; of a zone without a place in a plane round [0, 0]. */
  readonly netPlaneParts: readonly PlaneRings[];
  readonly cutBy: readonly CutBy[];
  /**
   * d(net area)/d(corner) in m, by corner: the key names a corner by its coordinates, so neighbours
   * that share a corner share its error; an error of scale stands under its source, as gx in m² with a
   * relative sigma. sigmaOfZones() sums them.
   */
  readonly gradient: ReadonlyMap<
    string,
    { readonly gx: number; readonly gy: number; readonly sigmaM: number }
  >;
}

/** Two zones of one kind on the same ground, or a sliver that no zone claims between neighbours. */
export type Slip =
  | {
      readonly type: 'overlap';
      readonly id: string;
      readonly zoneIds: readonly [string, string];
      readonly areaM2: number;
      readonly parts: readonly Rings[];
    }
  | {
      readonly type: 'gap';
      readonly id: string;
      readonly zoneIds: readonly string[];
      readonly areaM2: number;
      readonly parts: readonly Rings[];
    };

export interface KindTotal {
  readonly kind: ZoneKind;
  readonly count: number;
  /** ground covered once, m² (same-kind overlaps counted once). */
  readonly netM2: number;
  readonly netSigmaM2: number;
}

export interface MeasuredYard {
  readonly plane: LocalPlane;
  readonly zones: ReadonlyMap<string, MeasuredZone>;
  readonly totals: readonly KindTotal[];
  /**
   * errors: zones that cannot be measured (self-crossing, too few corners), absent from `zones`.
   * Warnings: zones measured with each square metre counted once (overlapping parts, holes reaching outside).
   */
  readonly issues: readonly Issue[];
}
