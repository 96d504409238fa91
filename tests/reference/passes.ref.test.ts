import { describe, expect, it } from 'vitest';
import { planPasses } from '../../src/cover/passes/planPasses';
import { areaOfPieces, sectionOf } from '../../src/cover/passes/section';
import { makeWalkable, wayWithin } from '../../src/cover/passes/wayWithin';
import type { PassOptions, ZonePasses } from '../../src/cover/passTypes';
import type { PlaneRings, XY } from '../../src/measure/types';
import { closed, rectangle, regular } from '../fixtures/passGrounds';

/*
 * Passes against figures from outside the project.
 */

const FOOT_M = 0.3048;
const ACRE_M2 = 4046.8564224;

function plan(parts: PlaneRings[], fields: Partial<PassOptions> & { spacingM: number }): ZonePasses {
  const options = { swathM: fields.spacingM, headerLaps: null, headingDeg: null, lapsFirst: true, ...fields };
  return planPasses({ parts, keepOff: [] }, options, null, null);
}

const lengthOf = (line: readonly XY[]) =>
  line.reduce((sum, p, i) => {
    const before = line[i - 1];
    return sum + (before ? Math.hypot(p[0] - before[0], p[1] - before[1]) : 0);
  }, 0);

describe('passes over a rectangle', () => {
  /*
   * Back and forth over a by b along b with n = a / spacing passes: n·b of passes, n - 1 turns of a / n
   * (the boustrophedon motion of Choset & Pignon 1998, from memory; closed form, elementary).
   */
  it.each([
    [24, 40, 2, 12],
    [10, 30, 3, 4],
    [7, 50, 1.4, 5],
  ])('%d by %d m at %d m: %d passes', (a, b, spacingM, n) => {
    const found = plan([[rectangle(0, 0, a, b)]], { spacingM, headerLaps: 0, headingDeg: 0 });
    expect(found.passes).toBe(n);
    expect(found.turns).toBe(n - 1);
    expect(found.cells).toBe(1);
    expect(found.workingM).toBeCloseTo(n * b, 6);
    expect(found.lengthM).toBeCloseTo(n * b + ((n - 1) * a) / n, 6);
    expect(found.missedM2).toBeCloseTo(0, 3);
    // what lies closer than the spacing is done twice
    expect(found.doubleM2).toBeCloseTo((n * spacingM - a) * b - ((n * spacingM - a) * b) / n, 2);
  });

  it('a lap is the outline of the rectangle half a spacing in, its area the band beside it', () => {
    const found = plan([[rectangle(0, 0, 20, 30)]], { spacingM: 2, headerLaps: 1, headingDeg: 0 });
    const laps = found.legs.filter((leg) => leg.kind === 'lap');
    expect(laps.length).toBe(1);
    expect(laps[0]?.lengthM).toBeCloseTo(2 * (18 + 28), 0);
    expect(laps[0]?.knots.at(-1)?.areaM2).toBeCloseTo(20 * 30 - 16 * 26, 3);
  });
});

describe('the shortest walk there could be', () => {
  /*
   * ODOT Guide for Roadside Integrated Vegetation Management, worksheet "Production based on work hours":
   * 43,560 ft² ÷ nozzle spray width (ft) = linear feet in 1 acre.
   */
  it.each([
    [4, 10890],
    [6, 7260],
    [10, 4356],
  ])('an acre at %d ft is %d linear feet', (widthFt, linearFt) => {
    const side = Math.sqrt(ACRE_M2);
    const found = plan([[rectangle(0, 0, side, side)]], { spacingM: widthFt * FOOT_M });
    expect(found.leastM / FOOT_M).toBeCloseTo(linearFt, 3);
    expect(found.lengthM).toBeGreaterThan(found.leastM * 0.995);
    expect(found.lengthM / found.leastM).toBeLessThanOrEqual(1.08);
  });
});

