import { SCHEMA_VERSION } from './defaults';
import type { Curve, Mark, Parcel, Position, Ring, Rings, Survey, Yard, Zone } from './types';

/** Decimals of a degree kept in the browser: 1e-11 degree is about a micrometre on the ground. */
export const STORED_DECIMALS = 11;

/** Name of the foreign member (RFC 7946, section 6.1) that holds what is not geometry. */
export const MEMBER = 'measuredYard';

/** Property `kind` of the feature that is the outline of the property. */
export const PARCEL_KIND = 'parcel';

/** A GeoJSON FeatureCollection with our member. */
export interface YardFile {
  readonly type: 'FeatureCollection';
  readonly measuredYard: Readonly<Record<string, unknown>>;
  readonly features: readonly unknown[];
  readonly [member: string]: unknown;
}

/**
 * The yard as a GeoJSON FeatureCollection (RFC 7946): zones as Polygon or MultiPolygon features (one
 * without a place has the geometry null, section 3.2, and its outline in the property `sketch`),
 * marks as Point features, the parcel as a feature of the kind `parcel`, the rest in the member
 * `measuredYard`. Outer rings run counter-clockwise
 * and holes clockwise (section 3.1.6); longitude first.
 * @param decimals decimals of a degree; 9 or more keep areas of a yard to 0.01 %
 * @returns plain data that JSON and the structured clone can carry; shares nothing that edits change
 */
export function yardToGeoJson(yard: Yard, decimals: number = STORED_DECIMALS): YardFile {
  const { collection, member, features } = yard.extra;
  return {
    ...collection,
    type: 'FeatureCollection',
    [MEMBER]: {
      ...member,
      schemaVersion: SCHEMA_VERSION,
      id: yard.id,
      name: yard.name,
      settings: yard.settings,
      products: yard.products,
      equipment: yard.equipment,
      visits: yard.visits,
      soilTests: yard.soilTests,
      needs: yard.needs,
      climate: yard.climate,
      programs: yard.programs,
      caps: yard.caps,
      rules: yard.rules,
      overrides: yard.overrides,
    },
    features: [
      ...yard.zones.map((zone) => zoneToFeature(zone, decimals)),
      ...yard.marks.map((mark) => markToFeature(mark, decimals)),
      ...(yard.parcel ? [parcelToFeature(yard.parcel, decimals)] : []),
      ...(features ?? []),
    ],
  } as unknown as YardFile;
}

function zoneToFeature(zone: Zone, decimals: number): unknown {
  const geometry = partsToGeometry(zone.parts, decimals);
  return {
    ...zone.extra.feature,
    type: 'Feature',
    id: zone.id,
    geometry: zone.isPlaced ? geometry : null,
    properties: {
      ...zone.extra.properties,
      name: zone.name,
      kind: zone.kind,
      ...(zone.mowing === null ? {} : { mowing: zone.mowing }),
      ...(zone.material === null ? {} : { material: zone.material }),
      note: zone.note,
      ...surveyToProperties(zone.survey),
      ...curvesToProperties(zone.curves, decimals),
      cutsSameKind: zone.cutsSameKind,
      ...(zone.isPlaced ? {} : { sketch: geometry }),
      ...(zone.isLocked ? { isLocked: true } : {}),
      ...(zone.slope === null ? {} : { slope: zone.slope }),
      ...(zone.downhillDeg === null ? {} : { downhillDeg: zone.downhillDeg }),
      ...(zone.plantedOn === null ? {} : { plantedOn: zone.plantedOn }),
    },
  };
}

function parcelToFeature(parcel: Parcel, decimals: number): unknown {
  return {
    ...parcel.extra.feature,
    type: 'Feature',
    geometry: partsToGeometry(parcel.parts, decimals),
    properties: {
      ...parcel.extra.properties,
      name: parcel.name,
      kind: PARCEL_KIND,
      ...surveyToProperties(parcel.survey),
      ...curvesToProperties(parcel.curves, decimals),
    },
  };
}

function partsToGeometry(parts: Zone['parts'], decimals: number): unknown {
  const polygons = parts.map((rings) => ringsToCoordinates(rings, decimals));
  return polygons.length === 1
    ? { type: 'Polygon', coordinates: polygons[0] }
    : { type: 'MultiPolygon', coordinates: polygons };
}

function surveyToProperties({ method, vertexSigmaM, scaleSigma, source }: Survey) {
  return {
    surveyMethod: method,
    vertexSigmaM,
    ...(scaleSigma === 0 ? {} : { scaleSigma }),
    ...(source === '' ? {} : { surveySource: source }),
  };
}

function curvesToProperties(curves: readonly Curve[], decimals: number) {
  if (curves.length === 0) return {};
  return {
    curves: curves.map((curve) => ({
      ...curve,
      points: curve.points.map((p) => roundPosition(p, decimals)),
    })),
  };
}

function markToFeature(mark: Mark, decimals: number): unknown {
  return {
    ...mark.extra.feature,
    type: 'Feature',
    id: mark.id,
    geometry: { type: 'Point', coordinates: roundPosition(mark.position, decimals) },
    properties: { ...mark.extra.properties, name: mark.name, kind: mark.kind },
  };
}

function ringsToCoordinates(rings: Rings, decimals: number): Position[][] {
  return rings.map((ring, i) => wound(ring, i === 0).map((p) => roundPosition(p, decimals)));
}

function roundPosition([lon, lat]: Position, decimals: number): Position {
  return [Number(lon.toFixed(decimals)) + 0, Number(lat.toFixed(decimals)) + 0];
}

/** The ring turned to the winding asked for; a ring of no area stays as it is. */
function wound(ring: Ring, counterClockwise: boolean): Ring {
  const twice = twiceSignedArea(ring);
  return twice === 0 || twice > 0 === counterClockwise ? ring : ring.toReversed();
}

/** Twice the signed area in square degrees (shoelace about the first corner); only its sign is used. */
function twiceSignedArea(ring: Ring): number {
  const [first] = ring;
  if (first === undefined) return 0;
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i] ?? first;
    const b = ring[i + 1] ?? first;
    sum += (a[0] - first[0]) * (b[1] - first[1]) - (b[0] - first[0]) * (a[1] - first[1]);
  }
  return sum;
}
