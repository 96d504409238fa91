import { describe, expect, it } from 'vitest';
import type { DoseCoverage, Vessel } from '../passTypes';
import { levelOf, momentAt, secondAtWalked } from './momentAt';
import { runOutMarks } from './runOutMarks';
import { secondsOfWalks } from './secondsOfWalks';
import { joinWalks, sweepBox, testBottles, testCoverage } from './testWalk';
import { REFILL_S, walkTimeline } from './walkTimeline';

const PACE = { speedMPerS: 1, shutSpeedMPerS: 2, turnS: 3 };
const BOX = { zoneId: 'front', x0: 0, y0: 0, widthM: 4, lengthM: 20, swathM: 2 };
const ZONES = [
  { zoneId: 'front', areaM2: 80 },
  { zoneId: 'back', areaM2: 40 },
];
const LEGS = joinWalks([sweepBox(BOX), sweepBox({ ...BOX, zoneId: 'back', x0: 13, widthM: 2 })]);
const walkWith = (vessels: readonly Vessel[]) =>
  walkTimeline(testCoverage(LEGS, vessels, runOutMarks(LEGS, ZONES, 1, vessels)), ZONES, PACE, 2);

describe('the clock of a walk', () => {
  it('passes at the speed of the pace, a turn its way and what it loses, ways shut, a stand for the next bottle', () => {
    // passes 3 × 20 m at 1 m/s; one turn of 2 m at 2 m/s and 3 s; from [3, 0] to [14, 0] 11 m at 2 m/s
    const { workingS, turnS, carryS, refillS, totalS, totalM } = walkWith(testBottles(120, 60));
    expect([workingS, turnS, carryS, refillS]).toEqual([60, 4, 5.5, REFILL_S.container]);
    expect(totalS).toBe(60 + 4 + 5.5 + 30);
    expect(totalM).toBe(73);
  });

  it('the times of zones, refills in them, and the ways between sum to the whole', () => {
    const timeline = walkWith(testBottles(120, 60));
    const walks = [
      { zoneId: 'front', coat: 1 },
      { zoneId: 'back', coat: 1 },
    ] as unknown as DoseCoverage['walks'];
    const seconds = secondsOfWalks({ ...timeline, dose: { ...timeline.dose, walks } });
    // two passes, a turn of 4 s and a bottle hung on in 30 s; one pass
    expect(seconds).toEqual([20 + 4 + 20 + 30, 20]);
    expect(94 + timeline.carryS).toBe(timeline.totalS);
  });

  it('a tank load takes longer to make ready; the last vessel is followed by none', () => {
    expect(walkWith(testBottles(120, 40, 'tank-load')).refillS).toBe(2 * REFILL_S['tank-load']);
    expect(walkWith(testBottles(120, 120)).refillS).toBe(0);
    expect(walkWith([]).totalS).toBe(69.5);
  });

  it('passes that lie closer than the pace is for are walked faster: so much time on a zone as its amount takes', () => {
    // the narrow zone is 2 m wide; a pass of a swath of 4 m lays twice its ground, so it is walked twice as fast
    const zones = [ZONES[0], { zoneId: 'back', areaM2: 40 }] as const;
    const wide = walkTimeline(testCoverage(LEGS, [], []), zones as never, PACE, 4);
    expect(wide.speeds).toEqual([
      { zoneId: 'front', coat: 1, workingM: 40, factor: 2 },
      { zoneId: 'back', coat: 1, workingM: 20, factor: 2 },
    ]);
    // area / (speed · spacing) for both: 80 and 40 m² at 1 m/s and 4 m
    expect(wide.workingS).toBeCloseTo(120 / 4, 9);
  });

  it('without a speed a usual one stands in: 3 mph (common practice, no source)', () => {
    const coverage = testCoverage(LEGS, [], []);
    const { workingS } = walkTimeline(coverage, ZONES, { ...PACE, speedMPerS: null }, 2);
    expect(workingS).toBeCloseTo(60 / ((3 * 88 * 0.3048) / 60), 9);
    // 1 mph is 88 ft a minute (turfgrass professional maths worksheet)
  });
});

