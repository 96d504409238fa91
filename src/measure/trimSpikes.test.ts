import { expect, it } from 'vitest';
import { trimSpikes } from './trimSpikes';
import type { XY } from './types';

const closed = (...points: XY[]): XY[] => [...points, points[0] as XY];

it('takes a hairline off, round a corner too, and leaves the ground', () => {
  const ring = closed(
    [0, 0],
    [10, 0],
    [10, 10],
    [15, 10],
    [15, 12],
    [15.000001, 10 - 1e-6],
    [10, 10 - 1e-6 * 2],
    [0, 10],
  );
  const [part] = trimSpikes([[ring]]);
  expect(part?.[0]).toHaveLength(5);
  expect(part?.[0]?.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual(
    closed([0, 0], [10, 0], [10, 10], [0, 10]),
  );
});

it('leaves a sound outline as it is, a needle of a centimetre too', () => {
  const needle = [closed([0, 0], [10, 0], [10, 10], [5, 10], [5.005, 30], [5.01, 10], [0, 10])];
  expect(trimSpikes([needle])[0]?.[0]).toBe(needle[0]);
});

it('drops what has no ground', () => {
  expect(trimSpikes([[closed([0, 0], [10, 0], [10, 1e-6], [0, 1e-6])]])).toEqual([]);
});
