import { describe, expect, it } from 'vitest';
import { coverVisit } from '../cover/coverVisit';
import type { CoverInput } from '../cover/passTypes';
import { planeAreaOf, unionOf } from '../measure/clip';
import { isInsideParts } from '../measure/isInsideParts';
import { boxAt, testPlane, zoneAt } from '../measure/testYards';
import {
  DEFAULT_PASSES,
  DEFAULT_SETTINGS,
  emptyYard,
  newDose,
  newEquipment,
  newParcel,
  newProduct,
  newVisit,
  suggestedSurvey,
} from '../yard/defaults';
import type { Mark, MarkKind, Visit, Yard } from '../yard/types';
import { coverInput } from './coverInput';
import { deriveYard } from './derive';
import './deriveVisit';

const mark = (id: string, kind: MarkKind, x: number, y: number): Mark => ({
  id,
  name: id,
  kind,
  position: testPlane.toLonLat([x, y]),
  extra: {},
});
const liquid = newProduct('liquid', {
  form: 'liquid-concentrate',
  applicator: 'hose-end',
  densityKgPerL: 1.2,
  rate: { basis: 'volume-per-area', rateLPerM2: 0.001 },
  packs: [{ id: 'jug', content: { value: 1, unit: 'L' }, price: null }],
});
const granules = newProduct('granules', {
  applicator: 'broadcast-spreader',
  rate: { basis: 'mass-per-area', rateKgPerM2: 0.02 },
  packs: [{ id: 'bag', content: { value: 20, unit: 'kg' }, price: null }],
});
const turf = { classes: ['turf-regular'], include: [], exclude: [] } as const;

/** A lawn of 40 x 30 m with a house and a bed cut out, a pond beside it, and a drain in the lawn's corner. */
function yardOf(visit: Partial<Visit>, change: Partial<Yard> = {}): Yard {
  return {
    ...emptyYard('y', 'Yard'),
    zones: [
      zoneAt('lawn', 'turf', [[boxAt(0, 0, 40, 30)]]),
      zoneAt('house', 'structure', [[boxAt(10, 10, 10, 8)]]),
      zoneAt('roses', 'bed', [[boxAt(30, 20, 5, 5)]]),
      zoneAt('pond', 'water', [[boxAt(60, 0, 5, 5)]]),
      zoneAt('drive', 'hardscape', [[boxAt(0, -5, 40, 5)]]),
      { ...zoneAt('far field', 'turf', [[boxAt(0, 0, 10, 10)]]), isPlaced: false },
    ],
    marks: [mark('gate', 'gate', 0, 15), mark('bib', 'hose-bib', 10, 9), mark('drain', 'storm-drain', 40, 0)],
    products: [liquid, granules],
    visits: [newVisit('v', { zones: turf, ...visit })],
    settings: { ...DEFAULT_SETTINGS, hose: { lengthM: 30, flowLPerS: null } },
    ...change,
  };
}

function inputOf(yard: Yard): CoverInput {
  const made = coverInput(yard, deriveYard(yard), 'v');
  if (!made) throw new Error('no input');
  return made;
}

