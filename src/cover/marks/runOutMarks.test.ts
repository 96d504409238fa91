import { describe, expect, it } from 'vitest';
import { intersectionOf, planeAreaOf, unionOf } from '../../measure/clip';
import type { PlaneRings, XY } from '../../measure/types';
import type { Leg, Vessel } from '../passTypes';
import { boxRing } from '../testGround';
import { closeMarks } from './closeMarks';
import { runOutMarks } from './runOutMarks';
import { shortVessels } from './shortVessels';
import { stretchesByVessel } from './stretchesByVessel';
import { joinWalks, sweepBox, testBottles, testLeg } from './testWalk';

const FRONT = { zoneId: 'front', x0: 0, y0: 0, widthM: 10, lengthM: 20, swathM: 2 };
const BACK = { zoneId: 'back', x0: 30, y0: 5, widthM: 7, lengthM: 12, swathM: 2 };
const TWO: readonly Leg[] = joinWalks([sweepBox(FRONT), sweepBox(BACK)]);
const ZONES = [
  { zoneId: 'front', areaM2: 200 },
  { zoneId: 'back', areaM2: 84 },
];

/** Ground that each group of lines does first with a swath of 2 m within boxes, by clipping; nothing here knows of knots. */
function clippedM2(groups: readonly (readonly (readonly XY[])[])[], boxes: readonly PlaneRings[]): number[] {
  let done: PlaneRings[] = [];
  return groups.map((lines) => {
    const before = planeAreaOf(done);
    const swaths = lines.map((line): PlaneRings => {
      const [[x, y0], [, y1]] = [line[0] as XY, line.at(-1) as XY];
      return [boxRing(x - 1, Math.min(y0, y1), x + 1, Math.max(y0, y1))];
    });
    done = unionOf([...done, ...intersectionOf(unionOf(swaths), boxes)]);
    return planeAreaOf(done) - before;
  });
}

const sumOf = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0);

describe('marks on passes over one lawn', () => {
  const legs = sweepBox(FRONT);
  const zones = [{ zoneId: 'front', areaM2: 200 }];

  it('stand where so much of the vessel is gone', () => {
    // 5 passes of 40 m²; a bottle does 160 m²: ¾ after one pass, ½ after two, ¼ after three, out after four
    const marks = runOutMarks(legs, zones, 1, testBottles(200, 160));
    expect(marks.map(({ number, left, doneM2, at }) => [number, left, doneM2, at])).toEqual([
      [1, 0.75, 40, [1, 20]],
      [1, 0.5, 80, [3, 0]],
      [1, 0.25, 120, [5, 20]],
      [1, 0, 160, [7, 0]],
      // of the second a quarter is used
      [2, 0.75, 200, [9, 20]],
    ]);
  });

  it('between passes: on the pass, so far along it', () => {
    const [first] = runOutMarks(legs, zones, 1, testBottles(200, 200)).filter(({ left }) => left === 0.75);
    // 50 m²: the first pass of 40 and 5 m of the second, which is walked back
    expect(first).toMatchObject({
      at: [3, 15],
      legIndex: 2,
      alongM: 5,
      zoneId: 'front',
      doneM2: 50,
      vessel: 0,
    });
  });

  it('an opened bottle begins lower: no mark above that, none where it begins', () => {
    const half = { unit: 'L', value: 0.5 } as const;
    const opened = testBottles(160, 160).map((bottle): Vessel => {
      return { ...bottle, start: half, taken: half, areaM2: 80 };
    });
    const marks = runOutMarks(legs, zones, 1, opened);
    expect(marks.map(({ left, doneM2 }) => [left, doneM2])).toEqual([
      [0.25, 40],
      [0, 80],
    ]);
  });

  it('the dose counts the ground its own way: along a slope the marks stand as far along', () => {
    const sloped = runOutMarks(legs, [{ zoneId: 'front', areaM2: 220 }], 1, testBottles(220, 176));
    expect(sloped.map(({ at }) => at)).toEqual(
      runOutMarks(legs, zones, 1, testBottles(200, 160)).map(({ at }) => at),
    );
  });

  it('two coats at half the rate: each counts half', () => {
    const coats = [...legs, ...sweepBox({ ...FRONT, coat: 2 })];
    const marks = runOutMarks(coats, zones, 2, testBottles(200, 100));
    // the first bottle does the first coat, the second the second
    const ends = marks.filter(({ left }) => left === 0);
    expect(ends.map(({ at, doneM2, legIndex }) => [at, doneM2, legIndex])).toEqual([
      [[9, 20], 100, 8],
      [[9, 20], 200, 17],
    ]);
    // common practice, no source: at half the rate a bottle goes twice as far
    expect(marks.find(({ left }) => left === 0.5)?.at).toEqual([5, 10]);
  });

  it('ground that is not walked has no marks; many small bottles have each theirs', () => {
    expect(runOutMarks(legs, zones, 1, testBottles(1000, 1000)).length).toBe(0);
    expect(runOutMarks(legs, zones, 1, testBottles(200, 0.5)).length).toBe(1600);
    expect(runOutMarks([], zones, 1, testBottles(200, 100))).toEqual([]);
    expect(runOutMarks(legs, zones, 1, [])).toEqual([]);
  });
});

