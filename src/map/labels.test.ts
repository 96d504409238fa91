import { describe, expect, it } from 'vitest';
import type { PlaneRings } from '../measure/types';
import { labelFits, labelSpot } from './labels';

const strip: PlaneRings = [
  [
    [0, 0],
    [20, 0],
    [20, 4],
    [0, 4],
    [0, 0],
  ],
];
const holed: PlaneRings = [
  [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
    [0, 0],
  ],
  [
    [3, 3],
    [7, 3],
    [7, 7],
    [3, 7],
    [3, 3],
  ],
];

describe('labelSpot', () => {
  it('takes the roomiest part', () => {
    const small: PlaneRings = [
      [
        [50, 0],
        [51, 0],
        [51, 1],
        [50, 1],
        [50, 0],
      ],
    ];
    const spot = labelSpot([small, strip]);
    expect(spot?.part).toBe(strip);
    expect(spot?.roomM).toBeCloseTo(2, 1);
  });
  it('keeps out of holes', () => {
    const spot = labelSpot([holed]);
    const [x, y] = spot?.at ?? [5, 5];
    expect(x > 3 && x < 7 && y > 3 && y < 7).toBe(false);
  });
  it('has nowhere to go when nothing is left', () => {
    expect(labelSpot([])).toBeNull();
  });
});

describe('labelFits', () => {
  it('lets a long label lie in a long strip, beyond its round room', () => {
    const spot = labelSpot([strip]);
    if (!spot) throw new Error('no spot');
    expect(labelFits(spot, 3, 2)).toBe(true);
    expect(labelFits({ ...spot, at: [10, 2] }, 18, 2)).toBe(true);
    expect(labelFits({ ...spot, at: [10, 2] }, 18, 4.5)).toBe(false);
  });
  it('refuses a box with a hole inside it', () => {
    expect(labelFits({ at: [1.5, 5], roomM: 1.5, part: holed }, 2.8, 8)).toBe(true);
    expect(labelFits({ at: [2, 5], roomM: 1, part: holed }, 2.8, 2)).toBe(false);
  });
});
