import { SOIL_LEVELS, SOIL_NUTRIENTS, type SoilLevel, type SoilNutrient, type SoilTest } from '../yard/types';
import { formatSoil, inLabUnit, mgPerKgOf } from './labUnits';
import { phWords } from './phWords';
import { LEVEL_WORDS } from './soilNames';
import { SOIL_TABLES, usualTable } from './tables';
import type { Band, NutrientReading, SoilReading, SoilTable } from './types';

/**
 * The table a test is read by: the one chosen where it is for the test's extractant (figures of one
 * extractant do not carry over to another), else the usual one.
 * @returns null when there is none (`other`)
 */
export function tableOfTest(test: SoilTest): SoilTable | null {
  const chosen = SOIL_TABLES.find((table) => table.id === test.tableId);
  return chosen?.extractant === test.extractant ? chosen : usualTable(test.extractant);
}

/** The band a figure falls in. @param mgPerKg figure; null when the table is silent on the nutrient or the figure is no number */
export function bandOf(table: SoilTable, nutrient: SoilNutrient, mgPerKg: number): Band | null {
  if (!Number.isFinite(mgPerKg) || mgPerKg < 0) return null;
  const value = inLabUnit(mgPerKg, table.unit);
  return (
    table.bands[nutrient]?.find(
      ({ upTo, isUpToIncluded }) => upTo === null || value < upTo || (isUpToIncluded && value === upTo),
    ) ?? null
  );
}

/** Level of one nutrient of a test and who says so. */
interface LevelReading extends Pick<NutrientReading, 'level' | 'by'> {
  /** where the figure falls in the table; null: no figure, or the table is silent. */
  readonly band: Band | null;
}

/** Level of one nutrient: the lab's own word first, then the table. @returns null when neither measured nor rated */
export function levelOf(
  test: SoilTest,
  nutrient: SoilNutrient,
  table: SoilTable | null = tableOfTest(test),
): LevelReading | null {
  const mgPerKg = test.mgPerKg[nutrient] ?? null;
  const labLevel = test.labLevels[nutrient] ?? null;
  if (mgPerKg === null && labLevel === null) return null;
  const band = table && mgPerKg !== null ? bandOf(table, nutrient, mgPerKg) : null;
  return {
    level: labLevel ?? band?.level ?? null,
    by: labLevel !== null ? 'lab' : band !== null && table !== null ? table.id : null,
    band,
  };
}

/** One nutrient of a test as `levelOf` has it, in words. @returns null when neither measured nor rated */
export function readNutrient(
  test: SoilTest,
  nutrient: SoilNutrient,
  table: SoilTable | null = tableOfTest(test),
): NutrientReading | null {
  const read = levelOf(test, nutrient, table);
  if (read === null) return null;
  const { level, by, band } = read;
  const mgPerKg = test.mgPerKg[nutrient] ?? null;
  const figure = mgPerKg === null ? nutrient : `${nutrient} ${formatSoil(mgPerKg, test.labUnit)}`;
  return {
    nutrient,
    mgPerKg,
    level,
    by,
    words: level === null ? `${figure}, not rated` : `${figure}, ${levelWords(level, by, band, table)}`,
    bandsMgPerKg: table ? bandsInMgPerKg(table, nutrient) : [],
  };
}

function levelWords(level: SoilLevel, by: string | null, band: Band | null, table: SoilTable | null): string {
  if (by === 'lab' || !band || !table) return `${LEVEL_WORDS[level]} by the lab`;
  const own = LEVEL_WORDS[level];
  const said = band.word.toLowerCase() === own || band.word.toLowerCase().startsWith(own);
  return said ? `${band.word} by ${table.shortName}` : `${own} (“${band.word}” by ${table.shortName})`;
}

/** A table's bands in mg/kg whatever unit it is printed in. */
export function bandsInMgPerKg(table: SoilTable, nutrient: SoilNutrient): readonly Band[] {
  return (table.bands[nutrient] ?? []).map((band) => ({
    ...band,
    upTo: band.upTo === null ? null : mgPerKgOf(band.upTo, table.unit),
  }));
}

/** A test read whole: levels by the lab's word or the table, and the class of its pH. No lime or sulfur is worked out. */
export function interpretSoil(test: SoilTest): SoilReading {
  const table = tableOfTest(test);
  return {
    test,
    table,
    nutrients: SOIL_NUTRIENTS.flatMap((nutrient) => readNutrient(test, nutrient, table) ?? []),
    phWords: test.ph === null ? null : phWords(test.ph),
  };
}

/** Whether one level is at least another. */
export function isLevelFrom(level: SoilLevel, least: SoilLevel): boolean {
  return SOIL_LEVELS.indexOf(level) >= SOIL_LEVELS.indexOf(least);
}
