import { describe, expect, it } from 'vitest';
import { amendmentNeed, limeParts } from '../../src/soil/amendmentNeed';
import { bandOf, interpretSoil } from '../../src/soil/interpretSoil';
import { inLabUnit, mgPerKgOf } from '../../src/soil/labUnits';
import { phWords } from '../../src/soil/phWords';
import { SOIL_TABLES } from '../../src/soil/tables';
import { testSoil } from '../../src/soil/testSoil';
import { KG_PER_LB, M2_PER_SQFT } from '../../src/units/factors';
import type { SoilLevel, SoilNutrient } from '../../src/yard/types';

/*
 * Soil test readings as publications print them, in the unit of the source.
 */

function readBand(tableId: string, nutrient: SoilNutrient, printed: number) {
  const table = SOIL_TABLES.find((each) => each.id === tableId);
  if (!table) throw new Error(`no table ${tableId}`);
  return bandOf(table, nutrient, mgPerKgOf(printed, table.unit));
}

type Row = readonly [table: string, nutrient: SoilNutrient, printed: number, level: SoilLevel];

/** Both ends of every printed range. */
const ROWS: readonly Row[] = [
  // Rutgers NJAES Soil Testing Laboratory, Relative Levels of Nutrients, Mehlich-3, lb/acre:
  // P 0-24 / 25-45 / 46-71 / 72-137 / >137
  ['rutgers-m3', 'P', 0, 'very-low'],
  ['rutgers-m3', 'P', 24, 'very-low'],
  ['rutgers-m3', 'P', 25, 'low'],
  ['rutgers-m3', 'P', 45, 'low'],
  ['rutgers-m3', 'P', 46, 'medium'],
  ['rutgers-m3', 'P', 71, 'medium'],
  ['rutgers-m3', 'P', 72, 'high'],
  ['rutgers-m3', 'P', 137, 'high'],
  ['rutgers-m3', 'P', 138, 'very-high'],
  // K 0-40 / 41-81 / 82-145 / 146-277 / >277
  ['rutgers-m3', 'K', 40, 'very-low'],
  ['rutgers-m3', 'K', 41, 'low'],
  ['rutgers-m3', 'K', 82, 'medium'],
  ['rutgers-m3', 'K', 146, 'high'],
  ['rutgers-m3', 'K', 277, 'high'],
  ['rutgers-m3', 'K', 278, 'very-high'],
  // Mg 0-45 / 46-83 / 84-143 / 144-295 / >295; Ca 0-615 / 616-1007 / 1008-1400 / 1401-1790 / >1790
  ['rutgers-m3', 'Mg', 83, 'low'],
  ['rutgers-m3', 'Mg', 144, 'high'],
  ['rutgers-m3', 'Ca', 615, 'very-low'],
  ['rutgers-m3', 'Ca', 1400, 'medium'],
  ['rutgers-m3', 'Ca', 1791, 'very-high'],
  // Univ. of Delaware, Agronomic Crops, ppm: P 0-25 / 26-50 / 51-100 / >100, K 0-70 / 71-140 / 141-280 / >280,
  // Mg 0-55 / 56-110 / 111-220 / >220, Ca 0-450 / 451-900 / 901-1800 / >1800
  ['delaware-m3', 'P', 25, 'low'],
  ['delaware-m3', 'P', 26, 'medium'],
  ['delaware-m3', 'P', 51, 'high'],
  ['delaware-m3', 'P', 100, 'high'],
  ['delaware-m3', 'P', 101, 'very-high'],
  ['delaware-m3', 'K', 141, 'high'],
  ['delaware-m3', 'Mg', 55, 'low'],
  ['delaware-m3', 'Ca', 1801, 'very-high'],
  // Landschoot and Wolf, Penn State, 2011, abstract 103-9: less than 45 mg/kg gets a recommendation; above 200 is
  // the threshold for the P Index
  ['penn-state-lawn-m3', 'P', 44.9, 'low'],
  ['penn-state-lawn-m3', 'P', 46, 'high'],
  ['penn-state-lawn-m3', 'P', 200, 'high'],
  ['penn-state-lawn-m3', 'P', 201, 'very-high'],
  // Carrow and others 2003, as tabled in a trade guide (a copy), ppm: P 27-54, K 75-176 (sand 50-116), Ca 500-750,
  // Mg 70-140 (sand 60-120), S 15-40; Bray-1 P 15-30; Olsen P 12-28
  ['slan-m3', 'P', 26, 'low'],
  ['slan-m3', 'P', 27, 'medium'],
  ['slan-m3', 'P', 54, 'medium'],
  ['slan-m3', 'P', 55, 'high'],
  ['slan-m3', 'K', 176, 'medium'],
  ['slan-sand-m3', 'K', 117, 'high'],
  ['slan-m3', 'Ca', 499, 'low'],
  ['slan-sand-m3', 'Mg', 60, 'medium'],
  ['slan-m3', 'S', 41, 'high'],
  ['slan-bray', 'P', 14, 'low'],
  ['slan-bray', 'P', 30, 'medium'],
  ['slan-olsen', 'P', 12, 'medium'],
  ['slan-olsen', 'P', 29, 'high'],
  // PACE Turf and Asian Turfgrass Center, MLSN sheet, Sept 2014 (a copy), ppm: K 37, P 21, Ca 331, Mg 47, S 7
  ['mlsn-m3', 'P', 20, 'low'],
  ['mlsn-m3', 'P', 21, 'high'],
  ['mlsn-m3', 'K', 36, 'low'],
  ['mlsn-m3', 'Ca', 331, 'high'],
  ['mlsn-m3', 'Mg', 46, 'low'],
  ['mlsn-m3', 'S', 7, 'high'],
  // Nemitz and others, Purdue, 2006, abstract: low < 12.5, acceptable 12.5-25, high > 25 mg P/kg, Bray 1
  ['purdue-lawn-bray', 'P', 12.4, 'low'],
  ['purdue-lawn-bray', 'P', 12.5, 'high'],
  ['purdue-lawn-bray', 'P', 25, 'high'],
  ['purdue-lawn-bray', 'P', 25.1, 'very-high'],
  // Washington State Univ., Phosphorus and Home Lawns (a copy): above 25 ppm Bray P1 or 18 ppm Olsen no benefit is likely
  ['wsu-lawn-bray', 'P', 25, 'low'],
  ['wsu-lawn-bray', 'P', 26, 'high'],
  ['wsu-lawn-olsen', 'P', 18, 'low'],
  ['wsu-lawn-olsen', 'P', 19, 'high'],
  // Virginia, Mehlich-1, lb/acre, L 0-11, M 12-35, H 36-110, VH over 110 (from memory)
  ['virginia-m1', 'P', 11, 'low'],
  ['virginia-m1', 'P', 12, 'medium'],
  ['virginia-m1', 'P', 36, 'high'],
  ['virginia-m1', 'P', 111, 'very-high'],
  // UF/IFAS, Mehlich-1 P, ppm, < 10 / 10-15 / 16-30 / 31-60 / > 60; Mehlich-3 P <= 25 / 26-45 / > 45 (from memory)
  ['ifas-m1', 'P', 9.9, 'very-low'],
  ['ifas-m1', 'P', 10, 'low'],
  ['ifas-m1', 'P', 61, 'very-high'],
  ['ifas-m3', 'P', 25, 'low'],
  ['ifas-m3', 'P', 46, 'high'],
];

