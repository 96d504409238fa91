import { describe, expect, it } from 'vitest';
import type { XY } from '../../measure/types';
import type { DoseCoverage } from '../passTypes';
import { coverDose } from './coverDose';
import { fakePasses, partOf } from './fakePasses';
import { testDose, testSite, testZone } from './testDoses';

const carryOf = ({ legs }: DoseCoverage) => legs.filter(({ kind }) => kind === 'carry');
const orderOf = ({ walks }: DoseCoverage) => walks.map(({ zoneId, coat }) => `${zoneId}${coat}`).join(' ');

describe('coverDose', () => {
  it('walks zones in the order of a short walk from start to end, all joined', () => {
    const zones = [
      testZone('c', [[40, 0, 44, 10]]),
      testZone('a', [[0, 0, 4, 10]]),
      testZone('b', [[20, 0, 24, 10]]),
    ];
    const start: XY = [-5, 0];
    const end: XY = [60, 0];
    const made = coverDose(testDose(zones), testSite({ start, end }), fakePasses);
    expect(orderOf(made)).toBe('a1 b1 c1');
    expect(made.legs[0]?.line[0]).toEqual(start);
    expect(made.legs.at(-1)?.line.at(-1)).toEqual(end);
    made.legs.slice(1).forEach((leg, i) => {
      expect(leg.line[0]).toEqual(made.legs[i]?.line.at(-1));
    });
    expect(made.lengthM).toBeCloseTo(
      made.legs.reduce((sum, { lengthM }) => sum + lengthM, 0),
      9,
    );
    // four passes of 10 m in each of three zones
    expect(made.workingM).toBeCloseTo(120, 9);
  });

  it('walks the pieces of a zone that lie apart one by one, round the house between them', () => {
    const zone = testZone('lawn', [
      [0, 0, 4, 10],
      [30, 0, 34, 10],
    ]);
    const house = partOf([10, -3, 24, 13]);
    const made = coverDose(testDose([zone]), testSite({ obstacles: [house] }), fakePasses);
    expect(orderOf(made)).toBe('lawn1');
    const [way] = carryOf(made);
    expect(way?.line.length).toBeGreaterThan(2);
    expect(way?.line.slice(1, -1).every(([x, y]) => !(x > 10 && x < 24 && y > -3 && y < 13))).toBe(true);
    expect(made.issues).toEqual([]);
  });

  it('walks a bed that the dose treats, and round one that it does not', () => {
    const bed = partOf([10, 0, 20, 10]);
    const zones = [testZone('left', [[0, 0, 4, 10]]), testZone('right', [[26, 0, 30, 10]])];
    const site = testSite({ obstacles: [bed] });
    const round = coverDose(testDose(zones), site, fakePasses);
    expect(carryOf(round)[0]?.line.length).toBeGreaterThan(2);
    const over = coverDose(testDose([...zones, testZone('bed', [[10, 0, 20, 10]])]), site, fakePasses);
    expect(orderOf(over)).toMatch(/left1 bed1 right1|right1 bed1 left1/);
    expect(over.issues).toEqual([]);
  });

  it('puts dry coats one after the other, and wet ones in two rounds, the second across the first', () => {
    const zones = [testZone('a', [[0, 0, 4, 10]]), testZone('b', [[8, 0, 12, 10]])];
    const dry = coverDose(testDose(zones, { coats: 2 }), testSite({ start: [-1, 0] }), fakePasses);
    expect(orderOf(dry)).toBe('a1 a2 b1 b2');
    const wet = coverDose(testDose(zones, { coats: 2, staysWet: true }), testSite(), fakePasses);
    expect(orderOf(wet)).toMatch(/^(a1 b1|b1 a1) (a2 b2|b2 a2)$/);
    expect(wet.issues.map(({ code }) => code)).toEqual(['two-wet-coats']);
    for (const { walks } of [dry, wet])
      for (const { coat, headingDeg } of walks) expect(headingDeg).toBe(coat === 1 ? 0 : 90);
  });

  it('goes round ground that is wet where the detour is small, and counts what it walks over it', () => {
    // From the gate to the far zone the straight way lies over the near one.
    const zones = [testZone('near', [[0, 0, 20, 6]]), testZone('far', [[8, 20, 12, 26]])];
    const dose = testDose(zones, { staysWet: true });
    const end: XY = [10, -10];
    const made = coverDose(dose, testSite({ start: [10, -10], end }), fakePasses);
    // done last of all or gone round: home never leads over wet grass for more than the step off the swath
    expect(made.overWetM).toBeLessThan(1.1);
    const dry = coverDose({ ...dose, staysWet: false }, testSite({ start: [10, -10], end }), fakePasses);
    expect(dry.overWetM).toBe(0);
    expect(dry.lengthM).toBeLessThanOrEqual(made.lengthM + 1e-9);
  });

  it('goes over a strip only where nothing leads round, and says so', () => {
    const strip: [number, number, number, number] = [6, -50, 8, 50];
    const zones = [testZone('a', [[0, 0, 4, 10]], [strip]), testZone('b', [[10, 0, 14, 10]], [strip])];
    const round = coverDose(testDose(zones), testSite(), fakePasses);
    expect(carryOf(round)[0]?.lengthM).toBeGreaterThan(80);
    expect(round.issues).toEqual([]);
    const walls = [partOf([5, 48, 9, 90]), partOf([5, -90, 9, -48]), partOf([-50, 85, 50, 90])];
    const shut = [
      ...walls,
      partOf([-50, -90, 50, -85]),
      partOf([-50, -90, -45, 90]),
      partOf([45, -90, 50, 90]),
    ];
    const over = coverDose(testDose(zones), testSite({ obstacles: shut }), fakePasses);
    expect(over.issues.map(({ code }) => code)).toEqual(['way-over-strip']);
    expect(carryOf(over)[0]?.lengthM).toBeLessThan(20);
  });

  it('stays on the property where it can, over a strip rather than beside it', () => {
    // the house leaves 2 m on the property on its far side; the near way round is the neighbour's
    const zones = [testZone('a', [[2, 0, 6, 10]]), testZone('b', [[30, 0, 34, 10]])];
    const house = partOf([10, 1, 24, 28]);
    const property = [partOf([0, 0, 40, 30])];
    const free = coverDose(testDose(zones), testSite({ obstacles: [house] }), fakePasses);
    expect(carryOf(free)[0]?.line.some(([, y]) => y < 1)).toBe(true);
    const site = testSite({ obstacles: [partOf([10, -1, 24, 28])], property });
    const kept = coverDose(testDose(zones), site, fakePasses);
    expect(carryOf(kept)[0]?.line.some(([, y]) => y > 28)).toBe(true);
    expect(kept.issues).toEqual([]);
    const zonesByStrip = zones.map((zone) => ({ ...zone, keepOff: [partOf([12, 27, 20, 40])] }));
    const over = coverDose(testDose(zonesByStrip), site, fakePasses);
    expect(over.issues.map(({ code }) => code)).toEqual(['way-over-strip']);
    const shut = { ...site, obstacles: [partOf([10, -1, 24, 31])] };
    const off = coverDose(testDose(zones), shut, fakePasses);
    expect(off.issues.map(({ code }) => code)).toEqual(['way-off-property']);
  });

  it('goes straight through a wall where that is all there is, and warns', () => {
    const court = [[...partOf([20, -5, 40, 15]), [...(partOf([22, -3, 38, 13])[0] ?? [])].reverse()]];
    const zones = [testZone('out', [[0, 0, 4, 10]]), testZone('in', [[26, 0, 30, 10]])];
    const made = coverDose(testDose(zones), testSite({ obstacles: court }), fakePasses);
    expect(made.issues.map(({ code, severity }) => [code, severity])).toEqual([
      ['no-way-between', 'warning'],
    ]);
    expect(carryOf(made)[0]?.line).toHaveLength(2);
  });

  it('leaves out a zone without a place, and one that no pass has room on, and tells of both', () => {
    const nowhere = { ...testZone('back field', []), areaM2: 100 };
    const narrow = testZone('verge', [[0, 0, 0.1, 3]]);
    const noRoom: typeof fakePasses = (ground, ...rest) => {
      const made = fakePasses(ground, ...rest);
      return made.areaM2 < 1 ? { ...made, legs: [], lengthM: 0, workingM: 0, missedM2: made.areaM2 } : made;
    };
    const zones = [testZone('a', [[5, 0, 9, 10]]), nowhere, narrow];
    const made = coverDose(testDose(zones), testSite(), noRoom);
    expect(made.issues.map(({ code, place }) => [code, place.zoneId])).toEqual([
      ['zone-not-placed', 'back field'],
      ['zone-not-walked', 'verge'],
    ]);
    expect(made.walks.find(({ zoneId }) => zoneId === 'verge')?.missedM2).toBeCloseTo(0.3, 9);
  });

  it('marks where vessels run out along the walk', () => {
    const vessel = {
      kind: 'container',
      full: { value: 2, unit: 'kg' },
      start: { value: 2, unit: 'kg' },
      taken: { value: 2, unit: 'kg' },
      areaM2: 40,
      packId: 'pack',
    } as const;
    const vessels = [1, 2].map((number) => ({ ...vessel, number }));
    const zones = [testZone('a', [[0, 0, 4, 10]]), testZone('b', [[8, 0, 12, 10]])];
    const { marks, legs } = coverDose(testDose(zones, { vessels }), testSite({ start: [-1, 0] }), fakePasses);
    expect(marks.map(({ number, left, doneM2 }) => [number, left, doneM2])).toEqual(
      [1, 2].flatMap((number) => [0.75, 0.5, 0.25, 0].map((left) => [number, left, 40 * (number - left)])),
    );
    for (const { legIndex, zoneId } of marks) expect(legs[legIndex]?.zoneId).toBe(zoneId);
  });

  it('lays nothing where there is nothing', () => {
    const made = coverDose(testDose([]), testSite({ start: [0, 0], end: [1, 1] }), fakePasses);
    expect(made.legs).toEqual([]);
    expect(made.lengthM).toBe(0);
  });
});

