import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dropStaleCurves,
  findAllCurves,
  findCurves,
  flattenCurve,
  isClosedCurve,
  layCurveInRing,
} from '../../src/measure/curves';
import { createPlane } from '../../src/measure/plane';
import { signedArea } from '../../src/measure/signedArea';
import type { LocalPlane, XY } from '../../src/measure/types';
import type { Curve, Position, Ring } from '../../src/yard/types';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPlane = fc.tuple(between(-179, 179), between(-60, 60)).map(([lon, lat]) => createPlane([lon, lat]));

/** An arc by its circle, on a plane; and the area of its segment, θ in radians: R²/2 (θ - sin θ). */
const anyArc = fc
  .record({
    plane: anyPlane,
    radiusM: between(0.3, 60),
    from: between(0, 2 * Math.PI),
    sweep: fc.oneof(between(0.1, 5.8), between(-5.8, -0.1)),
    share: between(0.25, 0.75),
  })
  .filter(({ radiusM, sweep }) => radiusM * (1 - Math.cos(Math.min(Math.abs(sweep), Math.PI) / 2)) > 0.05)
  .map(({ plane, radiusM, from, sweep, share }) => {
    const at = (angle: number): Position => {
      const [lon, lat] = plane.toLonLat([radiusM * Math.cos(angle), radiusM * Math.sin(angle)]);
      return [round(lon, 11), round(lat, 11)];
    };
    const curve: Curve = { kind: 'arc', points: [at(from), at(from + sweep * share), at(from + sweep)] };
    return { plane, curve, radiusM, sweep, segmentM2: ((sweep - Math.sin(sweep)) * radiusM ** 2) / 2 };
  });

/** A smooth run of points that goes on eastward, so that it never crosses itself. */
const anySmooth = fc
  .tuple(anyPlane, fc.array(fc.tuple(between(0.5, 10), between(-4, 4)), { minLength: 3, maxLength: 8 }))
  .map(([plane, steps]) => {
    let x = 0;
    const points = steps.map(([dx, y]): Position => {
      x += dx;
      const [lon, lat] = plane.toLonLat([x, y]);
      return [round(lon, 11), round(lat, 11)];
    });
    return { plane, curve: { kind: 'smooth', points } satisfies Curve };
  });

function round(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals) / 10 ** decimals;
}

const laid = (plane: LocalPlane, corners: readonly Position[]): XY[] => corners.map((p) => plane.toPlane(p));

/** The curve closed to a ring over far corners south of it. */
function ringWith(plane: LocalPlane, curve: Curve, start: number): Ring {
  const corners = flattenCurve(curve);
  const xs = laid(plane, corners);
  const low = Math.min(...xs.map(([, y]) => y)) - 400;
  const far = [plane.toLonLat([600, low]), plane.toLonLat([-600, low - 50])];
  const open = [...corners, ...far];
  const turned = open.map((_, i) => open[(i + start) % open.length] as Position);
  return [...turned, turned[0] as Position];
}

const rounded = (ring: readonly Position[], decimals: number) =>
  ring.map(([lon, lat]): Position => [round(lon, decimals), round(lat, decimals)]);

/** The curve with one of its points elsewhere; a closed one keeps its joint. @param index of the point, 0 first */
function moveCurvePoint(curve: Curve, index: number, to: Position): Curve {
  const last = curve.points.length - 1;
  const isJoint = isClosedCurve(curve) && (index === 0 || index === last);
  return {
    ...curve,
    points: curve.points.map((p, i) => (i === index || (isJoint && (i === 0 || i === last)) ? to : p)),
  };
}

