import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { yardFromGeoJson, yardToGeoJson } from './codec';
import type { Yard } from './types';

type Json = Record<string, unknown>;
const file = (yard: Yard = testYard()) => JSON.parse(JSON.stringify(yardToGeoJson(yard)));
const codes = (value: unknown) => yardFromGeoJson(value).issues.map((issue) => issue.code);

describe('yardToGeoJson', () => {
  it('writes outer rings counter-clockwise and holes clockwise, closed (RFC 7946, section 3.1.6)', () => {
    const yard = testYard();
    const turned = {
      ...yard,
      zones: yard.zones.map((zone) => ({
        ...zone,
        parts: zone.parts.map((rings) => rings.map((ring) => ring.toReversed())),
      })),
    };
    for (const feature of file(turned).features) {
      const { type, coordinates } = feature.geometry;
      if (type !== 'Polygon' && type !== 'MultiPolygon') continue;
      for (const rings of type === 'Polygon' ? [coordinates] : coordinates) {
        rings.forEach((ring: [number, number][], i: number) => {
          // Sum over the edges of (x2 - x1)(y2 + y1): negative when counter-clockwise.
          const sum = ring
            .slice(1)
            .reduce((s, p, k) => s + (p[0] - (ring[k]?.[0] ?? 0)) * (p[1] + (ring[k]?.[1] ?? 0) - 100), 0);
          expect(Math.sign(sum)).toBe(i === 0 ? -1 : 1);
          expect(ring.at(-1)).toEqual(ring[0]);
        });
      }
    }
  });

  it('writes one part as Polygon, several as MultiPolygon, marks as Point', () => {
    expect(file().features.map((f: { geometry: { type: string } }) => f.geometry.type)).toEqual([
      'Polygon',
      'Polygon',
      'MultiPolygon',
      'Polygon',
      'Point',
      'LineString',
    ]);
  });

  it('rounds to the decimals asked for', () => {
    const yard = testYard();
    const fine = {
      ...yard,
      marks: [{ ...yard.marks[0], position: [10.1234567890123, -50.1234567890123] }],
    };
    const of = (decimals: number) =>
      (
        yardToGeoJson(fine as unknown as Yard, decimals).features[4] as {
          geometry: { coordinates: number[] };
        }
      ).geometry;
    expect(of(11).coordinates).toEqual([10.12345678901, -50.12345678901]);
    expect(of(9).coordinates).toEqual([10.123456789, -50.123456789]);
  });
});

