import type { Position } from '../yard/types';
import type { ImportRules } from './importTypes';
import type { ToLonLat } from './projection';

/** The geometry of one feature in degrees, by what it can become. */
export interface ReadShape {
  /** polygons, each outer ring first; rings as they came, open or closed. */
  readonly polygons: readonly (readonly Position[])[][];
  readonly lines: readonly (readonly Position[])[];
  readonly points: readonly Position[];
}

/** A fault that keeps a feature out. */
export interface ShapeFault {
  readonly code: 'empty' | 'bad-geometry' | 'not-a-number' | 'projected' | 'swapped-order' | 'out-of-range';
  readonly message: string;
}

/** Values beyond this are no degrees, whatever their order. */
const MOST_DEGREES = 360;
/** Collections in collections deeper than this are not followed. */
const DEEPEST = 8;

class Fault extends Error {
  constructor(
    readonly code: ShapeFault['code'],
    message: string,
  ) {
    super(message);
  }
}

/**
 * Reads a GeoJSON geometry (RFC 7946, section 3.1) into polygons, lines and points in degrees.
 * @param geometry anything; not changed
 * @param toLonLat converts the file's coordinates; null: they are degrees, longitude first
 * @returns the shape, or the first fault with the corner it stands at
 */
export function readShape(
  geometry: unknown,
  rules: Pick<ImportRules, 'isSwapped'>,
  toLonLat: ToLonLat | null,
): { readonly ok: true; readonly shape: ReadShape } | { readonly ok: false; readonly fault: ShapeFault } {
  const shape = {
    polygons: [] as (readonly Position[])[][],
    lines: [] as (readonly Position[])[],
    points: [] as Position[],
  };
  const position = (value: unknown, corner: number): Position => {
    if (!Array.isArray(value) || value.length < 2)
      throw new Fault('bad-geometry', `corner ${corner} is no pair of coordinates.`);
    const [a, b] = value as unknown[];
    if (typeof a !== 'number' || typeof b !== 'number' || !Number.isFinite(a) || !Number.isFinite(b)) {
      throw new Fault('not-a-number', `corner ${corner} is not two numbers (${show(a)}, ${show(b)}).`);
    }
    const [x, y] = rules.isSwapped ? [b, a] : [a, b];
    const at = toLonLat ? toLonLat(x, y) : ([x, y] as const);
    if (at === null)
      throw new Fault('out-of-range', `corner ${corner} (${x}, ${y}) lies outside of the reference system.`);
    return checked(at, corner, toLonLat !== null);
  };
  const line = (value: unknown): Position[] => {
    if (!Array.isArray(value)) throw new Fault('bad-geometry', 'its coordinates are no list of corners.');
    return value.map((item, i) => position(item, i + 1));
  };
  const list = (value: unknown): readonly unknown[] => {
    if (!Array.isArray(value)) throw new Fault('bad-geometry', 'its coordinates are no list.');
    return value;
  };
  const visit = (value: unknown, depth: number): void => {
    if (depth > DEEPEST) throw new Fault('bad-geometry', 'its collections stand in each other too deep.');
    if (typeof value !== 'object' || value === null) throw new Fault('empty', 'it has no shape.');
    const { type, coordinates, geometries } = value as Record<string, unknown>;
    switch (type) {
      case 'Polygon':
        shape.polygons.push(list(coordinates).map(line));
        break;
      case 'MultiPolygon':
        for (const polygon of list(coordinates)) shape.polygons.push(list(polygon).map(line));
        break;
      case 'LineString':
        shape.lines.push(line(coordinates));
        break;
      case 'MultiLineString':
        for (const each of list(coordinates)) shape.lines.push(line(each));
        break;
      case 'Point':
        shape.points.push(position(coordinates, 1));
        break;
      case 'MultiPoint':
        shape.points.push(...line(coordinates));
        break;
      case 'GeometryCollection':
        for (const each of list(geometries)) visit(each, depth + 1);
        break;
      default:
        throw new Fault('bad-geometry', `its geometry is of no known type (${show(type)}).`);
    }
  };
  try {
    visit(geometry, 0);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return { ok: false, fault: { code: error.code, message: error.message } };
  }
  const isEmpty =
    shape.polygons.every((rings) => (rings[0]?.length ?? 0) === 0) &&
    shape.lines.every((each) => each.length === 0) &&
    shape.points.length === 0;
  if (isEmpty) return { ok: false, fault: { code: 'empty', message: 'it has no shape.' } };
  return { ok: true, shape };
}

function checked([lon, lat]: Position, corner: number, isConverted: boolean): Position {
  if (Math.abs(lat) <= 90 && Math.abs(lon) <= 180) return [lon, lat];
  if (!isConverted && (Math.abs(lon) > MOST_DEGREES || Math.abs(lat) > MOST_DEGREES)) {
    throw new Fault(
      'projected',
      `corner ${corner} (${lon}, ${lat}) is in metres or feet of a map projection, not in degrees.`,
    );
  }
  if (Math.abs(lat) > 90 && Math.abs(lat) <= 180 && Math.abs(lon) <= 90) {
    throw new Fault(
      'swapped-order',
      `corner ${corner} has the latitude ${lat}, beyond 90°: latitude and longitude look swapped.`,
    );
  }
  if (Math.abs(lat) <= 90 && Math.abs(lon) <= MOST_DEGREES) return [lon - 360 * Math.round(lon / 360), lat];
  throw new Fault(
    'out-of-range',
    `corner ${corner} (longitude ${lon}, latitude ${lat}) lies outside of 180° and 90°.`,
  );
}

function show(value: unknown): string {
  return typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? 'nothing').slice(0, 40);
}