describe('arcs', () => {
  it('keep their ends digit for digit and the area of the true segment', () => {
    fc.assert(
      fc.property(anyArc, ({ plane, curve, segmentM2, radiusM }) => {
        const corners = flattenCurve(curve);
        expect(corners[0]).toBe(curve.points[0]);
        expect(corners.at(-1)).toBe(curve.points[2]);
        const area = signedArea(laid(plane, [...corners, ...corners.slice(0, 1)]));
        // the plane of the curve's first point differs from this one by r·tan|lat|/R
        const shift = (2 * radiusM * Math.tan((Math.abs(plane.origin[1]) * Math.PI) / 180)) / 6_371_000;
        expect(Math.abs(area - segmentM2)).toBeLessThan((1e-5 + shift) * Math.abs(segmentM2) + 2e-5);
      }),
      { numRuns: 300 },
    );
  });

  it('stay within 3 mm of their circle, middles of sides too', () => {
    fc.assert(
      fc.property(anyArc, ({ plane, curve, radiusM }) => {
        const xs = laid(plane, flattenCurve(curve));
        const strays = xs.slice(1).map(([x, y], i) => {
          const [px, py] = xs[i] ?? [x, y];
          return Math.max(
            Math.abs(Math.hypot((x + px) / 2, (y + py) / 2) - radiusM),
            Math.abs(Math.hypot(x, y) - radiusM),
          );
        });
        expect(Math.max(...strays)).toBeLessThan(0.003 + 2e-5 * radiusM);
      }),
    );
  });

  it('of three points on a line are one straight side', () => {
    fc.assert(
      fc.property(anyPlane, between(-50, 50), between(-50, 50), between(0.1, 0.9), (plane, x, y, t) => {
        fc.pre(Math.hypot(x, y) > 0.1);
        const points = [plane.toLonLat([0, 0]), plane.toLonLat([x * t, y * t]), plane.toLonLat([x, y])];
        expect(flattenCurve({ kind: 'arc', points })).toEqual([points[0], points[2]]);
      }),
    );
  });
});