describe('yardFromGeoJson', () => {
  it('gives back the yard, unknown members included', () => {
    expect(yardFromGeoJson(file())).toEqual({ yard: testYard(), issues: [] });
  });

  it('keeps members unknown to it inside products, visits and settings', () => {
    const value = file();
    value.measuredYard.products[0].hopper = { setting: 4 };
    value.measuredYard.visits[0].doses[0].helper = 'Kim';
    value.measuredYard.settings.theme = 'dusk';
    const { yard, issues } = yardFromGeoJson(value);
    expect(issues).toEqual([]);
    expect(JSON.parse(JSON.stringify(yardToGeoJson(yard as Yard)))).toEqual(value);
  });

  it('keeps the good parts and names every fault with its place', () => {
    const value = file();
    value.features[0].properties.kind = 'meadow';
    value.features[1].geometry.coordinates[0][2] = [10, 'x'];
    value.features[2].geometry.coordinates[1][0][1] = [50, 95];
    value.features[4].geometry.coordinates = [10];
    value.measuredYard.products[0].analysis.nPct = -1;
    value.measuredYard.visits[0].date = 'soon';
    value.measuredYard.settings.strips.wellM = 'far';
    const { yard, issues } = yardFromGeoJson(value);
    expect(issues.map(({ code, place }) => [code, place.path])).toEqual([
      ['unknown-kind', 'features[0].properties.kind'],
      ['not-a-number', 'features[1].geometry.coordinates[0][2]'],
      ['swapped-order', 'features[2].geometry.coordinates[1][0][1]'],
      ['bad-position', 'features[4].geometry.coordinates'],
      ['bad-setting', 'measuredYard.settings.strips.wellM'],
      ['bad-product', 'measuredYard.products[0].analysis.nPct'],
      ['bad-visit', 'measuredYard.visits[0].date'],
    ]);
    expect(issues[0]?.message).toBe(
      'Feature 1 (“Lawn”): the kind "meadow" is not known; it must be one of structure, water, hardscape, bed, other, turf.',
    );
    expect(issues[5]?.message).toBe(
      'Product 1 (“Granular 20-0-10”): analysis.nPct must be 0 or more; it was left out.',
    );
    expect(yard?.zones.map((zone) => zone.id)).toEqual(['z-strip']);
    expect(yard?.products.map((product) => product.id)).toEqual(['p-liquid']);
    expect(yard?.settings.strips.wellM).toBe(15.24);
  });

  it('closes an open ring with a note and refuses one of two corners', () => {
    const value = file();
    value.features[1].geometry.coordinates[0].pop();
    value.features[3].geometry.coordinates[0] = [
      [1, 1],
      [2, 2],
      [1, 1],
    ];
    expect(codes(value)).toEqual(['ring-closed', 'too-few-positions']);
    expect(yardFromGeoJson(value).yard?.zones[1]).toEqual(testYard().zones[1]);
  });

  it('joins ends that almost meet to one corner', () => {
    const value = file();
    value.features[1].geometry.coordinates[0][4] = [10.000100001, 50.00005];
    expect(codes(value)).toEqual(['ring-closed']);
    expect(yardFromGeoJson(value).yard?.zones[1]).toEqual(testYard().zones[1]);
  });

  it('gives a second feature of one id a new one', () => {
    const value = file();
    value.features[1].id = 'z-lawn';
    expect(codes(value)).toEqual(['double-id']);
    expect(yardFromGeoJson(value).yard?.zones[1]?.id).toBe('z-lawn-2');
  });

  it('refuses a newer version and says which it reads', () => {
    const value = file();
    value.measuredYard.schemaVersion = 7;
    const { yard, issues } = yardFromGeoJson(value);
    expect(yard).toBeNull();
    expect(issues[0]?.code).toBe('newer-version');
    expect(issues[0]?.message).toContain('file version 7; this one reads up to 4');
  });

  it('brings a file without a version to today’s', () => {
    const value = file() as Json & { measuredYard: Json };
    const { id, name } = value.measuredYard;
    const { yard, issues } = yardFromGeoJson({ ...value, measuredYard: { id, name } });
    expect(issues).toEqual([]);
    expect(yard?.schemaVersion).toBe(4);
    expect([yard?.products, yard?.visits, yard?.zones.length]).toEqual([[], [], 4]);
  });

  it.each([null, 3, 'x', [], {}, { type: 'FeatureCollection' }, { type: 'FeatureCollection', features: [] }])(
    'refuses %j without throwing',
    (value) => {
      const { yard, issues } = yardFromGeoJson(value);
      expect(yard).toBeNull();
      expect(issues.map((issue) => issue.severity)).toEqual(['error']);
    },
  );

  it('takes a member called __proto__ as plain data', () => {
    const text = JSON.stringify(file()).replace('"colour":"none"', '"__proto__":{"kind":"bed"}');
    const { yard } = yardFromGeoJson(JSON.parse(text));
    expect(Object.keys(yard?.zones[0]?.extra.properties ?? {})).toEqual(['__proto__']);
    expect(JSON.stringify(yardToGeoJson(yard as Yard))).toContain('"__proto__":{"kind":"bed"}');
  });
});

describe('the record of a dose that is done', () => {
  const laid = {
    productName: 'Feed',
    useName: '',
    planned: { unit: 'kg', value: 4.5 },
    densityKgPerL: null,
    analysis: { nPct: 20, p2o5Pct: 0, k2oPct: 0, slowNPctOfN: null, elementsPct: {} },
    zones: [{ zoneId: 'gone', name: 'Old lawn', areaM2: 90 }],
  } as const;
  const withRecord = (record: unknown): Yard => {
    const yard = testYard();
    const [visit] = yard.visits;
    if (!visit) throw new Error('no visit');
    const doses = visit.doses.map((dose) => ({ ...dose, laid: record as typeof laid }));
    return { ...yard, visits: [{ ...visit, doneOn: '2026-05-01', doses }] };
  };
  it('comes back as it was written, though its zone is gone', () => {
    const { yard, issues } = yardFromGeoJson(file(withRecord(laid)));
    expect(issues).toEqual([]);
    expect(yard?.visits[0]?.doses[0]?.laid).toEqual(laid);
  });
  it('with an impossible area leaves its visit out and is told', () => {
    const bad = { ...laid, zones: [{ zoneId: 'gone', name: '', areaM2: -1 }] };
    expect(codes(file(withRecord(bad)))).toEqual(['bad-visit']);
  });
});
