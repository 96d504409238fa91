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

/** A drain, a well or water, and how far it is. */
export interface NearSource {
  readonly sourceId: string;
  readonly sourceKind: NoApplyStrip['sourceKind'];
  readonly distanceM: number;
}

/** A walkable stretch of hardscape edge that product can reach. */
export interface RinseEdge {
  /** 1, 2, 3 … in the order walked. */
  readonly number: number;
  readonly hardscapeId: string;
  readonly hardscapeName: string;
  readonly material: Material | null;
  /** the treated zones within reach of the stretch. */
  readonly zoneIds: readonly string[];
  /** geodesic length, m. */
  readonly lengthM: number;
  /** in the direction of the walk. */
  readonly line: readonly Position[];
  readonly planeLine: readonly XY[];
  /** hardscape within reach behind the stretch, geodesic m²; ground of two stretches counts once: for one that is kept dry (`near`), else for the first. Worked out when first asked for. */
  readonly bandM2: number;
  /** what rinsing it takes; null: no water goes there (`near`), or the hose's flow is not told. */
  readonly water: { readonly seconds: number; readonly litres: number } | null;
  /** the nearest drain, well or water where the stretch lies within its strip width, or within 3 m; or null. */
  readonly near: NearSource | null;
  /** where treated ground falls toward the hardscape; null: nowhere, or the fall is not told. */
  readonly downhill: {
    /** so much of the stretch, m. */
    readonly lengthM: number;
    /** steepest zone beside it, rise over run. */
    readonly slope: number;
    /** what lies down the fall within 30 m of the stretch, the nearest; null: nothing. */
    readonly leadsTo: NearSource | null;
  } | null;
  readonly treatment: 'rinse-toward-turf' | 'sweep-then-rinse';
  /** a product that reaches it stains, by its label or by its iron. */
  readonly stains: boolean;
}