describe('curves of both kinds', () => {
  const anyCurve = fc.oneof(
    anyArc.map(({ plane, curve }) => ({ plane, curve })),
    anySmooth,
  );

  it('give the same corners when their points are in the opposite order', () => {
    fc.assert(
      fc.property(anyCurve, ({ curve }) => {
        const back = flattenCurve({ ...curve, points: curve.points.toReversed() });
        expect(back.toReversed()).toEqual(flattenCurve(curve));
      }),
    );
  });

  it('smooth ones pass through all their points', () => {
    fc.assert(
      fc.property(anySmooth, ({ curve }) => {
        const corners = flattenCurve(curve);
        for (const point of curve.points) expect(corners).toContain(point);
      }),
    );
  });

  it('are found in a ring from any first corner, either way round, and as a file of 9 decimals has them', () => {
    fc.assert(
      fc.property(
        anyCurve,
        fc.nat(400),
        fc.boolean(),
        fc.constantFrom(9, 11),
        ({ plane, curve, ...more }, start, isBack, decimals) => {
          // the far side of a nearly whole circle moves by many times what its ends are rounded by
          fc.pre(decimals === 11 || !('sweep' in more) || Math.abs(Number(more.sweep)) < 4);
          const ring = ringWith(plane, curve, start);
          const stored = rounded(isBack ? ring.toReversed() : ring, decimals);
          const kept: Curve = { ...curve, points: rounded(curve.points, decimals) };
          const [found, ...others] = findCurves(stored, [kept]);
          expect(others).toEqual([]);
          expect(found?.curve).toBe(kept);
          expect(found?.isTurned).toBe(isBack);
          const first = isBack ? kept.points.at(-1) : kept.points[0];
          expect(stored[found?.from ?? -1]).toEqual(first);
          expect(found?.guests).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('bear a neighbour’s corner on a side; moving a corner of their own makes them stale', () => {
    fc.assert(
      fc.property(anyCurve, fc.nat(1000), fc.nat(1000), ({ plane, curve }, which, start) => {
        const ring = ringWith(plane, curve, start);
        const [whole] = findCurves(ring, [curve]);
        const open = ring.slice(0, -1);
        const count = flattenCurve(curve).length;
        const at = ((whole?.from ?? 0) + (which % (count - 1))) % open.length;
        const [a, b] = [open[at], open[(at + 1) % open.length]] as [Position, Position];
        const guest: Position = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const withGuest = [...open.slice(0, at + 1), guest, ...open.slice(at + 1)];
        const closedRing = [...withGuest, withGuest[0] as Position];
        const [found] = findCurves(closedRing, [curve]);
        expect(found?.guests.map((i) => withGuest[i])).toEqual([guest]);
        // laid anew as it was, the guest comes back to its place
        if (found) {
          const again = layCurveInRing(closedRing, found, curve);
          const nearest = Math.min(...again.map((p) => Math.hypot(p[0] - guest[0], p[1] - guest[1])));
          expect(nearest).toBeLessThan(1e-9);
        }
        const off = (((whole?.from ?? 0) + 1) % open.length) as number;
        const bent = open.map((p, i): Position => (i === off ? [p[0] + 1e-6, p[1]] : p));
        const zone = { parts: [[[...bent, bent[0] as Position]]], curves: [curve] };
        expect(findAllCurves(zone).stale).toEqual([curve]);
        expect(dropStaleCurves(zone).curves).toEqual([]);
        const sound = { parts: [[ring]], curves: [curve] };
        expect(dropStaleCurves(sound)).toBe(sound);
      }),
    );
  });

  it('after a point is moved the ring holds the new curve in place of the old one', () => {
    fc.assert(
      fc.property(anyCurve, fc.nat(9), fc.nat(400), ({ plane, curve }, which, start) => {
        const ring = ringWith(plane, curve, start);
        const [found] = findCurves(ring, [curve]);
        const index = which % curve.points.length;
        const [x, y] = plane.toPlane(curve.points[index] as Position);
        const next = moveCurvePoint(curve, index, rounded([plane.toLonLat([x, y + 0.2])], 11)[0] as Position);
        const made = found && layCurveInRing(ring, found, next);
        expect(made && findCurves(made, [next])).toHaveLength(1);
        expect(made && made.length - flattenCurve(next).length).toBe(
          ring.length - flattenCurve(curve).length,
        );
      }),
    );
  });

  it('two arcs make a circle of area pi r squared, each found', () => {
    fc.assert(
      fc.property(anyPlane, between(0.5, 80), fc.nat(50), (plane, r, start) => {
        const at = (x: number, y: number) => rounded([plane.toLonLat([x * r, y * r])], 11)[0] as Position;
        const [e, n, w, s] = [at(1, 0), at(0, 1), at(-1, 0), at(0, -1)];
        const curves: Curve[] = [
          { kind: 'arc', points: [e, n, w] },
          { kind: 'arc', points: [w, s, e] },
        ];
        const open = curves.flatMap((curve) => flattenCurve(curve).slice(0, -1));
        const turned = open.map((_, i) => open[(i + start) % open.length] as Position);
        const ring = [...turned, turned[0] as Position];
        expect(Math.abs(signedArea(laid(plane, ring)) / (Math.PI * r * r) - 1)).toBeLessThan(1e-5);
        expect(findCurves(ring, curves)).toHaveLength(2);
      }),
    );
  });

  it('a closed smooth line is a ring of its own', () => {
    fc.assert(
      fc.property(
        anyPlane,
        fc.array(between(3, 9), { minLength: 4, maxLength: 9 }),
        fc.nat(50),
        (plane, radii, start) => {
          const points = radii.map((r, i) => {
            const angle = (2 * Math.PI * i) / radii.length;
            return rounded([plane.toLonLat([r * Math.cos(angle), r * Math.sin(angle)])], 11)[0] as Position;
          });
          const curve: Curve = { kind: 'smooth', points: [...points, points[0] as Position] };
          const open = flattenCurve(curve).slice(0, -1);
          const turned = open.map((_, i) => open[(i + start) % open.length] as Position);
          const ring = [...turned, turned[0] as Position];
          const [found] = findCurves(ring, [curve]);
          expect(found?.from).toBe(found?.to);
          expect(found && layCurveInRing(ring, found, curve).length).toBe(ring.length);
        },
      ),
    );
  });
});
