import { describe, expect, it } from 'vitest';
import type { LocalPlane } from '../../measure/types';
import type { Position } from '../../yard/types';
import {
  boxOfParts,
  closeParts,
  deleteCorner,
  insertCorner,
  moveCorner,
  openParts,
  rotateParts,
  shiftParts,
} from './corners';

const square: Position[] = [
  [0, 0],
  [4e-5, 0],
  [4e-5, 4e-5],
  [0, 4e-5],
  [0, 0],
];
const hole: Position[] = [
  [1e-5, 1e-5],
  [2e-5, 1e-5],
  [2e-5, 2e-5],
  [1e-5, 1e-5],
];
const parts = openParts([[square, hole]]);
const plane: LocalPlane = {
  origin: [0, 0],
  toPlane: (p) => [p[0] * 111_320, p[1] * 110_574],
  toLonLat: (p) => [p[0] / 111_320, p[1] / 110_574],
};

describe('corners', () => {
  it('opens and closes without loss', () => {
    expect(closeParts(parts)).toEqual([[square, hole]]);
  });
  it('moves one corner, the first with its closing twin, and shares the rest', () => {
    const moved = moveCorner(parts, { part: 0, ring: 0, corner: 0 }, [-1e-5, 0]);
    const ring = closeParts(moved)[0]?.[0];
    expect(ring?.[0]).toEqual([-1e-5, 0]);
    expect(ring?.at(-1)).toEqual([-1e-5, 0]);
    expect(moved[0]?.[1]).toBe(parts[0]?.[1]);
  });
  it('inserts after the corner named, also after the last', () => {
    const more = insertCorner(parts, { part: 0, ring: 0, corner: 3 }, [0, 2e-5]);
    expect(more[0]?.[0]?.[4]).toEqual([0, 2e-5]);
  });
  it('drops a hole with its third corner but never the only outline', () => {
    expect(deleteCorner(parts, { part: 0, ring: 1, corner: 2 })?.[0]).toHaveLength(1);
    const three = deleteCorner(parts, { part: 0, ring: 0, corner: 1 });
    if (!three) throw new Error('a corner of four can go');
    expect(three[0]?.[0]).toHaveLength(3);
    expect(deleteCorner(three, { part: 0, ring: 0, corner: 0 })).toBeNull();
  });
  it('turns clockwise: what was north comes to the east', () => {
    const turned = rotateParts([[[[0, 1e-5]]]], plane, [0, 0], 90);
    const [lon, lat] = turned[0]?.[0]?.[0] ?? [0, 0];
    expect(lon * 111_320).toBeCloseTo(1.10574, 5);
    expect(Math.abs(lat)).toBeLessThan(1e-10);
  });
  it('shifts every corner alike', () => {
    const box = boxOfParts(shiftParts(parts, plane, [0, 0], [1e-5, -1e-5]));
    expect(box[0]).toBeCloseTo(1e-5, 10);
    expect(box[1]).toBeCloseTo(-1e-5, 10);
  });
});
