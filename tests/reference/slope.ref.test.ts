import { describe, expect, it } from 'vitest';
import { areaScale } from '../../src/measure/areaScale';
import { surfaceFactor } from '../../src/measure/slope';
import {
  degreesFromSlope,
  slopeFromDegrees,
  slopeFromHeights,
  slopeFromRise,
} from '../../src/measure/slopeEntry';

/** Slopes as published, to the digits published. */
describe('slope by percent, degrees, rise and run', () => {
  it.each([
    // NWCG, Firefighter Math, 4.5 Slope, example 1: read
    [60, 31, 0],
    // school trigonometry: the tangent of 45 degrees is 1
    [100, 45, 6],
    // common tables of slopes, from memory
    [5, 2.86, 2],
    [8, 4.57, 2],
    [10, 5.71, 2],
    [15, 8.53, 2],
    [20, 11.31, 2],
    [25, 14.04, 2],
    [33.3, 18.42, 2],
    [50, 26.57, 2],
  ])('%s percent is %s degrees', (percent, degrees, digits) => {
    expect(degreesFromSlope(percent / 100)).toBeCloseTo(degrees, digits);
    expect((slopeFromDegrees(degrees) ?? 0) * 100).toBeCloseTo(percent, digits === 0 ? -1 : 0);
  });

  it('NWCG, Firefighter Math, example 2 (read): 8 ft of rise in 40 ft of run is 20 percent', () => {
    expect(slopeFromRise(8, 40)).toBeCloseTo(0.2, 12);
  });

  it('the same, example 3 (read): a hill of 8 percent, 15 ft high, is 188 ft long on the level', () => {
    expect(slopeFromHeights(100, 115, 188, 'level')).toBeCloseTo(0.08, 3);
  });

  it('10 m of rise in 50 m is 20 percent or 11.3 degrees (a published worked example, read)', () => {
    const slope = slopeFromRise(10, 50) ?? 0;
    expect(slope).toBeCloseTo(0.2, 12);
    expect(degreesFromSlope(slope)).toBeCloseTo(11.3, 1);
  });

  it('a tape along the slope is the long side: 3, 4, 5', () => {
    expect(slopeFromHeights(12, 15, 5, 'along')).toBeCloseTo(3 / 4, 12);
    expect(slopeFromHeights(15, 12, 4, 'level')).toBeCloseTo(3 / 4, 12);
  });

  it('says nothing where nothing can be said', () => {
    expect(slopeFromRise(1, 0)).toBeNull();
    expect(slopeFromRise(-1, 5)).toBeNull();
    expect(slopeFromDegrees(90)).toBeNull();
    expect(slopeFromDegrees(-1)).toBeNull();
    expect(slopeFromDegrees(Number.NaN)).toBeNull();
    expect(slopeFromHeights(0, 5, 5, 'along')).toBeNull();
    expect(slopeFromHeights(0, 5, 0, 'level')).toBeNull();
  });
});

describe('ground along the slope for flat ground', () => {
  // Secants, four-figure tables (school tables; from memory)
  it.each([
    [5, 1.0038],
    [10, 1.0154],
    [15, 1.0353],
    [20, 1.0642],
    [30, 1.1547],
    [44, 1.3902],
    [60, 2],
  ])('a slope of %s degrees: %s', (degrees, factor) => {
    expect(surfaceFactor(slopeFromDegrees(degrees))).toBeCloseTo(factor, 4);
  });

  // Slope correction factors of timber cruising, sqrt(1 + (percent/100)²): common tables, from memory
  it.each([
    [10, 1.005],
    [20, 1.02],
    [30, 1.044],
    [40, 1.077],
    [50, 1.118],
    [70, 1.221],
    [90, 1.345],
  ])('a slope of %s percent: %s', (percent, factor) => {
    expect(surfaceFactor(percent / 100)).toBeCloseTo(factor, 3);
  });

  it('is 1 on the level and where no slope is told', () => {
    expect(surfaceFactor(0)).toBe(1);
    expect(surfaceFactor(null)).toBe(1);
  });
});

describe('elevation', () => {
  // Elevation factor R/(R + h): Penn State GEOG 862 (R = 20,906,000 ft, read); published table with
  // R = 6,371,000 m: 200 m 0.999969, 500 m 0.999921 (as printed; 0.9999215 by the formula), 1,000 m 0.999843, 2,000 m 0.999686 (read)
  it.each([
    [0, 1],
    [200, 0.999969],
    [500, 0.999921],
    [1000, 0.999843],
    [2000, 0.999686],
  ])('%s m above the ellipsoid: lengths by the factor %s', (elevationM, factor) => {
    expect(Math.abs(1 / Math.sqrt(areaScale(elevationM)) - factor)).toBeLessThan(1e-6);
  });

  it('agrees with the radius of 20,906,000 ft of land surveyors', () => {
    const heightFt = 5280;
    const scale = areaScale(heightFt * 0.3048);
    expect(Math.abs(Math.sqrt(scale) - (20_906_000 + heightFt) / 20_906_000)).toBeLessThan(1e-6);
  });
});
