import { describe, expect, it } from 'vitest';
import type { XY } from '../../measure/types';
import { boxRing } from '../testGround';
import { stubsToDrop } from './dropStubs';
import { lengthOfLine } from './frame';
import { planPasses } from './planPasses';
import { prepareZone } from './prepareZone';
import { makeWork, type Work } from './work';
import type { ZoneGround } from './zoneGround';

const pass = (...line: XY[]): Work => makeWork('pass', line, [{ atM: lengthOfLine(line), areaM2: 1 }]);
const options = { spacingM: 2, swathM: 2, headerLaps: null, headingDeg: null };
const zone = prepareZone({ parts: [[boxRing(0, 0, 20, 4)]], keepOff: [] }, options)?.zone as ZoneGround;

describe('stubsToDrop', () => {
  const rows = [pass([0, 1], [20, 1]), pass([0, 3], [19.5, 3])];

  it('leaves out a stub over ground that others cover, and one whose ground may be missed', () => {
    const twice = pass([4, 1], [4.5, 1]);
    expect([...stubsToDrop(zone, [...rows, twice], 0)]).toEqual([twice]);
    // 0.15 m x 2 m of 80 m²: 0.375 %, less than the goal of half a per cent
    const short = [rows[0] as Work, pass([0, 3], [19.85, 3])];
    const end = pass([19.85, 3], [20, 3]);
    expect([...stubsToDrop(zone, [...short, end], 0)]).toEqual([end]);
  });

  it('keeps one whose ground would be missed beyond the goal, and what is all that there is', () => {
    const end = pass([19.5, 3], [20, 3]);
    expect(stubsToDrop(zone, [...rows, end], 0).size).toBe(0);
    expect(stubsToDrop(zone, [end], 0).size).toBe(0);
  });

  it('leaves no pass of a few centimetres beside a strip', () => {
    const keepOff = [[boxRing(2.74, 0, 6, 20)]];
    const plan = planPasses(
      { parts: [[boxRing(0, 0, 2.74, 20)]], keepOff },
      { ...options, spacingM: 2.13, swathM: 2.13, headingDeg: 0, lapsFirst: true },
      null,
      null,
    );
    const passes = plan.legs.filter(({ kind }) => kind === 'pass');
    expect(passes.map(({ lengthM }) => Math.round(lengthM))).toEqual([20, 20]);
  });
});
