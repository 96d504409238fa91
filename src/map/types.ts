import type { DoseCoverage } from '../cover/passTypes';
import type { NoApplyStrip, RinseEdge } from '../cover/types';
import type { MeasuredYard, Slip } from '../measure/types';
import type {
  BaseLayer,
  Curve,
  Issue,
  MarkKind,
  Position,
  Ring,
  Rings,
  UnitSystem,
  Yard,
  ZoneKind,
} from '../yard/types';

/** How a line or point of a trial drawing looks: what counts, what only helps, what is wrong. */
export type TrialStyle = 'main' | 'faint' | 'warn';

/** A passing drawing over the yard that is not in the document: a walk under way, a plat being read. */
export interface Trial {
  readonly lines: readonly {
    readonly points: readonly Position[];
    readonly isClosed: boolean;
    readonly style: TrialStyle;
  }[];
  readonly points: readonly { readonly at: Position; readonly label: string; readonly style: TrialStyle }[];
  readonly circles: readonly {
    readonly at: Position;
    readonly radiusM: number;
    readonly style: TrialStyle;
  }[];
  /** ground filled with the hatch of what is in no zone; labelled where there is room. */
  readonly unassigned?: readonly { readonly parts: readonly Rings[]; readonly label: string }[];
}

/** What of a walk the person can leave off the drawing. */
export const WALK_LAYERS = ['passes', 'marks', 'tints'] as const;
/** One of them: the lines walked, the run-out marks, the stretches of each container. */
export type WalkLayer = (typeof WALK_LAYERS)[number];

/** The walk of one dose, as drawn over the zones. */
export interface CoveragePicture {
  readonly dose: DoseCoverage;
  readonly swathM: number;
  /** so much of the walk is done, m along all its legs, with the walker there; null: all is shown, no walker. */
  readonly walkedM: number | null;
  /** circles that the hose reaches; empty: none. */
  readonly hose: readonly { readonly at: Position; readonly lengthM: number }[];
  /** left off; absent: nothing is. */
  readonly hides?: readonly WalkLayer[];
}

/** All the map draws; a picture of the document, never the truth. */
export interface MapPicture {
  readonly yard: Yard;
  readonly measured: MeasuredYard;
  readonly selectedZoneIds: readonly string[];
  readonly slips: readonly Slip[];
  /** zones of the open visit, drawn as treated; null when no visit is shown. */
  readonly visit: {
    readonly zoneIds: readonly string[];
    readonly strips: readonly NoApplyStrip[];
    readonly rinseEdges: readonly RinseEdge[];
  } | null;
  /** the walk of one dose; null or absent: none. */
  readonly coverage?: CoveragePicture | null;
  readonly units: UnitSystem;
  readonly baseLayer: BaseLayer;
  /** beneath a picture of the person's own; null or absent: the paper. */
  readonly underLayer?: BaseLayer | null;
  /** null: none. */
  readonly trial: Trial | null;
  readonly dark: boolean;
}

export type DrawShape = 'polygon' | 'rectangle' | 'circle' | 'freehand';

/** What is done along the outline of a zone. */
export const EDGE_TASKS = ['arc', 'smooth', 'straighten', 'offset', 'align'] as const;
export type EdgeTask = (typeof EDGE_TASKS)[number];

/** How a band goes round a bend of its middle line. */
export type BandJoint = 'round' | 'mitred';

/** An outline as it is to be: of the zone in hand, or of a neighbour that goes along. */
export interface ZoneOutline {
  readonly zoneId: string;
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
}

/** What was pointed at with an `edge` tool of the tasks `offset` and `align`. */
export interface EdgePick {
  /** the stretch of the zone's outline, corner by corner; first equal to last: a whole ring. */
  readonly stretch: readonly Position[];
  /** `align`: the edge of another zone, and whose; null: not yet picked. */
  readonly target: { readonly zoneId: string; readonly edge: readonly [Position, Position] } | null;
  /** the person pressed Enter or Finish: what is set is to be done. */
  readonly isFinished: boolean;
}

