import { yearsLater } from '../yard/calendar';
import { chosenZones, treatableZones } from '../yard/choose';
import type { SoilNutrient, SoilTest, Yard, Zone } from '../yard/types';
import { levelOf } from './interpretSoil';

/** Tests of each zone by its id, oldest first. */
type TestsByZone = ReadonlyMap<string, readonly SoilTest[]>;

/** By the very lists of zones and tests, then by nutrient: a season asks some ten thousand times. */
const kept = new WeakMap<Yard['zones'], WeakMap<Yard['soilTests'], Map<SoilNutrient | 'any', TestsByZone>>>();

/**
 * The test that counts for a zone on a day: of those that cover it the one sampled last by that day; where
 * all were sampled later, the first of them. One without a day counts as older than any with a day; of two
 * of the same day the later in the list.
 * @param nutrient only tests that say something of it count, so that a test begun and not yet filled in hides no other
 * @param day YYYY-MM-DD; null: no day is set, and the newest counts
 * @returns null when none covers it
 */
export function testOfZone(
  yard: Yard,
  { id }: Pick<Zone, 'id'>,
  nutrient: SoilNutrient | 'any' = 'any',
  day: string | null = null,
): SoilTest | null {
  const tests = testsByZone(yard, nutrient).get(id);
  if (tests === undefined) return null;
  if (day === null) return tests.at(-1) ?? null;
  const first = tests[0]?.date ?? '';
  const limit = first > day ? first : day;
  return tests.findLast((test) => (test.date ?? '') <= limit) ?? null;
}

function testsByZone(yard: Yard, nutrient: SoilNutrient | 'any'): TestsByZone {
  const ofZones = kept.get(yard.zones) ?? new WeakMap();
  kept.set(yard.zones, ofZones);
  const ofTests = ofZones.get(yard.soilTests) ?? new Map<SoilNutrient | 'any', TestsByZone>();
  ofZones.set(yard.soilTests, ofTests);
  const known = ofTests.get(nutrient);
  if (known !== undefined) return known;
  const byZone = new Map<string, SoilTest[]>();
  for (const test of oldestFirst(yard.soilTests)) {
    if (nutrient !== 'any' && (levelOf(test, nutrient)?.level ?? null) === null) continue;
    for (const { id } of chosenZones(yard, test.zones)) {
      const own = byZone.get(id);
      if (own) own.push(test);
      else byZone.set(id, [test]);
    }
  }
  ofTests.set(nutrient, byZone);
  return byZone;
}

function oldestFirst(tests: readonly SoilTest[]): readonly SoilTest[] {
  const day = ({ date }: SoilTest) => date ?? '';
  return [...tests].sort((a, b) => (day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : 0));
}

/** Ground that could be treated and that no test covers. */
export function zonesWithoutTest(yard: Yard): readonly Zone[] {
  return treatableZones(yard).filter((zone) => testOfZone(yard, zone) === null);
}

/** A test this old should be taken anew. Maryland counts a test for three years, Washington State 36 months; extension (Univ. of Missouri G6954) advises one every three years. */
export const TEST_YEARS = 3;

/**
 * Whether a test is older than so many years on a day: the day so many years on still counts.
 * @param day YYYY-MM-DD; a test without a day is not judged
 */
export function isTestOld({ date }: SoilTest, day: string, years = TEST_YEARS): boolean {
  return date !== null && date < day && yearsLater(date, years) < day;
}

/** Whether a test was sampled after a day (YYYY-MM-DD); never where either day is not told. */
export function isTestLater({ date }: SoilTest, day: string | null): boolean {
  return date !== null && day !== null && date > day;
}
