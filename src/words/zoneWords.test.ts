import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import { freeName, groundName, zoneKeys, zoneName, zoneWords } from './zoneWords';

describe('zone words', () => {
  it('say the kind with its class', () => {
    const none = { mowing: null, material: null };
    expect(zoneWords({ kind: 'turf', mowing: 'low-cut', material: null })).toBe('Turf, low-cut');
    expect(zoneWords({ kind: 'hardscape', mowing: null, material: 'pavers' })).toBe('Hardscape, pavers');
    expect(zoneWords({ ...none, kind: 'other' })).toBe('Other ground');
  });

  it('name what has no name', () => {
    expect(zoneName({ name: ' Front ', kind: 'turf' })).toBe('Front');
    expect(zoneName({ name: ' ', kind: 'bed' })).toBe('Bed without a name');
    expect(groundName('')).toBe('ground without a name');
  });

  it('number the zones in document order', () => {
    const yard = { ...emptyYard('y', 'Yard'), zones: ['b', 'a'].map((id) => newZone(id, 'turf', [], {})) };
    expect([...zoneKeys(yard)]).toEqual([
      ['b', '1'],
      ['a', '2'],
    ]);
  });

  it('find the first free name', () => {
    expect(freeName('Bed', ['Bed 1', 'Bed 3'])).toBe('Bed 2');
  });
});
