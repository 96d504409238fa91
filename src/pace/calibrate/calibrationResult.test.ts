import { describe, expect, it } from 'vitest';
import { testHoseLiquid } from '../../plan/testDose';
import { L_PER_FLOZ, L_PER_GAL, M2_PER_ACRE } from '../../units/factors';
import { newEquipment } from '../../yard/defaults';
import type { CalibrationKind, Equipment } from '../../yard/types';
import { calibrationResult } from './calibrationResult';
import { meaningFor } from './meaning';
import type { Readings } from './readings';
import { courseLength, SMALL_PLOT_M2 } from './sprayOutput';

const hose = newEquipment('e', 'hose-end');
const spreader = newEquipment('e', 'broadcast-spreader', { swathM: 3 });

function result(kind: CalibrationKind, readings: Readings, equipment: Equipment = hose) {
  const found = calibrationResult(kind, readings, { equipment, wantedKgPerM2: null, units: 'metric' });
  const value = (key: string) => found.figures.find((figure) => figure.key === key)?.value ?? null;
  return { ...found, value, codes: found.issues.map((issue) => issue.code) };
}

describe('bucket test', () => {
  const filled = { volumeL: 10, timeS1: 40 };
  it.each([
    ['by the ratio', { waterParts: 19 }],
    ['by a bottle of 1 L that lasts 80 s', { emptiedL: 1, emptiedS: 80 }],
    ['by 0.75 L gone in a minute', { goneL: 0.75, goneS: 60 }],
  ])('finds the share of product %s', (_, draw) => {
    const found = result('bucket', { ...filled, ...draw });
    expect(found.change.flowLPerS).toBe(0.25);
    expect(found.change.productShare).toBeCloseTo(0.05, 12);
    expect(found.value('product-flow')).toBeCloseTo(0.0125, 12);
    expect(found.codes).toEqual([]);
  });

  it('no water is undiluted; volume and time of two ways are never put together', () => {
    expect(result('bucket', { ...filled, waterParts: 0 }).change.productShare).toBe(1);
    expect(result('bucket', { ...filled, emptiedL: 1, goneS: 60 }).change.productShare).toBeUndefined();
    const one = result('bucket', { ...filled, emptiedL: 1, goneL: 0.75, goneS: 60 });
    expect(one.change.productShare).toBeCloseTo(0.05, 12);
  });

  it('takes the flow that was measured before where the bucket was not timed', () => {
    const draw = { goneL: 0.6, goneS: 60 };
    expect(result('bucket', draw, { ...hose, flowLPerS: 0.04 }).change).toEqual({ productShare: 0.25 });
    expect(result('bucket', draw).codes).toEqual(['flow-needed']);
  });

  it('more product than spray is a mistake, and nothing is taken from it', () => {
    const found = result('bucket', { ...filled, goneL: 30, goneS: 60 });
    expect(found.codes).toEqual(['draw-too-strong']);
    expect(found.change.productShare).toBeUndefined();
  });

  it('tells readings that lie far apart, with what single ones would give', () => {
    const found = result('bucket', { volumeL: 10, timeS1: 40, timeS2: 50 });
    expect(found.codes).toEqual(['readings-apart']);
    expect(found.figures[0]).toMatchObject({ low: 0.2, high: 0.25 });
  });
});

describe('measured course', () => {
  const ground = { lengthM: 10, widthM: 3.6, timeS1: 20 };
  it('walks as many metres as passes need, and takes the draw of a bottle', () => {
    const bottle = { ...hose, swathM: 1.8, flowLPerS: 0.2 };
    const found = result('course', { ...ground, usedL: 1 }, bottle);
    // 36 m² at 1.8 m are 20 m of walk in 20 s; 1 L of the 4 L that came out
    expect(found.change).toEqual({ speedMPerS: 1, productShare: 0.25 });
    expect(found.value('product-volume-rate')).toBeCloseTo(1 / 36, 12);
  });

  it('a bottle that gave more than the hose is told', () => {
    const bottle = { ...hose, swathM: 1.8, flowLPerS: 0.04 };
    const found = result('course', { ...ground, usedL: 1 }, bottle);
    expect(found.codes).toEqual(['draw-too-strong']);
    expect(found.change.productShare).toBeUndefined();
  });

  it('a tank gives spray and flow, a spreader its setting, a hand none', () => {
    const tank = result(
      'course',
      { ...ground, usedL: 2 },
      newEquipment('e', 'tank-sprayer', { swathM: 1.8 }),
    );
    expect(tank.change).toEqual({ speedMPerS: 1, flowLPerS: 0.1 });
    const spread = { ...ground, usedKg: 0.72 };
    expect(result('course', spread, spreader).settingKgPerM2).toBeCloseTo(0.02, 12);
    expect(result('course', spread, newEquipment('e', 'by-hand')).settingKgPerM2).toBeNull();
  });
});

