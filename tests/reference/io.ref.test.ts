import { createRequire } from 'node:module';
import { strToU8, unzipSync, zipSync } from 'fflate';
import proj4 from 'proj4';
import { read as readPeerShapefile } from 'shapefile';
import { describe, expect, it } from 'vitest';
import { exportFile } from '../../src/io/exportFile';
import { EXPORT_FORMATS, type ExportFormat } from '../../src/io/exportFormats';
import { type ExportOptions, exportShapes } from '../../src/io/exportShapes';
import { readShape } from '../../src/io/readShape';
import { buildAll, codesOf, openFiles } from '../../src/io/testDesk';
import { areaOfPartsM2, areaOfRingsM2, figuresOfParts } from '../../src/measure/geodesic';
import { measureYard } from '../../src/measure/measureYard';
import { newZone } from '../../src/yard/defaults';
import type { Yard } from '../../src/yard/types';
import { testYard } from '../fixtures/testYard';

const OUTER = [
  [100, 0],
  [101, 0],
  [101, 1],
  [100, 1],
  [100, 0],
];
const HOLE = [
  [100.8, 0.8],
  [100.8, 0.2],
  [100.2, 0.2],
  [100.2, 0.8],
  [100.8, 0.8],
];
const read = (geometry: unknown) => {
  const result = readShape(geometry, { isSwapped: false }, null);
  if (!result.ok) throw new Error(result.fault.message);
  return result.shape;
};

/* Geometries of RFC 7946, appendix A. */
describe('the examples of RFC 7946', () => {
  it('A.1, A.2: a point and a line', () => {
    expect(read({ type: 'Point', coordinates: [100, 0] }).points).toEqual([[100, 0]]);
    const line = [
      [100, 0],
      [101, 1],
    ];
    expect(read({ type: 'LineString', coordinates: line }).lines).toEqual([line]);
  });

  it('A.3: polygons without and with a hole', () => {
    expect(read({ type: 'Polygon', coordinates: [OUTER] }).polygons).toEqual([[OUTER]]);
    expect(read({ type: 'Polygon', coordinates: [OUTER, HOLE] }).polygons).toEqual([[OUTER, HOLE]]);
    // A square of one degree at the equator: GeographicLib (geographiclib-rs, PolygonArea example)
    expect(areaOfRingsM2(read({ type: 'Polygon', coordinates: [OUTER] }).polygons[0] ?? [])).toBeCloseTo(
      12308778361.469452,
      3,
    );
  });

  it('A.4 to A.7: multiple geometries and a collection', () => {
    expect(
      read({
        type: 'MultiPoint',
        coordinates: [
          [100, 0],
          [101, 1],
        ],
      }).points.length,
    ).toBe(2);
    const lines = [
      [
        [100, 0],
        [101, 1],
      ],
      [
        [102, 2],
        [103, 3],
      ],
    ];
    expect(read({ type: 'MultiLineString', coordinates: lines }).lines).toEqual(lines);
    const second = [
      [102, 2],
      [103, 2],
      [103, 3],
      [102, 3],
      [102, 2],
    ];
    expect(read({ type: 'MultiPolygon', coordinates: [[second], [OUTER, HOLE]] }).polygons).toEqual([
      [second],
      [OUTER, HOLE],
    ]);
    const collection = read({
      type: 'GeometryCollection',
      geometries: [
        { type: 'Point', coordinates: [100, 0] },
        { type: 'LineString', coordinates: lines[0] },
      ],
    });
    expect([collection.points.length, collection.lines.length]).toEqual([1, 1]);
  });

  it('says that ground of a degree is no yard', async () => {
    const { rows } = await openFiles({
      'a.json': JSON.stringify({ type: 'Polygon', coordinates: [OUTER, HOLE] }),
    });
    expect(codesOf(rows[0])).toEqual(['too-wide']);
  });
});

