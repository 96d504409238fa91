import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { SoilTest, Yard } from '../yard/types';
import { groundOfNewTest } from './groundOfNewTest';
import { testSoil } from './testSoil';

const zone = (id: string, mowing: 'regular' | 'low-cut' = 'regular') => newZone(id, 'turf', [], { mowing });
const yardWith = (zones: Yard['zones'], ...soilTests: SoilTest[]): Yard => ({
  ...emptyYard('y', 'Yard'),
  zones,
  soilTests,
});
const of = (...include: string[]) => testSoil({ zones: { classes: [], include, exclude: [] } });

describe('the ground a new soil test is made ready for', () => {
  const zones = [zone('main'), zone('side'), zone('green', 'low-cut'), newZone('bed', 'bed', [])];

  it('is all turf for the first test', () =>
    expect(groundOfNewTest(yardWith(zones))).toEqual({
      classes: ['turf-low-cut', 'turf-regular'],
      include: [],
      exclude: [],
    }));
  it('is a whole class where no zone of it has a test', () =>
    expect(groundOfNewTest(yardWith(zones, of('main', 'side', 'bed')))).toEqual({
      classes: ['turf-low-cut'],
      include: [],
      exclude: [],
    }));
  it('names the zones where others of their class have one', () =>
    expect(groundOfNewTest(yardWith(zones, of('main', 'green')))).toEqual({
      classes: ['bed'],
      include: ['side'],
      exclude: [],
    }));
  it('is empty where all is tested', () =>
    expect(groundOfNewTest(yardWith([zone('main')], of('main')))).toEqual({
      classes: [],
      include: [],
      exclude: [],
    }));
});