describe('the hose of a dose', () => {
  const zone = testZone('lawn', [[0, 0, 4, 40]]);
  const dose = testDose([zone], { byHose: true, staysWet: true });

  it('must reach the farthest hand', () => {
    const site = testSite({ hose: { bibs: [[0.5, 0]], lengthM: 50 } });
    const made = coverDose(dose, site, fakePasses);
    // passes end at x = 0.5 … 3.5, y = 40
    expect(made.hose?.farthestM).toBeCloseTo(Math.hypot(3, 40), 1);
    expect(made.hose?.beyondM2).toBe(0);
    expect(made.issues).toEqual([]);
  });

  it('is told to be too short, with the ground beyond it', () => {
    const site = testSite({ hose: { bibs: [[2, 0]], lengthM: 30 } });
    const made = coverDose(dose, site, fakePasses);
    // four passes, each beyond a circle of 30 m round the bib
    const beyond = [0.5, 1.5, 2.5, 3.5].reduce((sum, x) => sum + 40 - Math.sqrt(900 - (x - 2) ** 2), 0);
    expect(made.hose?.beyondM2).toBeCloseTo(beyond, 0);
    expect(made.hose?.beyond.map(({ zoneId }) => zoneId)).toEqual(['lawn']);
    expect(made.hose?.beyond[0]?.areaM2).toBe(made.hose?.beyondM2);
    expect(made.issues.map(({ code }) => code)).toEqual(['hose-too-short']);
    expect(made.issues[0]?.message).toContain('30');
  });

  it('is laid round a house', () => {
    const site = testSite({
      obstacles: [partOf([-90, -12, 5, -2])],
      hose: { bibs: [[-20, -12.5]], lengthM: 200 },
    });
    const made = coverDose(dose, site, fakePasses);
    const least = Math.hypot(25, 0.5) + 10 + Math.hypot(4.5, 42);
    expect(made.hose?.farthestM).toBeGreaterThan(least);
    expect(made.hose?.farthestM).toBeLessThan(least + 1);
  });

  it('is no matter to a dose that goes out without it', () => {
    const site = testSite({ hose: { bibs: [[0, 0]], lengthM: 1 } });
    expect(coverDose({ ...dose, byHose: false }, site, fakePasses).hose).toBeNull();
  });
});