/* The polygon with an inner boundary in the KML reference (also the sample of the KML 2.1 schema's innerBoundaryIs). */
const KML_OUTER =
  '-77.05788457660967,38.87253259892824,100 -77.05465973756702,38.87291016281703,100 -77.05315536854791,38.87053267794386,100 -77.05552622493516,38.868757801256,100 -77.05844056290393,38.86996206506943,100 -77.05788457660967,38.87253259892824,100';
const KML_INNER =
  '-77.05668055019126,38.87154239798456,100 -77.05542625960818,38.87167890344077,100 -77.05485125901024,38.87076535397792,100 -77.05577677433152,38.87008686581446,100 -77.05691162017543,38.87054446963351,100 -77.05668055019126,38.87154239798456,100';
const KML = `<?xml version="1.0" encoding="UTF-8"?><kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>Five sides</name><Polygon><extrude>1</extrude><altitudeMode>relativeToGround</altitudeMode><outerBoundaryIs><LinearRing><coordinates> ${KML_OUTER} </coordinates></LinearRing></outerBoundaryIs><innerBoundaryIs><LinearRing><coordinates> ${KML_INNER} </coordinates></LinearRing></innerBoundaryIs></Polygon></Placemark></kml>`;
const ringOf = (text: string) => text.split(' ').map((tuple) => tuple.split(',').slice(0, 2).map(Number));

describe('the KML reference’s polygon', () => {
  it.each([
    ['kml', KML],
    ['kmz', zipSync({ 'doc.kml': strToU8(KML) })],
    ['kml with a prefix', KML.replaceAll(/(<\/?)(?=[a-z])/gi, '$1kml:').replace('xmlns=', 'xmlns:kml=')],
  ] as const)('as %s keeps every digit', async (_name, content) => {
    const { desk } = await openFiles({ 'a.kml': content });
    expect(buildAll(desk).zones[0]?.parts).toEqual([[ringOf(KML_OUTER), ringOf(KML_INNER)]]);
  });
});

/* A waypoint and a track as GPX 1.1 documents have them; elements by the schema, topografix.com/GPX/1/1/gpx.xsd. */
describe('GPX 1.1', () => {
  const gpx = (inner: string) =>
    `<?xml version="1.0" encoding="UTF-8" standalone="no"?><gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="byHand">${inner}</gpx>`;
  const points = (corners: readonly (readonly [number, number])[], tag: string) =>
    corners.map(([lat, lon]) => `<${tag} lat="${lat}" lon="${lon}"><ele>4.46</ele></${tag}>`).join('');
  const corners = [
    [41.2, -96.5],
    [41.2, -96.4995],
    [41.2003, -96.4995],
    [41.2003, -96.5],
    [41.200002, -96.5],
  ] as const;

  it('routes and tracks close by the rule, waypoints become marks', async () => {
    const file = gpx(
      `<wpt lat="41.2001" lon="-96.5"><ele>12.86</ele><time>2005-05-16T11:49:06Z</time><name>Well</name></wpt><rte><name>Back lawn</name>${points(corners, 'rtept')}</rte><trk><name>Bed</name><trkseg>${points(corners, 'trkpt')}</trkseg><trkseg>${points(corners.slice(0, 2), 'trkpt')}</trkseg></trk>`,
    );
    const { rows } = await openFiles({ 'a.gpx': file });
    expect(rows.map((row) => [row.place, row.outcome, row.kind])).toEqual([
      ['Track 1, segment 1', 'zone', 'bed'],
      ['Track 1, segment 2', 'kept', 'other'],
      ['Route 1', 'zone', 'turf'],
      ['Waypoint 1', 'mark', 'well'],
    ]);
    expect(codesOf(rows[2])).toEqual(['line-closed']);
  });
});

