import type { Document, Element } from '@xmldom/xmldom';
import { type FeatureSink, importIssue } from './importTypes';
import { childText, elementsNamed } from './readXml';

/** One fix of a track: its place, and what the device said of it. */
export interface TrackFix {
  readonly lon: number;
  readonly lat: number;
  /** ms since the epoch; null when the file has none. */
  readonly timeMs: number | null;
  /** horizontal dilution of precision, no unit; null when the file has none. */
  readonly hdop: number | null;
}

/**
 * Reads a GPX 1.0 or 1.1 document (topografix.com/GPX/1/1): tracks, routes and waypoints. Each segment
 * of a track is a line of its own; its fixes ride along in the property `@fixes`, for the survey of a walk.
 * Read here and not by togeojson, which drops `hdop` and passes over faulty points in silence.
 */
export function readGpx(document: Document, layer: string, sink: FeatureSink): void {
  const add = (
    element: Element,
    place: string,
    name: string,
    points: readonly Element[],
    what: 'track' | 'route',
  ) => {
    const fixes = points.map(readFix);
    const bad = fixes.findIndex((fix) => !Number.isFinite(fix.lon) || !Number.isFinite(fix.lat));
    const properties = {
      ...propertiesOf(element, name),
      '@source': what,
      ...(what === 'track' && { '@fixes': fixes.map(({ timeMs, hdop }) => [timeMs, hdop]) }),
    };
    const coordinates = fixes.map(({ lon, lat }) => [lon, lat]);
    sink.add({
      text: JSON.stringify({
        type: 'Feature',
        properties,
        geometry: points.length === 0 ? null : { type: 'LineString', coordinates },
      }),
      layer: [layer, what === 'track' ? 'Tracks' : 'Routes'].filter(Boolean).join(' / '),
      place,
      ...(bad < 0 ? {} : { fault: `point ${bad + 1} has no readable lat and lon.` }),
    });
  };
  elementsNamed(document, 'trk').forEach((track, i) => {
    const segments = elementsNamed(track, 'trkseg');
    const name = childText(track, 'name');
    segments.forEach((segment, k) => {
      const isOne = segments.length === 1;
      const place = isOne ? `Track ${i + 1}` : `Track ${i + 1}, segment ${k + 1}`;
      const title = isOne || name === '' ? name : `${name} ${k + 1}`;
      add(track, place, title, elementsNamed(segment, 'trkpt'), 'track');
    });
    if (segments.length === 0) add(track, `Track ${i + 1}`, name, [], 'track');
  });
  elementsNamed(document, 'rte').forEach((route, i) => {
    add(route, `Route ${i + 1}`, childText(route, 'name'), elementsNamed(route, 'rtept'), 'route');
  });
  elementsNamed(document, 'wpt').forEach((point, i) => {
    const { lon, lat } = readFix(point);
    const isGood = Number.isFinite(lon) && Number.isFinite(lat);
    sink.add({
      text: JSON.stringify({
        type: 'Feature',
        properties: { ...propertiesOf(point, childText(point, 'name')), '@source': 'waypoint' },
        geometry: { type: 'Point', coordinates: [lon, lat] },
      }),
      layer: [layer, 'Waypoints'].filter(Boolean).join(' / '),
      place: `Waypoint ${i + 1}`,
      ...(isGood ? {} : { fault: 'it has no readable lat and lon.' }),
    });
  });
  if (elementsNamed(document, 'extensions').length > 0) {
    sink.tell(
      importIssue('gpx-extensions', 'note', 'Extensions of the devices’ makers in the file are not read.'),
    );
  }
}

function readFix(point: Element): TrackFix {
  const time = Date.parse(childText(point, 'time'));
  const hdop = Number.parseFloat(childText(point, 'hdop'));
  return {
    lon: toNumber(point.getAttribute('lon')),
    lat: toNumber(point.getAttribute('lat')),
    timeMs: Number.isFinite(time) ? time : null,
    hdop: Number.isFinite(hdop) ? hdop : null,
  };
}

function toNumber(text: string | null): number {
  return text === null || text.trim() === '' ? Number.NaN : Number(text);
}

function propertiesOf(element: Element, name: string): Record<string, string> {
  const properties: Record<string, string> = name === '' ? {} : { name };
  for (const key of ['cmt', 'desc', 'type', 'sym']) {
    const text = childText(element, key);
    if (text !== '') properties[key] = text;
  }
  return properties;
}
