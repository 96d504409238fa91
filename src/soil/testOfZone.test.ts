import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { SoilTest, Yard } from '../yard/types';
import { isTestLater, isTestOld, testOfZone, zonesWithoutTest } from './testOfZone';
import { testSoil } from './testSoil';

const front = newZone('front', 'turf', [], { name: 'Front lawn' });
const bed = newZone('bed', 'bed', [], { name: 'Rose bed' });
const yardWith = (...soilTests: readonly SoilTest[]): Yard => ({
  ...emptyYard('y', 'Yard'),
  zones: [front, bed, newZone('drive', 'hardscape', [])],
  soilTests,
});

describe('the test of a zone', () => {
  const old = testSoil({ id: 'old', date: '2023-04-01' });
  const none = testSoil({ id: 'none', date: null });
  const late = testSoil({ id: 'late', date: '2025-04-01' });
  const again = testSoil({ id: 'again', date: '2025-04-01' });

  it('is the one sampled last; without a day it is the oldest; of one day the later in the list', () => {
    expect(testOfZone(yardWith(late, old, none), front)?.id).toBe('late');
    expect(testOfZone(yardWith(old, none), front)?.id).toBe('old');
    expect(testOfZone(yardWith(late, again), front)?.id).toBe('again');
    expect(testOfZone(yardWith(late), bed)).toBeNull();
  });

  it('on a day is the newest sampled by then; where there is none, the first after it', () => {
    const on = (day: string, ...tests: readonly SoilTest[]) =>
      testOfZone(yardWith(...tests), front, 'any', day)?.id;
    expect(on('2025-03-31', late, old)).toBe('old');
    expect(on('2025-04-01', late, old)).toBe('late');
    expect(on('2025-04-01', late, again, old)).toBe('again');
    expect(on('2022-01-01', late, old)).toBe('old');
    expect(on('2022-01-01', again, late)).toBe('late');
    expect(on('2022-01-01', late, none)).toBe('none');
  });

  it('is of those that say something of the nutrient', () => {
    const rich = testSoil({ id: 'rich', date: '2024-04-01', mgPerKg: { P: 92 } });
    expect(testOfZone(yardWith(late, rich, old), front, 'P')).toBe(rich);
    expect(testOfZone(yardWith(late, rich, old), front, 'K')).toBeNull();
  });

  it('is found anew when the tests or the zones are others', () => {
    const yard = yardWith(old);
    expect(testOfZone(yard, front)?.id).toBe('old');
    expect(testOfZone({ ...yard, soilTests: [old, late] }, front)?.id).toBe('late');
    const lowCut = newZone('front', 'turf', [], { mowing: 'low-cut' });
    const regular = { ...old, zones: { ...old.zones, classes: ['turf-regular'] as const } };
    const only = yardWith(regular);
    expect(testOfZone(only, front)).toBe(regular);
    expect(testOfZone({ ...only, zones: [lowCut] }, lowCut)).toBeNull();
  });

  it('asks each test once for its ground, however many zones and days are asked for', () => {
    let count = 0;
    const counted = {
      ...old,
      mgPerKg: { P: 92 },
      get zones() {
        count++;
        return old.zones;
      },
    };
    const yard: Yard = {
      ...yardWith(counted),
      zones: Array.from({ length: 50 }, (_, i) => newZone(`z-${i}`, 'turf', [])),
    };
    for (const zone of yard.zones) testOfZone(yard, zone, 'P', '2026-05-01');
    for (const zone of yard.zones) testOfZone({ ...yard, name: 'Another' }, zone, 'P');
    expect(count).toBe(1);
  });

  it('ground without one is told, hardscape is not ground', () => {
    expect(zonesWithoutTest(yardWith(testSoil())).map((zone) => zone.id)).toEqual(['bed']);
  });

  it('is old after three years, or as many as are asked for', () => {
    expect(isTestOld(testSoil({ date: '2023-03-10' }), '2026-03-10')).toBe(false);
    expect(isTestOld(testSoil({ date: '2023-03-10' }), '2026-03-11')).toBe(true);
    expect(isTestOld(testSoil({ date: null }), '2026-03-11')).toBe(false);
    expect(isTestOld(testSoil({ date: '2024-02-29' }), '2027-03-01')).toBe(false);
    expect(isTestOld(testSoil({ date: '2023-03-10' }), '2024-03-11', 1)).toBe(true);
    expect(isTestOld(testSoil({ date: '9999-01-01' }), '2026-03-11')).toBe(false);
  });

  it('may be later than a day', () => {
    expect(isTestLater(late, '2025-03-31')).toBe(true);
    expect(isTestLater(late, '2025-04-01')).toBe(false);
    expect(isTestLater(late, null)).toBe(false);
    expect(isTestLater(none, '2020-01-01')).toBe(false);
  });
});
