import { isLevelFrom, levelOf } from '../soil/interpretSoil';
import { isTestLater, isTestOld, testOfZone } from '../soil/testOfZone';
import { yearsLater } from '../yard/calendar';
import type { RuleTerms, Yard, Zone } from '../yard/types';

type Terms = Extract<RuleTerms, { readonly kind: 'no-phosphorus' }>;

/** A lawn is new for a year; ground may be made ready so many days before (common practice, no source). */
const NEW_LAWN_YEARS = 1;
const READY_DAYS = 30;

/**
 * What lets phosphorus go on a zone on a day in spite of a rule against it: a soil test sampled by then, within
 * the years the rule grants, whose phosphorus is below `high` (by the lab's word or its table), or turf sown or
 * laid within a year. The test is the one that counts on that day for the gate too (`testOfZone`).
 * @param date YYYY-MM-DD; null: no day is set, so age cannot be told and is not held against it
 * @returns the excuse in a few words, or null
 */
export function phosphorusExcuse(yard: Yard, zone: Zone, date: string | null, terms: Terms): string | null {
  if (terms.unlessSoilTest && testShowsNeed(yard, zone, date, terms.testYears)) {
    return 'a soil test shows a need';
  }
  if (terms.unlessNewLawn && isNewLawn(zone, date)) return 'the turf is new';
  return null;
}

function testShowsNeed(yard: Yard, zone: Zone, date: string | null, testYears: number | null): boolean {
  const test = testOfZone(yard, zone, 'P', date);
  if (test === null || isTestLater(test, date)) return false;
  // where the rule grants so many years, a test must tell its day
  if (testYears !== null && (test.date === null || (date !== null && isTestOld(test, date, testYears))))
    return false;
  const level = levelOf(test, 'P')?.level ?? null;
  return level !== null && !isLevelFrom(level, 'high');
}

function isNewLawn({ plantedOn }: Zone, date: string | null): boolean {
  if (plantedOn === null) return false;
  if (date === null) return true;
  const first = yearsLater(plantedOn, -READY_DAYS / 365.25);
  return date >= first && date <= yearsLater(plantedOn, NEW_LAWN_YEARS);
}
