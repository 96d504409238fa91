import { gpx } from '@tmcw/togeojson';
import { DOMParser, type Element } from '@xmldom/xmldom';
import type { FeatureCollection, LineString, Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { runOutMarks } from '../cover/marks/runOutMarks';
import { joinWalks, sweepBox, testBottles, testCoverage } from '../cover/marks/testWalk';
import { testPlane } from '../cover/testGround';
import { testHoseLiquid, testVisit, turfYard } from '../plan/testDose';
import { planVisit } from '../plan/visit';
import { DEFAULT_SETTINGS } from '../yard/defaults';
import type { Yard } from '../yard/types';
import type { PassesExport } from './writePasses';
import { passesGeoJson } from './writePassesGeoJson';
import { passesGpx } from './writePassesGpx';

const NAME = 'Feed & iron <liquid>';
const LEGS = joinWalks([
  sweepBox({ zoneId: 'front', x0: 0, y0: 0, widthM: 4, lengthM: 20, swathM: 2 }),
  sweepBox({ zoneId: 'back', x0: 13, y0: 0, widthM: 2, lengthM: 20, swathM: 2 }),
]);
const GROUND = [
  { zoneId: 'front', name: 'Front', areaM2: 80, stripM2: 0 },
  { zoneId: 'back', name: 'Back', areaM2: 40, stripM2: 0 },
];
const MARKS = runOutMarks(LEGS, GROUND, 1, testBottles(120, 64));

function exportOf(
  fields: Partial<PassesExport> = {},
  settings: Partial<Yard['settings']> = {},
): PassesExport {
  const dose = { id: 'd-1', productId: 'hose' };
  const visit = testVisit({ name: 'First feed', date: '2026-05-04' });
  const doses = visit.doses.map((each) => ({ ...each, ...dose }));
  const dated = { ...visit, doses };
  const made = turfYard([testHoseLiquid({ name: NAME })], [dated]);
  const yard = { ...made, name: 'Corner lot', settings: { ...DEFAULT_SETTINGS, ...settings } };
  return {
    yard,
    plane: testPlane(),
    visit: planVisit({
      yard,
      visit: dated,
      zonesByDose: new Map([['d-1', GROUND]]),
      sigmaByDose: new Map(),
    }),
    coverage: { visitId: visit.id, doses: [testCoverage(LEGS, testBottles(120, 64), MARKS)] },
    doseId: null,
    markName: (_, { number, left }) => `bottle ${number} at ${left}`,
    ...fields,
  };
}
const read = (content: string | Uint8Array) => JSON.parse(String(content)) as FeatureCollection;
const xml = (content: string | Uint8Array) => new DOMParser().parseFromString(String(content), 'text/xml');
const childNames = (element: Element) =>
  [...element.childNodes].filter((node) => node.nodeType === 1).map((node) => node.nodeName);

describe('passes as GeoJSON', () => {
  const file = passesGeoJson(exportOf());
  const { features } = read(file.content);

  it('a line for each leg in walking order, a point for each mark', () => {
    expect(file).toMatchObject({ name: 'corner-lot-passes-2026-05-04.geojson', issues: [] });
    expect(features.map(({ geometry }) => geometry.type)).toEqual([
      ...LEGS.map(() => 'LineString'),
      ...MARKS.map(() => 'Point'),
    ]);
    expect(file.count).toBe(LEGS.length + MARKS.length);
    expect(features.map(({ properties }) => properties?.kind).slice(0, 5)).toEqual([
      'pass',
      'turn',
      'pass',
      'carry',
      'pass',
    ]);
    expect(features[2]?.properties).toEqual({
      dose: 'd-1',
      product: NAME,
      order: 3,
      kind: 'pass',
      zone: 'Front',
      zoneId: 'front',
      coat: 1,
      number: 2,
      lengthM: 20,
    });
    expect(features[LEGS.length]?.properties).toMatchObject({
      kind: 'run-out-mark',
      name: 'bottle 1 at 0.75',
      vessel: 'container',
      number: 1,
      left: 0.75,
      leg: 1,
      alongM: 8,
      doneM2: 16,
    });
  });

  // RFC 7946, sections 3.1.1 and 4: longitude, latitude in decimal degrees; 3.1.4: two positions or more
  it('positions are longitude and latitude, within a millimetre of the walk', () => {
    const plane = testPlane();
    features.slice(0, LEGS.length).forEach((feature, i) => {
      const { coordinates } = feature.geometry as LineString;
      expect(coordinates.length).toBeGreaterThan(1);
      coordinates.forEach(([lon = 0, lat = 0], k) => {
        const [x, y] = plane.toPlane([lon, lat]);
        const at = LEGS[i]?.line[k] ?? [Number.NaN, Number.NaN];
        expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1e-3);
      });
    });
  });

  it('one dose alone; none that is there', () => {
    expect(passesGeoJson(exportOf({ doseId: 'd-1' })).count).toBe(file.count);
    const none = passesGeoJson(exportOf({ doseId: 'gone' }));
    expect(read(none.content).features).toEqual([]);
    expect(none.issues.map(({ code }) => code)).toEqual(['no-passes']);
  });

  it('a yard without a true place is told', () => {
    expect(passesGeoJson(exportOf({}, { isLocal: true })).issues.map(({ code }) => code)).toEqual([
      'local-yard',
    ]);
  });
});

