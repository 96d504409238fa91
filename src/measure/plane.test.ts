import { expect, it } from 'vitest';
import { distanceM } from './geodesic';
import { createPlane, ringsToLonLat, ringsToPlane } from './plane';

it.each([0, 40, -65, 85])('keeps lengths within 1e-5 at 50 m from an origin at latitude %d', (lat) => {
  const plane = createPlane([10, lat]);
  for (const xy of [
    [50, 0],
    [0, 50],
    [-30, 40],
  ] as const) {
    expect(Math.abs(distanceM([10, lat], plane.toLonLat(xy)) - 50) / 50).toBeLessThan(1e-4);
  }
});

it('goes there and back, in order and closing, without changing its input', () => {
  const plane = createPlane([10, 50]);
  const rings = Object.freeze([
    Object.freeze([
      [10, 50],
      [10.001, 50],
      [10, 50.001],
      [10, 50],
    ] as const),
  ]);
  const back = ringsToLonLat(ringsToPlane(rings, plane), plane);
  back[0]?.forEach((p, i) => {
    expect(p[0]).toBeCloseTo(rings[0]?.[i]?.[0] ?? 0, 12);
    expect(p[1]).toBeCloseTo(rings[0]?.[i]?.[1] ?? 0, 12);
  });
});

it('takes the shorter way across 180°', () => {
  const plane = createPlane([179.999, 0]);
  expect(plane.toPlane([-179.999, 0])[0]).toBeCloseTo(0.002 * 111319.4908, 2);
});

it.each([
  [Number.NaN, 0],
  [0, 90],
  [0, Number.NaN],
] as const)('refuses an origin of %d, %d', (lon, lat) => {
  expect(() => createPlane([lon, lat])).toThrow(RangeError);
});
