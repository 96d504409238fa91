import { describe, expect, it } from 'vitest';
import { ledgerLimits, leftOf } from './ledgerLimits';
import { NO_CAPS, testRule, testSeason } from './testSeason';

describe('what a year is held against', () => {
  const { yard } = testSeason([], []);
  const [zone] = yard.zones;
  if (!zone) throw new Error('no zone');
  const yearly = (nutrient: 'N' | 'P2O5', maxKgPerM2: number, isSolubleOnly = false) =>
    testRule({ kind: 'cap', nutrient, per: 'year', isSolubleOnly, maxKgPerM2 });

  it('is the least of the cap and the rules that are on', () => {
    const rules = [yearly('N', 0.012), { ...yearly('N', 0.001), isOn: false }, yearly('N', 0.005, true)];
    const held = { ...yard, caps: { ...NO_CAPS, nPerYear: 0.02, k2oPerYear: 0.03 }, rules };
    expect(ledgerLimits(held, zone, 'N')).toEqual({ need: null, cap: 0.012 });
    expect(ledgerLimits(held, zone, 'solubleN').cap).toBe(0.005);
    expect(ledgerLimits(held, zone, 'K2O').cap).toBe(0.03);
    expect(ledgerLimits(held, zone, 'P2O5').cap).toBeNull();
    expect(ledgerLimits(held, zone, 'Fe').cap).toBeNull();
  });
  it('leaves what is left to the lower of need and cap', () => {
    expect(leftOf(3, { need: 5, cap: 4 })).toBe(1);
    expect(leftOf(3, { need: 2, cap: null })).toBe(-1);
    expect(leftOf(3, { need: null, cap: null })).toBeNull();
  });
});
