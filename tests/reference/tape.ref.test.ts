import { describe, expect, it } from 'vitest';
import { signedArea } from '../../src/measure/signedArea';
import { measureOffsets, type OffsetSide, outlineOffsets } from '../../src/survey/tape/makeOffsets';
import { makeTapeShape } from '../../src/survey/tape/makeTapeShape';
import type { OffsetRule } from '../../src/survey/tape/offsetOutline';
import { readOffsets } from '../../src/survey/tape/readOffsets';
import { ellipsePerimeterM } from '../../src/survey/tape/roundShapes';
import { TAPE_SHAPES } from '../../src/survey/tape/tapeShapes';
import { type Dimensions, USUAL_TAPE_ERROR } from '../../src/survey/tape/types';
import { M_PER_FT, M_PER_YD } from '../../src/units/factors';

/*
 * Worked examples of extension publications, handbooks and survey courses. Lengths are turned into metres
 * and areas back, so that the units of the source stand in each row.
 */

interface ShapeRow {
  readonly source: string;
  readonly way: string;
  readonly unitM: number;
  readonly dimensions: Dimensions;
  /** keys that are angles, left in degrees. */
  readonly angles?: readonly string[];
  readonly area: number;
  /** most that ours may differ, in the row's square unit: half a last printed digit, or what the source's 3.14 costs. */
  readonly within: number;
}

const FT = M_PER_FT;
const SHAPES: readonly ShapeRow[] = [
  {
    source: 'Clemson Cooperative Extension, HGIC 1220 "Measuring the Area of a Home Lawn", example 1',
    way: 'rectangle',
    unitM: FT,
    dimensions: { a: 50, b: 25 },
    area: 1250,
    within: 1e-6,
  },
  {
    source:
      'Fresenburg, Univ. of Missouri Extension, "Calibration Guidelines for Home Lawns", 2009: rectangle',
    way: 'rectangle',
    unitM: FT,
    dimensions: { a: 60, b: 25 },
    area: 1500,
    within: 1e-6,
  },
  {
    source: 'the same: circle of 80 ft diameter, with 3.14',
    way: 'circle-diameter',
    unitM: FT,
    dimensions: { w: 80 },
    area: 5024,
    within: 5024 * (Math.PI / 3.14 - 1) + 0.01,
  },
  {
    source: 'LSU AgCenter, "Estimating Lawn Areas": circle of 14 ft radius, with 3.14, to whole sq ft',
    way: 'circle-radius',
    unitM: FT,
    dimensions: { r: 14 },
    area: 615,
    within: 615 * (Math.PI / 3.14 - 1) + 0.5,
  },
  {
    source: 'the same: 30 by 15 ft and 15 by 10 ft together (450 + 150), laid as one L',
    way: 'l-shape',
    unitM: FT,
    dimensions: { a: 30, b: 25, c: 15, d: 15 },
    area: 600,
    within: 1e-6,
  },
  {
    source: 'Oklahoma State Univ.-OKC, Gerken 2013: triangle of base 30 and height 26 ft',
    way: 'triangle-height',
    unitM: FT,
    dimensions: { a: 30, h: 26 },
    area: 390,
    within: 1e-6,
  },
  {
    source: 'Purdue Turf Program, "How Big is Your Lawn?", 2014: land ((90 + 60)/2) x 80 ft',
    way: 'trapezoid',
    unitM: FT,
    dimensions: { a: 90, b: 60, h: 80, f: 0 },
    area: 6000,
    within: 1e-6,
  },
  {
    source: 'the same: quarter of a circle of 8 ft radius, with 3.14, to whole sq ft',
    way: 'sector-angle',
    unitM: FT,
    dimensions: { r: 8, t: 90 },
    angles: ['t'],
    area: 50,
    within: 50 * (Math.PI / 3.14 - 1) + 0.5,
  },
  {
    source: 'Univ. of Genoa, MaCoSa, field of four triangles: sides 53.9, 64.4, 40.1 m',
    way: 'triangle-sides',
    unitM: 1,
    dimensions: { a: 53.9, b: 64.4, c: 40.1 },
    area: 1076.817,
    within: 0.0005,
  },
  {
    source: 'Heron, Metrica I 8: sides 7, 8, 9 give 26 1/2 1/3, a root to the nearest sixth (from memory)',
    way: 'triangle-sides',
    unitM: 1,
    dimensions: { a: 7, b: 8, c: 9 },
    area: 26 + 5 / 6,
    within: 0.001,
  },
  {
    source:
      'NCERT Mathematics class IX, Heron’s formula, exercise 12.2 no. 1: park of 9, 12, 5, 8 m and diagonal 13 m',
    way: 'quadrilateral',
    unitM: 1,
    dimensions: { a: 8, b: 9, c: 12, d: 5, e: 13 },
    area: 65.5,
    within: 0.05,
  },
  {
    source:
      'The Math Forum, Ask Dr. Math 61170 "Area of a Lawn": 14, 16, 7, 22 yd, diagonal 20 yd (sides read there; total of the two triangles by hand: 111.243 + 69.453)',
    way: 'quadrilateral',
    unitM: M_PER_YD,
    dimensions: { a: 16, b: 14, c: 22, d: 7, e: 20 },
    area: Math.sqrt(25 * 9 * 11 * 5) + Math.sqrt(24.5 * 17.5 * 4.5 * 2.5),
    within: 1e-9,
  },
  {
    source: 'MatheAss, help page "Circular Sections": chord 21, height 6',
    way: 'segment-chord',
    unitM: 1,
    dimensions: { c: 21, h: 6 },
    area: 89.254148,
    within: 5e-7,
  },
  {
    source: 'the same page: radius 1.2732395, angle 45°, segment',
    way: 'segment-angle',
    unitM: 1,
    dimensions: { r: 1.2732395, t: 45 },
    angles: ['t'],
    area: 0.063460604,
    within: 5e-9,
  },
  {
    source: 'the same page: radius 1.2732395, arc 1, sector',
    way: 'sector-arc',
    unitM: 1,
    dimensions: { r: 1.2732395, u: 1 },
    area: 0.63661977,
    within: 3e-8,
  },
  {
    source: 'Machinery’s Handbook, 31st ed., p. 50, example 2: sector of 30°, radius 7 cm',
    way: 'sector-angle',
    unitM: 0.01,
    dimensions: { r: 7, t: 30 },
    angles: ['t'],
    area: 12.83,
    within: 0.005,
  },
  {
    source: 'the same, examples 3 and 4: radius 12 cm, depth 2 cm (the source rounds on the way)',
    way: 'segment-radius',
    unitM: 0.01,
    dimensions: { r: 12, h: 2 },
    area: 18.01,
    within: 0.01,
  },
  {
    source: 'Machinery’s Handbook, 31st ed., p. 53: ellipse of half axes 10 and 7 cm, N = πAB',
    way: 'ellipse',
    unitM: 0.01,
    dimensions: { a: 20, b: 14 },
    area: Math.PI * 70,
    within: 1e-9,
  },
];

