import { KG_PER_M2_OF_LB_PER_1000_SQFT } from '../units/factors';
import type { Climate, FlushHold, GrassSeason } from '../yard/types';
import { DAYS_IN_YEAR, dayOfYear, middleOfMonth, sharesWithin, yearDayOf } from '../yard/yearDay';
import { temperatureOfGrowth } from './growthPotential';

/** A hold that is offered, and what it rests on. */
export interface SuggestedHold {
  readonly hold: FlushHold;
  /** `growth`: days from the yard's monthly means; `usual`: the usual days of the season. */
  readonly basis: 'growth' | 'usual';
  /** where the most N is from, in words. */
  readonly source: string;
}

/**
 * Most N within the stretch. Cool-season: Virginia DCR's table gives none in April and at most 0.5 lb per
 * 1,000 sq ft in May. Warm-season: none before the grass is fully green: NC State's calendars give the first
 * nitrogen to bermudagrass several weeks after that, and none to centipedegrass from March to May.
 */
const MOST = {
  'cool-season': {
    maxNKgPerM2: 0.5 * KG_PER_M2_OF_LB_PER_1000_SQFT,
    source: 'Virginia DCR home lawn table: none in April, at most 0.5 lb per 1,000 sq ft in May',
  },
  'warm-season': {
    maxNKgPerM2: 0,
    source: 'NC State Extension lawn calendars: none until some weeks after the lawn is fully green',
  },
} as const;

/**
 * Days where the climate is not known. Cool-season: the flush runs from late March into early May (Feehan,
 * Nebraska Extension, 2020), the next feeding is after it, late April or May (Purdue); begun on 1 March so that
 * nothing lies ready for it. Warm-season: the first nitrogen in early May (Kansas State, Upham).
 */
const USUAL_DAYS = {
  'cool-season': { from: '03-01', to: '05-10' },
  'warm-season': { from: '02-15', to: '04-30' },
} as const;

/** Potential below which growth is "very limited" (PACE Turf): the flush begins where it is passed. */
const BEGINS_AT = 0.1;
/**
 * Potential at which growth is well under way and the hold ends. Cool-season 0.5, the lower end of "good"
 * (PACE Turf); it falls on about 1 May for the monthly means of Nebraska, where extension feeds from May on.
 * Warm-season 0.25, common practice, no source: some weeks after green-up.
 */
const ENDS_AT: Readonly<Record<GrassSeason, number>> = { 'cool-season': 0.5, 'warm-season': 0.25 };
/** How long before growth begins nitrogen put down still feeds the flush, days; common practice, no source. */
const DAYS_AHEAD = 30;

/**
 * When to hold nitrogen back before the spring flush, and how much may go down: from 30 days before rising
 * temperatures bring the growth potential past 10 % until it has reached 50 % (cool-season) or 25 %
 * (warm-season). Temperatures between the middles of months lie on straight lines. Where winter is warmer than
 * the first mark the stretch begins in the middle of the coldest month; where no spring brings the second, or
 * the climate is not known, the season's usual days stand.
 */
export function suggestHold(season: GrassSeason, climate: Climate): SuggestedHold {
  const { maxNKgPerM2, source } = MOST[season];
  const days = springDays(climate.monthlyMeanC, season);
  if (days === null) return { hold: { ...USUAL_DAYS[season], maxNKgPerM2 }, basis: 'usual', source };
  const [from, to] = days;
  return { hold: { from: yearDayOf(from), to: yearDayOf(to), maxNKgPerM2 }, basis: 'growth', source };
}

