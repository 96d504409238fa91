import { describe, expect, it } from 'vitest';
import { testYard, visit } from '../../tests/fixtures/testYard';
import { chosenZones, visitZones, zoneClass } from './choose';
import { newDose } from './defaults';

const ids = (zones: readonly { id: string }[]) => zones.map((zone) => zone.id);
const none = { classes: [], include: [], exclude: [] } as const;

describe('choosing zones', () => {
  it('never treats hardscape, even when named', () => {
    const yard = testYard();
    expect(yard.zones.map(zoneClass)).toEqual(['turf-regular', 'bed', null, 'turf-low-cut']);
    expect(ids(chosenZones(yard, { ...none, include: ['z-walk', 'z-bed', 'gone'] }))).toEqual(['z-bed']);
  });

  it('lets leaving out win over class and name, in document order', () => {
    const choice = {
      classes: ['turf-low-cut', 'turf-regular'],
      include: ['z-bed'],
      exclude: ['z-lawn'],
    } as const;
    expect(ids(chosenZones(testYard(), choice))).toEqual(['z-bed', 'z-strip']);
  });

  it('takes the dose’s own choice before the visit’s', () => {
    const dose = newDose('d', 'p');
    expect(ids(visitZones(testYard(), visit, dose))).toEqual(['z-lawn', 'z-strip']);
    const own = { ...none, classes: ['bed'] as const };
    expect(ids(visitZones(testYard(), visit, { ...dose, zones: own }))).toEqual(['z-bed']);
  });
});