/** What the pointer does. Every tool but `select` ends with Escape; Enter finishes a shape. */
export type Tool =
  | { readonly type: 'select' }
  /** a closed shape: a new zone of `kind`, a hole in a zone, or a new bed (or other kind) cut out of a zone. */
  | {
      readonly type: 'draw';
      readonly shape: DrawShape;
      readonly purpose: 'zone' | 'hole' | 'cut' | 'parcel';
      readonly kind: ZoneKind;
      readonly zoneId: string | null;
    }
  /** corners and curve points of one zone: move, insert (midpoints), delete; also move and rotate the whole zone. */
  | {
      readonly type: 'reshape';
      readonly zoneId: string;
      /** true: the handles between corners move whole sides, in parallel. */
      readonly sides?: boolean;
      /** true: neighbours stay where they are; else what they share with the zone goes along. */
      readonly isAlone?: boolean;
    }
  /** stretches of one zone's outline: bend, smooth, offset, align. */
  | { readonly type: 'edge'; readonly zoneId: string; readonly task: EdgeTask }
  /** an open line that becomes a zone of the given width: a walk, a mowing strip. */
  | {
      readonly type: 'band';
      readonly kind: ZoneKind;
      readonly widthM: number;
      /** how it goes round a bend. */
      readonly joint: BandJoint;
    }
  /** lengths and angles along a passing line; nothing is added. */
  | { readonly type: 'gauge' }
  /** drags the picture of the person's own that is shown, by hand. */
  | { readonly type: 'shift-picture' }
  /** one place, for whoever asked; `words` tell the person what to point at. */
  | { readonly type: 'pick'; readonly words: string }
  /** an open line across the zone. */
  | { readonly type: 'split'; readonly zoneId: string }
  | { readonly type: 'mark'; readonly kind: MarkKind };

/** Live figures of a drawing under way. */
export interface DrawLive {
  readonly points: readonly Position[];
  /** length of the side being drawn (last point to pointer) and its bearing in degrees from north. */
  readonly sideM: number | null;
  readonly bearingDeg: number | null;
  /** inner angle between the side before and the one being drawn, degrees; null before there are two. */
  readonly angleDeg?: number | null;
  readonly areaM2: number | null;
  readonly perimeterM: number | null;
  readonly crossing: Position | null;
  /** `edge` tool only. */
  readonly edgePick?: EdgePick | null;
}

export interface MapEvents {
  select(zoneIds: readonly string[]): void;
  /**
   * a finished outer ring for a draw tool, and its curves. Never self-crossing.
   * @returns false: refused, the drawing is kept.
   */
  drawn(ring: Ring, tool: Extract<Tool, { type: 'draw' }>, curves?: readonly Curve[]): boolean;
  /** a finished open line. @returns false: refused, the line is kept to be corrected. */
  splitLine(line: readonly Position[], zoneId: string): boolean;
  /** committed new outlines after a reshape step: the zone in hand first (one drag is one call). */
  reshaped(outlines: readonly ZoneOutline[], label: string): void;
  /** outlines while a drag is under way; null when it ends or is cancelled. */
  reshaping(outlines: readonly ZoneOutline[] | null): void;
  /** the open line of a `band` tool. @returns false: refused, the line is kept to be corrected. */
  bandLine(line: readonly Position[], tool: Extract<Tool, { type: 'band' }>): boolean;
  /** the place pointed at with a `pick` tool. */
  picked(position: Position): void;
  /** the picture shown was dragged by this much, metres east and north. */
  pictureShifted(eastM: number, northM: number): void;
  markPlaced(kind: MarkKind, position: Position): void;
  markMoved(markId: string, position: Position): void;
  live(figures: DrawLive | null): void;
  /** refusal or trouble, for the person: a crossing, no location, a tile server that fails. */
  message(issue: Issue): void;
  /** the tool ended by itself (finished or Escape). */
  toolEnded(): void;
}

export interface MapPort {
  show(picture: MapPicture): void;
  setTool(tool: Tool): void;
  /** finish (Enter) or cancel (Escape) what is being drawn; for buttons. */
  finish(): void;
  cancel(): void;
  /** take back the last point of the drawing under way. */
  backOnePoint(): void;
  /** typed next side: length in m, bearing in degrees from north (null: keep the pointer's or right-angle direction). */
  addSide(lengthM: number, bearingDeg: number | null): void;
  /** hold right angles to the side before. */
  setRightAngle(on: boolean): void;
  /** snapping to corners and edges of other zones. */
  setSnapping(on: boolean): void;
  fit(zoneIds?: readonly string[]): void;
  /** moves and zooms so that all these places are seen. */
  showPlaces(places: readonly Position[]): void;
  goTo(position: Position, zoom?: number): void;
  /** moves, without zooming, when a place is not seen. */
  reveal(position: Position): void;
  center(): Position;
  /** ground metres for one CSS px at the middle of the view. */
  metresPerPixel(): number;
  /** moves to the device's place; resolves with an issue when there is none. */
  locate(): Promise<Issue | null>;
  destroy(): void;
}
