import { describe, expect, it } from 'vitest';
import { L_PER_GAL, M_PER_FT, M2_PER_ACRE } from '../units/factors';
import { newEquipment } from '../yard/defaults';
import { APPLICATORS, CALIBRATIONS, type Calibration } from '../yard/types';
import {
  CALIBRATIONS_OF,
  calibrationCautions,
  calibrationReminder,
  equipmentLine,
  figureText,
  readingsWords,
  spreadWords,
  takenWords,
} from './equipmentWords';

const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ') ?? null;
const done = (on: string, readings: Calibration['readings'] = {}): Calibration => ({
  id: `c-${on}`,
  kind: 'bucket',
  on,
  productId: null,
  readings,
  note: '',
});

describe('words for equipment', () => {
  it('tell what is measured and leave out what is not', () => {
    const bare = newEquipment('e', 'hose-end', { swathM: 6 * M_PER_FT });
    expect(plain(equipmentLine(bare, 'us'))).toBe('swath 6.0 ft');
    const full = {
      ...bare,
      overlapShare: 0.25,
      flowLPerS: L_PER_GAL / 30,
      productShare: 1 / 33,
      speedMPerS: 1,
    };
    expect(plain(equipmentLine(full, 'us'))).toBe(
      'swath 6.0 ft, 25 % overlap; 2 gal/min, 3 % of it product; walk 2.2 mph',
    );
  });

  it('a share reads as the ratio on a dial', () => {
    expect(plain(figureText('product-share', 1 / 33, 'us'))).toBe('3 % (1 to 32 of water)');
    expect(figureText('product-share', 1, 'us')).toBe('all of it');
  });

  it('spray also reads by the acre or the hectare', () => {
    expect(plain(figureText('spray-rate', (40 * L_PER_GAL) / M2_PER_ACRE, 'us'))).toContain(
      '(40 gal an acre)',
    );
    expect(plain(figureText('spray-rate', 0.02, 'metric'))).toBe('2 L per 100 m² (200 L/ha)');
  });

  it('one reading has no spread, equal ones agree', () => {
    expect(spreadWords({ key: 'speed', value: 1, low: null, high: null }, 'us')).toBeNull();
    expect(spreadWords({ key: 'speed', value: 1, low: 1, high: 1.001 }, 'us')).toBe('the readings agree');
    expect(plain(spreadWords({ key: 'speed', value: 1, low: 0.9, high: 1.1 }, 'metric'))).toBe(
      '3.2 km/h to 4.0 km/h by single readings',
    );
  });

  it('remind of a calibration that is missing or a season old', () => {
    const equipment = newEquipment('e', 'hose-end');
    expect(calibrationReminder(equipment, '2026-05-01')).toMatch(/No calibration/);
    const calibrated = { ...equipment, calibrations: [done('2025-04-02'), done('2025-03-30')] };
    expect(calibrationReminder(calibrated, '2025-10-01')).toBeNull();
    expect(plain(calibrationReminder(calibrated, '2026-05-01'))).toContain('Apr 2, 2025');
  });

  it('tell the readings of a record', () => {
    const record = done('2026-04-02', { volumeL: 18.9, timeS1: 128, timeS2: 131.25 });
    expect(plain(readingsWords(record, 'us'))).toBe('4.99 gal in 128.0 s, 131.3 s');
    const told = (readings: Calibration['readings']) =>
      plain(readingsWords(done('2026-04-02', readings), 'metric'));
    expect(told({ waterParts: 32 })).toBe('1 part to 32 of water');
    expect(told({ waterParts: 0 })).toBe('undiluted');
    expect(told({ emptiedL: 1, emptiedS: 80 })).toBe('1 L emptied in 80.0 s');
    expect(told({ goneL: 0.5, goneS: 60 })).toBe('500 mL gone in 60.0 s');
    expect(told({ lengthM: 10, widthM: 0.5, caughtKg1: 0.1, caughtKg2: 0.11 })).toBe(
      '10.00 m by 50 cm; caught 100 g, 110 g',
    );
    expect(told({ timeS1: 51, caughtL1: 0.5 })).toBe('51.0 s; caught 500 mL');
    expect(told({ usedL: 2 })).toBe('used 2 L');
    expect(told({ usedKg: 1.5 })).toBe('used 1.5 kg');
    const course = { ...record, kind: 'small-plot', readings: { widthM: 1.2192, lengthM: 25.908 } } as const;
    expect(plain(readingsWords(course, 'us'))).toBe('85.0 ft by 4.0 ft');
  });

  it('tell what of a calibration was put in, and nothing else', () => {
    const none = { figures: [], change: {}, settingKgPerM2: 0.02, stepM: null, issues: [] };
    expect(takenWords(none, false)).toBe('');
    expect(takenWords({ ...none, change: { speedMPerS: 1 } }, true)).toBe('your walk, the setting');
    expect(takenWords({ ...none, settingKgPerM2: null, stepM: 0.7 }, true)).toBe('your step');
  });

  it('a setting that is not found yet is not counted', () => {
    const settings = [0, 0.02].map((rateKgPerM2) => ({ productId: 'p', words: '', rateKgPerM2 }));
    const spreader = newEquipment('e', 'drop-spreader', { swathM: 0.5, settings });
    expect(equipmentLine(spreader, 'metric')).toMatch(/; 1 setting$/);
  });

  it('every applicator can be calibrated and has its cautions; every way is used', () => {
    for (const applicator of APPLICATORS) {
      expect(CALIBRATIONS_OF[applicator].length).toBeGreaterThan(0);
      expect(calibrationCautions(applicator).join(' ')).toMatch(/label.*drain.*Gloves/);
    }
    const used = new Set(APPLICATORS.flatMap((applicator) => CALIBRATIONS_OF[applicator]));
    expect([...used].sort()).toEqual([...CALIBRATIONS].sort());
  });
});
