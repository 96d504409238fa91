import { M_PER_MILE } from '../units/factors';
import type { Applicator, Equipment } from '../yard/types';

/** m/s in one mile an hour. */
export const M_PER_S_OF_MPH = M_PER_MILE / 3600;

/** Slowest and fastest walk that a person holds evenly with something in hand, m/s: 0.5 and 5 mph; common practice, no source. */
export const SLOWEST_M_PER_S = 0.5 * M_PER_S_OF_MPH;
export const FASTEST_M_PER_S = 5 * M_PER_S_OF_MPH;

/** Faster, nobody walks, m/s (10 mph, a run), and no step is longer, m: figures beyond are a slip of the tape or the watch; common practice, no source. */
export const MOST_WALK_M_PER_S = 10 * M_PER_S_OF_MPH;
export const MOST_STEP_M = 2;

/** How far a setting, a rate or a reading may be off before it is set anew: 5 % (UMass Extension, spreader calibration). */
export const RATE_TOLERANCE = 0.05;

/** Usual walks until the person measures their own, m/s; common practice, no source. */
export const USUAL_SPEED_M_PER_S: Readonly<Record<Applicator, number>> = {
  'hose-end': 1.5 * M_PER_S_OF_MPH,
  'tank-sprayer': 2 * M_PER_S_OF_MPH,
  'broadcast-spreader': 3 * M_PER_S_OF_MPH,
  'drop-spreader': 2.5 * M_PER_S_OF_MPH,
  'by-hand': 1 * M_PER_S_OF_MPH,
};

/** Usual walks with the applicator shut, m/s: a hose is dragged; common practice, no source. */
export const SHUT_SPEED_M_PER_S: Readonly<Record<Applicator, number>> = {
  'hose-end': 2 * M_PER_S_OF_MPH,
  'tank-sprayer': 2.5 * M_PER_S_OF_MPH,
  'broadcast-spreader': 3 * M_PER_S_OF_MPH,
  'drop-spreader': 3 * M_PER_S_OF_MPH,
  'by-hand': 2.5 * M_PER_S_OF_MPH,
};

/** Time lost in a turn at the end of a pass, s; common practice, no source. */
export const TURN_S: Readonly<Record<Applicator, number>> = {
  'hose-end': 3,
  'tank-sprayer': 2,
  'broadcast-spreader': 3,
  'drop-spreader': 4,
  'by-hand': 2,
};

/**
 * What lands on each m² where passes overlap, of what one pass lays over the whole swath: the same stuff on the ground
 * between two passes, `rate · swath / spacing`; overlap 0.2: a fourth more.
 * @param ratePerSwath per m² of swath, in any unit
 */
export function landedRate(ratePerSwath: number, { overlapShare }: Pick<Equipment, 'overlapShare'>): number {
  return ratePerSwath / (1 - overlapShare);
}

/** Distance between neighbouring passes, m: the swath less what is meant to overlap. */
export function spacingOf({ swathM, overlapShare }: Pick<Equipment, 'swathM' | 'overlapShare'>): number {
  return swathM * (1 - overlapShare);
}
