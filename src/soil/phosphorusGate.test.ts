import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { SoilTest, Yard, Zone } from '../yard/types';
import { interpretSoil, readNutrient, tableOfTest } from './interpretSoil';
import { phosphorusGate } from './phosphorusGate';
import { SOIL_TABLES, tablesOf, usualTable } from './tables';
import { testOfZone } from './testOfZone';
import { testSoil } from './testSoil';

const square: Zone['parts'] = [
  [
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 0],
    ],
  ],
];
const front = newZone('front', 'turf', square, { name: 'Front lawn' });
const bed = newZone('bed', 'bed', square, { name: 'Rose bed' });
const yardWith = (...soilTests: readonly SoilTest[]): Yard => ({
  ...emptyYard('y', 'Yard'),
  zones: [front, bed, newZone('drive', 'hardscape', square)],
  soilTests,
});
const gateOf = (fields: Partial<SoilTest>) => phosphorusGate(yardWith(testSoil(fields)), front);

describe('tables', () => {
  it('each is told apart, has a source and bands that rise to an open end', () => {
    expect(new Set(SOIL_TABLES.map((table) => table.id)).size).toBe(SOIL_TABLES.length);
    for (const table of SOIL_TABLES) {
      expect(table.source.length).toBeGreaterThan(20);
      for (const bands of Object.values(table.bands)) {
        const bounds = bands.slice(0, -1).map((band) => band.upTo ?? Number.NaN);
        expect(bounds).toEqual([...bounds].sort((a, b) => a - b));
        expect(bands.at(-1)?.upTo).toBeNull();
        expect(new Set(bands.map((band) => band.level)).size).toBe(bands.length);
      }
    }
  });

  it('every extractant but “other” has a usual one that tells excess of phosphorus', () => {
    for (const extractant of ['mehlich-3', 'mehlich-1', 'bray-1', 'olsen', 'morgan'] as const) {
      expect(usualTable(extractant)?.noPhosphorusFrom).not.toBeNull();
      expect(tablesOf(extractant)[0]).toBe(usualTable(extractant));
    }
    expect(usualTable('other')).toBeNull();
  });

  it('a table of another extractant is not used', () => {
    expect(tableOfTest(testSoil({ extractant: 'olsen', tableId: 'rutgers-m3' }))?.id).toBe('wsu-lawn-olsen');
    expect(tableOfTest(testSoil({ tableId: 'slan-m3' }))?.id).toBe('slan-m3');
  });
});

describe('reading', () => {
  it('the lab’s own word goes before the table, and stands without a figure', () => {
    const test = testSoil({ mgPerKg: { P: 92, K: 30 }, labLevels: { P: 'medium', Mg: 'low' } });
    expect(interpretSoil(test).nutrients.map(({ nutrient, level, by }) => [nutrient, level, by])).toEqual([
      ['P', 'medium', 'lab'],
      ['K', 'low', 'rutgers-m3'],
      ['Mg', 'low', 'lab'],
    ]);
  });

  it('figures of an unknown extractant are shown and not rated', () => {
    const reading = readNutrient(testSoil({ extractant: 'other', mgPerKg: { P: 92 } }), 'P');
    expect(reading).toMatchObject({ level: null, by: null });
    expect(reading?.words).toContain('not rated');
  });

  it('is in the unit of the lab', () => {
    const reading = readNutrient(testSoil({ labUnit: 'lb-per-acre', mgPerKg: { P: 92 } }), 'P');
    expect(reading?.words.replaceAll('\u00a0', ' ')).toBe(
      'P 184 lb/acre, very high (excessive) by Rutgers NJAES',
    );
  });
});

