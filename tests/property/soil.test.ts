import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ground, testAnalysis, testLabel, turfVisit, turfYard } from '../../src/plan/testDose';
import { planVisit } from '../../src/plan/visit';
import { bandOf, isLevelFrom } from '../../src/soil/interpretSoil';
import { inLabUnit, mgPerKgOf } from '../../src/soil/labUnits';
import { phosphorusGate } from '../../src/soil/phosphorusGate';
import { SOIL_TABLES } from '../../src/soil/tables';
import { testOfZone } from '../../src/soil/testOfZone';
import { testSoil } from '../../src/soil/testSoil';
import { EXTRACTANTS, SOIL_LEVELS, SOIL_NUTRIENTS, type SoilTest, type Yard } from '../../src/yard/types';

const figure = fc.double({ min: 0, max: 3000, noNaN: true });
const soil: fc.Arbitrary<SoilTest> = fc
  .record({
    extractant: fc.constantFrom(...EXTRACTANTS),
    tableId: fc.constantFrom('', ...SOIL_TABLES.map((table) => table.id)),
    p: figure,
    date: fc.constantFrom(null, '2020-05-01', '2026-05-01'),
    lab: fc.constantFrom(undefined, ...SOIL_LEVELS),
  })
  .map(({ extractant, tableId, p, date, lab }) =>
    testSoil({
      extractant,
      tableId,
      mgPerKg: { P: p },
      date,
      labLevels: lab === undefined ? {} : { P: lab },
    }),
  );

function gate(test: SoilTest): string {
  const yard: Yard = { ...turfYard([], []), soilTests: [test] };
  const [zone] = yard.zones;
  if (!zone) throw new Error('no zone');
  return phosphorusGate(yard, zone).verdict;
}

describe('reading of soil tests', () => {
  it('every figure falls in one band of a table that has the nutrient, and a larger one never in a lower', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SOIL_TABLES),
        fc.constantFrom(...SOIL_NUTRIENTS),
        figure,
        figure,
        (table, nutrient, a, b) => {
          const [less, more] = [
            bandOf(table, nutrient, Math.min(a, b)),
            bandOf(table, nutrient, Math.max(a, b)),
          ];
          expect(less === null).toBe(table.bands[nutrient] === undefined);
          if (less && more) expect(isLevelFrom(more.level, less.level)).toBe(true);
        },
      ),
    );
  });

  it('a figure comes back from the lab’s unit as it was', () => {
    fc.assert(
      fc.property(figure, fc.constantFrom('ppm' as const, 'lb-per-acre' as const), (value, unit) => {
        expect(inLabUnit(mgPerKgOf(value, unit), unit)).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe('the test of a zone', () => {
  it('on any day leaves no better one: none later that is sampled by then, none earlier where all come after', () => {
    const date = fc.option(fc.constantFrom('2020-05-01', '2022-05-01', '2024-05-01', '2026-05-01'));
    const tests = fc.array(fc.record({ date, zones: fc.subarray(['front', 'back']), isRead: fc.boolean() }));
    fc.assert(
      fc.property(tests, fc.constantFrom('2019-01-01', '2022-05-01', '2025-01-01', null), (rows, day) => {
        const soilTests = rows.map((row, i) =>
          testSoil({
            id: `t-${i}`,
            date: row.date,
            zones: { classes: [], include: row.zones, exclude: [] },
            mgPerKg: row.isRead ? { P: 50 } : {},
          }),
        );
        const found = testOfZone({ ...turfYard([], []), soilTests }, { id: 'back' }, 'P', day);
        const able = soilTests.filter((_, i) => rows[i]?.isRead && rows[i]?.zones.includes('back'));
        expect(found === null).toBe(able.length === 0);
        if (found === null) return;
        expect(able).toContain(found);
        const isBy = (test: SoilTest) => day === null || (test.date ?? '') <= day;
        const [at, of] = [able.indexOf(found), found.date ?? ''];
        able.forEach((other, i) => {
          const its = other.date ?? '';
          if (isBy(other)) expect(isBy(found) && (its < of || (its === of && i <= at))).toBe(true);
          else if (!isBy(found)) expect(its > of || (its === of && i <= at)).toBe(true);
        });
      }),
    );
  });
});

describe('the gate', () => {
  it('more phosphorus in the soil never lets through what less of it refused', () => {
    fc.assert(
      fc.property(soil, fc.double({ min: 0, max: 1000, noNaN: true }), (test, more) => {
        const richer = { ...test, mgPerKg: { P: (test.mgPerKg.P ?? 0) + more } };
        if (gate(test) === 'refused') expect(gate(richer)).toBe('refused');
        if (gate(richer) === 'allowed') expect(gate(test)).toBe('allowed');
      }),
    );
  });

  it('a lab’s word of enough or more lets through nothing that the table refuses; a word of need never refuses', () => {
    fc.assert(
      fc.property(soil, (test) => {
        const lab = test.labLevels.P;
        if (lab === undefined) return;
        const byTable = gate({ ...test, labLevels: {} });
        const isNeed = !isLevelFrom(lab, 'high');
        if (isNeed) expect(gate(test)).toBe('allowed');
        else if (byTable === 'refused' || lab === 'very-high') expect(gate(test)).toBe('refused');
        else expect(gate(test)).toBe('allowed');
      }),
    );
  });

  it('no dose in the plan carries phosphorus onto a zone that refuses it; one without is always planned', () => {
    const percent = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(soil, soil, percent, percent, (frontSoil, backSoil, p2o5, k2o) => {
        const only = (id: string) => ({ classes: [], include: [id], exclude: [] });
        const soilTests = [
          { ...frontSoil, id: 'a', zones: only('front') },
          { ...backSoil, id: 'b', zones: only('back') },
        ];
        const product = testLabel({ analysis: testAnalysis(20, p2o5, k2o) });
        const visit = turfVisit('v', '2026-06-01', [{}]);
        const yard: Yard = { ...turfYard([product], [visit]), soilTests };
        const zonesByDose = new Map([['v-0', ground('front', 'back')]]);
        const { doses } = planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map() });
        const refused = yard.zones.some(
          (zone) => phosphorusGate(yard, zone, visit.date).verdict === 'refused',
        );
        expect(doses.length).toBe(p2o5 > 0 && refused ? 0 : 1);
      }),
    );
  });
});