describe('pieces of ground', () => {
  it('tells of tiny pieces that are cut off, and walks past them; a small zone by itself is walked', () => {
    // at 1 m between passes: 0.25 m² beside 40 m², and a bed of 0.25 m²
    const zones = [
      testZone('lawn', [
        [0, 0, 4, 10],
        [6, 20, 6.5, 20.5],
      ]),
      testZone('bed', [[8, 0, 8.5, 0.5]]),
    ];
    const made = coverDose(testDose(zones), testSite({ start: [0, 0] }), fakePasses);
    expect(made.walks.map(({ zoneId }) => zoneId).toSorted()).toEqual(['bed', 'lawn']);
    expect(made.legs.every(({ line }) => line.every(([, y]) => y <= 10))).toBe(true);
    const [lawn] = made.walks.filter(({ zoneId }) => zoneId === 'lawn');
    expect(lawn?.areaM2).toBeCloseTo(40.25, 9);
    expect(lawn?.missedM2).toBeCloseTo(0.25, 9);
    expect(made.issues.map(({ code, place }) => [code, place.zoneId])).toEqual([
      ['pieces-not-walked', 'lawn'],
    ]);
    expect(made.issues[0]?.message).toMatch(
      /^A small piece of “lawn” \(0\.25.m²\), cut off from the rest, is left out/,
    );
  });
});

