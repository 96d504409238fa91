import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { codesOf, openFiles, polygonFile } from './testDesk';

const RING = [
  [-96.5, 41.2],
  [-96.4995, 41.2],
  [-96.4995, 41.2003],
  [-96.5, 41.2],
];
const FILE = polygonFile({ Lawn: RING });
const codes = async (files: Parameters<typeof openFiles>[0]) =>
  (await openFiles(files)).overview.issues.map((issue) => issue.code);

describe('files that lie about what they are', () => {
  it('are read by their content, whatever their ending', async () => {
    expect((await openFiles({ 'a.kml': FILE })).rows[0]?.outcome).toBe('zone');
    expect((await openFiles({ 'a.txt': zipSync({ 'b.geojson': strToU8(FILE) }) })).rows[0]?.outcome).toBe(
      'zone',
    );
    expect(await codes({ 'a.geojson': new Uint8Array([0, 1, 2, 3, 4, 5, 6, 7]) })).toEqual(['unknown-file']);
    expect(await codes({ 'a.geojson': 'these are not coordinates' })).toEqual(['unknown-file']);
    expect(await codes({ 'a.geojson': '' })).toEqual(['empty-file']);
    expect(await codes({ 'a.kml': '<html><body>x</body></html>' })).toEqual(['unknown-xml']);
  });

  it.each([
    ['utf-8 with a mark', Uint8Array.of(0xef, 0xbb, 0xbf), 'utf8'],
    ['utf-16, little end first', Uint8Array.of(0xff, 0xfe), 'utf16le'],
    ['utf-16 without a mark', new Uint8Array(), 'utf16le'],
  ] as const)('come in %s', async (_name, mark, coding) => {
    const bytes = new Uint8Array([...mark, ...Buffer.from(FILE, coding)]);
    expect((await openFiles({ 'a.geojson': bytes })).rows[0]?.name).toBe('Lawn');
  });
});

describe('archives', () => {
  it('cut off, damaged, too large or empty are told and not read', async () => {
    const zip = zipSync({ 'doc.kml': strToU8('<kml/>'.repeat(50)) });
    expect(await codes({ 'a.kmz': zip.slice(0, zip.length - 30) })).toEqual(['zip-cut-off']);
    const damaged = zip.slice();
    damaged.fill(0xff, 40, 55);
    expect(await codes({ 'a.kmz': damaged })).toEqual(['zip-damaged']);
    expect(await codes({ 'a.zip': zipSync({ 'a.exe': strToU8('x') }) })).toEqual(['zip-empty']);
    const bomb = zipSync({ 'doc.kml': new Uint8Array(80_000_000) }, { level: 1 });
    expect(bomb.length).toBeLessThan(400_000);
    expect(await codes({ 'a.kmz': bomb })).toEqual(['zip-too-big']);
  }, 30_000);
});

describe('XML', () => {
  const kml = (inner: string, head = '') =>
    `<?xml version="1.0"?>${head}<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inner}</Document></kml>`;

  it('with a document type, too deep or broken is refused with the reason', async () => {
    const bomb = '<!DOCTYPE k [<!ENTITY a "xxxxxxxxxx"><!ENTITY b "&a;&a;&a;&a;">]>';
    expect(await codes({ 'a.kml': kml('&b;', bomb) })).toEqual(['xml-doctype']);
    expect(await codes({ 'a.kml': kml('<Folder>'.repeat(100_000)) })).toEqual(['xml-too-deep']);
    expect(await codes({ 'a.kml': kml('<Placemark>').slice(0, -30) })).toEqual(['bad-xml']);
  });

  it('with a coordinate that is none is refused as that placemark, with the corner', async () => {
    const shape =
      '<Placemark><name>L</name><Polygon><outerBoundaryIs><LinearRing><coordinates>-96.5,41.2 NaN,41.2 -96.49,41.3 -96.5,41.2</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>';
    const { rows } = await openFiles({ 'a.kml': kml(shape) });
    expect(rows[0]?.notes[0]?.message).toContain('Placemark 1 (“L”): corner 2 (“NaN,41.2”)');
  });

  it('with links and ground pictures fetches nothing and tells', async () => {
    const link = '<NetworkLink><Link><href>https://far.example/x.kml</href></Link></NetworkLink>';
    const overlay = '<GroundOverlay><name>Scan</name><Icon><href>x.png</href></Icon></GroundOverlay>';
    expect(await codes({ 'a.kml': kml(link + overlay) })).toEqual(['network-link', 'ground-overlay']);
  });
});

