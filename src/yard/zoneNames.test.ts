import { expect, it } from 'vitest';
import { emptyYard, newZone } from './defaults';
import { zoneNames } from './zoneNames';

const zones = ['Front', 'Back', '', 'Strip', 'Strip', 'Bed'].map((name, i) =>
  newZone(`z-${i}`, 'turf', [], { name }),
);
const yard = { ...emptyYard('y', 'Yard'), zones };
const names = (...ids: number[]) =>
  zoneNames(
    yard,
    ids.map((id) => `z-${id}`),
  );

it('names at most four zones in a sentence and counts the others', () => {
  expect(names(0, 1, 2, 3)).toBe('Front, Back, unnamed zone, Strip');
  expect(names(0, 1, 2, 3, 4, 5)).toBe('Front, Back, unnamed zone and 3 more');
});

it('says so where a zone is gone', () => {
  expect(names(0, 99)).toBe('Front, ground that is gone');
});

it('names a zone once, and each of two zones of one name', () => {
  expect(names(0, 0, 1)).toBe('Front, Back');
  expect(names(3, 4)).toBe('Strip, Strip');
});
