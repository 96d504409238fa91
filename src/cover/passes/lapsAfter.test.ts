import { describe, expect, it } from 'vitest';
import type { XY } from '../../measure/types';
import { itemOfLap, itemOfWork } from './items';
import { lapsAfter } from './lapsAfter';
import { planPasses } from './planPasses';
import { makeWork } from './work';

const lapOf = (x0: number, y0: number, x1: number, y1: number) => {
  const line: XY[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ];
  return itemOfLap(makeWork('lap', line, [{ atM: 2 * (x1 - x0 + y1 - y0), areaM2: 10 }]), 20);
};

describe('laps after passes', () => {
  it('begin at the place of the lap nearest to the last pass, whole and with all of their ground', () => {
    // On a side of 12 m, 4 m from its corner: neither a corner nor a middle.
    const [stop] = lapsAfter([lapOf(0, 0, 12, 16)], [4, 1], null);
    expect(stop?.choice.start).toEqual([4, 0]);
    const [work] = stop?.choice.rows()[0] ?? [];
    expect(work?.line[0]).toEqual([4, 0]);
    expect(work?.line.at(-1)).toEqual([4, 0]);
    expect(work?.lengthM).toBeCloseTo(56, 9);
    expect(work?.knots.at(-1)).toEqual({ atM: work?.lengthM, areaM2: 10 });
  });

  it('walk the inner lap first, then the one outside it', () => {
    const stops = lapsAfter([lapOf(0, 0, 12, 16), lapOf(1, 1, 11, 15)], [4, 2], null);
    expect(stops.map(({ choice }) => choice.start)).toEqual([
      [4, 1],
      [4, 0],
    ]);
  });

  it('may follow stretches that are not closed', () => {
    const open = itemOfWork(
      makeWork(
        'lap',
        [
          [0, 0],
          [5, 0],
        ] as XY[],
        [{ atM: 5, areaM2: 5 }],
      ),
    );
    expect(lapsAfter([open], [6, 0], null)[0]?.choice.start).toEqual([5, 0]);
    expect(lapsAfter([], [6, 0], null)).toEqual([]);
  });

  it.each([
    [12, 16],
    [9, 20],
    [18, 11],
  ])(
    'leave no long way over ground just sprayed on a lawn of %d by %d m',
    (w, h) => {
      const parts = [
        [
          [
            [0, 0],
            [w, 0],
            [w, h],
            [0, h],
            [0, 0],
          ] as XY[],
        ],
      ];
      for (const headerLaps of [1, 2, null]) {
        for (const to of [null, [w, h + 1] as XY]) {
          const options = { spacingM: 1.2, swathM: 1.2, headerLaps, headingDeg: null, lapsFirst: false };
          const { legs } = planPasses({ parts, keepOff: [] }, options, [0, -1], to);
          const first = legs.findIndex(({ kind }) => kind === 'lap');
          const before = legs[first - 1];
          // two swaths: from a pass to the lap beside it
          if (before?.knots.length === 0) expect(before.lengthM).toBeLessThanOrEqual(2.4);
        }
      }
    },
    30_000,
  );
});
