import { describe, expect, it } from 'vitest';
import type { PlaneRings, XY } from '../../measure/types';
import type { PassOptions, ZonePasses } from '../passTypes';
import { boxRing } from '../testGround';
import { planPasses } from './planPasses';

const FOOT_M = 0.3048;

const disc = (radiusM: number): PlaneRings => {
  const ring = Array.from({ length: 48 }, (_, i): XY => {
    const angle = (2 * Math.PI * i) / 48;
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)];
  });
  return [[...ring, ring[0] as XY]];
};

function planOf(
  part: PlaneRings,
  spacingM: number,
  fields: Partial<PassOptions> = {},
  keepOff: PlaneRings[] = [],
): ZonePasses {
  const options = { spacingM, swathM: spacingM, headerLaps: null, headingDeg: null, lapsFirst: true };
  return planPasses({ parts: [part], keepOff }, { ...options, ...fields }, null, null);
}

/** Metres walked straight along a heading. */
function metresAlong({ legs }: ZonePasses, headingDeg: number): number {
  return legs
    .filter(({ kind, line }) => {
      const [a, b] = [line[0] as XY, line.at(-1) as XY];
      const degrees = (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI;
      return kind === 'pass' && Math.abs(((((degrees - headingDeg) % 180) + 270) % 180) - 90) < 0.1;
    })
    .reduce((sum, { lengthM }) => sum + lengthM, 0);
}

/** Strips of lawn 9 ft wide, walked with a swath of 7 ft. */
const strip: PlaneRings = [boxRing(0, 0, 9 * FOOT_M, 20)];
const swathM = 7 * FOOT_M;

describe('a chosen heading', () => {
  it.each([0, 90, 30])('of %s degrees is kept on a strip little wider than a swath', (headingDeg) => {
    const plan = planOf(strip, swathM, { headingDeg });
    expect(plan.headingDeg).toBe(headingDeg);
    expect(metresAlong(plan, headingDeg)).toBeGreaterThan(0.75 * plan.leastM);
    expect(plan.missedM2).toBeLessThan(0.005 * plan.areaM2);
  });

  it('is kept on round ground, on a strip beside a pond, and where laps would leave no room for passes', () => {
    const pond: PlaneRings = [boxRing(9 * FOOT_M, 0, 6, 20)];
    for (const plan of [
      planOf(disc(5), 3.25, { headingDeg: 0 }),
      planOf(strip, swathM, { headingDeg: 0 }, [pond]),
      planOf(strip, swathM, { headingDeg: 0, headerLaps: 1 }),
      planOf([boxRing(0, 0, 9, 20)], 2, { headingDeg: 0, headerLaps: 4 }),
    ]) {
      expect(plan.headingDeg).toBe(0);
      expect(metresAlong(plan, 0)).toBeGreaterThan(0.2 * plan.leastM);
    }
  });
});

describe('laps', () => {
  it.each([4.5, 5, 5.4, 6, 8])('on a round green of %s m are long enough to be walked', (radiusM) => {
    const plan = planOf(disc(radiusM), 3.25);
    const laps = plan.legs.filter(({ kind }) => kind === 'lap');
    for (const { lengthM } of laps) expect(lengthM).toBeGreaterThanOrEqual(2 * 3.25);
    expect(plan.missedM2).toBeLessThan(0.006 * plan.areaM2);
  });

  it('leave the middle of a round green to one straight pass', () => {
    const plan = planOf(disc(5), 3.25);
    expect(plan.pattern).toBe('both');
    const pass = plan.legs.find(({ kind }) => kind === 'pass');
    const middle = pass?.line.map(([x, y]) => Math.hypot(x, y)) ?? [];
    // both ends as far from the middle: it leads through it
    expect(middle[0]).toBeCloseTo(middle.at(-1) as number, 1);
    expect(plan.passes).toBe(1);
  });
});
