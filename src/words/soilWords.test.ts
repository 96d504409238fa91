import { describe, expect, it } from 'vitest';
import { readNutrient } from '../soil/interpretSoil';
import { SOIL_TABLES } from '../soil/tables';
import { testSoil } from '../soil/testSoil';
import { bandsWords, figureWords, gateWords, tableSourceWords } from './soilWords';

describe('words on soil tests', () => {
  it('the bounds of the levels are in the lab’s unit', () => {
    const bray = readNutrient(testSoil({ extractant: 'bray-1', mgPerKg: { P: 30 } }), 'P');
    expect(bandsWords(bray?.bandsMgPerKg ?? [], 'ppm')).toBe(
      'low below 12.5, high to 25, very high above that (ppm)',
    );
    const rutgers = readNutrient(testSoil({ labUnit: 'lb-per-acre', mgPerKg: { P: 30 } }), 'P');
    expect(bandsWords(rutgers?.bandsMgPerKg ?? [], 'lb-per-acre')).toBe(
      'very low to 24, low to 45, medium to 71, high to 137, very high above that (lb/acre)',
    );
    expect(bandsWords([], 'ppm')).toBe('');
  });

  it('a figure that was not measured is a dash', () => {
    const rated = readNutrient(testSoil({ labLevels: { P: 'low' } }), 'P');
    expect(rated && figureWords(rated, 'ppm')).toBe('–');
    const measured = readNutrient(testSoil({ mgPerKg: { P: 46 } }), 'P');
    expect(measured && figureWords(measured, 'lb-per-acre')).toBe('92');
  });

  it('a table tells its use, its source and how it was read', () => {
    for (const table of SOIL_TABLES)
      expect(tableSourceWords(table)).toMatch(/^For (turf|crops in general)\. .*; .*\.$/);
  });

  it('the gate is told as a sentence', () => {
    expect(
      gateWords({ verdict: 'no-test', reason: 'no soil test on file', disagreement: null, test: null }),
    ).toMatch(/^No soil test on file: .*fallback/);
    expect(gateWords({ verdict: 'refused', reason: 'P 92 ppm', disagreement: null, test: null })).toMatch(
      /refused/,
    );
    expect(gateWords({ verdict: 'allowed', reason: 'P 2 ppm', disagreement: null, test: null })).toMatch(
      /Local rules may/,
    );
  });
});