describe('round trips: files written here and read again', () => {
  /** the test yard, with a zone of two parts, one of them with a hole, and a name that is markup. */
  function yardToWrite(): Yard {
    const yard = testYard();
    const [first] = yard.zones;
    const [lon, lat] = first?.parts[0]?.[0]?.[0] ?? [0, 0];
    const box = (x: number, y: number, size: number) => [
      [lon + x, lat + y] as const,
      [lon + x + size, lat + y] as const,
      [lon + x + size, lat + y + size] as const,
      [lon + x, lat + y + size] as const,
      [lon + x, lat + y] as const,
    ];
    const extra = newZone(
      'z-parts',
      'turf',
      [[box(0.01, 0.01, 0.0004), box(0.0101, 0.0101, 0.0001)], [box(0.011, 0.01, 0.0003)]],
      { name: 'Grün <b>&"Süd"</b> 草' },
    );
    return { ...yard, zones: [...yard.zones, extra] };
  }
  const options: ExportOptions = { zoneIds: null, outline: 'drawn', withMarks: true };
  const yard = yardToWrite();
  const measured = measureYard(yard);
  const shapes = exportShapes(yard, measured, options).shapes;
  const today = new Date(2026, 4, 1);
  const write = (format: ExportFormat, more: Partial<ExportOptions> = {}) =>
    exportFile(yard, measured, format, { ...options, ...more }, today);
  const endings: Record<string, string> = { shapefile: 'a.zip' };

  it.each(['kml', 'kmz', 'shapefile', 'geojson'] as const)(
    '%s: areas to 1e-6, names and marks',
    async (format) => {
      const file = await write(format);
      const { desk } = await openFiles({ [endings[format] ?? `a.${format}`]: file.content });
      const { zones, marks } = buildAll(desk);
      expect(zones.map((zone) => zone.name)).toEqual(shapes.map(({ zone }) => zone.name));
      expect(zones.map((zone) => zone.kind)).toEqual(shapes.map(({ zone }) => zone.kind));
      zones.forEach((zone, i) => {
        const before = areaOfPartsM2(shapes[i]?.parts ?? []);
        expect(Math.abs(areaOfPartsM2(zone.parts) / before - 1)).toBeLessThan(1e-6);
      });
      expect(marks.map((mark) => [mark.name, mark.kind])).toEqual(
        yard.marks.map((mark) => [mark.name, mark.kind]),
      );
    },
  );

  it('gpx: outlines to 1e-6; a hole is a track of its own and comes in only when ticked', async () => {
    const { rows, desk } = await openFiles({ 'a.gpx': (await write('gpx')).content });
    const outer = shapes.flatMap(({ parts }) => parts.map((rings) => areaOfRingsM2(rings.slice(0, 1))));
    const { zones } = buildAll(desk);
    expect(zones.map((zone) => zone.survey.method)).toEqual(zones.map(() => 'imported'));
    zones.forEach((zone, i) => {
      expect(Math.abs(areaOfPartsM2(zone.parts) / (outer[i] ?? 0) - 1)).toBeLessThan(1e-6);
    });
    const holes = shapes.flatMap(({ parts }) => parts.flatMap((rings) => rings.slice(1)));
    expect(rows.filter((row) => codesOf(row)?.includes('gpx-hole')).length).toBe(holes.length);
  });

  it('net outlines carry the net areas', async () => {
    const { desk } = await openFiles({ 'a.geojson': (await write('geojson', { outline: 'net' })).content });
    for (const zone of buildAll(desk).zones) {
      const own = [...measured.zones.values()].find((each) => each.zoneId === zone.id);
      const netM2 = own?.netM2 ?? Number.NaN;
      expect(Math.abs(figuresOfParts(zone.parts).areaM2 / netM2 - 1)).toBeLessThan(1e-6);
    }
  });

  it('a shapefile written here is read by a peer (the shapefile package): rings, turns, names, figures', async () => {
    const zip = unzipSync((await write('shapefile', { withMarks: false })).content as Uint8Array);
    const part = (ending: string) =>
      Object.entries(zip).find(([name]) => name.endsWith(ending))?.[1] as Uint8Array;
    const peer = await readPeerShapefile(part('.shp').slice().buffer, part('.dbf').slice().buffer, {
      encoding: 'utf-8',
    });
    expect(peer.features.length).toBe(shapes.length);
    peer.features.forEach((feature, i) => {
      const shape = shapes[i];
      const { geometry } = feature;
      const polygons =
        geometry.type === 'Polygon'
          ? [geometry.coordinates]
          : geometry.type === 'MultiPolygon'
            ? geometry.coordinates
            : [];
      expect(polygons.length).toBe(shape?.parts.length);
      const area = areaOfPartsM2(polygons as never);
      expect(Math.abs(area / areaOfPartsM2(shape?.parts ?? []) - 1)).toBeLessThan(1e-6);
      expect(feature.properties?.NAME).toBe(shape?.zone.name);
      expect(Number(feature.properties?.NET_M2)).toBeCloseTo(shape?.netM2 ?? 0, 5);
    });
  });

  it('a shapefile in another reference system, written by a peer’s projection, lands on its place', async () => {
    // proj4 as the peer: the drawn corners in UTM zone 14 north
    const utm = '+proj=utm +zone=14 +datum=WGS84 +units=m +no_defs';
    const wkt =
      'PROJCS["WGS_1984_UTM_Zone_14N",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-99.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]';
    const places = [
      [-97.1, 39.8],
      [-97.0995, 39.8],
      [-97.0995, 39.8004],
      [-97.1, 39.8],
    ];
    const ring = places.map((place) => proj4('WGS84', utm, place));
    const write_ = createRequire(import.meta.url)('@mapbox/shp-write/src/write.js') as (
      rows: object[],
      type: string,
      geometries: unknown[],
      done: (error: unknown, files: Record<'shp' | 'shx' | 'dbf', DataView>) => void,
    ) => void;
    let files: Record<string, Uint8Array> = {};
    // shp-write as the peer writer
    write_([{ name: 'Field lawn' }], 'POLYGON', [[ring]], (_error, made) => {
      files = { 'a.shp': new Uint8Array(made.shp.buffer), 'a.dbf': new Uint8Array(made.dbf.buffer) };
    });
    const { desk, overview } = await openFiles({ ...files, 'a.prj': wkt });
    expect(overview.crsName).toContain('UTM');
    const [zone] = buildAll(desk).zones;
    expect(zone?.name).toBe('Field lawn');
    const corners = zone?.parts[0]?.[0] ?? [];
    for (const [lon, lat] of places) {
      const gap = Math.min(...corners.map(([x, y]) => Math.hypot(x - (lon ?? 0), y - (lat ?? 0))));
      expect(gap).toBeLessThan(1e-8);
    }
    const bare = await openFiles(files);
    expect(bare.overview.asksCrs).not.toBeNull();
    expect(bare.overview.issues.map((issue) => issue.code)).toContain('no-prj');
  });

  it('writes every format it offers', async () => {
    for (const format of EXPORT_FORMATS) expect((await write(format)).content.length).toBeGreaterThan(100);
  });
});