describe('heading of the sweep', () => {
  /*
   * Huang 2001, "Optimal line-sweep-based decompositions for coverage algorithms" (ICRA, doi
   * 10.1109/ROBOT.2001.932525, from memory): the turns of a sweep are as many as its
   * altitude asks for, and the least altitude stands on a side.
   * Altitudes of the triangle 3-4-5: 2.4 on the 5, 3 on the 4, 4 on the 3 (twice the area over the side).
   */
  it.each([
    ['50', (Math.atan2(-40, 30) * 180) / Math.PI + 180, 24],
    ['40', 90, 30],
    ['30', 0, 40],
  ])('a triangle of 30, 40 and 50 m swept along the %s has the altitude', (_, headingDeg, altitudeM) => {
    const triangle = closed([0, 0], [40, 0], [0, 30]);
    const found = plan([[triangle]], { spacingM: 2, headerLaps: 0, headingDeg });
    // rows across the heading; slanted ends may have short passes of their own
    const angle = (headingDeg * Math.PI) / 180;
    const rows = found.legs
      .filter((leg) => leg.kind === 'pass' && leg.line.length === 2)
      .flatMap(({ line, lengthM }) => {
        const [[ax, ay], [bx, by]] = line as [XY, XY];
        const isAlong = Math.abs((bx - ax) * Math.cos(angle) - (by - ay) * Math.sin(angle)) < 1e-6 * lengthM;
        return isAlong ? [Math.round((ay * Math.sin(angle) - ax * Math.cos(angle)) / 0.01)] : [];
      });
    expect(new Set(rows).size).toBe(altitudeM / 2);
  });

  it('a long rectangle is swept along its length', () => {
    const found = plan([[rectangle(0, 0, 12, 60)]], { spacingM: 1.5, headerLaps: 0 });
    expect(found.headingDeg).toBeCloseTo(0, 6);
    expect(found.passes).toBe(8);
  });

  /*
   * The same paper: sum of altitudes of cells with one sweep direction. A U of arms 10 wide and 20 long on a base
   * 30 by 10, swept along its arms: three slabs side by side, 10 + 10 + 10.
   */
  it('a U is laid out by the sum of its altitudes', () => {
    const u = closed([0, 0], [30, 0], [30, 30], [20, 30], [20, 10], [10, 10], [10, 30], [0, 30]);
    const found = plan([[u]], { spacingM: 1, headerLaps: 0, headingDeg: 0 });
    expect(found.passes).toBe(10 + 10 + 10);
    expect(found.workingM).toBeCloseTo(10 * 30 + 10 * 10 + 10 * 30, 6);
    expect(found.missedM2).toBeCloseTo(0, 3);
  });
});

describe('ground of a slab', () => {
  /*
   * Circular segment: R² acos(d / R) - d √(R² - d²); Abramowitz & Stegun would give the same by integration (from memory).
   */
  it('is the circle between two chords', () => {
    const R = 10;
    const segment = (d: number) => R * R * Math.acos(d / R) - d * Math.sqrt(R * R - d * d);
    const ring = regular(0, 0, R, 4000);
    expect(areaOfPieces(sectionOf([ring], 2, 5))).toBeCloseTo(segment(2) - segment(5), 3);
  });
});

describe('shortest ways', () => {
  /*
   * Round a circle of radius r between two places at distance d on opposite sides of its middle: two
   * tangents and an arc, 2 √(d² - r²) + r (π - 2 acos(r / d)) (elementary geometry).
   */
  it('round a disc: tangents and an arc', () => {
    const [r, d] = [3, 8];
    const walkable = makeWalkable(null, [[regular(0, 0, r, 720)]]);
    const line = wayWithin(walkable, [-d, 0], [d, 0]);
    const true0 = 2 * Math.sqrt(d * d - r * r) + r * (Math.PI - 2 * Math.acos(r / d));
    expect(lengthOf(line)).toBeGreaterThanOrEqual(true0 - 1e-3);
    expect(lengthOf(line)).toBeLessThan(true0 * 1.01);
  });

  it('round the corner of an L: two straight lines by its inner corner', () => {
    const walkable = makeWalkable([[closed([0, 0], [40, 0], [40, 10], [10, 10], [10, 40], [0, 40])]], []);
    const line = wayWithin(walkable, [38, 8], [8, 38]);
    expect(lengthOf(line)).toBeCloseTo(2 * Math.hypot(28, 2), 1);
    expect(line.length).toBe(3);
  });

  it('past a wall: by its nearer end', () => {
    const walkable = makeWalkable(null, [[rectangle(-1, -4, 2, 10)]]);
    const line = wayWithin(walkable, [-6, 0], [6, 0]);
    expect(lengthOf(line)).toBeCloseTo(2 * Math.hypot(5, 4) + 2, 1);
  });
});
