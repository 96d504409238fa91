import { describe, expect, it } from 'vitest';
import { PER_M, toPaths } from '../../measure/clipPaths';
import { areaOfPaths, booleanOp, ClipType, FillRule } from '../../measure/clipper';
import type { PlaneRings, XY } from '../../measure/types';
import { lengthOfLine } from './frame';
import { keepNear } from './keepNear';
import { swathOf } from './measurePasses';
import { prepareZone } from './prepareZone';
import { makeTouchUps } from './touchUps';
import { trimWorks } from './trimWorks';
import { makeWork, type Work } from './work';
import type { ZoneGround } from './zoneGround';

const box = (x: number, y: number, a: number, b: number): PlaneRings => [
  [
    [x, y],
    [x + a, y],
    [x + a, y + b],
    [x, y + b],
    [x, y],
  ],
];
const pass = (...line: XY[]): Work => makeWork('pass', line, [{ atM: lengthOfLine(line), areaM2: 1 }]);

function zoneOf(parts: PlaneRings[], keepOff: PlaneRings[], swathM: number): ZoneGround {
  const options = { spacingM: swathM, swathM, headerLaps: null, headingDeg: null };
  return prepareZone({ parts, keepOff }, options)?.zone as ZoneGround;
}

const missedM2 = (parts: PlaneRings[], works: readonly Work[], swathM: number): number =>
  areaOfPaths(
    booleanOp(
      ClipType.Difference,
      toPaths(parts),
      works.flatMap((work) => swathOf(work, swathM)),
      FillRule.NonZero,
    ),
  ) /
  PER_M ** 2;

describe('touch-ups', () => {
  it('cover the end that a pass leaves out, and no more than that', () => {
    const parts = [box(0, 0, 20, 2)];
    const works = [pass([0, 1], [16, 1])];
    const made = makeTouchUps(zoneOf(parts, [], 2))(works, 90);
    expect(missedM2(parts, works, 2)).toBeCloseTo(8, 6);
    expect(missedM2(parts, [...works, ...made], 2)).toBeLessThan(0.2);
    expect(made.reduce((sum, work) => sum + work.lengthM, 0)).toBeLessThan(6);
    // what they take on is what was missed, but for an end that is not worth the walk
    const takenM2 = made.reduce((sum, work) => sum + (work.knots.at(-1)?.areaM2 ?? 0), 0);
    expect(takenM2).toBeGreaterThan(7);
    expect(takenM2).toBeLessThan(8.2);
  });

  it('beside what is kept off stay half a swath away and cover up to it', () => {
    const parts = [box(0, 0, 20, 4)];
    const keepOff = [box(-10, -5, 40, 5)];
    const works = [pass([0, 3], [20, 3])];
    const made = makeTouchUps(zoneOf(parts, keepOff, 2))(works, 90);
    expect(Math.min(...made.flatMap((work) => work.line.map((p) => p[1])))).toBeGreaterThanOrEqual(1);
    expect(missedM2(parts, [...works, ...made], 2)).toBeLessThan(0.01 * 80);
  });

  it('are none where all is covered', () => {
    expect(makeTouchUps(zoneOf([box(0, 0, 20, 2)], [], 2))([pass([0, 1], [20, 1])], 90)).toEqual([]);
  });
});

describe('trimming', () => {
  it('takes one of two passes on the same ground, and the end of one that lies on another', () => {
    const parts = [box(0, 0, 20, 4)];
    const low = pass([0, 1], [20, 1]);
    const high = pass([0, 3], [20, 3]);
    const same = pass([0, 1], [20, 1]);
    const zone = zoneOf(parts, [], 2);
    const cut = trimWorks(zone, [low, high, same], 0);
    expect([...cut.values()]).toEqual([[]]);
    const half = pass([0, 3], [9, 3]);
    const ends = trimWorks(zone, [low, half, pass([5, 3], [20, 3])], 0);
    expect(ends.size).toBe(1);
    const [shorter] = [...ends.values()][0] as Work[];
    const [was] = [...ends.keys()];
    expect((was as Work).lengthM - (shorter as Work).lengthM).toBeCloseTo(4, 0);
  });
});

describe('passes near the ground', () => {
  it('end where their swath reaches more than half its width beyond it', () => {
    const { walkable } = zoneOf([box(0, 0, 20, 4)], [], 2);
    const inside = pass([0, 1], [20, 1]);
    expect(keepNear(inside, walkable, 2)).toEqual([inside]);
    const [cut, ...others] = keepNear(pass([0, 1], [26, 1]), walkable, 2);
    expect(others).toEqual([]);
    expect(cut?.line.at(-1)?.[0]).toBeGreaterThan(20.8);
    expect(cut?.line.at(-1)?.[0]).toBeLessThanOrEqual(21.01);
  });
});
