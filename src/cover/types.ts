import type { MeasuredZone, PlaneRings, XY } from '../measure/types';
import type { Material, Position, Rings } from '../yard/types';

/** Ground of a treated zone that is left alone round a drain, a well or water. */
export interface NoApplyStrip {
  readonly zoneId: string;
  /** mark or water zone that asks for it. */
  readonly sourceId: string;
  readonly sourceKind: 'storm-drain' | 'well' | 'water';
  readonly widthM: number;
  /** geodesic m² of this strip inside the zone's net shape (strips of several sources may overlap). */
  readonly areaM2: number;
  readonly parts: readonly Rings[];
}

/** A zone's net shape with every strip taken off. */
export interface TreatedZone {
  readonly zoneId: string;
  readonly areaM2: number;
  readonly areaSigmaM2: number;
  /** how the treated area changes with the corners: for sums of zones, by sigmaOfGradients(). */
  readonly gradient: MeasuredZone['gradient'];
  /** all strips together, each square metre once. */
  readonly stripM2: number;
  readonly strips: readonly NoApplyStrip[];
  readonly parts: readonly Rings[];
  readonly planeParts: readonly PlaneRings[];
}

/** A walkable stretch of hardscape edge that product can reach. */
export interface RinseEdge {
  /** 1, 2, 3 … in the order listed. */
  readonly number: number;
  readonly hardscapeId: string;
  readonly hardscapeName: string;
  readonly material: Material | null;
  /** the treated zones within reach of the stretch. */
  readonly zoneIds: readonly string[];
  /** geodesic length, m. */
  readonly lengthM: number;
  readonly line: readonly Position[];
  readonly planeLine: readonly XY[];
  /** the nearest drain, well or water within its strip width of the stretch, or within 3 m; or null. */
  readonly near: {
    readonly sourceId: string;
    readonly sourceKind: NoApplyStrip['sourceKind'];
    readonly distanceM: number;
  } | null;
  readonly treatment: 'rinse-toward-turf' | 'sweep-then-rinse';
  readonly stains: boolean;
}
