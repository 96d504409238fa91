import { chosenZones } from '../yard/choose';
import type { SoilNutrient, SoilTest, Yard, Zone } from '../yard/types';
import { isLevelFrom, readNutrient, tableOfTest } from './interpretSoil';
import { formatSoil } from './labUnits';
import { LEVEL_WORDS, soilTestName } from './soilNames';
import { usualTable } from './tables';
import type { PhosphorusGate, SoilTable } from './types';

/**
 * The test that counts for a zone: of those that cover it the one sampled last; one without a day counts
 * as older than any with a day; of two of the same day the later in the list.
 * @param nutrient only tests that say something of it count, so that a test begun and not yet filled in hides no other
 * @returns null when none covers it
 */
export function testOfZone(yard: Yard, zone: Zone, nutrient?: SoilNutrient): SoilTest | null {
  let newest: SoilTest | null = null;
  for (const test of yard.soilTests) {
    if (nutrient && (readNutrient(test, nutrient)?.level ?? null) === null) continue;
    if (!chosenZones(yard, test.zones).some((each) => each.id === zone.id)) continue;
    if (newest === null || (test.date ?? '') >= (newest.date ?? '')) newest = test;
  }
  return newest;
}

/** Ground that could be treated and that no test covers. */
export function zonesWithoutTest(yard: Yard): readonly Zone[] {
  const all = {
    classes: ['turf-low-cut', 'turf-regular', 'bed', 'other'],
    include: [],
    exclude: [],
  } as const;
  return chosenZones(yard, all).filter((zone) => testOfZone(yard, zone) === null);
}

/**
 * The table by which excess is judged: the test's own; where that is a floor alone, which names no excess,
 * the usual one of the extractant.
 */
export function tableOfExcess(test: SoilTest): SoilTable | null {
  const own = tableOfTest(test);
  return own === null || own.noPhosphorusFrom !== null ? own : usualTable(test.extractant);
}

/**
 * Whether phosphorus may go on a zone by the newest soil test that has it. Refused at the level from which the table
 * calls for none; by the lab's own word at `very-high`. Without a test, or where the test says nothing of
 * phosphorus, the verdict is `no-test`.
 */
export function phosphorusGate(yard: Yard, zone: Zone): PhosphorusGate {
  const test = testOfZone(yard, zone, 'P') ?? testOfZone(yard, zone);
  if (test === null) return { verdict: 'no-test', reason: 'no soil test on file', test: null };
  const table = tableOfExcess(test);
  const reading = readNutrient(test, 'P', table);
  if (reading === null || reading.level === null) {
    const reason =
      reading === null
        ? `the soil test “${soilTestName(test)}” has no phosphorus`
        : `no table reads the phosphorus of the soil test “${soilTestName(test)}”`;
    return { verdict: 'no-test', reason, test };
  }
  const { level, by, mgPerKg } = reading;
  const from = by === 'lab' ? 'very-high' : (table?.noPhosphorusFrom ?? 'very-high');
  const figure = mgPerKg === null ? 'P' : `P ${formatSoil(mgPerKg, test.labUnit)}`;
  const source = by === 'lab' ? 'the lab' : (table?.shortName ?? 'the table');
  const day = test.date === null ? 'day not told' : `sampled ${test.date}`;
  return {
    verdict: isLevelFrom(level, from) ? 'refused' : 'allowed',
    reason: `${figure} (${LEVEL_WORDS[level]} by ${source}, ${day})`,
    test,
  };
}

/** A test this old should be taken anew. Maryland counts a test for three years, Washington State 36 months; extension (Univ. of Missouri G6954) advises one every three years. */
export const TEST_YEARS = 3;

/** Whether a test is older than three years on a day. @param today YYYY-MM-DD; a test without a day is not judged */
export function isTestOld(test: SoilTest, today: string): boolean {
  if (test.date === null) return false;
  const year = Number(test.date.slice(0, 4)) + TEST_YEARS;
  return `${String(year).padStart(4, '0')}${test.date.slice(4)}` < today;
}