describe('laps round and round of what stays wet', () => {
  it('are walked from the middle outwards, so that the way out is dry', () => {
    const ring = (by: number): XY[] => [
      [by, by],
      [10 - by, by],
      [10 - by, 10 - by],
      [by, 10 - by],
      [by, by],
    ];
    const inwards: typeof fakePasses = (ground, options, ...rest) => {
      const legs = [0.5, 1.5, 2.5, 3.5, 4.5].map((by) => ({
        kind: 'lap' as const,
        zoneId: null,
        coat: 1 as const,
        line: ring(by),
        lengthM: 4 * (10 - 2 * by),
        knots: [
          { atM: 0, areaM2: 0 },
          { atM: 4 * (10 - 2 * by), areaM2: 4 * (10 - 2 * by) },
        ],
      }));
      return {
        ...fakePasses(ground, options, ...rest),
        pattern: 'round',
        headingDeg: null,
        legs,
        lengthM: 100,
      };
    };
    const zones = [testZone('lawn', [[0, 0, 10, 10]])];
    const site = testSite({ start: [-5, 0], end: [-5, 0] });
    const wet = coverDose(testDose(zones, { staysWet: true }), site, inwards);
    const laps = wet.legs.filter(({ kind }) => kind === 'lap');
    expect(laps.map(({ lengthM }) => Math.round(lengthM))).toEqual([4, 12, 20, 28, 36]);
    // a step off the outermost swath, and from lap to lap
    expect(wet.overWetM).toBeLessThan(4);
    const dry = coverDose(testDose(zones), site, inwards);
    expect(dry.legs.find(({ kind }) => kind === 'lap')?.lengthM).toBe(36);
  });
});