describe('passes as GPX', () => {
  const file = passesGpx(exportOf());
  const root = xml(file.content).documentElement as Element;

  // GPX 1.1 schema (topografix.com/GPX/1/1/gpx.xsd, read in a copy): sequences of gpxType (metadata, wpt, rte, trk),
  // wptType (… name, cmt, desc, src, link, sym, type …), trkType (name, cmt, desc, src, link, number, type,
  // extensions, trkseg); version, creator, lat and lon are required; longitude from -180 to less than 180
  it('keeps the order of elements of the schema', () => {
    expect([root.namespaceURI, root.getAttribute('version'), root.getAttribute('creator')]).toEqual([
      'http://www.topografix.com/GPX/1/1',
      '1.1',
      'Measured Yard',
    ]);
    expect(childNames(root)).toEqual(['metadata', ...MARKS.map(() => 'wpt'), 'trk', 'trk', 'trk']);
    for (const point of root.getElementsByTagName('wpt'))
      expect(childNames(point)).toEqual(['name', 'desc', 'type']);
    for (const track of root.getElementsByTagName('trk'))
      expect(childNames(track)).toEqual(['name', 'number', 'type', 'trkseg']);
    for (const point of root.getElementsByTagName('trkpt')) {
      expect(Math.abs(Number(point.getAttribute('lat')))).toBeLessThanOrEqual(90);
      expect(Number(point.getAttribute('lon'))).toBeGreaterThanOrEqual(-180);
      expect(Number(point.getAttribute('lon'))).toBeLessThan(180);
    }
  });

  it('is read back by a peer: marks and the walk of each zone, the way between them apart', () => {
    const { features } = gpx(xml(file.content) as never) as FeatureCollection;
    const tracks = features.filter(({ geometry }) => geometry.type === 'LineString');
    expect(tracks.map(({ properties }) => [properties?.name, properties?.type])).toEqual([
      [`${NAME}, Front`, 'passes'],
      [`${NAME}, way between zones`, 'way'],
      [`${NAME}, Back`, 'passes'],
    ]);
    // up the first pass, across, down the second: no corner twice
    const [front] = tracks.map(({ geometry }) => geometry as LineString);
    expect(front?.coordinates.length).toBe(4);
    const points = features.filter(({ geometry }) => geometry.type === 'Point');
    const plane = testPlane();
    expect(points.map(({ properties }) => properties?.name)).toEqual(
      MARKS.map(({ number, left }) => `bottle ${number} at ${left}`),
    );
    points.forEach(({ geometry }, i) => {
      const [lon = 0, lat = 0] = (geometry as Point).coordinates;
      const [x, y] = plane.toPlane([lon, lat]);
      expect(Math.hypot(x - (MARKS[i]?.at[0] ?? 1e9), y - (MARKS[i]?.at[1] ?? 1e9))).toBeLessThan(1e-3);
    });
  });

  it('a second coat is a track of its own, and a dose without a day goes by the name of its visit', () => {
    const legs = [...LEGS, ...LEGS.map((leg) => ({ ...leg, coat: 2 as const }))];
    const input = exportOf({ coverage: { visitId: 'v-1', doses: [testCoverage(legs, [], [])] } });
    const undated = { ...input.visit, visit: { ...input.visit.visit, date: null } };
    const second = passesGpx({ ...input, visit: undated });
    expect(second.name).toBe('corner-lot-passes-first-feed.gpx');
    const names = [...xml(second.content).getElementsByTagName('trk')].map(
      (track) => track.getElementsByTagName('name')[0]?.textContent,
    );
    expect(names).toContain(`${NAME}, Back, second coat`);
  });
});
