import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Yard, Zone } from '../yard/types';
import { alignZone } from './alignZone';
import { makeBand } from './band';
import { planeAreaOf } from './clip';
import { checkRing } from './crossings';
import { flattenCurve } from './curves';
import { offsetEdge, offsetOutlines } from './offsetEdge';
import { createPlane, ringsToPlane } from './plane';
import type { ShapeResult } from './shapeResult';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => {
  const [lon, lat] = plane.toLonLat([x, y]);
  return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
};
const line = (...xys: [number, number][]) => xys.map(([x, y]) => at(x, y));
const turf = (id: string, ...xys: [number, number][]): Zone => {
  const open = line(...xys);
  return newZone(id, 'turf', [[[...open, open[0] as Position]]], { name: id });
};
const yardOf = (...zones: Zone[]): Yard => ({ ...emptyYard('y', 'Yard'), zones });
const done = (result: ShapeResult): Yard => {
  if (!result.ok) throw new Error(result.issue.message);
  return result.yard;
};
const areaOf = (yard: Yard, id: string) =>
  planeAreaOf((yard.zones.find((z) => z.id === id)?.parts ?? []).map((rings) => ringsToPlane(rings, plane)));
const codeOf = (result: ShapeResult) => (result.ok ? 'ok' : result.issue.code);
const strip = newZone('strip', 'turf', [], { name: 'strip' });

describe('makeBand', () => {
  const area = (points: [number, number][], widthM: number, joint: 'round' | 'mitred') =>
    planeAreaOf(makeBand(line(...points), widthM, joint, plane).map((rings) => ringsToPlane(rings, plane)));

  it('is length by width when straight, and, mitred, round any bend (Pappus)', () => {
    expect(
      area(
        [
          [0, 0],
          [20, 0],
        ],
        1.2,
        'mitred',
      ),
    ).toBeCloseTo(24, 4);
    expect(
      area(
        [
          [0, 0],
          [20, 0],
          [20, 10],
        ],
        1.2,
        'mitred',
      ),
    ).toBeCloseTo(36, 4);
    expect(
      area(
        [
          [0, 0],
          [20, 0],
          [30, 10],
        ],
        1.2,
        'mitred',
      ),
    ).toBeCloseTo(1.2 * (20 + Math.hypot(10, 10)), 4);
  });

  it('rounds the outer corner off when wished', () => {
    const cut = 0.6 ** 2 * (1 - Math.PI / 4);
    expect(
      area(
        [
          [0, 0],
          [20, 0],
          [20, 10],
        ],
        1.2,
        'round',
      ),
    ).toBeCloseTo(36 - cut, 2);
  });

  it('is one where it meets itself, with the hole it encloses', () => {
    const parts = makeBand(line([0, 0], [20, 0], [20, 10], [10, 10], [10, -10]), 1, 'mitred', plane);
    expect(parts).toHaveLength(1);
    expect(parts[0]).toHaveLength(2);
    // 20 + 10 + 10 + 20 m long, less the crossing square counted twice
    expect(planeAreaOf(parts.map((rings) => ringsToPlane(rings, plane)))).toBeCloseTo(60 - 1, 4);
    const ringed = makeBand(line([0, 0], [10, 0], [10, 10], [0, 10], [0, 0]), 1, 'mitred', plane);
    expect(planeAreaOf(ringed.map((rings) => ringsToPlane(rings, plane)))).toBeCloseTo(11 * 11 - 9 * 9, 4);
  });

  it('gives nothing for no length or no width', () => {
    expect(makeBand(line([0, 0]), 1, 'round', plane)).toEqual([]);
    expect(makeBand(line([0, 0], [1, 0]), 0, 'round', plane)).toEqual([]);
  });
});

