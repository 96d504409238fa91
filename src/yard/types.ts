/**
 * The yard document: the only stored truth. Everything a person sees is derived from it.
 * All quantities SI (m, m², kg, L, s, °C); positions are [longitude, latitude] in degrees, WGS 84.
 * Immutable: an edit makes a new document that shares every untouched part, so `===` tells what changed.
 */

import type { Equipment } from './equipmentTypes';
import type { Product } from './productTypes';
import type {
  Climate,
  LocalRule,
  NutrientCaps,
  NutrientNeed,
  Override,
  Program,
  SoilTest,
  Visit,
} from './seasonTypes';

export * from './equipmentTypes';
export * from './productTypes';
export * from './seasonTypes';

/** [longitude, latitude] in degrees. */
export type Position = readonly [number, number];
/** Closed ring: 4 or more positions, first equal to last, any winding in memory. */
export type Ring = readonly Position[];
/** Outer ring first, then holes. */
export type Rings = readonly Ring[];

/** How quantities are shown and entered; what is stored is always SI. */
export type UnitSystem = 'us' | 'metric';

/** In the order in which they cut each other: an earlier kind takes its ground from every later one. */
export const ZONE_KINDS = ['structure', 'water', 'hardscape', 'bed', 'other', 'turf'] as const;
/** What a zone is: it decides what is cut by what, and what may be treated. */
export type ZoneKind = (typeof ZONE_KINDS)[number];

/** How short a turf is kept. */
export const MOWING_CLASSES = ['low-cut', 'regular'] as const;
/** One class of mowing. */
export type MowingClass = (typeof MOWING_CLASSES)[number];

/** What a hardscape is made of. */
export const MATERIALS = ['concrete', 'asphalt', 'pavers', 'stone', 'wood', 'gravel'] as const;
/** One material of hardscape. */
export type Material = (typeof MATERIALS)[number];

/** How the corners of a zone were found. It suggests `vertexSigmaM`; the person may change that. */
export const SURVEY_METHODS = ['traced', 'typed', 'tape', 'plat', 'walked', 'imported'] as const;
/** One way of finding corners. */
export type SurveyMethod = (typeof SURVEY_METHODS)[number];

/** How the corners of a zone were found, and how well. */
export interface Survey {
  readonly method: SurveyMethod;
  /** standard deviation of each corner's place, in each of x and y, metres; 0 or more. */
  readonly vertexSigmaM: number;
  /** relative standard deviation of the scale of what was measured by (picture, tape); 0: none. */
  readonly scaleSigma: number;
  /** what was measured by, in words: zones of one source share its scale error; empty: not told, and those of one method share it then. */
  readonly source: string;
}

/**
 * A curved stretch of an outline that stays editable. The ring holds the first and last of `points` and,
 * between them, the corners that `flattenCurve` makes of it; when they no longer agree the curve is
 * dropped and plain corners are left.
 */
export interface Curve {
  /** `arc`: circle through three points (start, on the way, end); `smooth`: spline through three or more. */
  readonly kind: 'arc' | 'smooth';
  readonly points: readonly Position[];
}

/** A piece of ground with one use. */
export interface Zone {
  readonly id: string;
  readonly name: string;
  readonly kind: ZoneKind;
  /** turf only; null elsewhere. */
  readonly mowing: MowingClass | null;
  /** hardscape only; null elsewhere. */
  readonly material: Material | null;
  readonly note: string;
  /** one entry a part (MultiPolygon); at least one. */
  readonly parts: readonly Rings[];
  readonly survey: Survey;
  /** curved stretches of the rings, in no order. */
  readonly curves: readonly Curve[];
  /** the user's word that this zone cuts earlier drawn zones of its own kind. */
  readonly cutsSameKind: boolean;
  /**
   * false: known by its size alone, without a place on the ground; its parts are degrees round [0, 0].
   * It is measured by itself, cuts nothing and is not drawn on the map.
   */
  readonly isPlaced: boolean;
  /** true: its outline cannot be changed or removed until unlocked. */
  readonly isLocked: boolean;
  /** rise over run, 0 or more; null: not given, taken as flat. */
  readonly slope: number | null;
  /** direction in which it falls, degrees clockwise from true north, 0 to <360; null: not told. */
  readonly downhillDeg: number | null;
  /** YYYY-MM-DD on which turf was sown or laid; null: established, or not told. */
  readonly plantedOn: string | null;
  /** unknown members of the feature and its properties, kept for the round trip. */
  readonly extra: Extra;
}

/** Single points that matter to an application: some keep a strip round them untreated. */
export const MARK_KINDS = ['storm-drain', 'well', 'hose-bib', 'gate'] as const;
/** One kind of mark. */
export type MarkKind = (typeof MARK_KINDS)[number];

/** A single point on the ground. */
export interface Mark {
  readonly id: string;
  readonly name: string;
  readonly kind: MarkKind;
  readonly position: Position;
  readonly extra: Extra;
}

/** The outline of the property: every square metre inside should belong to a zone. It is no zone itself. */
export interface Parcel {
  readonly name: string;
  /** one entry a part; at least one. */
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
  readonly survey: Survey;
  readonly extra: Extra;
}

