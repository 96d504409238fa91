import { describe, expect, it } from 'vitest';
import { calibrationResult } from '../../pace/calibrate/calibrationResult';
import { settingOf } from '../../pace/settingIssues';
import { testHoseLiquid, testProduct } from '../../plan/testDose';
import { emptyYard, newEquipment } from '../../yard/defaults';
import type { Calibration, CalibrationKind, Equipment } from '../../yard/types';
import {
  asApplicator,
  copyOfEquipment,
  freshEquipment,
  hasTakings,
  productsFor,
  useWith,
  wantedKgPerM2,
  withBlankSetting,
  withCalibration,
  withSetting,
} from './equipment-edits';

const record = (
  kind: CalibrationKind,
  readings: Calibration['readings'],
  productId: string | null = null,
): Calibration => ({
  id: 'c-1',
  kind,
  on: '2026-04-02',
  productId,
  readings,
  note: '',
});

function keep(equipment: Equipment, calibration: Calibration, isTaken = true, dial = '') {
  const yard = { ...emptyYard('y', 'Yard'), equipment: [equipment] };
  const about = { equipment, wantedKgPerM2: null, units: 'us' } as const;
  const result = calibrationResult(calibration.kind, calibration.readings, about);
  const next = withCalibration(yard, equipment.id, { calibration, result, dial, isTaken });
  return { next, equipment: next.equipment[0] as Equipment };
}

describe('a calibration kept', () => {
  it('puts flow and share into the equipment, or the record alone', () => {
    const bottle = newEquipment('e', 'hose-end');
    const calibration = record('bucket', { volumeL: 10, timeS1: 50, timeS2: 50, waterParts: 9 });
    const { equipment } = keep(bottle, calibration);
    expect(equipment).toMatchObject({ flowLPerS: 0.2, productShare: 0.1, calibrations: [calibration] });
    expect(keep(bottle, calibration, false).equipment).toEqual({ ...bottle, calibrations: [calibration] });
  });

  it('makes the setting of its product, anew at the same place of the dial', () => {
    const spreader = newEquipment('e', 'drop-spreader', {
      settings: [
        { productId: 'p', words: '5', rateKgPerM2: 1 },
        { productId: 'p', words: '3', rateKgPerM2: 2 },
      ],
    });
    const calibration = record('catch', { lengthM: 10, widthM: 0.5, caughtKg1: 0.1 }, 'p');
    expect(keep(spreader, calibration, true, ' 3 ').equipment.settings).toEqual([
      { productId: 'p', words: '5', rateKgPerM2: 1 },
      { productId: 'p', words: '3', rateKgPerM2: 0.02 },
    ]);
    expect(keep(spreader, calibration, true, '4').equipment.settings).toHaveLength(3);
    expect(keep(spreader, { ...calibration, productId: null }).equipment.settings).toBe(spreader.settings);
  });

  it('puts the step into the settings of the yard', () => {
    const { next, equipment } = keep(
      newEquipment('e', 'by-hand'),
      record('walk', { distanceM: 30, timeS1: 25, steps1: 40 }),
    );
    expect(next.settings.stepM).toBe(0.75);
    expect(equipment.speedMPerS).toBe(1.2);
  });
});

describe('what there is to put in', () => {
  const about = { equipment: newEquipment('e', 'drop-spreader'), wantedKgPerM2: null, units: 'us' } as const;
  const takes = (kind: CalibrationKind, readings: Calibration['readings'], hasProduct: boolean) =>
    hasTakings(calibrationResult(kind, readings, about), hasProduct);
  it('is nothing where pans were too few, or a setting has no product', () => {
    expect(takes('pans', { apartM: 0.3, pan1: 6, pan2: 8, pan3: 6 }, true)).toBe(false);
    expect(takes('pans', { apartM: 0.3, pan1: 1, pan2: 8, pan3: 1 }, false)).toBe(true);
    const caught = { lengthM: 10, widthM: 0.5, caughtKg1: 0.1 };
    expect([takes('catch', caught, false), takes('catch', caught, true)]).toEqual([false, true]);
    expect(takes('catch', { ...caught, timeS1: 10 }, false)).toBe(true);
    expect(takes('walk', { distanceM: 30, steps1: 40 }, false)).toBe(true);
  });
});

describe('a setting', () => {
  it('just added is no measurement, and a catch test fills it', () => {
    const settings = withBlankSetting([], 'p-1');
    expect(settings).toHaveLength(1);
    expect(settingOf({ settings, overlapShare: 0 }, 'p-1')).toBeNull();
    const found = { productId: 'p-1', words: '13', rateKgPerM2: 0.02 };
    expect(withSetting(settings, found)).toEqual([found]);
    expect(withSetting(settings, { ...found, productId: 'p-2' })).toHaveLength(2);
  });

  it('is held against the dose that asks, else the label', () => {
    const label = wantedKgPerM2(testProduct(), 'broadcast-spreader', 1) ?? 0;
    expect(label).toBeCloseTo(0.02, 12);
    expect(wantedKgPerM2(testProduct(), 'broadcast-spreader', 2, label / 2)).toBeCloseTo(0.005, 12);
  });
});

describe('put out in another way', () => {
  const bottle = newEquipment('e', 'hose-end', {
    flowLPerS: 0.1,
    productShare: 0.02,
    holds: { unit: 'L', value: 1 },
  });
  const changed = (from: Equipment, applicator: Equipment['applicator']) => ({
    ...from,
    ...asApplicator(from, applicator),
  });
  it('it keeps nothing that is not shown', () => {
    expect(changed(bottle, 'tank-sprayer')).toEqual({
      ...bottle,
      applicator: 'tank-sprayer',
      productShare: null,
    });
    expect(changed(bottle, 'drop-spreader')).toMatchObject({
      flowLPerS: null,
      productShare: null,
      holds: null,
    });
    const hopper = newEquipment('e', 'drop-spreader', { holds: { unit: 'kg', value: 2 } });
    expect(changed(hopper, 'hose-end').holds).toBeNull();
    expect(changed(hopper, 'broadcast-spreader').holds).toEqual(hopper.holds);
  });
});

describe('the list', () => {
  it('names what is new apart from what is there', () => {
    const first = freshEquipment('a', 'drop-spreader', [], 'us');
    const second = freshEquipment('b', 'drop-spreader', [first], 'metric');
    expect([first.name, second.name]).toEqual(['Drop spreader', 'Drop spreader 1']);
    const copy = copyOfEquipment('c', { ...first, calibrations: [record('walk', {})] }, [first, second]);
    expect(copy.name).not.toBe(first.name);
    expect(copy.calibrations).toEqual([]);
  });

  it('offers what goes out with it, as the use for it has it', () => {
    const products = [testProduct(), testHoseLiquid()];
    expect(productsFor(products, 'broadcast-spreader').map((each) => each.id)).toEqual(['p-1']);
    expect(productsFor(products, 'tank-sprayer').map((each) => each.id)).toEqual(['hose']);
    expect(useWith(testHoseLiquid(), 'tank-sprayer').useName).toBe('Backpack');
  });
});