describe('published levels', () => {
  it.each(ROWS)('%s: %s %d is %s', (table, nutrient, printed, level) => {
    expect(readBand(table, nutrient, printed)?.level).toBe(level);
  });
});

describe('published readings', () => {
  it('a report of the UMass laboratory: P 6.3, K 107 and Ca 1096 ppm in the optimum range, Mg 162 above it', () => {
    // UMass Amherst Soil and Plant Tissue Testing Laboratory, sample report of 2015-03-03 (a copy), modified Morgan:
    // optimum P 4-14, K 100-160, Ca 1000-1500, Mg 50-120 ppm; pH 6.2
    const reading = interpretSoil(
      testSoil({
        extractant: 'morgan',
        mgPerKg: { P: 6.3, K: 107, Ca: 1096, Mg: 162 },
        ph: 6.2,
      }),
    );
    expect(reading.nutrients.map(({ nutrient, level }) => [nutrient, level])).toEqual([
      ['P', 'high'],
      ['K', 'high'],
      ['Ca', 'high'],
      ['Mg', 'very-high'],
    ]);
    expect(reading.phWords).toBe('slightly acid');
  });

  it.each([
    // Landschoot and Wolf, Penn State, 2011: of 34,456 lawns the mode 28.0 is recommended phosphorus, the median
    // 57.0 and the mean 81.8 mg/kg are not
    ['penn-state-lawn-m3', 28.0, 'low'],
    ['penn-state-lawn-m3', 57.0, 'high'],
    ['penn-state-lawn-m3', 81.8, 'high'],
    // Nemitz and others, Purdue, 2006: lawns kept by firms averaged 41.8 and lawns without input 49.9 mg/kg, both high;
    // the least was 2.5
    ['purdue-lawn-bray', 41.8, 'very-high'],
    ['purdue-lawn-bray', 49.9, 'very-high'],
    ['purdue-lawn-bray', 2.5, 'low'],
    // Shober, Univ. of Delaware, 2025: a "high P soil" by law, over 150 ppm, is past the agronomic optimum of 100
    ['delaware-m3', 151, 'very-high'],
    // Woods 2015: the median of a world-wide survey, 76 ppm, is over the MLSN floor of 21
    ['mlsn-m3', 76, 'high'],
  ] as const)('%s reads P %d ppm as %s', (table, ppm, level) => {
    expect(readBand(table, 'P', inTableUnit(table, ppm))?.level).toBe(level);
  });
});