/* RFC 4180 for the table; OWASP, "CSV Injection", for cells that a spreadsheet would run. */
describe('the table of areas', () => {
  it('quotes, names its units and runs no formula', async () => {
    const yard = testYard();
    const [first, ...rest] = yard.zones;
    if (!first) throw new Error('no zone');
    const wild = { ...first, name: '=HYPERLINK("x","y")', note: 'two\nlines', slope: 0.1 };
    const changed = {
      ...yard,
      zones: [wild, ...rest],
      settings: { ...yard.settings, units: 'metric' as const },
    };
    const measured = measureYard(changed);
    const { content } = await exportFile(
      changed,
      measured,
      'csv',
      { zoneIds: null, outline: 'net', withMarks: false },
      new Date(0),
    );
    const text = String(content);
    expect(text.startsWith('\uFEFFZone,Kind,Class,Gross area (m²),Net area (m²),')).toBe(true);
    expect(text).toContain(`\r\n"'=HYPERLINK(""x"",""y"")",`);
    expect(text).toContain('"two\nlines"');
    const netM2 = measured.zones.get(first.id)?.netM2 ?? 0;
    // 10 %: plan times 1.00499 (geometry)
    expect(text).toContain(`,10.00,${(netM2 * 1.004987562).toFixed(2)},`);
  });
});