/** Members of a file that this program does not know, by where they stood. */
export interface Extra {
  readonly feature?: Readonly<Record<string, unknown>>;
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** What a zone can be chosen by. */
export const ZONE_CLASSES = ['turf-low-cut', 'turf-regular', 'bed', 'other'] as const;
/** One class that zones can be chosen by. */
export type ZoneClass = (typeof ZONE_CLASSES)[number];

/** Zones of the classes, plus `include`, minus `exclude` (zone ids). Structure, water and hardscape are never treated. */
export interface ZoneChoice {
  readonly classes: readonly ZoneClass[];
  readonly include: readonly string[];
  readonly exclude: readonly string[];
}

/** Pixel (column right, row down) to plane metres (x east, y north): x = a·col + b·row + c, y = d·col + e·row + f. */
export type Affine = readonly [number, number, number, number, number, number];

/** How a picture of the person's own was set on the ground, kept so that it can be set anew. */
export interface PictureFit {
  readonly kind: 'similarity' | 'affine';
  /** `isOut`: kept in the list but left out of the fit. */
  readonly points: readonly {
    readonly pixel: readonly [number, number];
    readonly ground: Position;
    readonly isOut?: boolean;
  }[];
  readonly distances: readonly {
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
    readonly lengthM: number;
    readonly isOut?: boolean;
  }[];
  /** direction of true north in the picture, degrees clockwise from its top edge; null: not told. */
  readonly northDeg: number | null;
}

/** What lies under the drawing: plain grid, tiles, a map service or one picture; edges in degrees, WGS 84. */
export type BaseLayer =
  | { readonly kind: 'grid' }
  | {
      readonly kind: 'xyz';
      readonly id: string;
      readonly name: string;
      readonly url: string;
      readonly attribution: string;
      readonly maxNativeZoom: number;
    }
  | {
      readonly kind: 'wms';
      readonly id: string;
      readonly name: string;
      readonly url: string;
      readonly layers: string;
      readonly version: '1.1.1' | '1.3.0';
      readonly attribution: string;
    }
  | {
      /** a north-up picture placed by its edges in degrees. */
      readonly kind: 'picture';
      readonly id: string;
      readonly name: string;
      readonly url: string;
      readonly west: number;
      readonly south: number;
      readonly east: number;
      readonly north: number;
      readonly attribution: string;
    }
  | {
      /** a picture of the person's own, kept in this browser beside the yard and set on the ground by points or distances. */
      readonly kind: 'own-picture';
      readonly id: string;
      readonly name: string;
      readonly attribution: string;
      /** names the picture in the store of pictures. */
      readonly pictureId: string;
      readonly widthPx: number;
      readonly heightPx: number;
      /** where the plane of `toGround` has its origin. */
      readonly origin: Position;
      readonly toGround: Affine;
      /** 0 (unseen) to 1. */
      readonly opacity: number;
      /** standard deviation of a place read from the picture, in each of x and y, m, from the fit alone. */
      readonly sigmaM: number;
      /** relative standard deviation of its scale. */
      readonly scaleSigma: number;
      /** null: it came with its own position. */
      readonly fit: PictureFit | null;
      /** id of the base layer that shows under and round it; absent: the drafting paper. */
      readonly underId?: string;
    };

/** What holds for the whole yard; lengths in metres. */
export interface Settings {
  readonly units: UnitSystem;
  /** sign put before prices. */
  readonly currency: string;
  /** metres above the ellipsoid; null: areas on the ellipsoid itself. */
  readonly elevationM: number | null;
  /** widths left untreated round what must be spared, metres. Local code decides. */
  readonly strips: { readonly stormDrainM: number; readonly wellM: number; readonly waterM: number };
  /** the garden hose: its length, m, and what comes out of it with plain water, L/s; null: not told. */
  readonly hose: { readonly lengthM: number | null; readonly flowLPerS: number | null };
  /** length of the person's own step, heel to heel, m; null: not measured. */
  readonly stepM: number | null;
  readonly baseLayer: BaseLayer;
  /** base layers the user added. */
  readonly ownLayers: readonly BaseLayer[];
  /** length of a clear gap between neighbours that still counts as a drawing slip, metres. */
  readonly gapToleranceM: number;
  /** true: a drawing without a place on the Earth, laid round [0, 0]; its coordinates mean nothing outside. */
  readonly isLocal: boolean;
  /** true: the ground along the slope is shown beside the flat area of zones that have a slope. */
  readonly showSurface: boolean;
  /** true: doses go by the ground along the slope, where a zone has one; else by the flat area. */
  readonly doseBySurface: boolean;
}

/** The whole document. */
export interface Yard {
  readonly schemaVersion: number;
  readonly id: string;
  readonly name: string;
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  /** null: no outline of the property is drawn. */
  readonly parcel: Parcel | null;
  readonly products: readonly Product[];
  readonly equipment: readonly Equipment[];
  readonly visits: readonly Visit[];
  readonly soilTests: readonly SoilTest[];
  readonly needs: readonly NutrientNeed[];
  readonly climate: Climate;
  readonly programs: readonly Program[];
  readonly caps: NutrientCaps;
  readonly rules: readonly LocalRule[];
  readonly overrides: readonly Override[];
  readonly settings: Settings;
  /** unknown members of the file and of its `measuredYard` member. */
  readonly extra: {
    readonly collection?: Readonly<Record<string, unknown>>;
    readonly member?: Readonly<Record<string, unknown>>;
    /** features that are not zones or marks, kept as they came. */
    readonly features?: readonly unknown[];
  };
}

/** Where in the document or file something stands. */
export interface Place {
  readonly zoneId?: string;
  readonly markId?: string;
  readonly productId?: string;
  readonly equipmentId?: string;
  readonly visitId?: string;
  readonly doseId?: string;
  readonly soilTestId?: string;
  readonly needId?: string;
  readonly programId?: string;
  readonly ruleId?: string;
  /** path in a file or object, such as `features[3].geometry.coordinates[0]`. */
  readonly path?: string;
  readonly line?: number;
  readonly position?: Position;
}

/** What a person can cause is a list of these; a throw means a programmer's mistake. */
export interface Issue {
  /** stable, kebab-case. */
  readonly code: string;
  readonly severity: 'error' | 'warning' | 'note';
  /** one plain sentence for the person. */
  readonly message: string;
  readonly place: Place;
}