describe('micronutrients', () => {
  it.each([
    // Rutgers NJAES, Relative Levels of Nutrients, ppm: critical level and high of Zn 1.0 and 50, Cu 0.5 and 20,
    // B 0.5 and 20, Fe 50 and 100; below critical is deficient, above high a warning
    ['Zn', 0.9, 'low'],
    ['Zn', 1, 'high'],
    ['Zn', 51, 'very-high'],
    ['Cu', 0.4, 'low'],
    ['B', 20, 'high'],
    ['Fe', 49, 'low'],
    ['Fe', 101, 'very-high'],
  ] as const)('%s %d ppm is %s', (nutrient, ppm, level) => {
    expect(readBand('rutgers-m3', nutrient, inTableUnit('rutgers-m3', ppm))?.level).toBe(level);
  });
});

function inTableUnit(tableId: string, ppm: number): number {
  const table = SOIL_TABLES.find((each) => each.id === tableId);
  return inLabUnit(ppm, table?.unit ?? 'ppm');
}

describe('pounds per acre', () => {
  it.each([
    // Ohio State Univ., Understanding Soil Test Reports for Phosphorus Values: 60 lb/acre / 2 = 30 ppm
    [60, 30],
    // Univ. of Delaware, 2025: 100 ppm is 200 lb/acre, 150 ppm is 300 lb/acre
    [200, 100],
    [300, 150],
  ])('%d lb/acre is %d ppm', (lbPerAcre, ppm) => {
    expect(mgPerKgOf(lbPerAcre, 'lb-per-acre')).toBe(ppm);
    expect(inLabUnit(ppm, 'lb-per-acre')).toBe(lbPerAcre);
  });

  it('an acre furrow slice of silt loam weighs about two million pounds', () => {
    // Penn State Extension, What is an "Acre Furrow Slice" of Soil?: 43,560 sq ft x 0.56 ft x 82.99 lb/cu ft is
    // 2,024,458 lb, rounded to 2,000,000: one ppm of it is 2 lb. Tolerance: the rounding the source itself makes.
    const sliceLb = 24_394 * 82.99;
    expect(sliceLb).toBeCloseTo(2_024_458, 0);
    expect(inLabUnit(1, 'lb-per-acre')).toBeCloseTo(sliceLb / 1e6, 1);
  });
});

describe('classes of pH', () => {
  it.each([
    // USDA NRCS, Soil Quality Indicators: pH, 1998, as quoted by Oregon State Univ.
    [3.5, 'extremely acid'],
    [4.4, 'extremely acid'],
    [4.5, 'very strongly acid'],
    [5.1, 'strongly acid'],
    [5.5, 'strongly acid'],
    [5.6, 'moderately acid'],
    [6.0, 'moderately acid'],
    [6.1, 'slightly acid'],
    [6.5, 'slightly acid'],
    [6.6, 'neutral'],
    [7.3, 'neutral'],
    [7.4, 'slightly alkaline'],
    [7.8, 'slightly alkaline'],
    [7.9, 'moderately alkaline'],
    [8.5, 'strongly alkaline'],
    [9.0, 'strongly alkaline'],
  ])('pH %d is %s', (ph, words) => {
    expect(phWords(ph)).toBe(words);
  });
});

describe('lime as the lab recommends it', () => {
  // Penn State Agricultural Analytical Services Lab, Home Garden report notes
  const lbPer100Sqft = (pounds: number) => (pounds * KG_PER_LB) / (100 * M2_PER_SQFT);

  it('5 lb per 100 sq ft from stone of CCE 70 is 7 lb', () => {
    // printed 7, unrounded 7.14: tolerance half a pound
    const kg = amendmentNeed(lbPer100Sqft(5), 100 * M2_PER_SQFT, 70);
    expect(Math.abs((kg ?? Number.NaN) / KG_PER_LB - 7)).toBeLessThan(0.5);
  });

  it.each([
    [10, 1],
    [11, 2],
    [20, 2],
    [21, 3],
  ])('%d lb per 100 sq ft go down in %d', (pounds, parts) => {
    expect(limeParts(lbPer100Sqft(pounds))).toBe(parts);
  });
});
