import type { Issue, Position, Ring } from '../../yard/types';

/** One position told by a receiver. */
export interface Fix {
  /** [longitude, latitude] in degrees, WGS 84. */
  readonly position: Position;
  /** radius in metres that holds the true place with 95 % probability; null when the source tells none (GPX). */
  readonly accuracyM: number | null;
  /** when the receiver found it, milliseconds of any one clock; null when the source tells none. */
  readonly timeMs: number | null;
}

/** Why a fix is left out. */
export type PoorFix = 'not-a-place' | 'inaccurate' | 'too-old' | 'repeated' | 'too-fast' | 'jump';

/** What a fix must hold to be used. */
export interface FixLimits {
  /** worst accuracy (95 % radius) that is used, metres. */
  readonly maxAccuracyM: number;
  /** fastest that a person on foot goes round a yard, m/s. */
  readonly maxSpeedMS: number;
  /** oldest fix that is used when it arrives, milliseconds. */
  readonly maxAgeMs: number;
}

/** A stretch of time, both ends included: a stand at one corner, or a stretch of the edge walked. */
export interface Stand {
  readonly fromMs: number;
  readonly toMs: number;
}

/** How a walk is turned into an outline. */
export type WalkMode = 'corners' | 'round';

export interface WalkOptions {
  readonly mode: WalkMode;
  readonly limits: FixLimits;
  /** accuracy taken for fixes that tell none, metres (95 % radius). */
  readonly assumedAccuracyM: number;
  /** how far the line walked may lie from the outline made of it, metres; null: found from the noise. */
  readonly toleranceM: number | null;
}

/** How the errors of the fixes hang together. */
export interface Noise {
  /** standard deviation of each fix in each of x and y, metres, is its accuracy by `sigmaOfAccuracyM` times this. */
  readonly scale: number;
  /** time in which the correlation of two errors falls to 1/e, seconds; null: too few fixes to tell. */
  readonly timeConstantS: number | null;
}

/** One corner of the outline. */
export interface WalkCorner {
  readonly position: Position;
  /** standard deviation of its place in each of x and y, metres; null where it is not known by itself. */
  readonly sigmaM: number | null;
  /** fixes averaged; 0 for a corner found as a bend of the line walked. */
  readonly fixCount: number;
  /** independent fixes with the same sigma. */
  readonly effectiveCount: number;
}

/** What came of a walk. Lengths in metres, areas in m². */
export interface WalkOutline {
  /** closed; never crosses itself. */
  readonly ring: Ring;
  readonly areaM2: number;
  /** one standard deviation of the area. */
  readonly areaSigmaM2: number;
  /** what the polygon formula of independent corners needs to give `areaSigmaM2` for this ring. */
  readonly vertexSigmaM: number;
  readonly perimeterM: number;
  readonly corners: readonly WalkCorner[];
  readonly noise: Noise;
  /** from the last fix used to the first, metres: what the closing side bridges; null in mode `corners`. */
  readonly gapM: number | null;
  /** length walked beyond the start a second time and left off; 0 in mode `corners`. */
  readonly overlapM: number;
  /** the tolerance used; null in mode `corners`. */
  readonly toleranceM: number | null;
  /** largest distance of a fix used from the outline; null in mode `corners`. */
  readonly largestOffsetM: number | null;
}

/** Fixes taken and left out. */
export interface JudgedFixes {
  readonly accepted: readonly Fix[];
  readonly rejected: Readonly<Record<PoorFix, number>>;
}

export type WalkResult =
  | {
      readonly ok: true;
      readonly outline: WalkOutline;
      readonly judged: JudgedFixes;
      readonly notes: readonly Issue[];
    }
  | { readonly ok: false; readonly issue: Issue; readonly judged: JudgedFixes };
