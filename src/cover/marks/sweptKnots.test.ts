import { describe, expect, it } from 'vitest';
import { intersectionOf, planeAreaOf, unionOf } from '../../measure/clip';
import { PER_M } from '../../measure/clipPaths';
import type { PlaneRings, XY } from '../../measure/types';
import { swathOf } from '../passes/measurePasses';
import { planPasses } from '../passes/planPasses';
import type { Leg } from '../passTypes';
import { boxRing } from '../testGround';
import { runOutMarks } from './runOutMarks';
import { stretchesByVessel } from './stretchesByVessel';
import { sweptKnots } from './sweptKnots';
import { sweepBox, testBottles, testLeg } from './testWalk';
import { areaOfLeg } from './walkProgress';

const BOX = { zoneId: 'lawn', x0: 3, y0: -4, widthM: 10, lengthM: 20, swathM: 2 };
const LAWN: PlaneRings[] = [[boxRing(3, -4, 13, 16)]];
const areasOf = (legs: readonly Leg[]) => legs.filter(({ knots }) => knots.length > 0).map(areaOfLeg);
const knot = (areaM2: number, lengthM: number) => [
  { atM: 0, areaM2: 0 },
  { atM: lengthM, areaM2 },
];

describe('ground that swaths reach first', () => {
  it('passes side by side have each their own, growing evenly along them', () => {
    const legs = sweptKnots(sweepBox(BOX), [{ zoneId: 'lawn', parts: LAWN }], 2);
    for (const areaM2 of areasOf(legs)) expect(Math.abs(areaM2 - 40)).toBeLessThan(0.2);
    const sum = areasOf(legs).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(200, 9);
    for (const { atM, areaM2 } of legs[0]?.knots ?? []) expect(Math.abs(areaM2 - 2 * atM)).toBeLessThan(0.3);
    // turns stay as they are
    expect(legs[1]).toEqual(sweepBox(BOX)[1]);
  });

  it('a pass over ground that is done gains nothing, whatever was laid for it', () => {
    const line: XY[] = [
      [4, -4],
      [4, 16],
    ];
    const twice = [1, 2].map(() => testLeg('pass', 'lawn', line, knot(100, 20)));
    const [first, second] = areasOf(sweptKnots(twice, [{ zoneId: 'lawn', parts: LAWN }], 2));
    // what no swath reaches is spread over what does: the first stands for the whole lawn
    expect(first).toBeCloseTo(200, 9);
    expect(second).toBe(0);
    const coats = [twice[0] as Leg, { ...(twice[1] as Leg), coat: 2 as const }];
    expect(areasOf(sweptKnots(coats, [{ zoneId: 'lawn', parts: LAWN }], 2))).toEqual([
      expect.closeTo(200, 9),
      expect.closeTo(200, 9),
    ]);
  });

  it('holes are no ground, other zones and ways are left alone', () => {
    const parts = [[boxRing(3, -4, 13, 16), boxRing(5, 0, 7, 10).reverse()]];
    const other = testLeg(
      'pass',
      'bed',
      [
        [4, -4],
        [4, 16],
      ],
      knot(7, 20),
    );
    const legs = sweptKnots([...sweepBox(BOX), other], [{ zoneId: 'lawn', parts }], 2);
    expect(Math.abs((areasOf(legs)[1] ?? 0) - 20)).toBeLessThan(0.2);
    expect(legs.at(-1)).toEqual(other);
    // the hole shows along the pass: from x 5 to 7 it is walked from y 16 to -4, over the hole from 6 to 16 m
    const knots = legs[2]?.knots ?? [];
    const at = (m: number) => knots.find(({ atM }) => atM >= m)?.areaM2 ?? Number.NaN;
    expect(Math.abs(at(6) - 12)).toBeLessThan(0.3);
    expect(Math.abs(at(15.9) - 12)).toBeLessThan(0.3);
  });

  it('parts far from each other are one zone, each square metre as good as the other', () => {
    const far = sweepBox({ ...BOX, x0: 5000, widthM: 4, lengthM: 10 });
    const parts = [...LAWN, [boxRing(5000, -4, 5004, 6)]];
    const areas = areasOf(sweptKnots([...sweepBox(BOX), ...far], [{ zoneId: 'lawn', parts }], 2));
    expect(areas.length).toBe(7);
    areas.forEach((areaM2, i) => {
      expect(Math.abs(areaM2 - (i < 5 ? 40 : 20))).toBeLessThan(0.2);
    });
    expect(sweptKnots(far, [{ zoneId: 'lawn', parts: [] }], 2)).toEqual(far);
  });

  it('a closed lap turns round at its corners and where it begins', () => {
    const line: XY[] = [
      [4, -3],
      [12, -3],
      [12, 15],
      [4, 15],
      [4, -3],
    ];
    const [lap] = areasOf(
      sweptKnots(
        [
          testLeg('lap', 'lawn', line, knot(1, 52)),
          ...sweepBox({ ...BOX, x0: 5, y0: -2, widthM: 6, lengthM: 16 }),
        ],
        [{ zoneId: 'lawn', parts: LAWN }],
        2,
      ),
    );
    // 104 m² of band less four corners that are round outside: (4 - π) · 1 m² in all, spread over everything
    const roundM2 = 4 - Math.PI;
    expect(Math.abs((lap ?? 0) - ((104 - roundM2) * 200) / (200 - roundM2))).toBeLessThan(0.4);
  });
});

