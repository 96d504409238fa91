import { describe, expect, it } from 'vitest';
import { intersectionOf, planeAreaOf } from '../measure/clip';
import type { XY } from '../measure/types';
import type { DoseCoverage, Leg, RunOutMark } from './passTypes';
import { boxRing } from './testGround';
import { testWalk } from './testWalk';
import { vesselGround } from './vesselGround';

/** Four passes of 10 m, 2 m apart, over a box of 10 by 8 m; the first bottle ends in the middle of the third. */
const pass = (y: number, coat: 1 | 2 = 1): Leg => ({
  kind: 'pass',
  zoneId: 'lawn',
  coat,
  line: [
    [0, y],
    [10, y],
  ],
  lengthM: 10,
  knots: [
    { atM: 0, areaM2: 0 },
    { atM: 10, areaM2: 20 },
  ],
});
const out = (legIndex: number, alongM: number, vessel = 0): RunOutMark => ({
  vessel,
  kind: 'container',
  number: vessel + 1,
  left: 0,
  at: [alongM, 5] as XY,
  legIndex,
  alongM,
  zoneId: 'lawn',
  doneM2: 50,
});
const box = [[boxRing(0, 0, 10, 8)]];
const [bottle] = testWalk([], 2, 1).vessels;
const vessels = bottle ? [bottle, bottle] : [];
const areas = (dose: Pick<DoseCoverage, 'legs' | 'marks'>, coat: 1 | 2 = 1, swathM = 2) =>
  vesselGround({ ...dose, vessels }, coat, swathM, box).map(
    ({ vessel, parts }) => [vessel, planeAreaOf(parts)] as const,
  );

describe('vesselGround', () => {
  it('cuts the ground where a vessel runs out, and leaves none of it out (areas by hand)', () => {
    const found = areas({ legs: [pass(1), pass(3), pass(5), pass(7)], marks: [out(2, 5)] });
    expect(found.map(([vessel]) => vessel)).toEqual([0, 1]);
    expect(found[0]?.[1]).toBeCloseTo(50, 3);
    expect(found[1]?.[1]).toBeCloseTo(30, 3);
  });
  it('gives ground beyond the last vessel to none', () => {
    const dose = {
      legs: [pass(1), pass(3), pass(5), pass(7)],
      marks: [out(2, 5)],
      vessels: vessels.slice(1),
    };
    const found = vesselGround(dose, 1, 2, box);
    expect(found.map(({ vessel }) => vessel)).toEqual([0]);
    expect(planeAreaOf(found[0]?.parts ?? [])).toBeCloseTo(50, 3);
  });
  it('gives ground reached twice to the vessel that comes first', () => {
    const found = areas({ legs: [pass(1), pass(3), pass(5), pass(7)], marks: [out(1, 10)] }, 1, 3);
    // swaths of 3 m, 2 m apart: the first bottle reaches up to y = 4.5
    expect(found[0]?.[1]).toBeCloseTo(45, 3);
    expect(found[1]?.[1]).toBeCloseTo(35, 3);
  });
  it('keeps to the ground it is given', () => {
    const [only] = vesselGround({ legs: [pass(0)], marks: [], vessels }, 1, 2, box);
    expect(planeAreaOf(only?.parts ?? [])).toBeCloseTo(10, 3);
    expect(
      planeAreaOf(vesselGround({ legs: [pass(0)], marks: [], vessels }, 1, 2, null)[0]?.parts ?? []),
    ).toBeCloseTo(20, 3);
  });
  it('goes on in the second coat with the vessel that was in hand', () => {
    const dose = { legs: [pass(1), pass(3), pass(1, 2), pass(3, 2)], marks: [out(1, 5)] };
    expect(areas(dose, 2)).toEqual([[1, expect.closeTo(40, 3)]]);
    expect(areas(dose, 1).map(([, area]) => Math.round(area))).toEqual([30, 10]);
  });
  it('joins the first corner of a closed lap like the others', () => {
    const ring = boxRing(1, 1, 9, 7);
    const lap: Leg = {
      ...pass(0),
      kind: 'lap',
      line: ring,
      lengthM: 28,
      knots: [
        { atM: 0, areaM2: 0 },
        { atM: 28, areaM2: 56 },
      ],
    };
    const [only] = vesselGround({ legs: [lap], marks: [], vessels }, 1, 2, null);
    const corners = [1, 9].flatMap((x) => [1, 7].map((y) => [[boxRing(x - 0.6, y - 0.6, x + 0.6, y + 0.6)]]));
    for (const corner of corners) {
      // the same at all four corners: rounded outside by less than a sixth of the corner's quarter
      expect(planeAreaOf(intersectionOf(corner, only?.parts ?? []))).toBeCloseTo(1.44, 1);
    }
  });
  it('never lays two vessels on the same ground, on a walk with laps', () => {
    const grounds = vesselGround(testWalk([{ zoneId: 'lawn', parts: box }], 1, 3), 1, 1, box);
    expect(grounds.length).toBe(3);
    grounds.forEach((one, i) => {
      for (const other of grounds.slice(i + 1))
        expect(planeAreaOf(intersectionOf(one.parts, other.parts))).toBeLessThan(1e-3);
    });
    const sum = grounds.reduce((total, { parts }) => total + planeAreaOf(parts), 0);
    expect(sum).toBeCloseTo(80, 1);
  });
});
