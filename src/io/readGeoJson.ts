import { checkRing } from '../measure/crossings';
import { yardFromGeoJson } from '../yard/decode';
import { decodeFeature, isMembers } from '../yard/decodeFeature';
import { formatPlacePath } from '../yard/decodeGeometry';
import { MEMBER } from '../yard/encode';
import type { Issue, Mark, Position, Yard, Zone } from '../yard/types';
import { foreignHost } from './foreignHost';
import { parseJson } from './parseJson';

/** What a file held. */
export interface ReadFile {
  /** the yard, when the file is one of ours; null for any other GeoJSON and for a file that cannot be read. */
  readonly yard: Yard | null;
  /** zones and marks read: those of the yard, or those of a foreign file, to add to the open yard or make a new one of. */
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  /** every fault found, in file order; what an error names was left out. */
  readonly issues: readonly Issue[];
}

/**
 * Reads the text of a GeoJSON file (RFC 7946): our own or any other. Never throws for bad input:
 * all faults are told at once and the good features kept. Self-crossing rings are refused.
 * @param newId makes the ids of features from a foreign file: `newId('zone')`, `newId('mark')`
 */
export function readGeoJsonText(text: string, newId: (prefix: string) => string): ReadFile {
  const parsed = parseJson(text);
  if (!parsed.ok) return { yard: null, zones: [], marks: [], issues: [parsed.issue] };
  const value = parsed.value;
  if (isMembers(value) && value[MEMBER] !== undefined) return readOwn(value);
  return readForeign(value, newId);
}

function readOwn(value: unknown): ReadFile {
  const { yard, issues } = yardFromGeoJson(value);
  if (yard === null) return { yard, zones: [], marks: [], issues };
  const all = [...issues];
  const sound = yard.zones.filter((zone) => {
    const crossings = crossingsOf(zone, zone.name === '' ? zone.id : `“${zone.name}”`);
    all.push(...crossings);
    return crossings.length === 0;
  });
  const zones = sound.length === yard.zones.length ? yard.zones : sound;
  const settings = askedBaseLayer(yard, all);
  return { yard: { ...yard, zones, settings }, zones, marks: yard.marks, issues: all };
}

/**
 * A file from elsewhere must not make this device call a host that its user did not choose: the base
 * layer goes back to the grid and waits among the yard's own layers.
 */
function askedBaseLayer(yard: Yard, issues: Issue[]): Yard['settings'] {
  const { settings } = yard;
  const layer = settings.baseLayer;
  const host = 'url' in layer ? foreignHost(layer.url) : null;
  if (layer.kind === 'grid' || host === null) return settings;
  const message = `The file shows pictures from ${host}. They stay off until you choose “${layer.name}” as base layer.`;
  issues.push({
    code: 'base-layer-off',
    severity: 'note',
    message,
    place: { path: `${MEMBER}.settings.baseLayer` },
  });
  const listed = settings.ownLayers.some((own) => own.kind !== 'grid' && own.id === layer.id);
  const ownLayers = listed ? settings.ownLayers : [...settings.ownLayers, layer];
  return { ...settings, baseLayer: { kind: 'grid' }, ownLayers };
}

function readForeign(value: unknown, newId: (prefix: string) => string): ReadFile {
  const issues: Issue[] = [];
  const zones: Zone[] = [];
  const marks: Mark[] = [];
  let leftOut = 0;
  const features = featuresOf(value);
  if (features === null) {
    const message = 'The file is JSON but no GeoJSON: it needs a FeatureCollection, a Feature or a polygon.';
    issues.push({ code: 'not-geojson', severity: 'error', message, place: { path: '' } });
    return { yard: null, zones, marks, issues };
  }
  const crs = foreignCrs(value);
  if (crs !== null) issues.push(crs);
  features.forEach((feature, i) => {
    const path = `features[${i}]`;
    const given = isMembers(feature) && isMembers(feature.geometry) ? feature.geometry.type : undefined;
    const id = newId(given === 'Point' ? 'mark' : 'zone');
    const decoded = decodeFeature(feature, {
      path,
      fallbackId: id,
      needsKind: false,
      surveyMethod: 'imported',
    });
    issues.push(...decoded.issues);
    if (decoded.type === 'other') leftOut++;
    else if (decoded.type === 'mark') marks.push({ ...decoded.mark, id });
    else if (decoded.type === 'zone') {
      const zone = { ...decoded.zone, id };
      const name = zone.name === '' ? '' : ` (“${zone.name}”)`;
      const faults = [
        ...crossingsOf(zone, `${formatPlacePath(path)}${name}`, path),
        ...suspectSwap(zone, `${formatPlacePath(path)}${name}`, path),
      ];
      issues.push(...faults);
      if (faults.length === 0) zones.push(zone);
    }
  });
  if (leftOut > 0) {
    const message = `${leftOut} ${leftOut === 1 ? 'feature that is' : 'features that are'} neither a polygon nor a known mark ${leftOut === 1 ? 'was' : 'were'} left out.`;
    issues.push({ code: 'left-out', severity: 'note', message, place: { path: 'features' } });
  }
  return { yard: null, zones, marks, issues };
}

/** The features of any GeoJSON object; a bare geometry counts as one feature. */
function featuresOf(value: unknown): readonly unknown[] | null {
  if (!isMembers(value)) return null;
  if (value.type === 'FeatureCollection') return Array.isArray(value.features) ? value.features : null;
  if (value.type === 'Feature') return [value];
  if (value.type === 'Polygon' || value.type === 'MultiPolygon') {
    return [{ type: 'Feature', properties: null, geometry: value }];
  }
  if (value.type === 'GeometryCollection' && Array.isArray(value.geometries)) {
    return value.geometries.map((geometry) => ({ type: 'Feature', properties: null, geometry }));
  }
  return null;
}

/** The 2008 GeoJSON note let a file name another reference system; RFC 7946, section 4, does not. */
function foreignCrs(value: unknown): Issue | null {
  const crs = isMembers(value) && isMembers(value.crs) ? value.crs : null;
  const name = crs !== null && isMembers(crs.properties) ? crs.properties.name : null;
  if (typeof name !== 'string' || /(CRS84|4326|4979)$/.test(name)) return null;
  const message = `The file names the reference system ${name}, but coordinates are read as WGS 84 longitude and latitude. Check the place on the map.`;
  return { code: 'foreign-crs', severity: 'warning', message, place: { path: 'crs' } };
}

/** Every self-crossing of a zone's rings, said with the zone's name. */
function crossingsOf(zone: Zone, who: string, path?: string): Issue[] {
  return zone.parts
    .flatMap((rings) => rings.flatMap((ring) => checkRing(ring)))
    .filter((fault) => fault.severity === 'error')
    .map((fault) => ({
      ...fault,
      message: `${who}: ${fault.message}`,
      place: { ...fault.place, zoneId: zone.id, ...(path === undefined ? {} : { path }) },
    }));
}

/** South of here lies Antarctica only: a "yard" there is one whose latitude and longitude were swapped. */
const SOUTHERNMOST_YARD_DEG = -60;

function suspectSwap(zone: Zone, who: string, path: string): Issue[] {
  const first: Position | undefined = zone.parts[0]?.[0]?.[0];
  if (first === undefined || first[1] > SOUTHERNMOST_YARD_DEG || Math.abs(first[0]) > 90) return [];
  const message = `${who}: it would lie in Antarctica (latitude ${first[1]}); latitude and longitude look swapped (GeoJSON has longitude first).`;
  return [{ code: 'swapped-order', severity: 'error', message, place: { zoneId: zone.id, path } }];
}
