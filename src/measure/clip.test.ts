import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../tests/bench/benchYard';
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
  it('closing fills what is narrower than twice its distance, straight from corner to corner', () => {
    const pair: PlaneRings[] = [[box(0, 0, 5, 5)], [box(5.4, 0, 5, 5)]];
    expect(planeAreaOf(closingOf(pair, 0.25))).toBeCloseTo(52, 5);
    expect(planeAreaOf(closingOf(pair, 0.15))).toBeCloseTo(50, 5);
  });
});

describe('pieces that abut', () => {
  /** Six star-shaped polygons over each other, and the same ground in pieces: each less those before it. */
  function drawCase(random: () => number): { polygons: PlaneRings[]; pieces: PlaneRings[][] } {
    const polygons = Array.from({ length: 6 }, (): PlaneRings => {
      const [x, y, radius] = [random() * 60 - 30, random() * 60 - 30, 5 + random() * 25];
      const count = 4 + Math.floor(random() * 12);
      const ring = Array.from({ length: count }, (_, i): XY => {
        const reach = radius * (0.6 + 0.4 * random());
        const angle = (2 * Math.PI * i) / count;
        return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
      });
      return [[...ring, ring[0] as XY]];
    });
    return { polygons, pieces: polygons.map((one, i) => differenceOf([one], polygons.slice(0, i))) };
  }

  it('make the ground they were cut from, together and one after the other, within 1e-3 m² in 2,000 cases', () => {
    const random = seededRandom(7);
    const misses: string[] = [];
    for (let n = 0; n < 2000; n++) {
      const { polygons, pieces } = drawCase(random);
      const groundM2 = planeAreaOf(unionOf(polygons));
      const all = pieces.flat();
      let around: PlaneRings[] = [[box(-70, -70, 140, 140)]];
      for (const piece of pieces) around = differenceOf(around, piece);
      const figures = {
        sum: planeAreaOf(all),
        union: planeAreaOf(unionOf(all)),
        around: 140 * 140 - planeAreaOf(around),
        common: planeAreaOf(intersectionOf([[box(-70, -70, 140, 140)]], all)),
      };
      for (const [way, areaM2] of Object.entries(figures)) {
        if (!(Math.abs(areaM2 - groundM2) < 1e-3))
          misses.push(`case ${n}, ${way}: ${areaM2}, not ${groundM2}`);
      }
    }
    expect(misses).toEqual([]);
  }, 30_000);

  it('grow and shrink as the ground they were cut from: no crack opens between them', () => {
    const random = seededRandom(8);
    for (let n = 0; n < 150; n++) {
      const { polygons, pieces } = drawCase(random);
      const ground = unionOf(polygons);
      for (const by of [0.6, -0.6]) {
        const [cut, whole] = [pieces.flat(), ground].map((parts) => planeAreaOf(bufferOf({ parts }, by)));
        // Arcs may begin at another corner of a piece: within the tolerance of 5 mm.
        expect(Math.abs((cut ?? 0) - (whole ?? 0))).toBeLessThan(0.02);
      }
    }
  }, 30_000);
});
