import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '../../src/measure/signedArea';
import type { XY } from '../../src/measure/types';
import { measureOffsets, type OffsetRow, outlineOffsets } from '../../src/survey/tape/makeOffsets';
import { makeTapeShape } from '../../src/survey/tape/makeTapeShape';
import { parabolicArea, simpsonArea, trapezoidArea } from '../../src/survey/tape/offsetRules';
import { TAPE_SHAPES } from '../../src/survey/tape/tapeShapes';
import { type Dimensions, type TapeError, type TapeWay, USUAL_TAPE_ERROR } from '../../src/survey/tape/types';
import { seededRandom } from '../bench/benchYard';

const WAYS = TAPE_SHAPES.flatMap((shape) => shape.ways);
const RUNS = 10_000;

const length = fc.double({ min: 0.3, max: 200, noNaN: true });
const dimensionsOf = (way: TapeWay): fc.Arbitrary<Dimensions> =>
  fc.record(
    Object.fromEntries(
      way.fields
        .filter((field) => !field.isOptional)
        .map((field) => [
          field.key,
          field.quantity === 'angle' ? fc.double({ min: 1, max: 359, noNaN: true }) : length,
        ]),
    ),
  );

/** Standard normal draws by Box and Muller 1958. */
function normals(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function sdOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** A ring is simple when no two sides that are not neighbours meet. */
function isSimple(ring: readonly XY[]): boolean {
  const turn = (o: XY, p: XY, q: XY) => (p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0]);
  for (let i = 1; i < ring.length; i++) {
    for (let j = i + 2; j < ring.length; j++) {
      if (i === 1 && j === ring.length - 1) continue;
      const [a, b, c, d] = [ring[i - 1], ring[i], ring[j - 1], ring[j]];
      if (!a || !b || !c || !d) continue;
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return false;
    }
  }
  return true;
}

describe('a shape by its dimensions', () => {
  it.each(WAYS.map((way) => [way.id, way] as const))(
    '%s: the outline has the formula’s area and perimeter, turns left and does not cross itself; else a reason',
    (_, way) => {
      fc.assert(
        fc.property(dimensionsOf(way), (d) => {
          const made = makeTapeShape(way, d, USUAL_TAPE_ERROR, 'us');
          if (!made.ok) {
            expect(made.issues.length).toBeGreaterThan(0);
            for (const issue of made.issues)
              expect(way.fields.map((field) => field.key)).toContain(issue.place.path);
            return;
          }
          const { ring, areaM2, perimeterM } = made.shape;
          expect(areaM2).toBeGreaterThan(0);
          expect(Math.abs(signedArea(ring) - areaM2)).toBeLessThanOrEqual(1e-9 * areaM2 + 1e-9);
          expect(isSimple(ring)).toBe(true);
          let around = 0;
          for (let i = 1; i < ring.length; i++) {
            const [a, b] = [ring[i - 1], ring[i]];
            if (a && b) around += Math.hypot(b[0] - a[0], b[1] - a[1]);
          }
          expect(Math.abs(around / perimeterM - 1)).toBeLessThan(0.012);
        }),
        { numRuns: 200 },
      );
    },
  );

  const EXAMPLES: Readonly<Record<string, Dimensions>> = {
    rectangle: { a: 24, b: 11 },
    'l-shape': { a: 20, b: 14, c: 6, d: 5 },
    'triangle-sides': { a: 21, b: 17, c: 14 },
    'triangle-height': { a: 21, h: 9 },
    trapezoid: { a: 18, b: 11, h: 9 },
    quadrilateral: { a: 16, b: 14, c: 12, d: 13, e: 20 },
    'circle-radius': { r: 5 },
    'circle-diameter': { w: 11 },
    'circle-circumference': { u: 30 },
    ellipse: { a: 15, b: 8 },
    'segment-chord': { c: 12, h: 4 },
    'segment-radius': { r: 9, h: 5 },
    'segment-angle': { r: 9, t: 130 },
    'sector-angle': { r: 9, t: 70 },
    'sector-arc': { r: 9, u: 12 },
  };

  it.each(WAYS.map((way) => [way.id, way] as const))(
    '%s: sigma of the area within 3 % of 10,000 drawn tapings',
    (id, way) => {
      const d = EXAMPLES[id];
      if (!d) throw new Error(`no example for ${id}`);
      const error: TapeError = { readingSigmaM: 0.05, scaleSigma: 0.004, angleSigmaDeg: 0.5 };
      const made = makeTapeShape(way, d, error, 'metric');
      if (!made.ok) throw new Error(made.issues[0]?.message);
      const normal = normals(7);
      const areas = Array.from({ length: RUNS }, () => {
        const scale = 1 + error.scaleSigma * normal();
        const drawn = way.fields.map((field) => {
          const value = d[field.key] ?? 0;
          const isAngle = field.quantity === 'angle';
          const read = value + (isAngle ? error.angleSigmaDeg : error.readingSigmaM) * normal();
          return [field.key, isAngle ? read : read * scale] as const;
        });
        return way.areaM2(Object.fromEntries(drawn));
      });
      expect(Math.abs(sdOf(areas) / made.shape.areaSigmaM2 - 1)).toBeLessThan(0.03);
    },
  );
});

