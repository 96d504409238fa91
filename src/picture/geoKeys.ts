import { adjustPicture } from '../survey/picture/adjust';
import { composeAffine } from '../survey/picture/affine';
import type { Affine } from '../survey/picture/types';

/** The tags of a GeoTIFF that say where it lies, by the names of the standard. */
export interface GeoTags {
  readonly ModelPixelScale?: ArrayLike<number>;
  readonly ModelTiepoint?: ArrayLike<number>;
  readonly ModelTransformation?: ArrayLike<number>;
  readonly keys: Readonly<Record<string, unknown>>;
}

/** Position as the file gives it: pixel (edges at whole numbers) to coordinates, and their system for `loadCrs`; null: not named. */
export interface GeoPosition {
  readonly toProjected: Affine;
  readonly crs: string | null;
}

const USER_DEFINED = 32767;

/**
 * Reads the position of a GeoTIFF. Raster space of a PixelIsPoint file has its origin in the first
 * pixel's centre, that of PixelIsArea at its corner; ours is the corner.
 * Source: OGC 19-008r4, GeoTIFF 1.1, sections 7.1.2 and annexes B.2, B.6.
 * @returns null when the tags give no position
 */
export function positionOfTags(tags: GeoTags): GeoPosition | null {
  const raster = rasterToModel(tags);
  if (raster === null || !raster.every(Number.isFinite)) return null;
  const isPoint = tags.keys.GTRasterTypeGeoKey === 2;
  const toModel = isPoint ? composeAffine([1, 0, -0.5, 0, 1, -0.5], raster) : raster;
  return { toProjected: toModel, crs: crsOfKeys(tags.keys) };
}

function rasterToModel(tags: GeoTags): Affine | null {
  const { ModelTransformation: m, ModelPixelScale: scale, ModelTiepoint: ties } = tags;
  if (m !== undefined && m.length >= 16) {
    const at = (i: number) => m[i] ?? 0;
    return [at(0), at(1), at(3), at(4), at(5), at(7)];
  }
  if (ties === undefined || ties.length < 6) return null;
  const at = (i: number) => ties[i] ?? 0;
  if (scale !== undefined && scale.length >= 2) {
    const [sx, sy] = [scale[0] ?? 0, scale[1] ?? 0];
    if (!(sx > 0) || sy === 0) return null;
    return [sx, 0, at(3) - sx * at(0), 0, -sy, at(4) + sy * at(1)];
  }
  // three or more tie points without a scale: control points
  const points = Array.from({ length: Math.floor(ties.length / 6) }, (_, i) => ({
    pixel: [at(6 * i), at(6 * i + 1)] as const,
    ground: [at(6 * i + 3), at(6 * i + 4)] as const,
  }));
  return points.length >= 3 ? (adjustPicture(points, [], 'affine')?.toGround ?? null) : null;
}

/** The coordinate system by the geo keys: an EPSG code, or a definition put together from the parameters. */
export function crsOfKeys(keys: Readonly<Record<string, unknown>>): string | null {
  const code = (name: string) => (typeof keys[name] === 'number' ? (keys[name] as number) : 0);
  const isCode = (value: number) => value > 0 && value < USER_DEFINED;
  const projected = code('ProjectedCSTypeGeoKey');
  if (isCode(projected)) return `EPSG:${projected}`;
  const text = ['PCSCitationGeoKey', 'GTCitationGeoKey']
    .map((name) => keys[name])
    .find((one) => typeof one === 'string' && one.includes('PROJCS['));
  if (typeof text === 'string') return text.slice(text.indexOf('PROJCS[')).replace(/[|\0]+$/, '');
  if (code('GTModelTypeGeoKey') === 2) {
    const geographic = code('GeographicTypeGeoKey');
    return isCode(geographic) ? `EPSG:${geographic}` : null;
  }
  const projection = code('ProjectionGeoKey');
  if (projection > 16000 && projection <= 16160) {
    const zone = projection % 100;
    const geographic = code('GeographicTypeGeoKey');
    const bases = UTM_BASES[isCode(geographic) ? geographic : code('GeogGeodeticDatumGeoKey')];
    const base = bases?.[projection > 16100 ? 1 : 0] ?? null;
    return zone >= 1 && zone <= 60 && base !== null ? `EPSG:${base + zone}` : null;
  }
  return definitionOfKeys(keys);
}