describe('offsetEdge', () => {
  const lawn = turf('lawn', [0, 0], [20, 0], [20, 10], [0, 10]);
  const yard = yardOf(lawn);
  const south = line([0, 0], [20, 0]);

  it('makes a strip of its own along a side; the areas add up and the border is shared', () => {
    const made = done(offsetEdge(yard, 'lawn', south, 0.5, 'strip', strip, plane));
    expect(areaOf(made, 'strip')).toBeCloseTo(10, 4);
    expect(areaOf(made, 'lawn')).toBeCloseTo(190, 4);
    const corners = (id: string) =>
      new Set(
        made.zones
          .find((z) => z.id === id)
          ?.parts.flat(2)
          .map(String),
      );
    expect([...corners('strip')].filter((key) => corners('lawn').has(key))).toHaveLength(2);
  });

  it('goes round corners mitred, and round the whole outline', () => {
    const two = done(offsetEdge(yard, 'lawn', line([0, 0], [20, 0], [20, 10]), 1, 'strip', strip, plane));
    expect(areaOf(two, 'strip')).toBeCloseTo(20 + 10 - 1, 4);
    const whole = line([0, 0], [20, 0], [20, 10], [0, 10], [0, 0]);
    const all = done(offsetEdge(yard, 'lawn', whole, 1, 'strip', strip, plane));
    expect(areaOf(all, 'strip')).toBeCloseTo(200 - 18 * 8, 4);
    expect(areaOf(all, 'lawn')).toBeCloseTo(18 * 8, 4);
  });

  it('moves the outline in or out', () => {
    expect(areaOf(done(offsetEdge(yard, 'lawn', south, 2, 'inward', null, plane)), 'lawn')).toBeCloseTo(
      160,
      4,
    );
    expect(areaOf(done(offsetEdge(yard, 'lawn', south, 2, 'outward', null, plane)), 'lawn')).toBeCloseTo(
      240,
      4,
    );
  });

  it('ends at the sides beside it, whichever way they lean', () => {
    // sides lean outward by 45° at both ends: the strip is a trapezoid, longer by its width at each end
    const leaning = yardOf(turf('lawn', [0, 0], [10, 0], [20, 10], [-10, 10]));
    const out = done(offsetEdge(leaning, 'lawn', line([0, 0], [10, 0]), 1, 'strip', strip, plane));
    expect(areaOf(out, 'strip')).toBeCloseTo(11, 4);
    const inward = yardOf(turf('lawn', [-10, 0], [20, 0], [10, 10], [0, 10]));
    const cut = done(offsetEdge(inward, 'lawn', line([-10, 0], [20, 0]), 1, 'strip', strip, plane));
    expect(areaOf(cut, 'strip')).toBeCloseTo(29, 4);
  });

  it('at a corner that turns outward it ends square across', () => {
    const bent = yardOf(turf('lawn', [0, 0], [20, 0], [20, 20], [10, 20], [10, 10], [0, 10]));
    const made = done(offsetEdge(bent, 'lawn', line([10, 10], [0, 10]), 1, 'strip', strip, plane));
    expect(areaOf(made, 'strip')).toBeCloseTo(10, 4);
  });

  it('runs along a curve', () => {
    const arc = { kind: 'arc', points: [at(20, 0), at(25, 5), at(20, 10)] } as const;
    const ring = [at(0, 0), ...flattenCurve(arc), at(0, 10), at(0, 0)];
    const round = yardOf(newZone('lawn', 'turf', [[ring]], { name: 'lawn', curves: [arc] }));
    const made = done(offsetEdge(round, 'lawn', flattenCurve(arc), 1, 'strip', strip, plane));
    // half a ring between radii 5 and 4, which meets the straight sides square
    expect(Math.abs(areaOf(made, 'strip') / ((Math.PI * (25 - 16)) / 2) - 1)).toBeLessThan(2e-3);
    expect(made.zones.find((z) => z.id === 'strip')?.curves).toHaveLength(1);
  });

  it('refuses what is too wide, no width, a locked zone, or a side that is gone', () => {
    expect(codeOf(offsetEdge(yard, 'lawn', south, 10, 'strip', strip, plane))).toBe('offset-too-wide');
    expect(codeOf(offsetEdge(yard, 'lawn', south, 0, 'strip', strip, plane))).toBe('offset-no-width');
    expect(codeOf(offsetEdge(yard, 'lawn', line([0, 0], [5, 5]), 1, 'strip', strip, plane))).toBe(
      'offset-no-stretch',
    );
    const locked = yardOf({ ...lawn, isLocked: true });
    expect(codeOf(offsetEdge(locked, 'lawn', south, 1, 'inward', null, plane))).toBe('zone-locked');
    expect(offsetOutlines(lawn, south, 1, 'strip', plane)).toHaveLength(1);
    expect(offsetOutlines(lawn, south, 0, 'strip', plane)).toEqual([]);
  });
});

describe('alignZone', () => {
  const walk = turf('walk', [0, 0], [30, 10], [29, 13], [-1, 3]);
  const shed = turf('shed', [10, 10], [14, 10], [14, 13], [10, 13]);
  const yard = yardOf(walk, shed);
  const edge = [at(29, 13), at(-1, 3)] as const;

  it('turns a side parallel to an edge, and onto its line', () => {
    for (const inLine of [false, true]) {
      const made = done(alignZone(yard, 'shed', [at(10, 10), at(14, 10)], edge, inLine, plane));
      const ring = ringsToPlane(made.zones[1]?.parts[0] ?? [], plane)[0] ?? [];
      const [a, b] = [ring[0] ?? [0, 0], ring[1] ?? [0, 0]];
      expect((b[1] - a[1]) / (b[0] - a[0])).toBeCloseTo(1 / 3, 6);
      expect(areaOf(made, 'shed')).toBeCloseTo(12, 3);
      // the line through (-1, 3) with slope 1/3
      const off = a[1] - (3 + (a[0] + 1) / 3);
      if (inLine) {
        expect(Math.abs(off)).toBeLessThan(2e-5);
        expect(made.zones[0]?.parts[0]?.[0]?.length).toBe(7);
      } else expect(Math.abs(off)).toBeGreaterThan(0.5);
      expect(made.zones.flatMap((z) => z.parts.flat().flatMap((r) => checkRing(r)))).toEqual([]);
    }
  });

  it('turns a side to true north by no more than a quarter turn', () => {
    const made = done(alignZone(yard, 'walk', [at(0, 0), at(30, 10)], null, false, plane));
    const ring = ringsToPlane(made.zones[0]?.parts[0] ?? [], plane)[0] ?? [];
    expect(ring[1]?.[0]).toBeCloseTo(ring[0]?.[0] ?? Number.NaN, 3);
    expect((ring[1]?.[1] ?? 0) - (ring[0]?.[1] ?? 0)).toBeGreaterThan(30);
  });

  it('refuses a side without length and a locked zone', () => {
    expect(codeOf(alignZone(yard, 'shed', [at(1, 1), at(1, 1)], edge, false, plane))).toBe('align-no-edge');
    const locked = yardOf(walk, { ...shed, isLocked: true });
    expect(codeOf(alignZone(locked, 'shed', [at(10, 10), at(14, 10)], edge, false, plane))).toBe(
      'zone-locked',
    );
  });
});
