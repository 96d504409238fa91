import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { SoilTest, Yard, Zone } from '../yard/types';
import { interpretSoil, readNutrient, tableOfTest } from './interpretSoil';
import { isTestOld, phosphorusGate, testOfZone, zonesWithoutTest } from './phosphorusGate';
import { SOIL_TABLES, tablesOf, usualTable } from './tables';
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

describe('the test of a zone', () => {
  it('is the one sampled last; without a day it is the oldest; of one day the later in the list', () => {
    const old = testSoil({ id: 'old', date: '2023-04-01' });
    const none = testSoil({ id: 'none', date: null });
    const late = testSoil({ id: 'late', date: '2025-04-01' });
    const again = testSoil({ id: 'again', date: '2025-04-01' });
    expect(testOfZone(yardWith(late, old, none), front)?.id).toBe('late');
    expect(testOfZone(yardWith(old, none), front)?.id).toBe('old');
    expect(testOfZone(yardWith(late, again), front)?.id).toBe('again');
    expect(testOfZone(yardWith(late), bed)).toBeNull();
  });

  it('ground without one is told, hardscape is not ground', () => {
    expect(zonesWithoutTest(yardWith(testSoil())).map((zone) => zone.id)).toEqual(['bed']);
  });

  it('is old after three years', () => {
    expect(isTestOld(testSoil({ date: '2023-03-10' }), '2026-03-10')).toBe(false);
    expect(isTestOld(testSoil({ date: '2023-03-10' }), '2026-03-11')).toBe(true);
    expect(isTestOld(testSoil({ date: null }), '2026-03-11')).toBe(false);
  });
});

describe('the gate', () => {
  it('refuses at the level from which the table calls for none', () => {
    const gate = gateOf({ mgPerKg: { P: 92 } });
    expect(gate.verdict).toBe('refused');
    expect(gate.reason.replaceAll('\u00a0', ' ')).toBe(
      'P 92 ppm (very high by Rutgers NJAES, sampled 2026-03-10)',
    );
    expect(gateOf({ mgPerKg: { P: 60 } }).verdict).toBe('allowed');
    expect(gateOf({ mgPerKg: { P: 60 }, tableId: 'penn-state-lawn-m3' }).verdict).toBe('refused');
  });

  it('a floor names no excess: the usual table judges that', () => {
    expect(gateOf({ mgPerKg: { P: 60 }, tableId: 'mlsn-m3' }).verdict).toBe('allowed');
    expect(gateOf({ mgPerKg: { P: 92 }, tableId: 'mlsn-m3' })).toMatchObject({ verdict: 'refused' });
  });

  it('goes by the lab’s own word where there is one', () => {
    expect(gateOf({ mgPerKg: { P: 92 }, labLevels: { P: 'high' } }).verdict).toBe('allowed');
    expect(gateOf({ extractant: 'other', labLevels: { P: 'very-high' } }).verdict).toBe('refused');
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
});
