import { expect, it } from 'vitest';
import {
  areaOfPartsM2,
  areaOfRingM2,
  areaOfRingsM2,
  bearingDeg,
  destination,
  distanceM,
  figuresOfParts,
  lengthOfLineM,
  perimeterOfPartsM,
} from './geodesic';
import { boxAt } from './testYards';

it('a degree of the equator is a 360th of its length, 2πa/360 with a of WGS 84 (EPSG 7030)', () => {
  expect(distanceM([0, 0], [1, 0])).toBeCloseTo((2 * Math.PI * 6378137) / 360, 6);
  expect(
    lengthOfLineM([
      [0, 0],
      [1, 0],
      [3, 0],
    ]),
  ).toBeCloseTo((2 * Math.PI * 6378137 * 3) / 360, 5);
  expect(lengthOfLineM([[0, 0]])).toBe(0);
});

it('bearings run clockwise from north, from 0 to below 360', () => {
  expect(
    [
      [0, 1],
      [1, 0],
      [0, -1],
      [-1, 0],
    ].map(([x = 0, y = 0]) => bearingDeg([0, 0], [x, y])),
  ).toEqual([0, 90, 180, 270]);
  const [lon, lat] = destination([0, 0], 90, (2 * Math.PI * 6378137) / 360);
  expect(lon).toBeCloseTo(1, 9);
  expect(lat).toBeCloseTo(0, 9);
});

it('holes are taken off, parts added, and open or closed rings are one', () => {
  const outer = boxAt(0, 0, 10, 10);
  const hole = boxAt(2, 2, 3, 3);
  expect(areaOfRingsM2([outer, hole])).toBeCloseTo(91, 2);
  expect(areaOfPartsM2([[outer, hole], [boxAt(20, 0, 2, 2)]])).toBeCloseTo(95, 2);
  expect(areaOfRingM2(outer.slice(0, -1))).toBe(areaOfRingM2(outer));
  expect(areaOfRingM2([])).toBe(0);
});

it('figures in one go are those one by one', () => {
  const parts = [[boxAt(0, 0, 10, 10), boxAt(2, 2, 3, 3)], [boxAt(20, 0, 2, 2)]];
  expect(figuresOfParts(parts)).toEqual({
    areaM2: areaOfPartsM2(parts),
    perimeterM: perimeterOfPartsM(parts),
  });
});
