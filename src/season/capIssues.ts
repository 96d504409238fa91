import { capSource } from '../plan/guides';
import { formatNutrientRate } from '../units/format';
import type { Issue, Nutrient, NutrientCaps, Yard } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';
import { visitIssue } from './issueWords';
import { findExcess } from './ledgerExcess';
import type { LedgerEntry } from './types';

/** Nutrient in a sentence. */
export const NUTRIENT_NAMES: Readonly<Record<Nutrient, string>> = { N: 'Nitrogen', P2O5: 'P2O5', K2O: 'K2O' };

const YEARLY: readonly (readonly [keyof NutrientCaps, Nutrient, string])[] = [
  ['nPerYear', 'N', 'cap-year-n'],
  ['p2o5PerYear', 'P2O5', 'cap-year-p2o5'],
  ['k2oPerYear', 'K2O', 'cap-year-k2o'],
];

/**
 * Holds the ledger against the yard's caps for a calendar year, zone by zone, planned and done together.
 * @returns `cap-year-n`, `cap-year-p2o5`, `cap-year-k2o` (warnings), each at the visit that passes the cap
 */
export function capIssues(yard: Yard, entries: readonly LedgerEntry[]): readonly Issue[] {
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  return YEARLY.flatMap(([key, nutrient, code]) => {
    const cap = yard.caps[key];
    if (cap === null) return [];
    const passed = findExcess(entries, {
      amountOf: (entry) => entry.nutrientKgPerM2[nutrient],
      stretchOf: ({ date }) => date?.slice(0, 4) ?? null,
      limitOf: () => cap,
    });
    return passed.map(({ visitId, stretch, zoneIds, sum }) =>
      visitIssue(
        code,
        'warning',
        `${NUTRIENT_NAMES[nutrient]} of ${show(sum)} in ${stretch} on ${zoneNames(yard, zoneIds)} is over ${show(cap)} a year (${capSource(key, cap)}); this visit passes it. The label and local rules decide.`,
        visitId,
      ),
    );
  });
}
