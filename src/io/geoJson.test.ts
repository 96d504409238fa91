import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { type ReadFile, readGeoJsonText } from './readGeoJson';
import { fileNameOf, yardToText } from './writeGeoJson';

const FIXTURES = join(import.meta.dirname, '../../tests/fixtures/io');
const cases = (folder: string) =>
  readdirSync(join(FIXTURES, folder)).filter((name) => name.endsWith('.geojson'));
const textOf = (...path: string[]) => readFileSync(join(FIXTURES, ...path), 'utf8');
const jsonOf = (...path: string[]) => JSON.parse(textOf(...path));

function counter() {
  let n = 0;
  return (prefix: string) => `${prefix}-${++n}`;
}

/** What a fixture states of a file that was read. */
function summary({ yard, zones, marks, issues }: ReadFile) {
  return {
    yard: yard && {
      id: yard.id,
      name: yard.name,
      schemaVersion: yard.schemaVersion,
      products: yard.products.length,
      visits: yard.visits.length,
    },
    zones: zones.map(({ id, name, kind, mowing, material, parts, survey, extra }) => ({
      id,
      name,
      kind,
      mowing,
      material,
      parts: parts.length,
      method: survey.method,
      extra,
    })),
    marks,
    issues: issues.map(({ code, severity, message, place }) => [code, severity, message, place.path]),
  };
}

describe('files that are read', () => {
  it.each(cases('in'))('%s', (name) => {
    const read = readGeoJsonText(textOf('in', name), counter());
    expect(summary(read)).toEqual(jsonOf('out', name.replace('.geojson', '.json')));
  });
});

describe('files with faults: the exact issues, and what is kept', () => {
  it.each(cases('bad'))('%s', (name) => {
    const { zones, issues } = readGeoJsonText(textOf('bad', name), counter());
    const expected = jsonOf('bad', name.replace('.geojson', '.json'));
    expect(zones.map((zone) => zone.name)).toEqual(expected.kept);
    expect(issues.length).toBe(expected.issues.length);
    expected.issues.forEach(([code, message, path]: (string | null)[], i: number) => {
      expect(issues[i]?.severity).toBe('error');
      if (code !== 'self-crossing') expect(issues[i]?.code).toBe(code);
      if (message !== null) expect(issues[i]?.message).toBe(message);
      if (path !== null) expect(issues[i]?.place.path).toBe(path);
    });
  });

  it('names the zone that crosses itself', () => {
    const { issues } = readGeoJsonText(textOf('bad', 'self-crossing.geojson'), counter());
    expect(issues[0]?.message).toMatch(/^“Bow tie”: /);
    expect(issues[0]?.place.zoneId).toBe('z-bow');
  });
});

describe('other shapes of GeoJSON', () => {
  const polygon = {
    type: 'Polygon',
    coordinates: [
      [
        [8, 47],
        [8.1, 47],
        [8.1, 47.1],
        [8, 47],
      ],
    ],
  };
  it.each([
    polygon,
    { type: 'Feature', properties: null, geometry: polygon },
    { type: 'GeometryCollection', geometries: [polygon] },
  ])('takes $type', (value) => {
    expect(readGeoJsonText(JSON.stringify(value), counter()).zones.length).toBe(1);
  });

  it('warns of a reference system other than WGS 84', () => {
    const value = {
      type: 'FeatureCollection',
      crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::3857' } },
      features: [],
    };
    expect(readGeoJsonText(JSON.stringify(value), counter()).issues.map((issue) => issue.code)).toEqual([
      'foreign-crs',
    ]);
  });
});

describe('a yard file with pictures', () => {
  const layer = { id: 'l-1', name: 'Town', attribution: 'Town' };
  const xyz = { ...layer, kind: 'xyz', maxNativeZoom: 19 };
  const wms = { ...layer, kind: 'wms', layers: '0', version: '1.3.0' };
  const picture = { ...layer, kind: 'picture', west: 8, south: 47, east: 8.1, north: 47.1 };
  const read = (settings: object) => {
    const file = {
      type: 'FeatureCollection',
      measuredYard: { schemaVersion: 1, id: 'y-1', name: 'Yard', settings },
      features: [],
    };
    const { yard, issues } = readGeoJsonText(JSON.stringify(file), counter());
    return { settings: yard?.settings, codes: issues.map((issue) => issue.code) };
  };
  const own = '/tiles/{z}/{x}/{y}.png';
  const far = 'https://far.example/{z}/{x}/{y}.png';
  const hidden = '/{r}/far.example/{z}/{x}/{y}.png';
  const slashed = '/\\far.example/{z}/{x}/{y}.png';
  const tabbed = '/\t/far.example/{z}/{x}/{y}.png';

  it.each([xyz, wms, picture])('of another host, $kind: off, and waiting among its own layers', (kind) => {
    for (const url of [far, hidden]) {
      const { settings, codes } = read({ baseLayer: { ...kind, url } });
      expect(codes).toEqual(['base-layer-off']);
      expect(settings?.baseLayer).toEqual({ kind: 'grid' });
      expect(settings?.ownLayers).toEqual([{ ...kind, url }]);
    }
  });
  it.each([xyz, wms, picture])(
    'with a backslash or control character in the address, $kind: refused',
    (kind) => {
      for (const url of [slashed, tabbed, `${own}\u007f`, 'https://far.example/\n']) {
        expect(read({ baseLayer: { ...kind, url } })).toMatchObject({
          settings: { baseLayer: { kind: 'grid' }, ownLayers: [] },
          codes: ['bad-setting'],
        });
        expect(read({ ownLayers: [{ ...kind, url }] })).toMatchObject({
          settings: { ownLayers: [] },
          codes: ['bad-setting'],
        });
      }
    },
  );
  it.each([xyz, wms, picture])('of the page’s own, $kind: shown', (kind) => {
    expect(read({ baseLayer: { ...kind, url: own } })).toMatchObject({
      settings: { baseLayer: { url: own } },
      codes: [],
    });
  });
});

describe('yardToText', () => {
  it('writes a file that reads back as the same yard', () => {
    const yard = testYard();
    const text = yardToText(yard);
    expect(readGeoJsonText(text, counter())).toEqual({
      yard,
      zones: yard.zones,
      marks: yard.marks,
      issues: [],
    });
  });

  it('names the file after the yard', () => {
    expect(fileNameOf({ ...testYard(), name: 'Corner lot / № 3' })).toBe('corner-lot-no-3.geojson');
    expect(fileNameOf({ ...testYard(), name: '../..' })).toBe('yard.geojson');
  });
});
