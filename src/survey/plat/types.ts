import type { XY } from '../../measure/types';
import type { Issue } from '../../yard/types';

/** Which way a curve or a change of direction turns, seen by one who walks along it. */
export type Turn = 'right' | 'left';

/** A straight course. */
export interface LineCall {
  readonly kind: 'line';
  /** degrees clockwise from the plat's north, 0 to 360. */
  readonly bearingDeg: number;
  readonly lengthM: number;
}

/** A course along a circular arc. */
export interface ArcCall {
  readonly kind: 'arc';
  readonly radiusM: number;
  /** central angle, degrees, over 0 and under 360. */
  readonly deltaDeg: number;
  readonly turn: Turn;
  /** direction in which the arc sets out, degrees clockwise from the plat's north. */
  readonly entryBearingDeg: number;
}

/** One course of a plat or a deed, in surveyors' words a call. */
export type PlatCall = LineCall | ArcCall;

/** A call as found in the text. */
export interface ReadCall {
  /** null when it cannot be used: an issue of severity error says why. */
  readonly call: PlatCall | null;
  /** a tie runs from a place of commencement to the point of beginning: it is no part of the outline. */
  readonly role: 'boundary' | 'tie';
  /** line of the text on which it begins, from 1. */
  readonly line: number;
  /** its own words, as written, spaces evened out. */
  readonly text: string;
  readonly issues: readonly Issue[];
}

/** All that was found in a text of calls. */
export interface CallsRead {
  readonly entries: readonly ReadCall[];
  /** every issue of the entries and of the text as a whole; no call is left out unless one is an error. */
  readonly issues: readonly Issue[];
  /** the usable calls of the outline, in order. */
  readonly calls: readonly PlatCall[];
  /** the area that the text itself states, m²; null when it states none. */
  readonly statedAreaM2: number | null;
}

/** By how much the end of the calls misses their beginning. */
export interface TraverseClosure {
  /** sum of the latitudes (north positive), m. */
  readonly latitudeM: number;
  /** sum of the departures (east positive), m. */
  readonly departureM: number;
  /** linear error of closure, m. */
  readonly gapM: number;
  /** direction from the beginning to where the calls end, degrees from north; 0 when they close. */
  readonly bearingDeg: number;
  /** length along the calls, arcs included, m. */
  readonly lengthM: number;
  /** n of the precision ratio 1:n; Infinity when the calls close within 1e-9 m. */
  readonly ratio: number;
}

/** Calls worked out in a plane with its origin at their beginning, x east and y north of the plat, metres. */
export interface Traverse {
  readonly calls: readonly PlatCall[];
  /** where each call begins, and last where the last one ends; one more than there are calls. */
  readonly points: readonly XY[];
  readonly closure: TraverseClosure;
  /** inside the calls and a straight last side over the gap, arcs exact; m². */
  readonly areaM2: number;
  /** true when the calls run clockwise. */
  readonly isClockwise: boolean;
}

/** How well the plat's figures are known: one standard deviation each. */
export interface CallSigma {
  /** of a direction or a central angle, degrees. */
  readonly angleDeg: number;
  /** of a length, metres. */
  readonly lengthM: number;
}
