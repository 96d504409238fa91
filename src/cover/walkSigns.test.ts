import { describe, expect, it } from 'vitest';
import type { PlaneRings } from '../measure/types';
import { boxRing } from './testGround';
import { testWalk } from './testWalk';
import { arrowSigns, markSigns, walkEnds, zoneSigns } from './walkSigns';

const front: readonly PlaneRings[] = [[boxRing(0, 0, 20, 10)]];
const back: readonly PlaneRings[] = [[boxRing(0, 30, 20, 44)]];
const zones = [
  { zoneId: 'front', parts: front },
  { zoneId: 'back', parts: back },
];
const walk = testWalk(zones, 1, 3);

describe('signs of a walk', () => {
  it('number zones as they are walked, each with its way in and out', () => {
    const signs = zoneSigns(walk);
    expect(signs.map(({ number, zoneId }) => [number, zoneId])).toEqual([
      [1, 'front'],
      [2, 'back'],
    ]);
    expect(signs[0]?.entry).toEqual([0, 0]);
    expect(signs[1]?.entry[1]).toBeGreaterThanOrEqual(30);
  });
  it('number both coats', () => {
    expect(zoneSigns(testWalk(zones, 1, 3, 2)).map(({ number, coat }) => [number, coat])).toEqual([
      [1, 1],
      [2, 2],
      [3, 1],
      [4, 2],
    ]);
  });
  it('lay the line of a mark across the way walked', () => {
    const signs = markSigns(walk);
    expect(signs.length).toBe(walk.marks.length);
    for (const { mark, across } of signs) {
      const line = walk.legs[mark.legIndex]?.line ?? [];
      expect(Math.hypot(...across)).toBeCloseTo(1, 9);
      // every leg of this walk is level or upright: so is its mark, the other way
      const nearest = line
        .slice(1)
        .map((b, i) => [b[0] - (line[i]?.[0] ?? 0), b[1] - (line[i]?.[1] ?? 0)] as const);
      expect(nearest.some(([dx, dy]) => Math.abs(dx * across[0] + dy * across[1]) < 1e-9)).toBe(true);
    }
  });
  it('begin and end where the walk does', () => {
    expect(walkEnds(walk.legs)).toEqual({ start: [0, 0], end: walk.legs.at(-1)?.line.at(-1) });
    expect(walkEnds([])).toBeNull();
  });
  it('thin arrows out with the distance asked for, and point along the way', () => {
    const near = arrowSigns(walk.legs, 2);
    const far = arrowSigns(walk.legs, 8);
    expect(far.length).toBeGreaterThan(0);
    expect(far.length).toBeLessThan(near.length);
    for (const arrows of [near, far]) {
      const apart = arrows === near ? 2 : 8;
      arrows.forEach(({ at, way }, i) => {
        expect(Math.hypot(...way)).toBeCloseTo(1, 9);
        for (const other of arrows.slice(i + 1))
          expect(Math.hypot(at[0] - other.at[0], at[1] - other.at[1])).toBeGreaterThanOrEqual(apart);
      });
    }
  });
});
