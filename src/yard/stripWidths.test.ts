import { describe, expect, it } from 'vitest';
import { emptyYard } from './defaults';
import { stripWidths } from './stripWidths';
import type { LocalRule } from './types';

const buffer = (round: 'water' | 'storm-drain' | 'well', widthM: number, isOn = true): LocalRule => ({
  id: `${round} ${widthM}`,
  name: 'Strip',
  isOn,
  terms: { kind: 'buffer', round, widthM },
  source: '',
  readOn: null,
});

describe('strip widths', () => {
  const yard = emptyYard('y', 'Yard');
  const { strips } = yard.settings;

  it('are those of the settings without a rule', () => {
    expect(stripWidths(yard)).toEqual(strips);
  });
  it('take the wider of setting and rules, each round its own thing', () => {
    const rules = [buffer('water', strips.waterM + 2), buffer('water', strips.waterM + 1), buffer('well', 1)];
    expect(stripWidths({ ...yard, rules })).toEqual({ ...strips, waterM: strips.waterM + 2 });
  });
  it('leave out rules that are off', () => {
    expect(stripWidths({ ...yard, rules: [buffer('storm-drain', 99, false)] })).toEqual(strips);
  });
});