describe('a course that is not whole passes wide', () => {
  const bottle = { ...hose, swathM: 2, overlapShare: 0.25 };
  const walked = { lengthM: 10, timeS1: 30 };
  it.each([
    [3, false],
    [4.6, false],
    [5.25, true],
    [0.9, true],
  ])('%s m with passes 1.50 m apart', (widthM, isTold) => {
    const found = result('course', { ...walked, widthM }, bottle);
    expect(found.codes.includes('course-passes')).toBe(isTold);
  });

  it('is told with the widths that fit; by hand there are no passes to count', () => {
    const [issue] = result('course', { ...walked, widthM: 5.25 }, bottle).issues;
    expect(issue?.message).toContain('3.5 passes of 1.50\u00a0m');
    expect(issue?.message).toContain('4.50\u00a0m or 6.00\u00a0m wide');
    const hand = newEquipment('e', 'by-hand', { swathM: 1.5 });
    expect(result('course', { ...walked, widthM: 5.25 }, hand).codes).not.toContain('course-passes');
  });
});

describe('a walk that cannot be', () => {
  // 10 mph are 4.4704 m/s: 44.704 m in 10 s
  it.each([
    [44.6, 'walk-odd'],
    [44.8, 'walk-impossible'],
  ])('%s m in 10 s', (distanceM, code) => {
    const found = result('walk', { distanceM, timeS1: 10, steps1: 60 });
    expect(found.codes).toEqual([code]);
    expect(found.value('speed')).toBeCloseTo(distanceM / 10, 12);
    const isTaken = code === 'walk-odd';
    expect(found.change.speedMPerS !== undefined).toBe(isTaken);
    expect(found.stepM !== null).toBe(isTaken);
  });

  it('keeps all that hangs on the same readings out of the equipment', () => {
    const tank = newEquipment('e', 'tank-sprayer', { swathM: 1.8 });
    const course = result('course', { lengthM: 100, widthM: 3.6, timeS1: 5, usedL: 2 }, tank);
    expect(course.change).toEqual({});
    const caught = result('catch', { lengthM: 100, widthM: 3, timeS1: 5, caughtKg1: 1 }, spreader);
    expect(caught.settingKgPerM2).toBeNull();
    expect(caught.issues[0]?.severity).toBe('error');
  });

  it('no step is 2.1 m long', () => {
    const found = result('walk', { distanceM: 21, timeS1: 15, steps1: 10 });
    expect(found.codes).toEqual(['walk-impossible']);
    expect([found.stepM, found.change]).toEqual([null, {}]);
  });
});

describe('a spreader whose passes overlap', () => {
  const overlapping = { ...spreader, overlapShare: 0.25 };
  const judge = (kind: CalibrationKind, readings: Readings) => {
    const about = { equipment: overlapping, wantedKgPerM2: 0.02, units: 'metric' } as const;
    const { figures, settingKgPerM2, issues } = calibrationResult(kind, readings, about);
    return {
      landed: figures.find(({ key }) => key === 'product-rate')?.value,
      settingKgPerM2,
      codes: issues.map(({ code }) => code),
    };
  };
  it('gives one setting, by a catch in one pass and by a course in many', () => {
    // 0.45 kg on a pass of 10 m by 3 m: 15 g/m², with passes 2.25 m apart 20 g/m²
    const one = judge('catch', { lengthM: 10, widthM: 3, caughtKg1: 0.45 });
    const many = judge('course', { lengthM: 10, widthM: 4.5, usedKg: 0.9 });
    for (const found of [one, many]) {
      expect(found.landed).toBeCloseTo(0.02, 12);
      expect(found.settingKgPerM2).toBeCloseTo(0.015, 12);
      expect(found.codes).toEqual(['rate-good']);
    }
  });
});