const WGS84_BASES = [32600, 32700] as const;
/**
 * Codes of UTM zones less the zone, north and south, by the code of the geographic system or its datum; null where
 * EPSG has none. A file that names neither is taken as WGS 84. Source: EPSG dataset (see `utmZones.ts`).
 */
const UTM_BASES: Readonly<Record<number, readonly [north: number | null, south: number | null]>> = {
  0: WGS84_BASES,
  4326: WGS84_BASES,
  6326: WGS84_BASES,
  4269: [26900, null],
  6269: [26900, null],
  6318: [6329, null],
  4267: [26700, null],
  6267: [26700, null],
  4258: [25800, null],
  6258: [25800, null],
  4283: [null, 28300],
  6283: [null, 28300],
  7844: [null, 7800],
};

/** Ellipsoids by the code of the geographic system or its datum: those that pictures of yards come in. */
const ELLIPSOIDS: Readonly<Record<number, string>> = {
  4326: '+datum=WGS84',
  6326: '+datum=WGS84',
  4269: '+ellps=GRS80',
  6269: '+ellps=GRS80',
  4258: '+ellps=GRS80',
  6258: '+ellps=GRS80',
  4267: '+ellps=clrk66 +towgs84=-8,160,176',
  6267: '+ellps=clrk66 +towgs84=-8,160,176',
};
const UNITS: Readonly<Record<number, string>> = { 9001: '+units=m', 9002: '+units=ft', 9003: '+units=us-ft' };
const UNIT_M: Readonly<Record<number, number>> = { 9001: 1, 9002: 0.3048, 9003: 1200 / 3937 };

/** A proj definition of a user-defined projection: Transverse Mercator, Lambert (one or two parallels), Albers. */
function definitionOfKeys(keys: Readonly<Record<string, unknown>>): string | null {
  const number = (...names: readonly string[]) => {
    const value = names.map((name) => keys[name]).find((one) => typeof one === 'number');
    return typeof value === 'number' ? value : 0;
  };
  const datum = ELLIPSOIDS[number('GeographicTypeGeoKey')] ?? ELLIPSOIDS[number('GeogGeodeticDatumGeoKey')];
  const unit = number('ProjLinearUnitsGeoKey');
  const [units, unitM] = [UNITS[unit], UNIT_M[unit]];
  if (datum === undefined || units === undefined || unitM === undefined) return null;
  const lon = number('ProjFalseOriginLongGeoKey', 'ProjNatOriginLongGeoKey', 'ProjCenterLongGeoKey');
  const lat = number('ProjFalseOriginLatGeoKey', 'ProjNatOriginLatGeoKey', 'ProjCenterLatGeoKey');
  // in the file's unit; a proj definition has them in metres
  const east =
    unitM * number('ProjFalseOriginEastingGeoKey', 'ProjFalseEastingGeoKey', 'ProjCenterEastingGeoKey');
  const north =
    unitM * number('ProjFalseOriginNorthingGeoKey', 'ProjFalseNorthingGeoKey', 'ProjCenterNorthingGeoKey');
  const rest = `+lat_0=${lat} +lon_0=${lon} +x_0=${east} +y_0=${north} ${datum} ${units}`;
  const parallels = `+lat_1=${number('ProjStdParallel1GeoKey')} +lat_2=${number('ProjStdParallel2GeoKey')}`;
  const scale = number('ProjScaleAtNatOriginGeoKey') || 1;
  switch (number('ProjCoordTransGeoKey')) {
    case 1:
      return `+proj=tmerc +k=${scale} ${rest}`;
    case 8:
      return `+proj=lcc ${parallels} ${rest}`;
    case 9:
      return `+proj=lcc +lat_1=${lat} +k_0=${scale} ${rest}`;
    case 11:
      return `+proj=aea ${parallels} ${rest}`;
    default:
      return null;
  }
}
