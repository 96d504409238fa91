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
    expect(plain(readingsWords(record, 'us'))).toBe('128.0 s, 131.3 s');
    const course = { ...record, kind: 'small-plot', readings: { widthM: 1.2192, lengthM: 25.908 } } as const;
    expect(plain(readingsWords(course, 'us'))).toBe('85.0 ft by 4.0 ft');
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