const WAYS = new Map(TAPE_SHAPES.flatMap((shape) => shape.ways).map((way) => [way.id, way]));

function shapeOf(row: Pick<ShapeRow, 'way' | 'dimensions' | 'angles' | 'unitM'>) {
  const way = WAYS.get(row.way);
  if (!way) throw new Error(`no way ${row.way}`);
  const d = Object.fromEntries(
    Object.entries(row.dimensions).map(([key, value]) => [
      key,
      row.angles?.includes(key) ? value : value * row.unitM,
    ]),
  );
  const made = makeTapeShape(way, d, USUAL_TAPE_ERROR, 'us');
  if (!made.ok) throw new Error(made.issues.map((issue) => issue.message).join(' '));
  return made.shape;
}

describe('areas of shapes by their dimensions', () => {
  it.each(SHAPES.map((row) => [`${row.way}: ${row.source}`, row] as const))('%s', (_, row) => {
    const shape = shapeOf(row);
    const unit2 = row.unitM ** 2;
    expect(Math.abs(shape.areaM2 / unit2 - row.area)).toBeLessThanOrEqual(row.within);
    expect(Math.abs(signedArea(shape.ring) / shape.areaM2 - 1), 'the outline has that area').toBeLessThan(
      1e-9,
    );
  });

  it('other figures of the segment with chord 21 and height 6 on that page: radius, arc', () => {
    const { perimeterM } = shapeOf({ way: 'segment-chord', unitM: 1, dimensions: { c: 21, h: 6 } });
    expect(Math.abs(perimeterM - (21 + 25.308373))).toBeLessThan(1e-6);
  });

  /** Standard Handbook of Petroleum & Natural Gas Engineering, p. 11: perimeter π(a + b)K, K by m = (a - b)/(a + b). */
  it.each([
    [0.1, 1.002],
    [0.2, 1.01],
    [0.3, 1.023],
    [0.4, 1.04],
    [0.5, 1.064],
    [0.6, 1.092],
    [0.7, 1.127],
    [0.8, 1.168],
    [0.9, 1.216],
  ])('perimeter of an ellipse with m = %d: K = %d', (m, k) => {
    expect(Math.abs(ellipsePerimeterM(1 + m, 1 - m) / (2 * Math.PI) - k)).toBeLessThanOrEqual(0.00075);
  });

  it('perimeter of an ellipse of half axes 1 and 0.5: 4 E(m = 0.75) = 4 × 1.21105 60276 (Abramowitz & Stegun table 17.1, from memory)', () => {
    expect(Math.abs(ellipsePerimeterM(1, 0.5) - 4 * 1.2110560276)).toBeLessThan(1e-9);
  });
});

interface OffsetRowRef {
  readonly source: string;
  readonly spacingM: number | null;
  readonly text: string;
  readonly areas: Partial<Record<OffsetRule, number>>;
  readonly within: number;
}

