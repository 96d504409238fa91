import { formatNutrientRate } from '../units/format';
import type { Issue, NutrientNeed, Yard } from '../yard/types';
import { spanYearOf } from '../yard/yearDay';
import { zoneNames } from '../yard/zoneNames';
import { visitIssue } from './issueWords';
import { findExcess } from './ledgerExcess';
import { needsByZone } from './needsByZone';
import type { LedgerEntry } from './types';
import { spanWords } from './yearDayWords';

/** A year may pass the need by this share before it is noted (common practice, no source). */
const NEED_SLACK = 0.1;

/**
 * Holds the nitrogen of the ledger, planned and done together, against the need of each zone.
 * @returns `need-passed` (note) where a calendar year is more than 10 % over the need; `hold-exceeded`
 * (warning) where the stretch before the spring flush gets more than its hold allows; each at the visit that passes it
 */
export function overNeedIssues(yard: Yard, entries: readonly LedgerEntry[]): readonly Issue[] {
  const needs = needsByZone(yard);
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  const ofNeed = (need: NutrientNeed) => entries.filter((entry) => needs.get(entry.zoneId) === need);
  const named = (need: NutrientNeed) => (need.name.trim() === '' ? '' : ` (“${need.name.trim()}”)`);
  return [...new Set(needs.values())].flatMap((need) => {
    const own = ofNeed(need);
    const { hold } = need;
    const over = findExcess(own, {
      amountOf: (entry) => entry.nutrientKgPerM2.N,
      stretchOf: ({ date }) => date?.slice(0, 4) ?? null,
      limitOf: () => need.nKgPerM2 * (1 + NEED_SLACK),
    }).map(({ visitId, stretch, zoneIds, sum }) =>
      visitIssue(
        'need-passed',
        'note',
        `Nitrogen of ${show(sum)} in ${stretch} on ${zoneNames(yard, zoneIds)} is more than 10 % over the year's need of ${show(need.nKgPerM2)}${named(need)}; this visit passes it.`,
        visitId,
        { needId: need.id },
      ),
    );
    if (hold === null) return over;
    const early = findExcess(own, {
      amountOf: (entry) => entry.nutrientKgPerM2.N,
      stretchOf: ({ date }) => {
        const year = date === null ? null : spanYearOf(date, hold);
        return year === null ? null : String(year);
      },
      limitOf: () => hold.maxNKgPerM2,
    }).map(({ visitId, zoneIds, sum }) =>
      visitIssue(
        'hold-exceeded',
        'warning',
        `Nitrogen of ${show(sum)} from ${spanWords(hold)} on ${zoneNames(yard, zoneIds)} is over the ${show(hold.maxNKgPerM2)} it is held to before the spring flush${named(need)}; this visit passes it.`,
        visitId,
        { needId: need.id },
      ),
    );
    return [...over, ...early];
  });
}
