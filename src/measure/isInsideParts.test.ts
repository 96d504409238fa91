import { expect, it } from 'vitest';
import { isInsideParts } from './isInsideParts';
import type { PlaneRings, XY } from './types';

const box = (x: number, y: number, side: number): XY[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
  [x, y],
];

it('is inside any part, not in a hole, and again in a part that lies in the hole', () => {
  const parts: PlaneRings[] = [[box(0, 0, 10), box(2, 2, 6)], [box(4, 4, 2)], [box(20, 0, 2)]];
  const at = (x: number, y: number) => isInsideParts([x, y], parts);
  expect([at(1, 1), at(3, 3), at(5, 5), at(21, 1), at(15, 1), at(-1, 5)]).toEqual([
    true,
    false,
    true,
    true,
    false,
    false,
  ]);
});

it('counts a corner at the height of the point once', () => {
  const diamond: PlaneRings[] = [[[[0, 0], [5, -5], [10, 0], [5, 5], [0, 0]]]]; // biome-ignore format: a ring
  expect(isInsideParts([5, 0], diamond)).toBe(true);
  expect(isInsideParts([-5, 0], diamond)).toBe(false);
  expect(isInsideParts([5, 0], [])).toBe(false);
});

it('leaves holes out', () => {
  const parts: PlaneRings[] = [[box(0, 0, 10), box(4, 4, 2)]];
  expect(isInsideParts([1, 1], parts)).toBe(true);
  expect(isInsideParts([5, 5], parts)).toBe(false);
  expect(isInsideParts([11, 5], parts)).toBe(false);
});
