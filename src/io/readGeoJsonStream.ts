import { isMembers } from '../yard/decodeFeature';
import { MEMBER } from '../yard/encode';
import { streamText } from './decodeText';
import { type FeatureSink, importIssue } from './importTypes';
import { parseJson } from './parseJson';
import { readGeoJsonText } from './readGeoJson';
import { createFeatureSplitter, type FeatureText } from './splitFeatures';

const GEOMETRIES = ['Point', 'MultiPoint', 'LineString', 'MultiLineString', 'Polygon', 'MultiPolygon'];

/**
 * Reads GeoJSON (RFC 7946) piece by piece, or a sequence of features (RFC 8142, also one a line). The
 * features of a cut-off file that came through whole are kept. A file of this program gives its yard too.
 * @param isLines the file is a sequence
 */
export async function readGeoJsonStream(
  blob: Blob,
  isLines: boolean,
  layer: string,
  sink: FeatureSink,
): Promise<void> {
  if (isLines) return readLines(blob, layer, sink);
  let count = 0;
  const add = (feature: FeatureText) => {
    count += 1;
    sink.add({ text: feature.text, layer, place: `Feature ${count}` });
  };
  const splitter = createFeatureSplitter(add);
  await streamText(blob, (text, bytes) => {
    splitter.push(text);
    sink.progress(bytes / blob.size);
  });
  if (!splitter.isWhole() && count > 0) {
    const message = `The file breaks off in the middle: the first ${count.toLocaleString('en-US')} features are read, the rest is missing.`;
    return sink.tell(importIssue('cut-off', 'warning', message));
  }
  const parsed = parseJson(splitter.rest());
  if (!parsed.ok) return sink.tell(parsed.issue);
  const root = parsed.value;
  if (!isMembers(root)) return sink.tell(notGeoJson());
  if (root[MEMBER] !== undefined) {
    const whole = readGeoJsonText(await blob.text(), (prefix) => `${prefix}-${count}`);
    for (const issue of whole.issues) if (issue.code !== 'ring-self-crossing') sink.tell(issue);
    if (whole.yard) sink.setYard(whole.yard);
    return;
  }
  sink.setCrs(crsOf(root));
  if (root.type === 'FeatureCollection' && Array.isArray(root.features)) {
    if (count === 0) sink.tell(importIssue('no-features', 'error', 'The collection in the file is empty.'));
    return;
  }
  const features = looseFeatures(root);
  if (features === null) return sink.tell(notGeoJson());
  for (const feature of features) add({ text: JSON.stringify(feature), line: 1 });
}

async function readLines(blob: Blob, layer: string, sink: FeatureSink): Promise<void> {
  let line = 0;
  let rest = '';
  const take = (text: string) => {
    line += 1;
    const plain = text.replaceAll('\u001e', '').trim();
    if (plain !== '') sink.add({ text: plain, layer, place: `Line ${line}` });
  };
  await streamText(blob, (text, bytes) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    for (const each of lines) take(each);
    sink.progress(bytes / blob.size);
  });
  take(rest);
}

/** A Feature, a geometry or a collection of geometries as features. */
function looseFeatures(root: Readonly<Record<string, unknown>>): readonly unknown[] | null {
  if (root.type === 'Feature') return [root];
  if (GEOMETRIES.includes(String(root.type))) return [{ type: 'Feature', properties: null, geometry: root }];
  if (root.type === 'GeometryCollection' && Array.isArray(root.geometries)) {
    return root.geometries.map((geometry) => ({ type: 'Feature', properties: null, geometry }));
  }
  return null;
}

/** The 2008 GeoJSON note let a file name its reference system; RFC 7946, section 4, does not, but files still do. */
function crsOf(root: Readonly<Record<string, unknown>>): string | null {
  const crs = isMembers(root.crs) && isMembers(root.crs.properties) ? root.crs.properties.name : null;
  return typeof crs !== 'string' || /(CRS84|4326|4979)$/.test(crs) ? null : crs;
}

function notGeoJson() {
  const message = 'The file is JSON but no GeoJSON: it needs a FeatureCollection, a Feature or a geometry.';
  return importIssue('not-geojson', 'error', message);
}
