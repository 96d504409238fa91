import { describe, expect, it } from 'vitest';
import { bufferOf, closingOf, differenceOf, intersectionOf, planeAreaOf, unionOf } from './clip';
import type { PlaneRings, XY } from './types';

const box = (x: number, y: number, w: number, h: number): XY[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
  [x, y],
];
const a: PlaneRings[] = [[box(0, 0, 10, 10)]];
const b: PlaneRings[] = [[box(6, 6, 10, 10)]];

describe('set operations, areas by hand', () => {
  it('union, difference and intersection of two squares', () => {
    expect(planeAreaOf(unionOf([...a, ...b]))).toBeCloseTo(184, 6);
    expect(planeAreaOf(differenceOf(a, b))).toBeCloseTo(84, 6);
    expect(planeAreaOf(intersectionOf(a, b))).toBeCloseTo(16, 6);
  });
  it('a cut in the middle makes a hole, one across two parts, one of all nothing', () => {
    expect(differenceOf(a, [[box(2, 2, 2, 2)]]).map((rings) => rings.length)).toEqual([2]);
    expect(differenceOf(a, [[box(4, -1, 2, 12)]])).toHaveLength(2);
    expect(differenceOf(a, [[box(-1, -1, 12, 12)]])).toEqual([]);
    expect(intersectionOf(a, [])).toEqual([]);
  });
  it('winding of the input does not matter, and a hole stays a hole', () => {
    const ringed: PlaneRings[] = [[box(0, 0, 10, 10).reverse(), box(2, 2, 2, 2)]];
    expect(planeAreaOf(unionOf(ringed))).toBeCloseTo(96, 6);
  });
});

describe('buffers', () => {
  it('grows by Steiner: A + P·r + πr², within the tolerance of the arcs', () => {
    const grown = planeAreaOf(bufferOf({ parts: a }, 2));
    expect(grown).toBeGreaterThan(100 + 80 + 4 * Math.PI - 4 * Math.PI * 0.006);
    expect(grown).toBeLessThanOrEqual(100 + 80 + 4 * Math.PI + 1e-6);
    expect(planeAreaOf(bufferOf({ parts: a }, -2))).toBeCloseTo(36, 5);
  });
  it('of a line and of a point; none of no width', () => {
    const line = planeAreaOf(
      bufferOf(
        {
          line: [
            [0, 0],
            [10, 0],
          ],
        },
        1,
      ),
    );
    expect(Math.abs(line - (20 + Math.PI))).toBeLessThan(0.04);
    expect(Math.abs(planeAreaOf(bufferOf({ point: [0, 0] }, 3)) - 9 * Math.PI)).toBeLessThan(0.2);
    expect(bufferOf({ point: [0, 0] }, 0)).toEqual([]);
  });
  it('closing fills what is narrower than twice its distance and nothing else', () => {
    const pair: PlaneRings[] = [[box(0, 0, 5, 5)], [box(5.4, 0, 5, 5)]];
    // The gap is 0.4 by 5; by hand a disc of 0.25 reaches 0.1 into each mouth, and a mitre at most 0.2.
    const filled = planeAreaOf(closingOf(pair, 0.25)) - 50;
    expect(filled).toBeGreaterThan(2 - 2 * 0.4 * 0.2);
    expect(filled).toBeLessThan(2 - 2 * 0.027);
    expect(planeAreaOf(closingOf(pair, 0.15))).toBeCloseTo(50, 2);
  });
});