const OFFSETS: readonly OffsetRowRef[] = [
  {
    source: 'course handout "Area by Offsets from a Straight Line", E1 and E2: 3.5 m apart',
    spacingM: 3.5,
    text: '0.8\n3.6\n4.7\n5.3\n3.9\n2.7\n4.6\n5.5\n4.9\n7.6\n8.8\n5.4\n6.0',
    areas: { trapezoid: 211.4, simpson: 211.17 },
    within: 0.005,
  },
  {
    source: 'field notes of a kerb and a fence, textbook question (outputs by hand): 15 m apart',
    spacingM: 15,
    text: '3.9\n4.5\n5.1\n6.5\n6.3\n5.1\n4.1',
    areas: { trapezoid: 472.5, simpson: 476.0 },
    within: 0.05,
  },
  {
    source:
      'Basic Civil Engineering, "Calculation of areas from offsets to a base line", example 1: 10 m apart',
    spacingM: 10,
    text: '3.15\n4.3\n8.2\n5.6\n6.85\n7.6\n4.2\n5.6\n4.3',
    areas: { trapezoid: 460.75, simpson: 461.167 },
    within: 0.0005,
  },
  {
    source: 'textbook question with answer 439.67 m² by Simpson: 10 m apart',
    spacingM: 10,
    text: '3.25\n5.60\n4.20\n6.65\n8.75\n6.20\n3.25\n4.20\n5.65',
    areas: { simpson: 439.67 },
    within: 0.005,
  },
  {
    source: 'chain line question with both answers, 12 intervals of 10 m',
    spacingM: 10,
    text: '0\n2.5\n3.5\n5.0\n4.6\n3.2\n1.3\n5.6\n6.2\n3.8\n1.7\n0.9\n0',
    areas: { trapezoid: 383.0, simpson: 395.33 },
    within: 0.005,
  },
  {
    source:
      'chainages to 210 m, an odd number of intervals: choices 681, 767.825, 781, 790.5; by hand 619 + 162',
    spacingM: null,
    text: '0 0\n30 2.65\n60 3.80\n90 3.75\n120 4.65\n150 3.60\n180 5.00\n210 5.80',
    areas: { simpson: 781 },
    within: 1e-6,
  },
  {
    source: 'two strips 25 ft wide, 19.4, 39.6, 54.8 (first strip 737.5 in the source, second by hand 1180)',
    spacingM: 25,
    text: '19.4\n39.6\n54.8',
    areas: { trapezoid: 737.5 + 1180 },
    within: 1e-9,
  },
  {
    source:
      'stations 0 to 80 m at 5, 10 and 20 m, survey textbook (354.00 and 349.33 m², from memory; SciPy 1.17.1 gives the same)',
    spacingM: null,
    text: '0 2.50\n5 3.80\n10 4.60\n15 5.20\n20 6.10\n30 4.70\n40 5.80\n60 3.90\n80 2.20',
    areas: { trapezoid: 354.0, parabolic: 349.3333333333333 },
    within: 1e-9,
  },
  {
    source:
      'road and river question, stations 0 to 140 m (inputs); SciPy 1.17.1 integrate.simpson and trapezoid',
    spacingM: null,
    text: '0 3.58\n10 6.42\n20 6.57\n40 7.46\n60 7.77\n90 7.54\n120 6.78\n130 5.84\n140 4.47',
    areas: { trapezoid: 966.65, parabolic: 976.4333333333333 },
    within: 1e-9,
  },
  {
    source: 'SciPy 1.17.1 integrate.simpson and trapezoid, unequal stations, even number of intervals',
    spacingM: null,
    text: '0 0\n4 3.1\n9 4.6\n11 5.0\n18 4.1\n20 3.3\n26 0',
    areas: { trapezoid: 84.2, parabolic: 88.69821428571429 },
    within: 1e-9,
  },
  {
    source: 'the same, odd number of intervals: last one under the last parabola (Cartwright 2017)',
    spacingM: null,
    text: '0 0\n4 3.1\n9 4.6\n11 5.0\n18 4.1\n20 3.3\n26 2.2\n30 1.0',
    areas: { trapezoid: 97.2, parabolic: 100.11154761904761 },
    within: 1e-9,
  },
];

describe('areas by offsets along a base line', () => {
  const cases = OFFSETS.flatMap((row) =>
    Object.entries(row.areas).map(
      ([rule, area]) => [`${rule} ${area}: ${row.source}`, row, rule, area] as const,
    ),
  );
  it.each(cases)('%s', (_, row, rule, area) => {
    const side: OffsetSide = 'left';
    const read = readOffsets(row.text, { side, spacingM: row.spacingM, system: 'metric' });
    if (!read.ok) throw new Error(read.issues[0]?.message);
    const measured = measureOffsets(read.rows, side, USUAL_TAPE_ERROR, 'metric');
    if (!measured.ok) throw new Error(measured.issues[0]?.message);
    const result = measured.rules.find((each) => each.rule === rule);
    if (!result?.ok) throw new Error(result?.why);
    expect(Math.abs(result.areaM2 - area)).toBeLessThanOrEqual(row.within);
    const outline = outlineOffsets(read.rows, side, result);
    expect(Math.abs(signedArea(outline.ring) / result.areaM2 - 1), 'the outline has that area').toBeLessThan(
      1e-9,
    );
  });
});