describe('GeoJSON', () => {
  it('cut off keeps the features that came through whole', async () => {
    const two = JSON.parse(FILE);
    two.features.push({ ...two.features[0], properties: { name: 'Second' } });
    const text = JSON.stringify(two);
    const { rows, overview } = await openFiles({ 'a.geojson': text.slice(0, text.indexOf('Second') + 20) });
    expect(rows.map((row) => row.name)).toEqual(['Lawn']);
    expect(overview.issues.map((issue) => issue.code)).toEqual(['cut-off']);
  });

  it('nested a hundred thousand deep, or of wrong kinds, breaks nothing', async () => {
    const deep = `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":${'['.repeat(100_000)}${']'.repeat(100_000)}}}]}`;
    const { rows } = await openFiles({ 'a.geojson': deep });
    expect(rows[0]?.outcome).toBe('refused');
    expect(await codes({ 'a.geojson': '{"type":"Topology"}' })).toEqual(['not-geojson']);
    expect(await codes({ 'a.geojson': '[1, 2]' })).toEqual(['not-geojson']);
    expect(await codes({ 'a.geojson': '{"type": "FeatureCollection", "features": []}' })).toEqual([
      'no-features',
    ]);
  });

  it('in a sequence of features (RFC 8142) or one a line comes in', async () => {
    const one = JSON.stringify(JSON.parse(FILE).features[0]);
    for (const text of [`\u001e${one}\n\u001e${one}\n`, `${one}\r\n${one}\r\n`, `${one}\nnonsense\n`]) {
      const { rows } = await openFiles({ 'a.geojsonl': text });
      expect(rows.length).toBe(2);
      expect(rows[0]?.outcome).toBe('zone');
    }
  });

  it('keeps names as plain text on one line', async () => {
    const { rows } = await openFiles({
      'a.geojson': polygonFile({ '<img src=x onerror=alert(1)>\u0000\n lawn': RING }),
    });
    expect(rows[0]?.name).toBe('<img src=x onerror=alert(1)> lawn');
    expect(codesOf(rows[0])).toEqual([]);
  });
});

describe('shapefiles', () => {
  it('cut off, without parts, or with a table that says too much are told', async () => {
    expect(await codes({ 'a.shp': Uint8Array.of(0, 0, 0x27, 0x0a, 0, 0) })).toEqual(['shp-cut-off']);
    expect(await codes({ 'a.dbf': Uint8Array.of(3, 1, 1, 1, 0xff, 0xff, 0xff, 0xff) })).toEqual(['no-shp']);
    const shp = new Uint8Array(100);
    new DataView(shp.buffer).setInt32(0, 9994);
    new DataView(shp.buffer).setInt32(24, 50);
    new DataView(shp.buffer).setInt32(32, 5, true);
    const dbf = new Uint8Array(70);
    dbf[0] = 3;
    new DataView(dbf.buffer).setUint32(4, 0xffffffff, true);
    new DataView(dbf.buffer).setUint16(8, 65, true);
    new DataView(dbf.buffer).setUint16(10, 1, true);
    dbf[64] = 13;
    const found = await codes({ 'a.shp': shp, 'a.dbf': dbf });
    expect(found).toContain('dbf-cut-off');
    expect(found).toContain('no-prj');
  });
});
