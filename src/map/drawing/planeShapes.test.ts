import { describe, expect, it } from 'vitest';
import { findCurves } from '../../measure/curves';
import type { LocalPlane, XY } from '../../measure/types';
import type { Ring } from '../../yard/types';
import { circleArcs, circleOfRing, rectangleRing } from './planeShapes';

const plane: LocalPlane = {
  origin: [-83, 40],
  toPlane: (p) => [(p[0] + 83) * 85_395, (p[1] - 40) * 111_035],
  toLonLat: (p) => [p[0] / 85_395 - 83, p[1] / 111_035 + 40],
};
const areaM2 = (ring: Ring) => {
  const xy = ring.map((p) => plane.toPlane(p));
  let twice = 0;
  for (let i = 1; i < xy.length; i++) {
    const [a, b] = [xy[i - 1], xy[i]] as [XY, XY];
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return Math.abs(twice / 2);
};

describe('rectangleRing', () => {
  it('is square on the ground at any angle, through the point, and keeps the drawn side', () => {
    const from = plane.toLonLat([0, 0]);
    const to = plane.toLonLat([8, 6]);
    const ring = rectangleRing(plane, from, to, plane.toLonLat([2, 9]));
    expect(ring[0]).toBe(from);
    expect(ring[1]).toBe(to);
    expect(ring).toHaveLength(5);
    // depth: distance of (2, 9) from the line through (0,0) and (8,6) is |2*6 - 9*8| / 10 = 6
    expect(areaM2(ring)).toBeCloseTo(60, 4);
  });
  it('is nothing without a side', () => {
    expect(rectangleRing(plane, [-83, 40], [-83, 40], [-83.1, 40])).toEqual([]);
  });
});

describe('circleArcs', () => {
  it('encloses pi r squared and stays a circle of two arcs', () => {
    const { ring, curves } = circleArcs(plane, [-83, 40], 5);
    expect(areaM2(ring) / (Math.PI * 25)).toBeCloseTo(1, 5);
    expect(findCurves(ring, curves)).toHaveLength(2);
    expect(circleArcs(plane, [-83, 40], 0).ring).toEqual([]);
  });
  it('is found again by circleOfRing', () => {
    const found = circleOfRing(plane, circleArcs(plane, [-83.0001, 40.0001], 3).ring);
    expect(found.centre[0]).toBeCloseTo(-83.0001, 8);
    expect(found.radiusM / 3).toBeCloseTo(1, 2);
  });
});
