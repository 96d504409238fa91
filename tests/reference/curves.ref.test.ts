import { describe, expect, it } from 'vitest';
import { arcThrough, flattenCurve } from '../../src/measure/curves';
import { createPlane } from '../../src/measure/plane';
import { signedArea } from '../../src/measure/signedArea';
import type { XY } from '../../src/measure/types';
import type { Curve, Position } from '../../src/yard/types';

const plane = createPlane([-83, 40]);
const places = (points: readonly XY[]): Position[] => points.map((p) => plane.toLonLat(p));
const closed = (corners: readonly Position[]): XY[] =>
  [...corners, ...corners.slice(0, 1)].map((p) => plane.toPlane(p));

describe('arcs', () => {
  // Math-assistant "Circular Sections" (help.matheass.eu): a plate's fragment, chord 21, arrow height 6
  // gives radius 12.1875, angle 118.97953°, segment 89.254148, arc 25.308373.
  it('chord and height give the published radius, angle and segment', () => {
    const points: XY[] = [
      [-10.5, 0],
      [0, 6],
      [10.5, 0],
    ];
    const [a, b, c] = points as [XY, XY, XY];
    const arc = arcThrough(a, b, c);
    expect(arc?.radiusM).toBeCloseTo(12.1875, 9);
    expect(((arc?.sweep ?? 0) * 180) / Math.PI).toBeCloseTo(-118.97953, 5);
    const corners = flattenCurve({ kind: 'arc', points: places(points) });
    const areaM2 = Math.abs(signedArea(closed(corners)));
    expect(Math.abs(areaM2 / 89.254148 - 1)).toBeLessThan(1e-5);
    const laid = corners.map((p) => plane.toPlane(p));
    const lengthM = laid
      .slice(1)
      .reduce((sum, p, i) => sum + Math.hypot(p[0] - (laid[i]?.[0] ?? 0), p[1] - (laid[i]?.[1] ?? 0)), 0);
    expect(Math.abs(lengthM / 25.308373 - 1)).toBeLessThan(1e-4);
  });

  // Area of a segment over (diameter)², by height over diameter: the table of segments of the engineers'
  // pocket-books (from memory); it repeats θ - sin θ, Beyer 1987, in Weisstein, "Circular segment".
  it.each([
    [0.1, 0.040875],
    [0.2, 0.111823],
    [0.25, 0.153546],
    [0.3, 0.198168],
    [0.4, 0.293369],
    [0.5, 0.392699],
  ])('a segment as high as %f of the diameter', (height, share) => {
    const diameterM = 20;
    const rise = height * diameterM;
    const half = Math.sqrt(rise * (diameterM - rise));
    const corners = flattenCurve({
      kind: 'arc',
      points: places([
        [half, 0],
        [0, rise],
        [-half, 0],
      ]),
    });
    expect(signedArea(closed(corners)) / diameterM ** 2).toBeCloseTo(share, 5);
  });
});

describe('smooth lines', () => {
  // Centripetal Catmull-Rom points of three.js (MIT), test "centripetal basic check" of its
  // CatmullRomCurve3. Its five points lie in the plane z = -x, so √2·x and y are plane coordinates.
  const points: readonly XY[] = [
    [-60, -100],
    [-60, 20],
    [-60, 120],
    [60, 20],
    [60, -100],
  ];
  const expected: readonly XY[] = [
    [-60, -100],
    [-60, -51.47527724919028],
    [-60, -3.300369665587032],
    [-61.13836565863938, 42.86306307781241],
    [-65.1226454638772, 90.69743905511538],
    [-60, 120],
    [-15.620412575504497, 103.10790870179872],
    [42.384384731047874, 48.35477686933143],
    [65.25545512241153, -1.646250966068339],
    [63.94159134180865, -50.234688224551256],
    [60, -100],
  ];
  it('agree with an independent library', () => {
    const lay = ([x, y]: XY): XY => [x * Math.SQRT2, y];
    const curve: Curve = { kind: 'smooth', points: places(points.map(lay)) };
    // its ten steps over four spans are every second of five steps a span
    const made = flattenCurve(curve, [5, 5, 5, 5]).map((p) => plane.toPlane(p));
    expected.forEach((p, i) => {
      const [x, y] = lay(p);
      // 0.1 mm: the plane of the curve's own first point is 100 m from this one
      expect(Math.abs((made[2 * i]?.[0] ?? Number.NaN) - x)).toBeLessThan(2e-3);
      expect(Math.abs((made[2 * i]?.[1] ?? Number.NaN) - y)).toBeLessThan(2e-3);
    });
  });
});
