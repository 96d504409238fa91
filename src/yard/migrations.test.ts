import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { yardFromGeoJson } from './codec';
import { DEFAULT_CAPS, DEFAULT_PASSES, NO_CLIMATE, SCHEMA_VERSION } from './defaults';
import { MIGRATIONS, migrate } from './migrations';

it('has a step from every older version', () => {
  for (let version = 0; version < SCHEMA_VERSION; version++)
    expect(MIGRATIONS[version]).toBeTypeOf('function');
});

it('runs the steps in order and leaves its input alone', () => {
  const file = Object.freeze({ trail: '' });
  const table = {
    1: (old: Readonly<Record<string, unknown>>) => ({ trail: `${old.trail}1` }),
    2: (old: Readonly<Record<string, unknown>>) => ({ trail: `${old.trail}2` }),
  };
  expect(migrate(file, 1, 3, table)).toEqual({ trail: '12' });
  expect(migrate(file, 3, 3, table)).toBe(file);
  expect(() => migrate(file, 0, 3, table)).toThrow('version 0');
});

it('opens a file of version 1 whole: what that version did not know has its usual value', () => {
  const url = new URL('../../tests/fixtures/yards/version-1.geojson', import.meta.url);
  const { yard, issues } = yardFromGeoJson(JSON.parse(readFileSync(url, 'utf8')));
  expect(issues).toEqual([]);
  expect(yard).toMatchObject({
    schemaVersion: SCHEMA_VERSION,
    name: 'Hill end',
    parcel: null,
    settings: { units: 'metric', elevationM: 310, isLocal: false, showSurface: false, gapToleranceM: 0.4 },
    marks: [{ id: 'm-1', kind: 'storm-drain' }],
    products: [{ id: 'p-1' }],
    visits: [{ id: 'v-1' }],
  });
  expect(yard?.zones).toMatchObject([
    {
      id: 'z-1',
      survey: { method: 'traced', vertexSigmaM: 0.2, scaleSigma: 0, source: '' },
      curves: [],
      isPlaced: true,
      isLocked: false,
      slope: null,
      extra: { properties: { colour: 'green' } },
    },
    { id: 'z-2', survey: { method: 'tape', vertexSigmaM: 0.04 }, material: 'gravel' },
  ]);
  expect(yard?.extra.member).toEqual({ season: 'spring' });
});

it('opens a file of version 2 whole: one use a label, nothing planned beside visits', () => {
  const url = new URL('../../tests/fixtures/yards/version-2.geojson', import.meta.url);
  const { yard, issues } = yardFromGeoJson(JSON.parse(readFileSync(url, 'utf8')));
  expect(issues).toEqual([]);
  expect(yard).toMatchObject({
    schemaVersion: SCHEMA_VERSION,
    name: 'Brook side',
    zones: [{ id: 'z-lawn', slope: 0.12, isLocked: true, plantedOn: null }],
    products: [
      {
        id: 'p-granules',
        analysis: { nPct: 20, p2o5Pct: 0, k2oPct: 10, slowNPctOfN: 50, elementsPct: {} },
        otherUses: [],
        packIds: null,
        canPour: false,
        applicator: null,
        limits: { minIntervalDays: 28, maxDosesPerYear: 4, maxPerDose: null },
        onHand: { 'pack-1': 0.5 },
      },
      { id: 'p-liquid', seed: null, limePct: null, ingredients: [] },
    ],
    visits: [{ id: 'v-1', doneOn: null, program: null, doses: [{ useId: null, actual: null, laid: null }] }],
    soilTests: [],
    needs: [],
    climate: NO_CLIMATE,
    programs: [],
    caps: DEFAULT_CAPS,
    rules: [],
    overrides: [],
  });
});

it('opens a file of version 3 whole: no equipment, passes as usual', () => {
  const url = new URL('../../tests/fixtures/yards/version-3.geojson', import.meta.url);
  const { yard, issues } = yardFromGeoJson(JSON.parse(readFileSync(url, 'utf8')));
  expect(issues).toEqual([]);
  expect(yard).toMatchObject({
    schemaVersion: SCHEMA_VERSION,
    name: 'Mill lane',
    zones: [{ id: 'z-lawn', slope: 0.12, downhillDeg: null }],
    equipment: [],
    settings: { hose: { lengthM: null, flowLPerS: null }, stepM: null },
    visits: [
      {
        id: 'v-1',
        startMarkId: null,
        endMarkId: null,
        doses: [{ passes: DEFAULT_PASSES }],
      },
    ],
    needs: [{ id: 'n-1' }],
    rules: [{ id: 'r-1', terms: { kind: 'buffer', widthM: 6 } }],
  });
});
