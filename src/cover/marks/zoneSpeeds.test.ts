import { describe, expect, it } from 'vitest';
import { sweepBox } from './testWalk';
import { speedIssues, zoneSpeeds } from './zoneSpeeds';

/** Passes of 20 m over ground 4 m wide, two of them. */
const LEGS = sweepBox({ zoneId: 'lawn', x0: 0, y0: 0, widthM: 4, lengthM: 20, swathM: 2 });
const NAMES = new Map([['lawn', 'Back lawn']]);

describe('how fast a zone is walked', () => {
  it('as the pace says where the spacing divides it evenly', () => {
    const speeds = zoneSpeeds(LEGS, [{ zoneId: 'lawn', areaM2: 80 }], 2);
    expect(speeds).toEqual([{ zoneId: 'lawn', coat: 1, workingM: 40, factor: 1 }]);
    expect(speedIssues(speeds, NAMES, 1, 'us')).toEqual([]);
  });

  it('faster by hand: 40 m of passes for 2.5 m on 80 m² lay 100 m², so 1.25 times; at 2.6 m it is told', () => {
    const ground = [{ zoneId: 'lawn', areaM2: 80 }];
    expect(zoneSpeeds(LEGS, ground, 2.5)[0]?.factor).toBeCloseTo(1.25, 12);
    const told = speedIssues(zoneSpeeds(LEGS, ground, 2.6), NAMES, null, 'us');
    expect(told.map(({ code }) => code)).toEqual(['passes-crowded']);
    expect(told[0]?.message).toContain('On “Back lawn” the passes take 1.3 times');
  });

  it('slower where much is left out; nothing is said of ground that no dose knows', () => {
    const speeds = zoneSpeeds(LEGS, [{ zoneId: 'lawn', areaM2: 120 }], 2);
    expect(speedIssues(speeds, NAMES, 1, 'us').map(({ code }) => code)).toEqual(['passes-spread']);
    expect(zoneSpeeds(LEGS, [], 2)[0]?.factor).toBe(1);
  });

  it('faster than 5 mph (2.2352 m/s by 88 ft a minute) is told of the zone, unless the whole dose is', () => {
    const speeds = zoneSpeeds(LEGS, [{ zoneId: 'lawn', areaM2: 80 }], 2.2);
    expect(speedIssues(speeds, NAMES, 2.1, 'metric').map(({ code }) => code)).toEqual(['zone-too-fast']);
    expect(speedIssues(speeds, NAMES, 2, 'metric')).toEqual([]);
    expect(speedIssues(speeds, NAMES, 2.3, 'metric')).toEqual([]);
  });
});
