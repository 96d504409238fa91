import type { XY } from '../../measure/types';
import { createLinks, type Links } from './links';
import { orderFew } from './orderFew';
import { orderMany } from './orderMany';

/** One way of walking a stop: where it begins and ends, and how long it is, m. */
export interface StopVariant {
  readonly entry: XY;
  readonly exit: XY;
  readonly lengthM: number;
}

/** A piece of ground that is walked in one go, in one of several ways. */
export interface Stop {
  readonly variants: readonly StopVariant[];
}

/** A way from one stop to the next. */
export interface StopWay {
  readonly lengthM: number;
  /** stops whose ground it crosses, and how much of it, m. */
  readonly over: readonly (readonly [stop: number, lengthM: number])[];
}

/** What an order is looked for in. */
export interface OrderInput {
  /** each with one variant or more. */
  readonly stops: readonly Stop[];
  /** null: anywhere. */
  readonly start: XY | null;
  readonly end: XY | null;
  /** what a metre over ground of a stop that is done counts beyond its length. */
  readonly doneCosts: number;
  /** the way that is really walked; never shorter than the straight line. */
  wayOf(from: XY, to: XY): StopWay;
}

/** One stop of an order. */
export interface OrderedStop {
  readonly stop: number;
  readonly variant: number;
}

/** Stops up to this many are put into the best of all orders. */
export const MOST_EXACT = 8;

/**
 * Order of stops, and how each is walked, by the shortest walk from start to end: stops and ways between them,
 * with what goes over ground that is done counted dearer. The best of all for up to MOST_EXACT stops; else a
 * good one, never longer than going to the nearest each time.
 */
export function orderStops(input: OrderInput): readonly OrderedStop[] {
  const links: Links = createLinks(input);
  return input.stops.length <= MOST_EXACT ? orderFew(links) : orderMany(links);
}
