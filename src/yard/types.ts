/**
 * The yard document: the only stored truth. Everything a person sees is derived from it.
 * All quantities SI (m, m², kg, L, s, °C); positions are [longitude, latitude] in degrees, WGS 84.
 * Immutable: an edit makes a new document that shares every untouched part, so `===` tells what changed.
 */

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

/** A quantity of product: litres or kilograms. */
export type Amount =
  | { readonly unit: 'L'; readonly value: number }
  | { readonly unit: 'kg'; readonly value: number };

/** In what form a product is sold. */
export const PRODUCT_FORMS = [
  'ready-to-use',
  'liquid-concentrate',
  'soluble-powder',
  'granular',
  'seed',
  'mulch',
  'topdressing',
  'soil-amendment',
] as const;
/** One form of product. */
export type ProductForm = (typeof PRODUCT_FORMS)[number];

/** The nutrients of a label, in its order; P and K by the oxide convention. */
export const NUTRIENTS = ['N', 'P2O5', 'K2O'] as const;
/** One nutrient of a label. */
export type Nutrient = (typeof NUTRIENTS)[number];

/** The label rate, by the one basis the label uses. */
export type LabelRate =
  /** one pack (`packId`) covers `areaM2`. */
  | { readonly basis: 'area-per-container'; readonly areaM2: number; readonly packId: string }
  | { readonly basis: 'volume-per-area'; readonly rateLPerM2: number }
  | { readonly basis: 'mass-per-area'; readonly rateKgPerM2: number }
  | { readonly basis: 'nutrient-per-area'; readonly nutrient: Nutrient; readonly rateKgPerM2: number }
  | { readonly basis: 'depth'; readonly depthM: number };
/** One basis of a label rate. */
export type RateBasis = LabelRate['basis'];

/** One size in which a product is sold. */
export interface Pack {
  readonly id: string;
  /** what one full pack holds. */
  readonly content: Amount;
  /** price of one pack in the yard's currency; null when not known. */
  readonly price: number | null;
}

/** Percent by weight, as on the label: N, then P2O5 and K2O (oxide convention). */
export interface Analysis {
  readonly nPct: number;
  readonly p2o5Pct: number;
  readonly k2oPct: number;
  /** share of the nitrogen that is slow-release, 0 to 100 % of N; null when the label is silent. */
  readonly slowNPctOfN: number | null;
}

/** A product by its label, and what of it is on the shelf. */
export interface Product {
  readonly id: string;
  readonly name: string;
  readonly form: ProductForm;
  readonly analysis: Analysis;
  /** kg per litre; needed where mass and volume must be turned into each other; null when not known. */
  readonly densityKgPerL: number | null;
  readonly rate: LabelRate;
  readonly packs: readonly Pack[];
  /** water mixed in for each square metre, L/m²; null when none is mixed in (granules, ready-to-use). */
  readonly carrierLPerM2: number | null;
  /** true: the carrier figure is the whole spray liquid, product included; false: water added to the product. */
  readonly carrierIsTotal: boolean;
  /** how far beyond the aimed-at edge product lands, metres; 0 or more. */
  readonly spreadDistanceM: number;
  readonly stainsHardscape: boolean;
  readonly waterIn: boolean;
  /** limits printed on the label; null when the label is silent. Amounts are of product per m². */
  readonly limits: {
    readonly maxPerDose: Amount | null;
    readonly maxPerYear: Amount | null;
    readonly minIntervalDays: number | null;
    readonly maxDosesPerYear: number | null;
    readonly maxAirTempC: number | null;
  };
  /** packs on hand (may be a fraction for an opened one), by pack id. */
  readonly onHand: Readonly<Record<string, number>>;
  readonly note: string;
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

/** One product put out at a visit. */
export interface VisitDose {
  readonly id: string;
  readonly productId: string;
  /** multiplies the label rate; 1 is the label rate; more than 0. */
  readonly rateFactor: number;
  /** null: the visit's zones; else a choice of its own. */
  readonly zones: ZoneChoice | null;
}

/** One working day: what goes out, and where. */
export interface Visit {
  readonly id: string;
  readonly name: string;
  /** YYYY-MM-DD, or null when not yet set. */
  readonly date: string | null;
  readonly zones: ZoneChoice;
  /** in the order they go out. */
  readonly doses: readonly VisitDose[];
  /** what the sprayer's tank holds, litres; null: no tank. */
  readonly tankL: number | null;
  readonly note: string;
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
  readonly visits: readonly Visit[];
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
  readonly visitId?: string;
  readonly doseId?: string;
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
