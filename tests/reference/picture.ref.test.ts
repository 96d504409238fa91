import { describe, expect, it } from 'vitest';
import { positionOfTags } from '../../src/picture/geoKeys';
import { readWorldFile } from '../../src/picture/worldFile';
import { applyAffine } from '../../src/survey/picture/affine';
import { fitPicture } from '../../src/survey/picture/fitPicture';
import { solveLeastSquares } from '../../src/survey/picture/leastSquares';
import type { PictureFit } from '../../src/survey/picture/types';

/* Laying a picture on the ground, against worked examples and certified values published elsewhere. */

function fitted(...args: Parameters<typeof fitPicture>): PictureFit {
  const result = fitPicture(...args);
  if (!result.ok) throw new Error(result.issue.message);
  return result;
}

describe('similarity by least squares', () => {
  /*
   * Ghilani, Adjustment Computations, 6th ed. (Wiley 2018), Example 18.1: three points common to two systems.
   * Data and a, b, Tx, Ty read here, as quoted in public code; there X = a·x − b·y + Tx, Y = a·y + b·x + Ty,
   * so with col = x, row = −y our numbers are [a, b, Tx, b, −a, Ty].
   */
  const points = [
    { pixel: [121.622, 128.066], ground: [1049422.4, 51089.2] },
    { pixel: [141.228, -187.718], ground: [1049413.95, 49659.3] },
    { pixel: [175.802, -135.728], ground: [1049244.95, 49884.95] },
  ] as const;
  const fit = fitted(points, [], null, 'similarity');

  it('parameters of the example', () => {
    const [a, b, tx, d, e, ty] = fit.toGround;
    expect(a).toBeCloseTo(-4.51249, 5);
    expect(b).toBeCloseTo(-0.25371, 5);
    expect(d).toBeCloseTo(-0.25371, 5);
    expect(e).toBeCloseTo(4.51249, 5);
    expect(tx).toBeCloseTo(1050003.715, 2);
    expect(ty).toBeCloseTo(50542.131, 3);
  });

  it('six measurements, four unknowns', () => {
    expect(fit.redundancy).toBe(2);
    const squares = fit.residuals.points.reduce((sum, one) => sum + one.lengthM ** 2, 0);
    // a-posteriori standard deviation of unit weight: √(Σv² / r), ibid. chapter 16
    expect(fit.sigmaM).toBeCloseTo(Math.sqrt(squares / 2), 9);
  });
});

