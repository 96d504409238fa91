import { expect, it } from 'vitest';
import { distanceM } from './geodesic';
import { createPlane, ringsToLonLat, ringsToPlane } from './plane';

it.each([0, 40, -65, 85])('errs in length by r·tan|lat|/R round an origin at latitude %d', (lat) => {
  // The parallel at r metres nearer the pole is shorter by that share: d(cos lat)/cos lat = -tan lat · r/R.
  const plane = createPlane([10, lat]);
  const bound = (r: number) => 1.02 * r * Math.tan((Math.abs(lat) * Math.PI) / 180) * (1 / 6371008.8) + 1e-8;
  for (const r of [0, 50, 500]) {
    let worst = 0;
    for (let k = 0; k < 12; k++) {
      const [sin, cos] = [Math.sin((k * Math.PI) / 6), Math.cos((k * Math.PI) / 6)];
      for (const [dx, dy] of [
        [10, 0],
        [0, 10],
        [-6, 8],
      ] as const) {
        const [x, y] = [r * cos, r * sin];
        const lengthM = distanceM(
          plane.toLonLat([x - dx / 2, y - dy / 2]),
          plane.toLonLat([x + dx / 2, y + dy / 2]),
        );
        worst = Math.max(worst, Math.abs(lengthM / 10 - 1));
      }
    }
    expect(worst).toBeLessThan(bound(r));
    expect(worst).toBeGreaterThanOrEqual(0.9 * (bound(r) - 1e-8));
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
