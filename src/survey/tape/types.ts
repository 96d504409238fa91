import type { XY } from '../../measure/types';
import type { Issue, UnitSystem } from '../../yard/types';

/** Dimensions of a shape by the key of their field: metres, or degrees for an angle. */
export type Dimensions = Readonly<Record<string, number>>;

/** One dimension that is taped: its letter on the sketch and what it is. */
export interface TapeField {
  /** the letter written on the sketch. */
  readonly key: string;
  /** "First parallel side"; begins with a capital. */
  readonly words: string;
  readonly quantity: 'length' | 'angle';
  /** may be left empty: it moves the outline but not the area. */
  readonly isOptional?: true;
  /** one line on how to tape it; empty for none. */
  readonly hint?: string;
}

/** A line of the outline, or inside it, that carries a dimension on the sketch. */
export interface DimensionLine {
  readonly key: string;
  readonly from: XY;
  readonly to: XY;
  /** `side` of the outline; `help` inside it (a height, a diagonal, a radius); `angle` at `from`, its words at `to`. */
  readonly role: 'side' | 'help' | 'angle';
}

/** How well the tape is read. */
export interface TapeError {
  /** standard deviation of one reading, m; 0 or more. */
  readonly readingSigmaM: number;
  /** relative standard deviation common to all readings (a stretched or worn tape); 0 or more. */
  readonly scaleSigma: number;
  /** standard deviation of one angle, degrees; 0 or more. */
  readonly angleSigmaDeg: number;
}

/** 0.05 m a reading on open ground and half a degree: common practice, no source. */
export const USUAL_TAPE_ERROR: TapeError = { readingSigmaM: 0.05, scaleSigma: 0, angleSigmaDeg: 0.5 };

/** A stretch of the ring that is one arc of a circle. */
export interface ArcSpan {
  /** index in the ring of its first corner and of its last; both lie on the circle. */
  readonly from: number;
  readonly to: number;
  /** a point of the circle halfway between them. */
  readonly via: XY;
}

/** An outline in its own plane: metres, first side along x, counter-clockwise, closed. */
export interface TapeOutline {
  readonly ring: readonly XY[];
  readonly perimeterM: number;
  readonly lines: readonly DimensionLine[];
  /** what was taken for granted, in whole sentences. */
  readonly notes: readonly string[];
  readonly arcs: readonly ArcSpan[];
}

/** What a taped shape comes to. */
export interface TapeShape extends TapeOutline {
  /** by the closed formula, m²; the ring has the same area. */
  readonly areaM2: number;
  /** one standard deviation of the area by the error of the readings alone, m². */
  readonly randomSigmaM2: number;
  /** one standard deviation of the area, the tape's scale included, m². */
  readonly areaSigmaM2: number;
}

export type TapeResult =
  | { readonly ok: true; readonly shape: TapeShape }
  /** `place.path` of each issue is the key of the field it is about. */
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** One way of taping one shape. */
export interface TapeWay {
  readonly id: string;
  readonly words: string;
  readonly fields: readonly TapeField[];
  /** m² by the closed formula; NaN when the dimensions make no shape. */
  areaM2(d: Dimensions): number;
  /** why the dimensions make no shape; empty when they do. */
  check(d: Dimensions, system: UnitSystem): readonly Issue[];
  outline(d: Dimensions): TapeOutline;
}
