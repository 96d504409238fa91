import { planeAreaOf } from '../../measure/clip';
import type { PlaneRings, XY } from '../../measure/types';
import type { Leg } from '../passTypes';
import type { PlanPasses } from './stopPlans';

/**
 * For tests of the route alone: plain passes to and fro over the box of a piece of ground, begun at the corner
 * nearest to `from`, or at the south-west one; no heading but 0 and 90.
 */
export const fakePasses: PlanPasses = ({ parts }, { spacingM, swathM, headingDeg }, from) => {
  const xs = parts.flat(2).map(([x]) => x);
  const ys = parts.flat(2).map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const isNorth = headingDeg === null ? y1 - y0 >= x1 - x0 : headingDeg < 45 || headingDeg > 135;
  const [width, length] = isNorth ? [x1 - x0, y1 - y0] : [y1 - y0, x1 - x0];
  const count = Math.max(1, Math.ceil(width / spacingM - 1e-9));
  const [isRight, isTop] = [!!from && from[0] > (x0 + x1) / 2, !!from && from[1] > (y0 + y1) / 2];
  const [isFarAcross, isFarAlong] = isNorth ? [isRight, isTop] : [isTop, isRight];
  const place = (along: number, across: number): XY => {
    const [l, w] = [isFarAlong ? length - along : along, isFarAcross ? width - across : across];
    return isNorth ? [x0 + w, y0 + l] : [x0 + l, y0 + w];
  };
  const areaM2 = planeAreaOf(parts);
  const legs: Leg[] = [];
  const add = (kind: Leg['kind'], a: XY, b: XY): void => {
    const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const knots =
      kind === 'turn'
        ? []
        : [
            { atM: 0, areaM2: 0 },
            { atM: lengthM, areaM2: areaM2 / count },
          ];
    legs.push({ kind, zoneId: null, coat: 1, line: [a, b], lengthM, knots });
  };
  for (let i = 0; i < count; i += 1) {
    const across = (width * (i + 0.5)) / count;
    const [a, b] = i % 2 === 0 ? [0, length] : [length, 0];
    const begin = place(a, across);
    const before = legs.at(-1)?.line.at(-1);
    if (before) add('turn', before, begin);
    add('pass', begin, place(b, across));
  }
  const sum = (some: readonly Leg[]): number => some.reduce((s, { lengthM }) => s + lengthM, 0);
  return {
    legs,
    headingDeg: isNorth ? 0 : 90,
    pattern: 'straight',
    cells: 1,
    passes: count,
    turns: count - 1,
    lengthM: sum(legs),
    workingM: sum(legs.filter(({ kind }) => kind === 'pass')),
    leastM: areaM2 / spacingM,
    areaM2,
    missedM2: 0,
    doubleM2: 0,
    outsideM2: 0,
    outsideM: swathM / 2,
    issues: [],
  };
};

/** A dose on boxes, for tests: `[x0, y0, x1, y1]` each. */
export type TestBox = readonly [number, number, number, number];

/** The ring of a box as a part. */
export function partOf([x0, y0, x1, y1]: TestBox): PlaneRings {
  return [
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
      [x0, y0],
    ],
  ];
}