describe('affine by least squares', () => {
  /*
   * Each coordinate of an affine fit is a linear regression on two variables. Longley's data are the hard
   * test of such programs: NIST Statistical Reference Datasets, Longley.dat (Longley 1967, JASA 62, 819-841),
   * certified values and standard deviations, read here as quoted in public test suites.
   */
  const LONGLEY = [
    [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
    [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
    [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
    [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
    [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
    [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
    [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
    [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
    [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
    [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
    [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
    [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
    [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
    [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
    [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
    [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
  ] as const;
  const CERTIFIED = [
    [-3482258.63459582, 890420.383607373],
    [15.0618722713733, 84.9149257747669],
    [-0.035819179292591, 0.0334910077722432],
    [-2.02022980381683, 0.488399681651699],
    [-1.03322686717359, 0.214274163161675],
    [-0.0511041056535807, 0.22607320006937],
    [1829.15146461355, 455.478499142212],
  ] as const;
  const CERTIFIED_SIGMA = 304.854073561965;

  it('the solver: coefficients and standard deviations of NIST Longley to eight digits', () => {
    const rows = LONGLEY.map(([, ...x]) => [1, ...x]);
    const solved = solveLeastSquares(
      rows,
      LONGLEY.map(([y]) => y),
    );
    const squares = rows.reduce(
      (sum, row, i) =>
        sum + (row.reduce((v, x, j) => v + x * (solved?.solution[j] ?? 0), 0) - (LONGLEY[i]?.[0] ?? 0)) ** 2,
      0,
    );
    const sigma = Math.sqrt(squares / (16 - 7));
    expect(sigma / CERTIFIED_SIGMA).toBeCloseTo(1, 8);
    for (const [j, [value, deviation]] of CERTIFIED.entries()) {
      expect((solved?.solution[j] ?? 0) / value).toBeCloseTo(1, 8);
      expect((sigma * Math.sqrt(solved?.cofactors[j]?.[j] ?? 0)) / deviation).toBeCloseTo(1, 8);
    }
  });

  it('the fit: two of Longley’s variables as column and row, employment as x, against the textbook’s closed form', () => {
    const points = LONGLEY.map(([y, , , idle, army]) => ({
      pixel: [idle, army] as const,
      ground: [y, -y / 7 - 20 * army] as const,
    }));
    const [a, b] = fitted(points, [], null, 'affine').toGround;
    // Draper & Smith, Applied Regression Analysis, 3rd ed., two regressors: slopes from centred sums by Cramer's rule
    const mean = (of: (p: (typeof points)[number]) => number) => points.reduce((s, p) => s + of(p), 0) / 16;
    const [mc, mr, mx] = [mean((p) => p.pixel[0]), mean((p) => p.pixel[1]), mean((p) => p.ground[0])];
    const cov = (f: (p: (typeof points)[number]) => number, g: typeof f) => mean((p) => f(p) * g(p));
    const [c, r, x] = [
      (p: (typeof points)[number]) => p.pixel[0] - mc,
      (p: (typeof points)[number]) => p.pixel[1] - mr,
      (p: (typeof points)[number]) => p.ground[0] - mx,
    ];
    const det = cov(c, c) * cov(r, r) - cov(c, r) ** 2;
    expect(a / ((cov(c, x) * cov(r, r) - cov(r, x) * cov(c, r)) / det)).toBeCloseTo(1, 8);
    expect(b / ((cov(r, x) * cov(c, c) - cov(c, x) * cov(c, r)) / det)).toBeCloseTo(1, 8);
  });
});

describe('positions in files', () => {
  it('a world file gives the centre of the first pixel (Esri; the example of kralidis.ca/gis/worldfile.htm)', () => {
    const text =
      '5.000000000000\n0.000000000000\n0.000000000000\n-5.000000000000\n492169.690845528910\n5426523.318065105000\n';
    const world = readWorldFile(text);
    if (!world.ok) throw new Error(world.issue.message);
    expect(applyAffine(world.toProjected, [0.5, 0.5])).toEqual([
      expect.closeTo(492169.690845529, 6),
      expect.closeTo(5426523.318065105, 6),
    ]);
    expect(applyAffine(world.toProjected, [1.5, 2.5])).toEqual([
      expect.closeTo(492174.690845529, 6),
      expect.closeTo(5426513.318065105, 6),
    ]);
  });

  it('one GeoTIFF as areas and as points (OGC 19-008r4 annex B.2; pair of tie points by T. Nightingale, geotiff list, May 2010)', () => {
    const scale = [0.002777777778, 0.002777777778, 0];
    const areas = positionOfTags({
      ModelPixelScale: scale,
      ModelTiepoint: [0, 0, 0, -180, 90, 0],
      keys: { GTModelTypeGeoKey: 2, GTRasterTypeGeoKey: 1, GeographicTypeGeoKey: 4326 },
    });
    const points = positionOfTags({
      ModelPixelScale: scale,
      ModelTiepoint: [-0.5, -0.5, 0, -180, 90, 0],
      keys: { GTModelTypeGeoKey: 2, GTRasterTypeGeoKey: 2, GeographicTypeGeoKey: 4326 },
    });
    expect(areas?.crs).toBe('EPSG:4326');
    for (const pixel of [
      [0, 0],
      [129600, 64800],
    ] as const) {
      const [x, y] = applyAffine(areas?.toProjected ?? [0, 0, 0, 0, 0, 0], pixel);
      expect(applyAffine(points?.toProjected ?? [0, 0, 0, 0, 0, 0], pixel)).toEqual([
        expect.closeTo(x, 9),
        expect.closeTo(y, 9),
      ]);
    }
    // it fits the whole globe, edge to edge
    expect(applyAffine(areas?.toProjected ?? [0, 0, 0, 0, 0, 0], [129600, 64800])).toEqual([
      expect.closeTo(180, 4),
      expect.closeTo(-90, 4),
    ]);
  });
});
