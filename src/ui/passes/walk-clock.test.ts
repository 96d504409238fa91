import { describe, expect, it } from 'vitest';
import { momentAt } from '../../cover/marks/momentAt';
import type { CoverDose, DoseCoverage, Leg, LegKind, ZoneWalk } from '../../cover/passTypes';
import type { XY } from '../../measure/types';
import type { DosePace } from '../../pace/types';
import type { DoseFigures } from '../../plan/types';
import { newDose, newEquipment, newProduct } from '../../yard/defaults';
import type { DoseInHand } from './dose-in-hand';
import { momentWords, nextMarkWords, vesselLevelWords } from './moment-words';
import { clockOf } from './walk-clock';
import { sumWalks } from './walk-sums';

/** 20 m passes 2 m apart at 1 m/s: each 20 s and 40 m²; turns of 2 m at 2 m/s and 3 s more: 4 s. */
const PACE = { speedMPerS: 1, shutSpeedMPerS: 2, turnS: 3 } as DosePace;

function leg(kind: LegKind, zoneId: string | null, from: XY, to: XY): Leg {
  const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const knots =
    kind === 'pass'
      ? [
          { atM: 0, areaM2: 0 },
          { atM: lengthM, areaM2: 2 * lengthM },
        ]
      : [];
  return { kind, zoneId, coat: 1, line: [from, to], lengthM, knots };
}

const LEGS = [
  leg('pass', 'a', [0, 0], [0, 20]),
  leg('turn', 'a', [0, 20], [2, 20]),
  leg('pass', 'a', [2, 20], [2, 0]),
  leg('carry', null, [2, 0], [12, 0]),
  leg('pass', 'b', [12, 0], [12, 20]),
];

function walkOf(zoneId: string, passes: number, lengthM: number): ZoneWalk {
  const areaM2 = 40 * passes;
  return {
    zoneId,
    coat: 1,
    headingDeg: 0,
    pattern: 'straight',
    cells: 1,
    passes,
    turns: passes - 1,
    lengthM,
    workingM: 20 * passes,
    leastM: areaM2 / 2,
    areaM2,
    missedM2: zoneId === 'b' ? 1.2 : 0,
    doubleM2: 0.6,
    outsideM2: 0,
    outsideM: zoneId === 'b' ? 0.4 : 0.1,
    issues: [],
  };
}

function handOf(): DoseInHand {
  const amount = { unit: 'L', value: 3 } as const;
  const vessel = { kind: 'container', full: { unit: 'L', value: 2 }, packId: null } as const;
  const dose: DoseCoverage = {
    doseId: 'dose-1',
    walks: [walkOf('a', 2, 42), walkOf('b', 1, 20)],
    legs: LEGS,
    vessels: [
      { ...vessel, number: 1, start: { unit: 'L', value: 2 }, taken: { unit: 'L', value: 2 }, areaM2: 80 },
      { ...vessel, number: 2, start: { unit: 'L', value: 2 }, taken: { unit: 'L', value: 1 }, areaM2: 40 },
    ],
    marks: [
      {
        vessel: 0,
        kind: 'container',
        number: 1,
        left: 0.5,
        at: [0, 20],
        legIndex: 0,
        alongM: 20,
        zoneId: 'a',
        doneM2: 40,
      },
      {
        vessel: 0,
        kind: 'container',
        number: 1,
        left: 0,
        at: [2, 0],
        legIndex: 2,
        alongM: 20,
        zoneId: 'a',
        doneM2: 80,
      },
      {
        vessel: 1,
        kind: 'container',
        number: 2,
        left: 0.75,
        at: [12, 10],
        legIndex: 4,
        alongM: 10,
        zoneId: 'b',
        doneM2: 100,
      },
    ],
    lengthM: 72,
    workingM: 60,
    overWetM: 0,
    hose: null,
    issues: [],
  };
  const zones = [
    { zoneId: 'a', name: 'Front lawn', areaM2: 80 },
    { zoneId: 'b', name: 'Side strip', areaM2: 40 },
  ];
  return {
    figures: {
      product: newProduct('p', { form: 'liquid-concentrate' }),
      amount,
      dose: newDose('dose-1', 'p'),
    } as unknown as DoseFigures,
    equipment: { equipment: newEquipment('e', 'hose-end', { swathM: 2 }), isAssumed: false },
    walk: { dose, from: { zones, coats: 1 } as unknown as CoverDose, hose: null },
    pace: PACE,
  } as DoseInHand;
}

describe('the clock of the walk in hand', () => {
  it('counts zones with their turns, and stands still at beginnings, marks and the end', () => {
    const hand = handOf();
    const clock = clockOf(hand);
    // 20 + 4 + 20, a bottle changed in 30 s, 10 m at 2 m/s, 20: worked out by hand
    expect(clock?.totalS).toBeCloseTo(99, 9);
    // the bottle is changed at the end of the first zone, and counts there as on paper
    expect(clock?.seconds).toEqual([expect.closeTo(74, 9), expect.closeTo(20, 9)]);
    expect(clock?.markSeconds.map((s) => Math.round(s))).toEqual([20, 44, 89]);
    expect(clock?.stops.map((s) => Math.round(s))).toEqual([0, 20, 44, 79, 89, 99]);
    expect(clockOf(hand)).toBe(clock);
  });

  it('has none without a walk', () => {
    expect(clockOf({ ...handOf(), walk: null })).toBeNull();
  });

  it('tells where the walker is and what is left', () => {
    const hand = handOf();
    const clock = clockOf(hand);
    if (!clock) throw new Error('no clock');
    const at = (second: number) => {
      const moment = momentAt(clock.timeline, second);
      return moment && [vesselLevelWords(hand, moment, 'metric'), momentWords(hand, moment)];
    };
    expect(at(10)).toEqual(['Bottle 1 of 2: 1.5\u00a0L, 75\u00a0% full', 'Front lawn, pass 1 of 2']);
    expect(nextMarkWords(hand, clock, 10)).toBe('bottle 1 at one half in 10\u00a0s');
    expect(nextMarkWords(hand, clock, 95)).toBeNull();
    expect(at(22)?.[1]).toBe('Front lawn, turning');
    expect(at(60)?.[1]).toBe('Standing: bottle 2 is made ready');
    expect(at(77)?.[1]).toBe('On the way to Side strip, shut');
    expect(at(99)).toEqual(['Bottle 2 of 2: 1\u00a0L, 50\u00a0% full', 'Side strip, pass 1 of 1']);
  });
});

describe('the walk in figures', () => {
  it('sums zones; shares are of all the ground', () => {
    const sums = sumWalks(handOf().walk?.dose as DoseCoverage);
    expect(sums).toMatchObject({ passes: 3, turns: 1, onGroundM: 62, leastM: 60 });
    expect(sums.parts.betweenM).toBe(10);
    expect(sums.missed).toBeCloseTo(0.01, 12);
    expect(sums.double).toBeCloseTo(0.01, 12);
    expect(sums.outsideM).toBe(0.4);
    // 1.2 of its 40 m²
    expect(sums.mostMissed).toEqual({ zoneId: 'b', share: expect.closeTo(0.03, 12) });
    expect(sums.mostDouble?.zoneId).toBe('a');
    expect(sums.farthest?.zoneId).toBe('b');
    const dose = handOf().walk?.dose as DoseCoverage;
    expect(sumWalks({ ...dose, walks: dose.walks.slice(1) }).mostMissed).toBeNull();
  });
});
