import { expect, it } from 'vitest';
import { testProduct } from '../plan/testDose';
import { DEFAULT_SETTINGS } from '../yard/defaults';
import type { LocalRule } from '../yard/types';
import { stripSavingWords, stripWidthWords } from './stripWords';

const rule = (id: string, widthM: number, isOn = true): LocalRule => ({
  id,
  name: id,
  isOn,
  terms: { kind: 'buffer', round: 'water', widthM },
  source: '',
  readOn: null,
});
const strip = { sourceKind: 'water' } as const;

it('names the widest rule that is on, or the settings where they ask for as much', () => {
  const words = (...rules: LocalRule[]) => stripWidthWords({ settings: DEFAULT_SETTINGS, rules }, strip);
  expect(words()).toBe('by the yard’s settings');
  expect(words(rule('narrow', 2))).toBe('by the yard’s settings');
  expect(words(rule('Lake strip', 6), rule('wider', 9, false), rule('as wide', 6))).toBe(
    'by the rule “Lake strip”',
  );
  expect(
    stripWidthWords({ settings: DEFAULT_SETTINGS, rules: [rule('Lake strip', 6)] }, { sourceKind: 'well' }),
  ).toBe('by the yard’s settings');
});

it('tells the ground left and the product not put down', () => {
  const saved = [{ doseId: 'd', product: testProduct(), amount: { unit: 'kg', value: 0.3 } as const }];
  expect(stripSavingWords({ zoneId: 'z', name: 'Lawn', stripM2: 15, saved }, 'metric')).toBe(
    '15\u00a0m² left untreated; not put down there: 300\u00a0g of Test granules',
  );
});
