import * as turf from '@turf/turf';
import fc from 'fast-check';
import type { Feature, MultiPolygon, Polygon } from 'geojson';
import { describe, expect, it, vi } from 'vitest';
import { differenceOf, planeAreaOf, unionOf } from '../../src/measure/clip';
import { areaOfRingM2 } from '../../src/measure/geodesic';
import { measureYard } from '../../src/measure/measureYard';
import { createPlane, ringsToPlane } from '../../src/measure/plane';
import { joinZones, splitZone } from '../../src/measure/shapes';
import type { MeasuredYard } from '../../src/measure/types';
import { emptyYard, newZone } from '../../src/yard/defaults';
import { type Position, type Ring, type Yard, ZONE_KINDS, type Zone } from '../../src/yard/types';
import { seededRandom } from '../bench/benchYard';

/** Turf's exact arithmetic takes long on a busy machine. */
vi.setConfig({ testTimeout: 30_000 });

const plane = createPlane([-83, 40]);
const close = (corners: readonly Position[]): Ring => [...corners, corners[0] as Position];

/** A star-shaped ring round (x, y): it never crosses itself. Radii in decimetres. */
const star = fc
  .record({
    x: fc.integer({ min: -150, max: 150 }),
    y: fc.integer({ min: -150, max: 150 }),
    radii: fc.array(fc.integer({ min: 20, max: 120 }), { minLength: 5, maxLength: 12 }),
  })
  .map(({ x, y, radii }) =>
    close(
      radii.map((radius, i): Position => {
        const angle = (2 * Math.PI * i) / radii.length;
        return plane.toLonLat([(x + radius * Math.cos(angle)) / 10, (y + radius * Math.sin(angle)) / 10]);
      }),
    ),
  );

const anyYard = fc
  .array(fc.tuple(star, fc.constantFrom(...ZONE_KINDS), fc.boolean()), { minLength: 1, maxLength: 7 })
  .map(
    (items): Yard => ({
      ...emptyYard('y', 'Yard'),
      zones: items.map(([ring, kind, cutsSameKind], i) =>
        newZone(`z${i}`, kind, [[ring]], { name: `z${i}`, cutsSameKind }),
      ),
    }),
  );

const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
const near = (a: number, b: number, absolute = 2e-3) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(Math.max(absolute, 1e-6 * Math.abs(b)));

describe('area of one ring', () => {
  it('is the same from any first corner, either way round, and at any longitude', () => {
    fc.assert(
      fc.property(star, fc.nat(20), fc.integer({ min: -359, max: 359 }), (ring, start, shift) => {
        const corners = ring.slice(0, -1);
        const turned = corners.map((_, i) => corners[(i + start) % corners.length] as Position);
        const areaM2 = areaOfRingM2(ring);
        near(areaOfRingM2(close(turned)), areaM2, 1e-3);
        near(areaOfRingM2(ring.toReversed()), areaM2, 1e-3);
        near(areaOfRingM2(ring.map(([lon, lat]) => [lon + shift, lat])), areaM2, 1e-3);
      }),
      { numRuns: 100 },
    );
  });
});