const rowsOf = (
  stations: readonly number[],
  offsets: readonly number[],
  others: readonly number[],
): OffsetRow[] =>
  stations.map((stationM, i) => ({
    stationM,
    offsetM: offsets[i] ?? 0,
    otherM: others[i] ?? 0,
    line: i + 1,
  }));

const table = fc
  .array(fc.tuple(fc.double({ min: 0.5, max: 20, noNaN: true }), length, length), {
    minLength: 2,
    maxLength: 15,
  })
  .map((cells) => {
    let station = 3;
    return rowsOf(
      cells.map(([gap]) => {
        station += gap;
        return station;
      }),
      cells.map(([, offset]) => offset / 10),
      cells.map(([, , other]) => other / 10),
    );
  });

describe('offsets along a base line', () => {
  it.each(['left', 'right', 'both', 'across'] as const)(
    '%s: each rule’s outline has its area and does not cross itself',
    (side) => {
      fc.assert(
        fc.property(table, (rows) => {
          const measured = measureOffsets(rows, side, USUAL_TAPE_ERROR, 'metric');
          if (!measured.ok) throw new Error(measured.issues[0]?.message);
          for (const result of measured.rules) {
            if (!result.ok) continue;
            const outline = outlineOffsets(rows, side, result);
            const isStraight = outline.notes.some((note) => note.includes('straight sides'));
            const straight = measured.rules[0];
            const areaM2 = isStraight && straight?.ok ? straight.areaM2 : result.areaM2;
            expect(Math.abs(signedArea(outline.ring) / areaM2 - 1)).toBeLessThan(1e-9);
            expect(isSimple(outline.ring)).toBe(true);
          }
        }),
        { numRuns: 150 },
      );
    },
  );

  it('parabolas find any parabola’s area at any stations, Simpson a cubic’s at equal ones', () => {
    fc.assert(
      fc.property(
        table,
        fc.tuple(...[1, 1, 1, 1].map(() => fc.double({ min: -3, max: 3, noNaN: true }))),
        (rows, [p = 0, q = 0, r = 0, s = 0]) => {
          const x = rows.map((row) => row.stationM);
          if (x.length >= 3) {
            const integral = (t: number) => p * t + (q * t * t) / 2 + (r * t ** 3) / 3;
            const y = x.map((t) => p + q * t + r * t * t);
            const exact = integral(x.at(-1) ?? 0) - integral(x[0] ?? 0);
            const size = trapezoidArea(x, y.map(Math.abs));
            expect(Math.abs(parabolicArea(x, y) - exact)).toBeLessThanOrEqual(1e-9 * size + 1e-9);
          }
          const even = Array.from({ length: 7 }, (_, i) => i * 1.5);
          const cubic = (t: number) => p + q * t + r * t * t + s * t ** 3;
          const whole = (t: number) => p * t + (q * t * t) / 2 + (r * t ** 3) / 3 + (s * t ** 4) / 4;
          const found = simpsonArea(even, even.map(cubic));
          expect(Math.abs(found - whole(9))).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(whole(9))));
        },
      ),
      { numRuns: 200 },
    );
  });

  const STATIONS = [0, 4, 9, 11, 18, 20, 26];
  const EQUAL = [0, 4, 8, 12, 16, 20];
  const OFFSETS = [2, 3.1, 4.6, 5, 4.1, 3.3, 2.4];
  const OTHERS = [1, 2.2, 1.9, 2.5, 3, 1.1, 0.7];

  it.each([
    ['left', STATIONS],
    ['both', STATIONS],
    ['across', EQUAL],
  ] as const)('%s: sigma of every rule within 3 % of 10,000 drawn tapings', (side, stations) => {
    const error: TapeError = { readingSigmaM: 0.05, scaleSigma: 0.003, angleSigmaDeg: 0 };
    const measured = measureOffsets(rowsOf(stations, OFFSETS, OTHERS), side, error, 'metric');
    if (!measured.ok) throw new Error(measured.issues[0]?.message);
    const rules = { trapezoid: trapezoidArea, simpson: simpsonArea, parabolic: parabolicArea };
    for (const result of measured.rules) {
      if (!result.ok) continue;
      const normal = normals(11);
      const areas = Array.from({ length: RUNS }, () => {
        const scale = 1 + error.scaleSigma * normal();
        const read = (value: number) => (value + error.readingSigmaM * normal()) * scale;
        const x = stations.map((station, i) => (i === 0 ? 0 : read(station)));
        const y = stations.map(
          (_, i) => read(OFFSETS[i] ?? 0) + (side === 'both' ? read(OTHERS[i] ?? 0) : 0),
        );
        return rules[result.rule](x, y);
      });
      expect(Math.abs(sdOf(areas) / result.areaSigmaM2 - 1)).toBeLessThan(0.03);
    }
  });
});
