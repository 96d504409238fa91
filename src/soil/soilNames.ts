import type { Extractant, SoilLevel, SoilTest } from '../yard/types';

/*
 * What levels, extractants, nutrients and units of a soil test are called; one home for each word.
 */

export const LEVEL_WORDS: Readonly<Record<SoilLevel, string>> = {
  'very-low': 'very low',
  low: 'low',
  medium: 'medium',
  high: 'high',
  'very-high': 'very high',
};

export const EXTRACTANT_WORDS: Readonly<Record<Extractant, string>> = {
  'mehlich-3': 'Mehlich-3',
  'mehlich-1': 'Mehlich-1',
  'bray-1': 'Bray-1',
  olsen: 'Olsen (bicarbonate)',
  morgan: 'Modified Morgan',
  other: 'Another, or not told',
};

export const LAB_UNIT_WORDS: Readonly<Record<SoilTest['labUnit'], string>> = {
  ppm: 'ppm',
  'lb-per-acre': 'lb/acre',
};

/** What a test is called: its name, else its lab, else plain words. */
export function soilTestName(test: SoilTest): string {
  return test.name.trim() || test.lab.trim() || 'Test without a name';
}
