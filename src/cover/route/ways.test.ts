import { describe, expect, it } from 'vitest';
import { unionOf } from '../../measure/clip';
import type { XY } from '../../measure/types';
import { boxRing } from '../testGround';
import { createWays } from './ways';

const house = [[boxRing(0, 0, 10, 6)]];

describe('createWays', () => {
  it('goes straight where nothing is in the way, and beside a wall', () => {
    const ways = createWays(house);
    expect(ways.between([-1, -1], [11, -1])?.line).toEqual([
      [-1, -1],
      [11, -1],
    ]);
    expect(ways.between([-2, 0], [12, 0])?.lengthM).toBeCloseTo(14, 9);
  });

  it('bends round the nearer corners of a house', () => {
    // Two right triangles with legs 4 and 3 and the wall of 10 m between: 5 + 10 + 5.
    const way = createWays(house).between([-4, 3], [14, 3]);
    expect(way?.lengthM).toBeCloseTo(20, 9);
    expect(way?.line).toHaveLength(4);
  });

  it('does not slip between a house and the bed that abuts on it', () => {
    const bed = [boxRing(0, -3, 10, 0)];
    const way = createWays(unionOf([...house, bed])).between([-4, -1], [14, -1]);
    expect(way?.lengthM).toBeCloseTo(10 + 2 * Math.hypot(4, 2), 6);
  });

  it('finds no way into a court with walls all round', () => {
    const court = [[boxRing(0, 0, 10, 10), boxRing(3, 3, 7, 7).reverse()]];
    const ways = createWays(court);
    expect(ways.between([-5, 5], [5, 5])).toBeNull();
    expect(ways.between([4, 4], [6, 6])?.lengthM).toBeCloseTo(Math.hypot(2, 2), 9);
  });

  it('joins a place inside a wall to the wall’s outside first', () => {
    const way = createWays(house).between([5, -4], [5, 0.2]);
    expect(way?.line).toEqual([
      [5, -4],
      [5, 0],
      [5, 0.2],
    ]);
  });

  it('takes a detour where a toll is dearer', () => {
    const ground: XY[] = boxRing(4, -2, 6, 2);
    const extraM = (a: XY, b: XY): number => 5 * Math.max(0, Math.min(2, crossed(a, b)));
    // A toll on the band 4 < x < 6 within |y| < 2: over it costs 10 + 10, round it 2·√(16 + 4) + 2.
    const crossed = (a: XY, b: XY): number => {
      const at = (x: number) => a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
      return Math.min(a[0], b[0]) < 6 && Math.max(a[0], b[0]) > 4 && Math.abs(at(5)) < 1.999 ? 2 : 0;
    };
    const way = createWays([]).between([0, 0], [10, 0], { corners: ground.slice(0, 4), extraM });
    expect(way?.lengthM).toBeCloseTo(2 * Math.hypot(4, 2) + 2, 9);
  });
});