/** First and last day of the stretch as days of the year, the last perhaps beyond it; null where there is no spring. */
function springDays(
  monthlyMeanC: readonly number[] | null,
  season: GrassSeason,
): readonly [number, number] | null {
  if (monthlyMeanC === null || monthlyMeanC.length !== 12 || !monthlyMeanC.every(Number.isFinite))
    return null;
  const coldest = monthlyMeanC.indexOf(Math.min(...monthlyMeanC));
  const start = middleOfMonth(coldest);
  const begins = riseTo(monthlyMeanC, coldest, temperatureOfGrowth(BEGINS_AT, season));
  const ends = riseTo(monthlyMeanC, coldest, temperatureOfGrowth(ENDS_AT[season], season));
  if (ends === null || ends <= start) return null;
  return [begins === null || begins <= start ? start : Math.max(start, begins - DAYS_AHEAD), ends];
}

/** Day on which the mean first rises to `targetC` after the middle of the coldest month; null: it never does. */
function riseTo(means: readonly number[], coldest: number, targetC: number): number | null {
  for (let step = 0; step < 12; step++) {
    const month = (coldest + step) % 12;
    const here = means[month] ?? 0;
    const next = means[(month + 1) % 12] ?? 0;
    const yearsOn = coldest + step >= 12 ? DAYS_IN_YEAR : 0;
    const day = middleOfMonth(month) + yearsOn;
    if (here >= targetC) return day;
    const span = middleOfMonth((month + 1) % 12) + (month === 11 ? DAYS_IN_YEAR : 0) + yearsOn - day;
    if (next >= targetC) return day + (span * (targetC - here)) / (next - here);
  }
  return null;
}

/** A year's nitrogen by month with a hold kept. */
export interface HeldNeed {
  /** kg/m², January first. */
  readonly months: readonly number[];
  /** of each month, what falls within the stretch, kg/m². */
  readonly withinKgPerM2: readonly number[];
  /** what was moved to later months, kg/m². */
  readonly movedKgPerM2: number;
  /** what found no later month, kg/m²; the months sum to the year less this. */
  readonly leftOverKgPerM2: number;
}

/**
 * The monthly need with the hold kept. A month's nitrogen is taken to lie evenly on its days. What falls within
 * the stretch is cut down alike until it is no more than the hold's most; the rest is moved to the time after
 * the stretch, up to the end of the year (where the stretch runs over the new year, up to its own beginning), to
 * each month in proportion to what it has there. Where that time has none the rest is left over.
 * @param months twelve amounts, kg/m², January first
 * @param hold null, or one with a day that does not exist: nothing is held back
 */
export function heldNeed(months: readonly number[], hold: FlushHold | null): HeldNeed {
  const from = hold === null ? null : dayOfYear(hold.from);
  const to = hold === null ? null : dayOfYear(hold.to);
  if (hold === null || from === null || to === null)
    return { months, withinKgPerM2: months.map(() => 0), movedKgPerM2: 0, leftOverKgPerM2: 0 };
  const within = sharesWithin(from, to).map((share, month) => share * (months[month] ?? 0));
  const sum = within.reduce((total, value) => total + value, 0);
  if (sum <= hold.maxNKgPerM2) return { months, withinKgPerM2: within, movedKgPerM2: 0, leftOverKgPerM2: 0 };
  const kept = within.map((value) => hold.maxNKgPerM2 * (value / sum));
  const excess = sum - hold.maxNKgPerM2;
  const later = laterShares(from, to).map((share, month) => share * (months[month] ?? 0));
  const laterSum = later.reduce((total, value) => total + value, 0);
  const moved = laterSum > 0 ? excess : 0;
  return {
    months: months.map(
      (value, month) =>
        Math.max(0, value - (within[month] ?? 0)) +
        (kept[month] ?? 0) +
        (laterSum > 0 ? excess * ((later[month] ?? 0) / laterSum) : 0),
    ),
    withinKgPerM2: kept,
    movedKgPerM2: moved,
    leftOverKgPerM2: excess - moved,
  };
}

/** How much of each month lies in the time that held nitrogen may be moved to. */
function laterShares(from: number, to: number): readonly number[] {
  const last = from <= to ? DAYS_IN_YEAR - 1 : from - 1;
  return to + 1 > last ? Array<number>(12).fill(0) : sharesWithin(to + 1, last);
}
