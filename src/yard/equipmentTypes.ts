import type { Amount, Applicator } from './productTypes';

/*
 * What products are put out with, as its owner measured it. SI: m, s, L, kg.
 */

/** Ways of finding out what a piece of equipment puts out; each is a guided form. */
export const CALIBRATIONS = [
  /** time to fill a known volume from the hose, the bottle or the nozzle. */
  'bucket',
  /** time to wet or strew a course of known size, and what was used on it. */
  'course',
  /** 1/128 acre: fluid ounces caught in the time it takes are gallons an acre. */
  'small-plot',
  /** what a spreader leaves in a catch pan, or loses of its weight, over a known run. */
  'catch',
  /** pans across the path: the width between those that hold half of the middle. */
  'pans',
  /** time over a known distance, and steps taken on it. */
  'walk',
] as const;
/** One way of calibrating. */
export type CalibrationKind = (typeof CALIBRATIONS)[number];

/** A calibration that was done: what was read, by name, in SI; what came out stands in the equipment. */
export interface Calibration {
  readonly id: string;
  readonly kind: CalibrationKind;
  /** YYYY-MM-DD. */
  readonly on: string;
  /** product it was done with; null: plain water, or not told. */
  readonly productId: string | null;
  readonly readings: Readonly<Record<string, number>>;
  readonly note: string;
}

/** Setting of a spreader for one product. */
export interface SpreaderSetting {
  readonly productId: string;
  /** as it stands on the dial, in the person's words. */
  readonly words: string;
  /** what one pass then lays over the equipment's swath at its speed, kg/m²; passes that overlap lay down more. */
  readonly rateKgPerM2: number;
}

/** A hose-end fan, a sprayer, a spreader of the person's own. */
export interface Equipment {
  readonly id: string;
  readonly name: string;
  readonly applicator: Applicator;
  /** width that one pass covers at the full rate: the distance between passes where nothing overlaps, m; more than 0. */
  readonly swathM: number;
  /** share of the swath that neighbouring passes are meant to overlap beyond that, 0 to 0.5. */
  readonly overlapShare: number;
  /** how far beyond the edge that it is aimed at product lands, m; null: as the label's use has it. */
  readonly spreadDistanceM: number | null;
  /** it has a guard or deflector that can be put down along an edge. */
  readonly hasEdgeGuard: boolean;
  /** the same distance with the guard down, m; null: a quarter of the other. */
  readonly guardedSpreadM: number | null;
  /** spray as it leaves nozzle or bottle (water and product), L/s; null: not measured, or dry. */
  readonly flowLPerS: number | null;
  /** share of product in what leaves it, by volume, 0 to 1; null: what is mixed in the tank is put out as it is. */
  readonly productShare: number | null;
  /** what one fill of tank or hopper holds; null: not told. */
  readonly holds: Amount | null;
  /** own walking speed with it, m/s; null: worked out from flow and rate, or not measured. */
  readonly speedMPerS: number | null;
  readonly settings: readonly SpreaderSetting[];
  readonly calibrations: readonly Calibration[];
  readonly note: string;
}

/** How the passes of one dose are laid. */
export interface PassChoice {
  /** null: the first of the yard's equipment that its use asks for; without any, usual figures of the trade. */
  readonly equipmentId: string | null;
  /** laps along the outline, walked beside the straight passes; null: as many as make the shortest walk. */
  readonly headerLaps: number | null;
  /** 2: two coats at half the rate, the second across the first. */
  readonly coats: 1 | 2;
  /** the edge guard is put down along edges. */
  readonly isGuarded: boolean;
  /** heading of the straight passes by zone id, degrees clockwise from true north, 0 to <180; others have the fewest turns. */
  readonly headings: Readonly<Record<string, number>>;
}
