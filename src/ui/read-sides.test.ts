import { describe, expect, it } from 'vitest';
import { readSides } from './read-sides';

function bearings(text: string): number[] {
  const read = readSides(text, 'metric');
  if (!read.ok) throw new Error(read.message);
  return read.sides.map((side) => side.bearingDeg);
}

describe('readSides', () => {
  it('reads bearings, letters, quadrants and turns', () => {
    // Quadrant bearings of surveying: N 45 E = 45, S 45 E = 135, S 45 W = 225, N 45 W = 315 (common practice, no source).
    expect(bearings('10, N 45 E\n10, S 45 E\n10, S 45 W\n10, N 45 W')).toEqual([45, 135, 225, 315]);
    expect(bearings('10 m, N\n10 m, right\n10 m, right 45\n10 m, left\n10 m, left 30')).toEqual([
      0, 90, 135, 45, 15,
    ]);
    expect(bearings('10, 270\n10, bearing 12.5°\n10, sw')).toEqual([270, 12.5, 225]);
  });
  it('turns right by a right angle where only lengths are given', () => {
    expect(bearings('10\n20\n10\n20')).toEqual([0, 90, 180, 270]);
  });
  it('takes lengths in the words of the yardstick', () => {
    const read = readSides('40 ft, N\n12\' 6", right', 'us');
    if (!read.ok) throw new Error(read.message);
    expect(read.sides[0]?.lengthM).toBeCloseTo(40 * 0.3048, 12);
    expect(read.sides[1]?.lengthM).toBeCloseTo(12.5 * 0.3048, 12);
  });
  it('takes a space for the comma', () => {
    expect(bearings('100 E\n20 m N 45 E\n10 right\n10 m left 30\n10 270')).toEqual([90, 45, 135, 105, 270]);
    const read = readSides('12\' 6" N\n1,200 ft E\n100 S', 'us');
    if (!read.ok) throw new Error(read.message);
    expect(read.sides.map((side) => side.lengthM / 0.3048)).toEqual(
      [12.5, 1200, 100].map((ft) => expect.closeTo(ft, 9)),
    );
  });
  it.each([
    ['10, N\n1000000000000, E', /Line 2.*10 km/],
    ['100 up\n10, N', /Line 1.*40 E/],
    ['10, N\nlong, right', /Line 2/],
    ['10, right\n10, N', /Line 1/],
    ['10, N\n10, up', /Line 2/],
    ['10, N\n10, N 95 E', /Line 2/],
    ['10, N\n0, E', /Line 2/],
    ['10, N', /two sides/],
    ['', /two sides/],
  ])('refuses %j', (text, message) => {
    const read = readSides(text, 'metric');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.message).toMatch(message);
  });
});