describe('net areas', () => {
  it('net and cuts make the gross, and nothing is below 0', () => {
    fc.assert(
      fc.property(anyYard, (yard) => {
        for (const zone of measureYard(yard).zones.values()) {
          near(zone.netM2 + sumOf(zone.cutBy.map((cut) => cut.areaM2)), zone.grossM2, 1e-6);
          expect(zone.netM2).toBeGreaterThanOrEqual(0);
          for (const cut of zone.cutBy) expect(cut.areaM2).toBeGreaterThan(0);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('totals of the kinds make the ground under any zone', () => {
    fc.assert(
      fc.property(anyYard, (yard) => {
        const measured = measureYard(yard);
        const drawn = yard.zones.flatMap((zone) =>
          zone.parts.map((rings) => ringsToPlane(rings, measured.plane)),
        );
        // The plane's own error is up to 1e-5 of an area within 30 m; totals are geodesic.
        const groundM2 = planeAreaOf(unionOf(drawn));
        expect(Math.abs(sumOf(measured.totals.map((total) => total.netM2)) - groundM2)).toBeLessThan(
          3e-5 * groundM2 + 5e-3,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('agree with the differences that turf takes (polyclip in degrees), turned to ground the same way', () => {
    fc.assert(
      fc.property(anyYard, (yard) => {
        const measured = measureYard(yard);
        const feature = (zone: Zone) =>
          turf.polygon(zone.parts[0]?.map((ring) => ring.map((p) => [...p])) ?? []) as Feature<
            Polygon | MultiPolygon
          >;
        yard.zones.forEach((zone, i) => {
          let net: Feature<Polygon | MultiPolygon> | null = feature(zone);
          yard.zones.forEach((other, j) => {
            const [own, order] = [ZONE_KINDS.indexOf(zone.kind), ZONE_KINDS.indexOf(other.kind)];
            const cuts = order < own || (order === own && j > i && other.cutsSameKind);
            if (cuts && net) net = turf.difference(turf.featureCollection([net, feature(other)]));
          });
          const polygons = net ? turf.flatten(net).features : [];
          const theirs = sumOf(
            polygons.map(({ geometry }) =>
              sumOf(
                geometry.coordinates.map(
                  (ring, k) => (k === 0 ? 1 : -1) * areaOfRingM2(ring.map(([x = 0, y = 0]) => [x, y])),
                ),
              ),
            ),
          );
          near(measured.zones.get(zone.id)?.netM2 ?? Number.NaN, theirs, 3e-3);
        });
      }),
      { numRuns: 60 },
    );
  });
});

const figuresOf = (measured: MeasuredYard) => [
  ...[...measured.zones.values()].flatMap((zone) => [
    zone.grossM2,
    zone.netM2,
    zone.netSigmaM2,
    zone.netPerimeterM,
  ]),
  ...measured.totals.flatMap((total) => [total.count, total.netM2, total.netSigmaM2]),
];

describe('editing', () => {
  it('what is redone after edits equals all done anew', () => {
    fc.assert(
      fc.property(
        anyYard,
        fc.array(fc.tuple(fc.nat(6), star, fc.constantFrom('replace', 'remove', 'add')), { maxLength: 5 }),
        (first, edits) => {
          let yard = first;
          let measured = measureYard(yard);
          edits.forEach(([at, ring, edit], n) => {
            const index = at % Math.max(1, yard.zones.length);
            const zone = yard.zones[index];
            if (edit === 'add') {
              const made = newZone(`n${n}`, ZONE_KINDS[at % ZONE_KINDS.length] ?? 'turf', [[ring]]);
              yard = { ...yard, zones: [...yard.zones, made] };
            } else if (zone && edit === 'replace') {
              yard = { ...yard, zones: yard.zones.with(index, { ...zone, parts: [[ring]] }) };
            } else {
              yard = { ...yard, zones: yard.zones.toSpliced(index, 1) };
            }
            measured = measureYard(yard, measured);
          });
          const copy: Yard = { ...yard, zones: yard.zones.map((zone) => ({ ...zone })) };
          const anew = figuresOf(measureYard(copy, { ...measured, zones: new Map(), totals: [] }));
          const kept = figuresOf(measured);
          expect(kept).toHaveLength(anew.length);
          kept.forEach((value, i) => {
            expect(Math.abs(value - (anew[i] ?? Number.NaN))).toBeLessThanOrEqual(1e-9 * value + 1e-9);
          });
        },
      ),
      { numRuns: 100 },
    );
  });

  it('a frozen document is measured without being touched', () => {
    const freeze = (value: unknown): void => {
      if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
      Object.freeze(value);
      Object.values(value).forEach(freeze);
    };
    fc.assert(
      fc.property(anyYard, (yard) => {
        const before = JSON.stringify(yard);
        freeze(yard);
        measureYard(yard, measureYard(yard));
        expect(JSON.stringify(yard)).toBe(before);
      }),
      { numRuns: 30 },
    );
  });

  it('a zone split and joined again has the ground it had', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 0, max: Math.PI, noNaN: true }), (ring, angle) => {
        const zone = newZone('lawn', 'turf', [[ring]], { name: 'Lawn' });
        const yard: Yard = { ...emptyYard('y', 'Yard'), zones: [zone] };
        const [x, y] = middleOf(ring);
        const line = [-60, 60].map((reach) =>
          plane.toLonLat([x + reach * Math.cos(angle), y + reach * Math.sin(angle)]),
        );
        const split = splitZone(yard, 'lawn', line, 'half', plane);
        // A line that only grazes the zone is refused in words.
        if (!split.ok) return expect(split.issue.message).not.toBe('');
        const whole = measureYard(yard).totals[0]?.netM2 ?? Number.NaN;
        near(sumOf([...measureYard(split.yard).zones.values()].map((one) => one.netM2)), whole);
        const joined = joinZones(split.yard, ['lawn', 'half'], plane);
        if (!joined.ok) throw new Error(joined.issue.message);
        expect(joined.yard.zones).toHaveLength(1);
        near(measureYard(joined.yard).totals[0]?.netM2 ?? Number.NaN, whole);
      }),
      { numRuns: 60 },
    );
  });
});

function middleOf(ring: Ring): [number, number] {
  const points = ring.slice(1).map((p) => plane.toPlane(p));
  return [sumOf(points.map((p) => p[0])) / points.length, sumOf(points.map((p) => p[1])) / points.length];
}

describe('error of a cut zone', () => {
  it('is the spread of 10,000 draws of all corners, within 3 %', () => {
    const at = (...corners: [number, number][]) => close(corners.map((corner) => plane.toLonLat(corner)));
    const lawn = newZone('lawn', 'turf', [[at([0, 0], [30, 2], [34, 20], [15, 26], [-3, 18])]], {
      survey: { method: 'traced', vertexSigmaM: 0.2, scaleSigma: 0, source: '' },
    });
    // one bed within, one across the border, with a sigma of its own
    const island = newZone('island', 'bed', [[at([6, 6], [12, 5], [13, 11], [7, 12])]], {
      survey: { method: 'tape', vertexSigmaM: 0.1, scaleSigma: 0, source: '' },
    });
    const edge = newZone('edge', 'bed', [[at([25, 8], [40, 8], [40, 15], [24, 14])]], {
      survey: { method: 'traced', vertexSigmaM: 0.3, scaleSigma: 0, source: '' },
    });
    const zones = [lawn, island, edge];
    const sigmaM2 = measureYard({ ...emptyYard('y', 'Yard'), zones }).zones.get('lawn')?.netSigmaM2 ?? 0;
    const random = seededRandom(1988);
    const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const drawn = zones.map((zone) => ({
      corners: (zone.parts[0]?.[0] ?? []).slice(1).map((p) => plane.toPlane(p)),
      sigmaM: zone.survey.vertexSigmaM,
    }));
    const areas = Array.from({ length: 10_000 }, () => {
      const [whole, ...cuts] = drawn.map(({ corners, sigmaM }) => {
        const moved = corners.map(([x, y]) => [x + sigmaM * gauss(), y + sigmaM * gauss()] as const);
        return [[...moved, moved[0] ?? ([0, 0] as const)]];
      });
      return planeAreaOf(differenceOf(whole ? [whole] : [], cuts));
    });
    const mean = sumOf(areas) / areas.length;
    const spread = Math.sqrt(sumOf(areas.map((area) => (area - mean) ** 2)) / (areas.length - 1));
    expect(Math.abs(spread / sigmaM2 - 1)).toBeLessThan(0.03);
  });
});
