import type { Issue, MarkKind, Position, Ring, Yard, Zone, ZoneKind } from '../yard/types';

/** One file as it was dropped or picked. */
export interface NamedFile {
  readonly name: string;
  readonly blob: Blob;
}

/** One feature as it stood in the file, kept as text so that a large file takes no more room than itself. */
export interface SourceFeature {
  /** JSON of a GeoJSON Feature; coordinates as in the file, of whatever reference system. */
  readonly text: string;
  /** folder, layer or file it stood in; '' when the file has none. */
  readonly layer: string;
  /** where it stood, in words: "Feature 4", "Track 2", "Lines 2 to 7". */
  readonly place: string;
  /** why its coordinates cannot be used, found by the reader. */
  readonly fault?: string;
}

/** Where a reader puts what it finds. */
export interface FeatureSink {
  add(feature: SourceFeature): void;
  tell(issue: Issue): void;
  /** reference system named by the file: WKT or "EPSG:n"; null: longitude and latitude, WGS 84. */
  setCrs(text: string | null): void;
  /** a whole yard of this program. */
  setYard(yard: Yard): void;
  /** share of the file read, 0 to 1. */
  progress(share: number): void;
}

/** What a feature may come in as. */
export type TargetKind = ZoneKind | MarkKind | 'parcel';

/** What becomes of one feature. `offered`: comes in only when the person ticks it. */
export type Outcome = 'zone' | 'parcel' | 'mark' | 'offered' | 'kept' | 'refused';

/** West, south, east, north in degrees. */
export type Box = readonly [number, number, number, number];

/** One feature judged: what it would come in as, and what was found about it. */
export interface Candidate {
  readonly outcome: Outcome;
  readonly kind: TargetKind;
  readonly name: string;
  readonly corners: number;
  /** ground of the drawn outline, m², to about 0.01 %; 0 for points. */
  readonly areaM2: number;
  readonly box: Box | null;
  /** what was mended, suspected or wrong. */
  readonly notes: readonly Issue[];
}

/** A candidate with its shape: zones and lots have parts, marks a position. */
export interface Judged extends Candidate {
  readonly parts: readonly (readonly Ring[])[];
  readonly position: Position | null;
  /** corner error found from the data itself (a walk), metres; null when none is known. */
  readonly sigmaM: number | null;
  readonly method: Zone['survey']['method'];
  /** false: a zone of size alone, without a place on the ground. */
  readonly isPlaced: boolean;
}

/** How ground wound more than once counts when a crossing outline is mended. */
export type FillChoice = 'non-zero' | 'even-odd';

/** What the person decides for the whole file. */
export interface ImportRules {
  /** reference system of the coordinates: WKT or "EPSG:n"; null: degrees. */
  readonly crs: string | null;
  /** first number is latitude. */
  readonly isSwapped: boolean;
  readonly fill: FillChoice;
  /** a line whose ends are this near is closed without asking, m; or within 2 % of its length. */
  readonly closeGapM: number;
  /** rows of a table: corners of shapes or single points. */
  readonly csvRows: 'auto' | 'corners' | 'points';
  /** outlines that the open yard has already are not ticked; false for a new yard. */
  readonly checksTwins: boolean;
}

/** The rules before the person changes any. */
export const FIRST_RULES: ImportRules = {
  crs: null,
  isSwapped: false,
  fill: 'non-zero',
  closeGapM: 1,
  csvRows: 'auto',
  checksTwins: true,
};
/** Lines are closed when the gap is under this share of their length. */
export const CLOSE_SHARE = 0.02;
/** At most so many zones and corners come in at once. */
export const MOST_ZONES = 500;
export const MOST_CORNERS = 20_000;
/** A zone with more corners is thinned. */
export const MOST_CORNERS_OF_ZONE = 2_000;

/** An issue of an import. */
export function importIssue(
  code: string,
  severity: Issue['severity'],
  message: string,
  place: Issue['place'] = {},
): Issue {
  return { code, severity, message, place };
}