describe('ground between marks', () => {
  const bottles = testBottles(284, 66);
  const marks = runOutMarks(TWO, ZONES, 1, bottles);
  const boxes = [[boxRing(0, 0, 10, 20)], [boxRing(30, 5, 37, 17)]];

  it('is what a bottle covers, by clipping the swaths', () => {
    const stretches = stretchesByVessel(TWO, marks, bottles.length);
    expect(stretches.map(({ vessel }) => vessel)).toEqual([0, 1, 2, 3, 4]);
    // the last pass of the back lawn is 1 m wide: its swath reaches over the pass before and beyond the lawn
    clippedM2(
      stretches.map(({ lines }) => lines),
      boxes,
    ).forEach((areaM2, vessel) => {
      expect(areaM2 / (bottles[vessel]?.areaM2 ?? 0)).toBeCloseTo(1, 6);
    });
  });

  it('a vessel that runs out on the way between zones does so at the end of the zone', () => {
    const ends = runOutMarks(TWO, ZONES, 1, testBottles(284, 200)).filter(({ left }) => left === 0);
    expect(ends.map(({ zoneId, at }) => [zoneId, at])).toEqual([['front', [9, 20]]]);
  });
});

describe('marks close together', () => {
  const legs = sweepBox(FRONT);
  const marksWith = (eachM2: number) =>
    runOutMarks(legs, [{ zoneId: 'front', areaM2: 200 }], 1, testBottles(200, eachM2));

  it('are told where they are nearer than 10 ft of walking', () => {
    // marks each 5 m of walking, then each 2.5 m (8.2 ft)
    expect(closeMarks(legs, marksWith(40), 'us')).toBeNull();
    const issue = closeMarks(legs, marksWith(20), 'us', { doseId: 'd-1' });
    expect(issue).toMatchObject({ code: 'marks-close', severity: 'note', place: { doseId: 'd-1' } });
    expect(issue?.message.replaceAll('\u00a0', ' ')).toBe(
      '39 of 40 run-out marks follow the one before within 10.0 ft of walking: there watch what is in hand, not the marks.',
    );
    expect(closeMarks([], [], 'us')).toBeNull();
  });
});

describe('stretches by vessel', () => {
  it('all is one where nothing runs out, turns and ways in none', () => {
    const [only, ...others] = stretchesByVessel(TWO, [], 0);
    expect(others).toEqual([]);
    expect(only?.lines).toEqual(TWO.filter(({ kind }) => kind === 'pass').map(({ line }) => line));
  });

  it('what is walked when the only vessel is used up is of none, and that is told', () => {
    const [half] = testBottles(200, 100);
    const vessels = half ? [half] : [];
    const legs = sweepBox(FRONT);
    const zones = [{ zoneId: 'front', areaM2: 200 }];
    const marks = runOutMarks(legs, zones, 1, vessels);
    const stretches = stretchesByVessel(legs, marks, vessels.length);
    expect(stretches.map(({ vessel }) => vessel)).toEqual([0]);
    const drawnM = sumOf(
      stretches.flatMap(({ lines }) => lines.map((line) => testLeg('pass', null, line).lengthM)),
    );
    expect(drawnM).toBeCloseTo(
      sumOf(legs.map(({ knots, lengthM }) => (knots.length > 0 ? lengthM : 0))) / 2,
      9,
    );
    const issue = shortVessels(vessels, 200, 'metric', { doseId: 'd-1' });
    expect(issue).toMatchObject({ code: 'vessels-short', severity: 'warning', place: { doseId: 'd-1' } });
    expect(issue?.message.replaceAll('\u00a0', ' ')).toContain('100 m² of 200 m²');
    expect(shortVessels(testBottles(200, 100), 200, 'metric')).toBeNull();
    expect(shortVessels([], 200, 'metric')).toBeNull();
  });

  it('a bent lap keeps its corners on both sides of a mark', () => {
    const line: XY[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const knots = [
      { atM: 0, areaM2: 0 },
      { atM: 30, areaM2: 60 },
    ];
    const lap = [testLeg('lap', 'front', line, knots)];
    const marks = runOutMarks(lap, [{ zoneId: 'front', areaM2: 60 }], 1, testBottles(60, 30));
    expect(stretchesByVessel(lap, marks, 2).map(({ lines }) => lines)).toEqual([
      [
        [
          [0, 0],
          [10, 0],
          [10, 5],
        ],
      ],
      [
        [
          [10, 5],
          [10, 10],
          [0, 10],
        ],
      ],
    ]);
  });
});
