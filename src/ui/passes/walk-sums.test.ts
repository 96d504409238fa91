import { expect, it } from 'vitest';
import type { DoseCoverage, Leg, ZoneWalk } from '../../cover/passTypes';
import { sumWalks } from './walk-sums';

const walk = (zoneId: string, coat: 1 | 2, missedM2: number, lengthM: number): ZoneWalk =>
  ({
    zoneId,
    coat,
    missedM2,
    areaM2: 100,
    lengthM,
    leastM: lengthM,
    passes: 1,
    turns: 1,
    doubleM2: 0,
    outsideM2: 0,
    outsideM: 0,
  }) as unknown as ZoneWalk;
const leg = (kind: Leg['kind'], zoneId: string | null, lengthM: number) => ({ kind, zoneId, lengthM }) as Leg;
const legs = [
  leg('lap', 'a', 40),
  leg('carry', 'a', 6),
  leg('pass', 'a', 30),
  leg('turn', 'a', 4),
  leg('carry', null, 12),
  leg('pass', 'b', 20),
];
const dose = {
  walks: [walk('a', 1, 1, 40), walk('a', 2, 3, 40), walk('b', 1, 2.5, 20)],
  legs,
  lengthM: 112,
  workingM: 90,
} as unknown as DoseCoverage;

it('names all parts of a walk, which sum to the whole', () => {
  const { parts } = sumWalks(dose);
  expect(parts).toEqual({ workingM: 90, turnM: 4, withinM: 6, betweenM: 12 });
});

it('tells where most is missed by the whole zone, over both its coats', () => {
  // 4 of 200 on a, 2.5 of 100 on b
  expect(sumWalks(dose).mostMissed).toEqual({ zoneId: 'a', share: 0.02 });
  expect(sumWalks(dose).missed).toBeCloseTo(6.5 / 300, 12);
});
