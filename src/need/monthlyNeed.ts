import type { Climate, GrassSeason, NitrogenSplit, NutrientNeed } from '../yard/types';
import { growthPotentials } from './growthPotential';

/** The months of an even split, 0 to 11, in the order they come; the range may run over the new year. */
export function monthsOfRange(fromMonth: number, toMonth: number): readonly number[] {
  const count = ((toMonth - fromMonth + 12) % 12) + 1;
  return Array.from({ length: count }, (_, index) => (fromMonth - 1 + index) % 12);
}

/**
 * Share of each month in the year's nitrogen, January first, together 1.
 *
 * `even` gives every month of the range alike, whatever its days: published calendars give amounts for a month
 * (NC State prints 1 lb for each of May to August). `growth` gives by growth potential, as Woods (2019, 2023)
 * multiplies it with a month's most. `typed` scales what was typed.
 * @returns null where nothing is shared out: all shares nothing, no climate for `growth`, or no growth at all
 */
export function monthlyShares(
  split: NitrogenSplit,
  season: GrassSeason,
  climate: Climate,
): readonly number[] | null {
  if (split.kind === 'growth') {
    const growth = growthPotentials(climate, season);
    return growth === null ? null : scaled(growth);
  }
  if (split.kind === 'typed') return scaled(split.shares);
  const months = monthsOfRange(split.fromMonth, split.toMonth);
  return scaled(Array.from({ length: 12 }, (_, month) => (months.includes(month) ? 1 : 0)));
}

/** Shares that sum to one; null where they do not sum to anything. */
function scaled(shares: readonly number[]): readonly number[] | null {
  const sum = shares.reduce((total, share) => total + share, 0);
  const isSound = shares.length === 12 && shares.every((share) => share >= 0) && Number.isFinite(sum);
  return isSound && sum > 0 ? shares.map((share) => share / sum) : null;
}

/**
 * Nitrogen wanted in each month, kg per m² of ground, January first, before any is held back (see `heldNeed`).
 * The twelve sum to the year's amount but for rounding in the last place of a number.
 * @returns null where the split gives nothing: see `monthlyShares`
 */
export function monthlyNeed(need: NutrientNeed, climate: Climate): readonly number[] | null {
  const shares = monthlyShares(need.split, need.season, climate);
  return shares?.map((share) => share * need.nKgPerM2) ?? null;
}
