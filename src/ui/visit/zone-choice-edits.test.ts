import { describe, expect, it } from 'vitest';
import { chosenZones } from '../../yard/choose';
import { emptyYard, newZone } from '../../yard/defaults';
import type { Yard, ZoneChoice } from '../../yard/types';
import { chooseClass, chooseZone } from './zone-choice-edits';

const ring = [
  [0, 0],
  [0.0001, 0],
  [0.0001, 0.0001],
  [0, 0],
] as const;
const yard: Yard = {
  ...emptyYard('y', 'Yard'),
  zones: [
    newZone('front', 'turf', [[ring]]),
    newZone('back', 'turf', [[ring]]),
    newZone('low', 'turf', [[ring]], { mowing: 'low-cut' }),
    newZone('bed', 'bed', [[ring]]),
  ],
};
const none: ZoneChoice = { classes: [], include: [], exclude: [] };
const ids = (choice: ZoneChoice) => chosenZones(yard, choice).map((zone) => zone.id);

describe('chooseZone', () => {
  it('takes one zone out of a chosen class and puts it back without a trace', () => {
    const regular = chooseClass(yard, none, 'turf-regular', true);
    expect(ids(regular)).toEqual(['front', 'back']);
    const without = chooseZone(yard, regular, 'back', false);
    expect(ids(without)).toEqual(['front']);
    expect(chooseZone(yard, without, 'back', true)).toEqual(regular);
  });

  it('adds one zone of a class that is not chosen, and takes it off again', () => {
    const added = chooseZone(yard, none, 'bed', true);
    expect(ids(added)).toEqual(['bed']);
    expect(chooseZone(yard, added, 'bed', false)).toEqual(none);
  });
});

describe('chooseClass', () => {
  it('forgets single choices of its zones and leaves the others', () => {
    const start: ZoneChoice = { classes: ['turf-regular'], include: ['bed'], exclude: ['back'] };
    expect(chooseClass(yard, start, 'turf-regular', false)).toEqual({
      classes: [],
      include: ['bed'],
      exclude: [],
    });
    expect(ids(chooseClass(yard, start, 'turf-regular', true))).toEqual(['front', 'back', 'bed']);
  });
});
