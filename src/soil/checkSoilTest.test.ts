import { describe, expect, it } from 'vitest';
import type { SoilTest } from '../yard/types';
import { checkSoilTest } from './checkSoilTest';
import { testSoil } from './testSoil';

const codes = (fields: Partial<SoilTest>) =>
  checkSoilTest(testSoil(fields), '2026-06-01').map((issue) => issue.code);

describe('what is doubtful in a soil test', () => {
  it.each([
    ['nothing, as it should be', { ph: 6.4, bufferPh: 6.8, mgPerKg: { P: 40 } }, []],
    ['no ground', { zones: { classes: [], include: [], exclude: ['bed'] } }, ['soil-no-ground']],
    ['no day', { date: null }, ['soil-no-date']],
    ['a day to come', { date: '2026-06-02' }, ['soil-date-ahead']],
    ['pH of no soil', { ph: 0.65 }, ['soil-ph-range']],
    ['phosphorus of no soil', { mgPerKg: { P: 9500 } }, ['soil-figure-range']],
    [
      'boron and zinc of no soil',
      { mgPerKg: { B: 80, Zn: 4000 } },
      ['soil-figure-range', 'soil-figure-range'],
    ],
    ['a very rich soil', { mgPerKg: { P: 900, K: 1200, Ca: 12_000 } }, []],
    ['buffer pH of no soil', { bufferPh: 68 }, ['soil-ph-range']],
    // Washington State Univ., Phosphorus and Home Lawns: Bray P1 at pH 7 or lower, Olsen above
    ['Bray-1 at pH 7', { extractant: 'bray-1', ph: 7, mgPerKg: { P: 9 } }, []],
    ['Bray-1 above', { extractant: 'bray-1', ph: 7.1, mgPerKg: { P: 9 } }, ['soil-bray-alkaline']],
    ['Olsen at pH 7', { extractant: 'olsen', ph: 7, mgPerKg: { P: 9 } }, ['soil-olsen-acid']],
    ['Olsen above', { extractant: 'olsen', ph: 7.1, mgPerKg: { P: 9 } }, []],
    ['a table of another method', { extractant: 'olsen', tableId: 'rutgers-m3' }, ['soil-table-other']],
    ['a table not known', { tableId: 'gone' }, ['soil-table-other']],
  ] as const)('%s', (_name, fields, expected) => {
    expect(codes(fields as Partial<SoilTest>)).toEqual(expected);
  });

  it('tells a figure that is hardly met with in the unit of the report', () => {
    // Penn State Extension: 1 ppm is 2 lb per acre
    const [issue] = checkSoilTest(testSoil({ labUnit: 'lb-per-acre', mgPerKg: { P: 4750 } }), '2026-06-01');
    expect(issue?.message.replaceAll('\u00a0', ' ')).toMatch(
      /^Phosphorus of 9,500 lb\/acre is hardly met with/,
    );
    expect(issue?.place.path).toBe('mgPerKg.P');
  });

  it('names the field', () => {
    const [issue] = checkSoilTest(testSoil({ date: null }), '2026-06-01');
    expect(issue?.place).toEqual({ soilTestId: 'soil-1', path: 'date' });
  });
});