describe('a moment of the walk', () => {
  const timeline = walkWith(testBottles(120, 60));

  it('on the first pass: half of it walked, a third of the bottle gone', () => {
    expect(momentAt(timeline, 10)).toMatchObject({
      at: [1, 10],
      headingDeg: 0,
      legIndex: 0,
      walkedM: 10,
      vessel: 0,
      level: expect.closeTo(1 - 20 / 60, 9),
      zoneId: 'front',
      doneM2: 20,
      isRefilling: false,
      isWorking: true,
    });
  });

  it('in the turn nothing goes out; the way back heads south', () => {
    expect(momentAt(timeline, 22)).toMatchObject({
      at: [2, 20],
      headingDeg: 90,
      doneM2: 40,
      isWorking: false,
    });
    expect(momentAt(timeline, 30)).toMatchObject({ at: [3, 14], headingDeg: 180, doneM2: 52 });
  });

  it('where the bottle runs out the walker stands, and the next one is made ready', () => {
    // 60 m²: the first pass and 10 m of the second, after 20 + 4 + 10 s
    expect(momentAt(timeline, 34)).toMatchObject({ at: [3, 10], vessel: 0, level: 0, doneM2: 60 });
    expect(momentAt(timeline, 34 + 15)).toMatchObject({
      at: [3, 10],
      vessel: 1,
      level: 0.5,
      doneM2: 60,
      isRefilling: true,
      isWorking: false,
    });
    expect(momentAt(timeline, 34 + 30 + 5)).toMatchObject({ at: [3, 5], vessel: 1, isRefilling: false });
  });

  it('before the start and after the end it stands there', () => {
    expect(momentAt(timeline, -5)).toMatchObject({ at: [1, 0], walkedM: 0, level: 1 });
    expect(momentAt(timeline, 1e9)).toMatchObject({
      at: [14, 20],
      walkedM: 73,
      vessel: 1,
      level: 0,
      doneM2: 120,
    });
    expect(momentAt(timeline, Number.NaN)).toMatchObject({ walkedM: 0 });
    expect(momentAt(walkTimeline(testCoverage([], [], []), [], PACE, 2), 0)).toBeNull();
  });

  it('once the only bottle is used up there is none in hand, and no stand for another', () => {
    const only = walkWith(testBottles(120, 60).slice(0, 1));
    expect(only.refillS).toBe(0);
    // 60 of 120 m² are done after 30 m: 20 + 4 + 10 s
    expect(momentAt(only, 33)).toMatchObject({ vessel: 0 });
    expect(momentAt(only, 35)).toMatchObject({ vessel: null, level: null });
  });

  it('a walk without vessels has no level', () => {
    expect(momentAt(walkWith([]), 10)).toMatchObject({ vessel: null, level: null, doneM2: 20 });
  });

  it('the second at which so much is walked', () => {
    expect(secondAtWalked(timeline, -1)).toBe(0);
    expect(secondAtWalked(timeline, 10)).toBe(10);
    expect(secondAtWalked(timeline, 21)).toBe(22);
    // at the place of the stand: when it is reached; beyond it: after the stand
    expect(secondAtWalked(timeline, 32)).toBe(34);
    expect(secondAtWalked(timeline, 33)).toBe(65);
    expect(secondAtWalked(timeline, 1e9)).toBe(timeline.totalS);
  });
});

describe('the level of a vessel', () => {
  // common practice, no source: 1,000 sq ft done with a bottle for 3,200 leave about two thirds of it (31.25 % gone)
  it('1,000 of 3,200', () => {
    const bottles = testBottles(5000, 3200);
    expect(1 - levelOf(bottles, 0, 1000)).toBeCloseTo(0.3125, 12);
    expect(levelOf(bottles, 1, 1000)).toBe(1);
    expect(levelOf(bottles, 0, 4000)).toBe(0);
    expect(levelOf(bottles, 1, 5000)).toBeCloseTo(1 - 1800 / 3200, 12);
    expect(levelOf(bottles, 2, 5000)).toBe(0);
  });
});
