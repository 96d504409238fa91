import type { Token } from './tokens';
import type { Turn } from './types';

/** What the text says of a curve. */
export interface CurveDraft {
  radiusM: number | null;
  deltaDeg: number | null;
  arcM: number | null;
  chordM: number | null;
  tangentM: number | null;
  turn: Turn | null;
  /** direction of the chord. */
  chordDeg: number | null;
  /** direction of the radius at the beginning, and whether it is said to run to the center. */
  radialDeg: number | null;
  isToCenter: boolean;
  /** direction in which the hollow side looks. */
  concaveDeg: number | null;
  /** the words "tangent" or "non-tangent" stand beside it. */
  tangency: 'tangent' | 'non-tangent' | null;
}

/** The figures of one call, before they are worked out. */
export interface Draft {
  readonly tokens: Token[];
  directionDeg: number | null;
  /** a word of the compass that opens the call, its length further on: "East along the fence, 100 feet". */
  looseDeg: number | null;
  lengthM: number | null;
  /** a change of direction against the call before; the angle may be left out. */
  turn: { readonly turn: Turn; deg: number | null } | null;
  isVague: boolean;
  /** goes on in the direction in which the call before ends. */
  isTangent: boolean;
  hasBegin: boolean;
  curve: CurveDraft | null;
  /** the curve was only announced, at the end of the call before. */
  isAhead: boolean;
  readonly faults: { readonly token: Token; readonly why: string }[];
  readonly words: Token[];
}

/** A call of which nothing is known yet. */
export function emptyDraft(): Draft {
  return {
    tokens: [],
    directionDeg: null,
    looseDeg: null,
    lengthM: null,
    turn: null,
    isVague: false,
    isTangent: false,
    hasBegin: false,
    curve: null,
    isAhead: false,
    faults: [],
    words: [],
  };
}

/** A curve of which nothing is known yet. */
export function emptyCurve(): CurveDraft {
  return {
    radiusM: null,
    deltaDeg: null,
    arcM: null,
    chordM: null,
    tangentM: null,
    turn: null,
    chordDeg: null,
    radialDeg: null,
    isToCenter: false,
    concaveDeg: null,
    tangency: null,
  };
}

/** Two of its figures are known: what follows may be the next call. */
export function isWhole(curve: CurveDraft): boolean {
  return [curve.radiusM, curve.deltaDeg, curve.arcM, curve.chordM].filter((v) => v !== null).length >= 2;
}

/** Whether a direction is known, be it a bearing, a turn or the course before carried on. */
export function hasDirection(draft: Draft): boolean {
  return draft.directionDeg !== null || draft.turn !== null || draft.isTangent;
}

/** A straight call with direction and length. */
export function isLineWhole(draft: Draft): boolean {
  return draft.lengthM !== null && hasDirection(draft) && !draft.curve;
}