describe('real passes with laps and holes', () => {
  const parts: PlaneRings[] = [[boxRing(0, 0, 30, 30), boxRing(8, 8, 14, 16).reverse()]];
  const options = { spacingM: 1.8, swathM: 1.8, headerLaps: 1, headingDeg: null, lapsFirst: false };
  const legs = planPasses({ parts, keepOff: [] }, options, null, null).legs.map((leg) => ({
    ...leg,
    zoneId: 'lawn',
  }));
  const swept = sweptKnots(legs, [{ zoneId: 'lawn', parts }], 1.8);

  const wholeM2 = planeAreaOf(parts);
  /** Ground that each group of lines reaches first, by clipping their swaths; nothing here knows of points or knots. */
  const clippedM2 = (groups: readonly (readonly (readonly XY[])[])[]) => {
    let done: PlaneRings[] = [];
    const gains = groups.map((lines) => {
      const before = planeAreaOf(done);
      const swaths = lines.map(
        (line): PlaneRings =>
          swathOf({ line }, 1.8).map((path) => {
            const ring = path.map(({ x, y }): XY => [x / PER_M, y / PER_M]);
            return [...ring, ring[0] as XY];
          }),
      );
      done = unionOf([...done, ...intersectionOf(unionOf(swaths), parts)]);
      return planeAreaOf(done) - before;
    });
    // missed ground is spread: a share that the plan keeps under 0.5 %
    const scale = wholeM2 / planeAreaOf(done);
    expect(scale).toBeLessThan(1.006);
    return gains.map((gain) => gain * scale);
  };

  it('what legs gain is what clipping their swaths leaves of them, all along the walk', () => {
    const working = swept.filter(({ knots }) => knots.length > 0);
    const clipped = clippedM2(working.map(({ line }) => [line]));
    let [ours, theirs] = [0, 0];
    working.forEach((leg, i) => {
      ours += areaOfLeg(leg);
      theirs += clipped[i] ?? 0;
      expect(Math.abs(ours - theirs)).toBeLessThan(0.003 * wholeM2);
    });
  });

  it('ground between run-outs is what a bottle covers, within 0.5 %', () => {
    const bottles = testBottles(wholeM2, wholeM2 / 3.7);
    const marks = runOutMarks(swept, [{ zoneId: 'lawn', areaM2: wholeM2 }], 1, bottles);
    const clipped = clippedM2(stretchesByVessel(swept, marks, bottles.length).map(({ lines }) => lines));
    expect(clipped.length).toBe(4);
    clipped.forEach((areaM2, i) => {
      expect(Math.abs(areaM2 / (bottles[i]?.areaM2 ?? 0) - 1)).toBeLessThan(0.005);
    });
  });
});
