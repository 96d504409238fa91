import type { Issue, Mark, Parcel, Position, Ring, UnitSystem, Yard, Zone } from '../yard/types';
import type { Box, ImportRules, Outcome, TargetKind } from './importTypes';
import type { ZonePrint } from './judgeFeature';

/** What the desk must know of the yard that is open. */
export interface DeskContext {
  readonly units: UnitSystem;
  /** where its zones lie; null for an empty yard. */
  readonly yardBox: Box | null;
  readonly zones: readonly ZonePrint[];
  /** outlines of the open yard for the sketch, degrees. */
  readonly outlines: readonly Ring[];
  /** where the map looks; null before it is up. */
  readonly view: Position | null;
  /** it goes into the open yard at first: what that has already is not ticked. */
  readonly checksTwins: boolean;
}

/** Which features are listed. */
export interface DeskFilter {
  /** part of a name or layer. */
  readonly text: string;
  readonly layer: string | null;
  readonly show: 'all' | 'usable' | 'ticked' | 'refused';
  /** only those that reach within so many metres of the yard, or of where the map looks; null: all. */
  readonly near: { readonly of: 'yard' | 'view'; readonly withinM: number } | null;
}

/** What is ticked, against what may come in at once. */
export interface DeskCounts {
  readonly zones: number;
  readonly marks: number;
  readonly hasParcel: boolean;
  readonly corners: number;
  readonly areaM2: number;
}

/** What was found in the files. */
export interface DeskOverview {
  readonly features: number;
  readonly byOutcome: Readonly<Record<Outcome, number>>;
  readonly layers: readonly { readonly name: string; readonly count: number }[];
  /** what concerns the files as wholes. */
  readonly issues: readonly Issue[];
  readonly rules: ImportRules;
  /** name of the reference system in use; null: degrees. */
  readonly crsName: string | null;
  /** the coordinates are no degrees and the system is not known: the person must name it. Holds an example. */
  readonly asksCrs: string | null;
  /** so many features look as if latitude and longitude were swapped. */
  readonly swapCount: number;
  readonly hasCrossings: boolean;
  readonly hasTable: boolean;
  /** the file is a whole yard of this program. */
  readonly yard: { readonly name: string; readonly products: number; readonly visits: number } | null;
  /** why fewer are ticked than could come in; '' when all are. */
  readonly tickWords: string;
  readonly counts: DeskCounts;
}

/** One line of the list. */
export interface DeskRow {
  readonly index: number;
  readonly place: string;
  readonly layer: string;
  readonly name: string;
  readonly outcome: Outcome;
  readonly kind: TargetKind;
  readonly isPoint: boolean;
  readonly corners: number;
  readonly areaM2: number;
  readonly isTicked: boolean;
  readonly notes: readonly Issue[];
}

/** A page of the list. */
export interface DeskPage {
  readonly total: number;
  readonly rows: readonly DeskRow[];
}

/** Paths for an SVG sketch, in px of its box. */
export interface DeskSketch {
  readonly yard: string;
  readonly ticked: string;
  readonly others: string;
  readonly points: readonly (readonly [number, number])[];
  /** not all are drawn. */
  readonly isPart: boolean;
}

/** What comes in, a batch of zones at a time. */
export interface BuiltBatch {
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  readonly parcel: Parcel | null;
  /** features kept as they came, for `extra.features`. */
  readonly kept: readonly unknown[];
  /** the document that a whole yard of this program brings, without its zones and marks. */
  readonly yard: Yard | null;
  readonly isLast: boolean;
}

/** How the chosen features are built. */
export interface BuildOptions {
  /** corner error for all that bring none of their own, m. */
  readonly vertexSigmaM: number;
  readonly source: string;
  readonly keepOthers: boolean;
}