describe('the gate', () => {
  it('refuses at the level from which the table calls for none', () => {
    const gate = gateOf({ mgPerKg: { P: 92 } });
    expect(gate.verdict).toBe('refused');
    expect(gate.reason.replaceAll('\u00a0', ' ')).toBe(
      'P 92 ppm (very high by Rutgers NJAES, sampled Tue, Mar 10, 2026)',
    );
    expect(gateOf({ mgPerKg: { P: 60 } }).verdict).toBe('allowed');
    expect(gateOf({ mgPerKg: { P: 60 }, tableId: 'penn-state-lawn-m3' }).verdict).toBe('refused');
  });

  it('a floor names no excess: the usual table judges that', () => {
    expect(gateOf({ mgPerKg: { P: 60 }, tableId: 'mlsn-m3' }).verdict).toBe('allowed');
    expect(gateOf({ mgPerKg: { P: 92 }, tableId: 'mlsn-m3' })).toMatchObject({ verdict: 'refused' });
  });

  /*
   * Rutgers NJAES (`rutgers-m3`) calls for none at 92 ppm and not at 60; Penn State (`penn-state-lawn-m3`)
   * from 45 ppm on. Which of lab and table goes first: common practice, no source.
   */
  it.each([
    // a need by the lab's own word goes before the table, which is told
    ['very-low', 92, '', 'allowed', true],
    ['low', 60, 'penn-state-lawn-m3', 'allowed', true],
    ['medium', 92, '', 'allowed', true],
    ['medium', 60, '', 'allowed', false],
    // enough by the lab's word names no need: the table that calls for none refuses
    ['high', 92, '', 'refused', true],
    ['high', 60, 'penn-state-lawn-m3', 'refused', true],
    ['high', 92, 'mlsn-m3', 'refused', true],
    ['high', 60, '', 'allowed', false],
    // more than enough by the lab's word refuses whatever the table says
    ['very-high', 60, '', 'refused', true],
    ['very-high', 92, '', 'refused', false],
  ] as const)('lab %s at %d ppm by table “%s”: %s', (P, ppm, tableId, verdict, differ) => {
    const gate = gateOf({ mgPerKg: { P: ppm }, labLevels: { P }, tableId });
    expect(gate.verdict).toBe(verdict);
    expect(gate.disagreement !== null).toBe(differ);
  });

  it('tells the words of both where they disagree', () => {
    const gate = gateOf({ mgPerKg: { P: 92 }, labLevels: { P: 'high' } });
    expect(gate.reason.replaceAll('\u00a0', ' ')).toBe(
      'P 92 ppm (high by the lab, very high by Rutgers NJAES, sampled Tue, Mar 10, 2026)',
    );
    expect(gate.disagreement).toMatch(
      /“Lawn soil” the lab and the table disagree.*word is high.*Rutgers NJAES calls for no phosphorus/,
    );
  });

  it('goes by the lab’s own word alone where no table reads the figure', () => {
    expect(gateOf({ extractant: 'other', labLevels: { P: 'very-high' } }).verdict).toBe('refused');
    expect(gateOf({ extractant: 'other', mgPerKg: { P: 92 }, labLevels: { P: 'high' } })).toMatchObject({
      verdict: 'allowed',
      disagreement: null,
    });
  });

  it('asks for a test where there is none, or where it says nothing of phosphorus', () => {
    expect(phosphorusGate(yardWith(), front).verdict).toBe('no-test');
    expect(gateOf({ mgPerKg: { K: 92 } }).verdict).toBe('no-test');
    expect(gateOf({ extractant: 'other', mgPerKg: { P: 92 } }).verdict).toBe('no-test');
  });

  it('a newer test that says nothing of phosphorus hides no other', () => {
    const rich = testSoil({ id: 'rich', date: '2022-03-01', mgPerKg: { P: 92 } });
    const begun = testSoil({ id: 'begun', date: '2026-03-01' });
    expect(phosphorusGate(yardWith(rich, begun), front)).toMatchObject({ verdict: 'refused', test: rich });
    expect(testOfZone(yardWith(rich, begun), front)).toBe(begun);
  });

  it('goes by the newest test alone', () => {
    const rich = testSoil({ id: 'rich', date: '2022-03-01', mgPerKg: { P: 92 } });
    const lean = testSoil({ id: 'lean', date: '2026-03-01', mgPerKg: { P: 20 } });
    expect(phosphorusGate(yardWith(lean, rich), front).verdict).toBe('allowed');
  });

  it('of a day goes by the newest test sampled by then', () => {
    const rich = testSoil({ id: 'rich', date: '2024-03-01', mgPerKg: { P: 92 } });
    const lean = testSoil({ id: 'lean', date: '2026-03-01', mgPerKg: { P: 20 } });
    const on = (day: string) => phosphorusGate(yardWith(lean, rich), front, day).test?.id;
    expect(on('2026-02-28')).toBe('rich');
    expect(on('2026-03-01')).toBe('lean');
    expect(on('2024-02-01')).toBe('rich');
  });
});
