import type { SoilTest } from '../yard/types';
import { newSoilTest } from './newSoilTest';

/** A soil test of all turf for the tests of this folder; change what the test is about. */
export function testSoil(fields: Partial<SoilTest> = {}): SoilTest {
  return newSoilTest('soil-1', {
    name: 'Lawn soil',
    zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
    date: '2026-03-10',
    ...fields,
  });
}
