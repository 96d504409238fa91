import type { Climate, GrassSeason } from '../yard/types';

/** Best mean air temperature for shoot growth and width of the curve, both °C. */
interface GrowthCurve {
  readonly bestC: number;
  readonly widthC: number;
}

/**
 * Gelernter and Stowell, Golf Course Management, March 2005, p. 108-113; constants in °C as given by Woods,
 * "A number between 0 and 1", 2014, revised 2021.
 */
export const GROWTH_CURVES: Readonly<Record<GrassSeason, GrowthCurve>> = {
  'cool-season': { bestC: 20, widthC: 5.5 },
  'warm-season': { bestC: 31, widthC: 7 },
};

/**
 * What becomes of warm-season grass above its best temperature. `plateau`, the usual one: it goes on growing
 * at its most; the model's authors changed it so, and Woods writes the best as "31 °C or more". `bell`: it
 * falls again, as first published in 2005. Cool-season grass falls in both.
 */
export type WarmForm = 'plateau' | 'bell';

/**
 * Growth potential: how near a mean air temperature is to the best for growth, exp(-0.5 ((t - best) / width)²).
 * It tells of temperature alone, not of water, light or food.
 * @param meanC mean air temperature of a day, month or other time, °C
 * @returns 0 to 1; NaN where the temperature is no number
 */
export function growthPotential(meanC: number, season: GrassSeason, form: WarmForm = 'plateau'): number {
  const { bestC, widthC } = GROWTH_CURVES[season];
  if (season === 'warm-season' && form === 'plateau' && meanC > bestC) return 1;
  return Math.exp(-0.5 * ((meanC - bestC) / widthC) ** 2);
}

/** The temperature below the best at which growth reaches a potential of 0 < `potential` <= 1, °C. */
export function temperatureOfGrowth(potential: number, season: GrassSeason): number {
  const { bestC, widthC } = GROWTH_CURVES[season];
  return bestC - widthC * Math.sqrt(-2 * Math.log(potential));
}

/**
 * Growth potential of each month from the yard's monthly means, January first.
 * @returns twelve values, 0 to 1; null where the means are not known or are not twelve numbers
 */
export function growthPotentials(
  climate: Climate,
  season: GrassSeason,
  form: WarmForm = 'plateau',
): readonly number[] | null {
  const { monthlyMeanC } = climate;
  if (monthlyMeanC === null || monthlyMeanC.length !== 12 || !monthlyMeanC.every(Number.isFinite))
    return null;
  return monthlyMeanC.map((meanC) => growthPotential(meanC, season, form));
}
