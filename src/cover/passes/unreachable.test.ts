import { describe, expect, it } from 'vitest';
import type { PlaneRings } from '../../measure/types';
import { unreachableOf } from './unreachable';

const box = (x: number, y: number, a: number, b: number): PlaneRings => [
  [
    [x, y],
    [x + a, y],
    [x + a, y + b],
    [x, y + b],
    [x, y],
  ],
];

describe('ground that no swath reaches beside what is kept off', () => {
  it('is none where nothing is kept off, or where the ground is half a swath deep', () => {
    expect(unreachableOf([box(0, 0, 10, 1)], [], 4)).toBe(0);
    expect(unreachableOf([box(0, 0, 10, 2.1)], [box(-20, -5, 50, 5)], 4)).toBeLessThan(0.05);
  });

  it('is all where the ground is less deep than half a swath', () => {
    expect(unreachableOf([box(0, 0, 10, 1.9)], [box(-20, -5, 50, 5)], 4)).toBeCloseTo(19, 6);
  });

  it('is the corner between two strips beyond the arc of a swath: r² (1 - π/4)', () => {
    // kept off below and on the left; a disc of radius 2 in the corner leaves its tip (elementary geometry)
    const keepOff = [box(-5, -5, 40, 5), box(-5, 0, 5, 35)];
    expect(unreachableOf([box(0, 0, 20, 20)], keepOff, 4)).toBeCloseTo(4 * (1 - Math.PI / 4), 1);
  });
});