describe('coverInput', () => {
  const doses = [newDose('wet', 'liquid'), newDose('dry', 'granules')];

  it('takes the treated ground with its strips, and what stands in the way', () => {
    const yard = yardOf({ doses });
    const { plane } = deriveYard(yard).measured;
    const { obstacles, doses: made } = inputOf(yard);
    expect(obstacles.map((part) => Math.round(planeAreaOf([part])))).toEqual([80, 25, 25]);
    const lawn = made[0]?.zones.find(({ zoneId }) => zoneId === 'lawn');
    // a quarter of the drain's circle of 3.048 m (10 ft) is spared
    expect(planeAreaOf(lawn?.parts ?? [])).toBeCloseTo(1200 - 80 - 25 - (Math.PI * 3.048 ** 2) / 4, 0);
    const drain = plane.toPlane(testPlane.toLonLat([40, 0]));
    expect(isInsideParts(drain, lawn?.keepOff ?? [])).toBe(true);
    // the whole circle, beyond the lawn too
    expect(planeAreaOf(lawn?.keepOff ?? [])).toBeCloseTo(Math.PI * 3.048 ** 2, 0);
  });

  it('keeps a zone without a place by its area alone', () => {
    const [dose] = inputOf(yardOf({ doses })).doses;
    const field = dose?.zones.find(({ zoneId }) => zoneId === 'far field');
    expect(field?.parts).toEqual([]);
    expect(field?.areaM2).toBeCloseTo(100, 0);
  });

  it('goes by the equipment of each dose', () => {
    const equipment = [
      newEquipment('fan', 'hose-end', { swathM: 2, overlapShare: 0.25 }),
      newEquipment('rotary', 'broadcast-spreader', { swathM: 3.5 }),
    ];
    const { doses: made, hose } = inputOf(yardOf({ doses }, { equipment }));
    expect(made.map(({ spacingM, swathM }) => [spacingM, swathM])).toEqual([
      [1.5, 2],
      [3.5, 3.5],
    ]);
    expect(made.map(({ lapsFirst, staysWet, byHose }) => [lapsFirst, staysWet, byHose])).toEqual([
      [false, true, true],
      [true, false, false],
    ]);
    expect(hose?.lengthM).toBe(30);
    expect(hose?.bibs).toHaveLength(1);
  });

  it('counts fills that are too many to mark, and the walk tells of them', () => {
    const equipment = [newEquipment('rotary', 'broadcast-spreader', { holds: { unit: 'kg', value: 0.001 } })];
    const input = inputOf(yardOf({ doses: doses.slice(1) }, { equipment }));
    expect(input.doses[0]?.vessels).toEqual([]);
    expect(input.doses[0]?.tooManyVessels).toBeGreaterThan(200);
    const [walk] = coverVisit(input).doses;
    expect(walk?.marks).toEqual([]);
    expect(walk?.issues.map(({ code }) => code)).toContain('too-many-fills');
  });

  it('knows the property where its outline is drawn, with what is drawn beside it', () => {
    const parcel = newParcel([[boxAt(0, 0, 70, 30)]], suggestedSurvey('traced'));
    const { property } = inputOf(yardOf({ doses }, { parcel }));
    // 70 x 30 m and the drive of 40 x 5 m before it
    expect(planeAreaOf(unionOf(property ?? []))).toBeCloseTo(2300, 0);
    expect(inputOf(yardOf({ doses })).property).toBeUndefined();
  });

  it('has no hose without a length, or where nothing goes out from one', () => {
    const silent = yardOf({ doses }, { settings: DEFAULT_SETTINGS });
    expect(inputOf(silent).hose).toBeNull();
    expect(inputOf(yardOf({ doses: doses.slice(1) })).hose).toBeNull();
  });

  it('walks a lap along the edges where the guard is down, and tells where none was chosen', () => {
    const equipment = [newEquipment('rotary', 'broadcast-spreader', { swathM: 3, hasEdgeGuard: true })];
    const inputBy = (passes: Partial<typeof DEFAULT_PASSES>, tools = equipment) => {
      const dose = newDose('dry', 'granules', { passes: { ...DEFAULT_PASSES, ...passes } });
      return inputOf(yardOf({ doses: [dose] }, { equipment: tools }));
    };
    const lapsOf = (input: CoverInput) => input.doses[0]?.headerLaps;
    const codesOf = (input: CoverInput) =>
      coverVisit(input).doses.flatMap(({ issues }) => issues.map(({ code }) => code));
    const guarded = inputBy({ isGuarded: true });
    expect(lapsOf(guarded)).toBe(1);
    expect(codesOf(guarded)).not.toContain('guard-without-laps');
    expect(lapsOf(inputBy({ isGuarded: true, headerLaps: 2 }))).toBe(2);
    const without = inputBy({ isGuarded: true, headerLaps: 0 });
    expect(lapsOf(without)).toBe(0);
    expect(codesOf(without)).toContain('guard-without-laps');
    // no guard: laps are left free
    expect(lapsOf(inputBy({}))).toBeNull();
    const bare = [newEquipment('rotary', 'broadcast-spreader', { swathM: 3 })];
    expect(lapsOf(inputBy({ isGuarded: true }, bare))).toBeNull();
  });

  it('takes over how the passes of a dose are chosen, and where the walk begins and ends', () => {
    const passes = { ...DEFAULT_PASSES, headerLaps: 2, coats: 2, headings: { lawn: 200 } } as const;
    const made = inputOf(
      yardOf({ doses: [newDose('dry', 'granules', { passes })], startMarkId: 'gate', endMarkId: 'gone' }),
    );
    const [dose] = made.doses;
    expect([dose?.headerLaps, dose?.coats]).toEqual([2, 2]);
    expect(dose?.zones.find(({ zoneId }) => zoneId === 'lawn')?.headingDeg).toBe(20);
    expect(made.start).not.toBeNull();
    expect(made.end).toBeNull();
  });

  it('counts vessels by what is left when the dose’s turn comes', () => {
    const [dose] = inputOf(yardOf({ doses })).doses;
    const areaM2 = dose?.zones.reduce((sum, zone) => sum + zone.areaM2, 0) ?? 0;
    expect(dose?.vessels.length).toBe(Math.ceil(areaM2 * 0.001));
    expect(dose?.vessels.reduce((sum, vessel) => sum + vessel.areaM2, 0)).toBeCloseTo(areaM2, 6);
  });

  it('is plain data, and the same for the same yard', () => {
    const yard = yardOf({ doses });
    expect(structuredClone(inputOf(yard))).toEqual(inputOf(yard));
    expect(JSON.stringify(inputOf(yard))).toBe(JSON.stringify(inputOf(yard)));
  });

  it('is nothing where no dose can be planned', () => {
    const none = yardOf({ doses: [newDose('lost', 'no such product')] });
    expect(coverInput(none, deriveYard(none), 'v')).toBeNull();
    expect(coverInput(none, deriveYard(none), 'no such visit')).toBeNull();
  });
});