describe('small plot', () => {
  // a gallon has 128 fl oz: fl oz caught on 1/128 acre are gallons an acre, in the time of the run
  it.each([
    [[16, 18], 7.5],
    [[51], 40],
  ])('%j s and %d fl oz', (times, floz) => {
    const readings = {
      widthM: 2,
      lengthM: courseLength(SMALL_PLOT_M2, 2),
      caughtL1: floz * L_PER_FLOZ,
      ...Object.fromEntries(times.map((time, i) => [`timeS${i + 1}`, time])),
    };
    const found = result('small-plot', readings, newEquipment('e', 'tank-sprayer'));
    expect((found.value('spray-rate') ?? 0) / (L_PER_GAL / M2_PER_ACRE)).toBeCloseTo(floz, 9);
    const mean = times.reduce((a, b) => a + b, 0) / times.length;
    expect(found.change.flowLPerS).toBeCloseTo((floz * L_PER_FLOZ) / mean, 12);
  });
});

describe('meaning for a product', () => {
  const tank = newEquipment('e', 'tank-sprayer', { swathM: 1.2 });
  const filled = result('bucket', { volumeL: 1, timeS1: 50 }, tank);
  it('tells no walk where a tank would hold neat concentrate', () => {
    const bottle = testHoseLiquid();
    expect(meaningFor(filled, tank, bottle)?.walk).toBeNull();
    expect(meaningFor(filled, { ...tank, productShare: 1 }, bottle)?.walk).not.toBeNull();
    expect(meaningFor(filled, tank, testHoseLiquid({ form: 'ready-to-use' }))?.walk).not.toBeNull();
  });
});

describe('pans', () => {
  const row = (...held: number[]): Readings => ({
    apartM: 0.3,
    ...Object.fromEntries(held.map((value, i) => [`pan${i + 1}`, value])),
  });
  it('wait until every pan of the row is read', () => {
    expect(result('pans', { ...row(1, 6, 10), pans: 5 }, spreader).figures).toEqual([]);
    expect(result('pans', { ...row(1, 6, 10, 6, 1), pans: 5 }, spreader).value('swath')).toBeCloseTo(
      0.72,
      12,
    );
  });
  it('tell a row that is too short, an empty middle, a throw to one side', () => {
    expect(result('pans', row(6, 8, 10, 8, 2), spreader).codes).toEqual(['pans-short']);
    expect(result('pans', row(6, 8, 0, 8, 2), spreader).codes).toEqual(['pans-short']);
    expect(result('pans', row(0, 0, 10, 9, 5), spreader).codes).toContain('pans-lopsided');
  });
  it('a swath that is not the one of the settings asks for them anew', () => {
    const settings = [{ productId: 'p', words: '5', rateKgPerM2: 0.02 }];
    const even = row(0, 5, 10, 5, 0);
    expect(result('pans', even, { ...spreader, settings, swathM: 0.6 }).codes).toEqual([]);
    expect(result('pans', even, { ...spreader, settings, swathM: 0.7 }).codes).toEqual(['settings-stale']);
  });
});

describe('walk', () => {
  it('gives speed and step, and doubts what nobody walks', () => {
    const found = result('walk', { distanceM: 30, timeS1: 25, timeS2: 25, steps1: 40 });
    expect([found.change.speedMPerS, found.stepM, found.codes]).toEqual([1.2, 0.75, []]);
    expect(result('walk', { distanceM: 30, timeS1: 8 }).codes).toEqual(['walk-odd']);
  });
  it('without a distance there is nothing yet', () =>
    expect(result('walk', { timeS1: 25 }).figures).toEqual([]));
});
