import type { Issue, Position } from '../yard/types';
import { suggestUtmZone, utmCodes, utmDefinition } from './utmZones';
import { accuracyOfDatum, planePartOf, shiftOfDatum } from './wktParts';

export { suggestUtmZone };

/** A coordinate system whose places can be turned into longitude and latitude. */
export interface Crs {
  /** such as `EPSG:2276`; empty for one given by its text. */
  readonly code: string;
  readonly name: string;
  /** of its coordinates. */
  readonly unit: { readonly name: string /** null: degrees. */; readonly inM: number | null };
  /** how well its datum is brought to WGS 84, metres; null when not known. A shift of the whole picture: areas do not change. */
  readonly accuracyM: number | null;
  /** the same in a sentence; empty when nothing is left out. */
  readonly note: string;
  /** x (east or longitude) and y to degrees, WGS 84; null where the projection has no such place. */
  toLonLat(xy: readonly [number, number]): Position | null;
  /** the way back; null where the projection does not reach. */
  fromLonLat(position: Position): readonly [number, number] | null;
}

/** A coordinate system, or the reason why there is none. */
export type CrsResult =
  | { readonly ok: true; readonly crs: Crs }
  | { readonly ok: false; readonly issue: Issue };

type Row = readonly [name: string, proj: string, accuracyM: number];
type Table = Readonly<Record<string, Row>>;

/** Reaches for the table of systems and the projection library, once, when first used. */
async function loadTable(): Promise<Table> {
  return (await import('./crsTable.json')).default as unknown as Table;
}

/**
 * A coordinate system by EPSG code (`2276`, `'EPSG:2276'`, an `urn:ogc:def:crs:EPSG::…`), or by its
 * text: well-known text as in a .prj file (WKT 1, Esri's form, WKT 2) or a proj definition.
 * Known codes: UTM on WGS 84, NAD83 and others; the state plane and county systems of the United States;
 * web Mercator; common national grids. Definitions: EPSG dataset by epsg-index; mathematics: proj4.
 * Datum shifts that need grid files are replaced by the published mean shift; `note` says how good that is.
 * @returns an issue for an unknown code, text that cannot be understood and a system that is no plane or degree grid
 */
export async function loadCrs(spec: string | number): Promise<CrsResult> {
  const text = String(spec).trim();
  const code = /^(?:EPSG:|urn:ogc:def:crs:EPSG:[\d.]*:)?(\d{3,6})$/i.exec(text)?.[1];
  if (code !== undefined) {
    const row = utmDefinition(Number(code)) ?? (await loadTable())[code];
    if (row === undefined) {
      return fail(
        'crs-unknown',
        `The coordinate system EPSG:${code} is not one that this program knows. Paste its .prj text instead.`,
      );
    }
    return open(`EPSG:${code}`, row[0], row[1], row[2]);
  }
  if (text.startsWith('+')) {
    if (/\+(nadgrids=(?!@null)|geoidgrids|init)/.test(text)) {
      return fail(
        'crs-needs-grid',
        'This coordinate system asks for a file of shifts that is not here. Name it by its EPSG code instead.',
      );
    }
    return open('', /\+title=([^+]+)/.exec(text)?.[1]?.trim() ?? 'Coordinate system of the file', text, null);
  }
  if (/^[A-Z][A-Z0-9_]*\s*[[(]/i.test(text)) return openWkt(text);
  return fail(
    'crs-unreadable',
    'This is no coordinate system: an EPSG number or the text of a .prj file is needed.',
  );
}

/** Systems whose code begins with, or whose name holds, every word of `query`; at most 30, by code. */
export async function searchCrs(
  query: string,
): Promise<readonly { readonly code: string; readonly name: string }[]> {
  const words = query
    .toLowerCase()
    .replace(/^epsg:/, '')
    .split(/\s+/)
    .filter(Boolean);
  if (words.length === 0) return [];
  const table = await loadTable();
  const named = [
    ...utmCodes().map((code) => [String(code), utmDefinition(code)?.[0] ?? ''] as const),
    ...Object.entries(table).map(([code, row]) => [code, row[0]] as const),
  ];
  const matches = named.filter(([code, name]) => {
    const lower = name.toLowerCase();
    return words.every((word) => code.startsWith(word) || lower.includes(word));
  });
  return matches.slice(0, 30).map(([code, name]) => ({ code: `EPSG:${code}`, name }));
}

/** WKT: an EPSG code at its end that the table knows wins, for its datum shift is known; else the text itself. */
async function openWkt(text: string): Promise<CrsResult> {
  const plane = planePartOf(text);
  const name =
    /^[A-Z0-9_]+\s*[[(]\s*"([^"]*)"/i.exec(plane)?.[1]?.replaceAll('_', ' ') ??
    'Coordinate system of the file';
  const code = /(?:AUTHORITY|ID)\s*\[\s*"EPSG"\s*,\s*"?(\d+)"?\s*\]\s*\]\s*$/i.exec(plane)?.[1];
  if (code !== undefined) {
    const known = await loadCrs(code);
    if (known.ok) return known;
  }
  if (!/^(PROJCS|PROJCRS|PROJECTEDCRS|GEOGCS|GEOGCRS|GEODCRS|GEODETICCRS|GEOGRAPHICCRS)/i.test(plane)) {
    return fail(
      'crs-no-plane',
      `“${name}” is no system of map coordinates, so the picture cannot be placed by it.`,
    );
  }
  const datum = /\bDATUM\s*[[(]\s*"([^"]*)"/i.exec(plane)?.[1] ?? '';
  return open('', name, plane, accuracyOfDatum(datum, plane), shiftOfDatum(datum));
}

/** @param shift to WGS 84 in place of what the text says: three or seven numbers (m, arc seconds, ppm) */
async function open(
  code: string,
  name: string,
  definition: string,
  accuracyM: number | null,
  shift: readonly number[] | null = null,
): Promise<CrsResult> {
  const proj4 = (await import('proj4')).default;
  try {
    const key = `measured:${code || definition}`;
    proj4.defs(key, definition);
    const parsed = proj4.defs(key);
    if (shift !== null) Object.assign(parsed, { datum_params: [...shift], datumCode: 'none' });
    const isDegrees = parsed.projName === 'longlat';
    const inM = isDegrees ? null : (parsed.to_meter ?? 1);
    const params = parsed.datum_params as readonly unknown[] | undefined;
    const hasShift = shift !== null || (params ?? []).some((value) => Number(value) !== 0);
    const turn = proj4(key, 'WGS84');
    const finite = (xy: readonly number[]): readonly [number, number] | null =>
      Number.isFinite(xy[0]) && Number.isFinite(xy[1]) ? [xy[0] as number, xy[1] as number] : null;
    const guard = (work: () => readonly number[]) => {
      try {
        return finite(work());
      } catch {
        return null;
      }
    };
    return {
      ok: true,
      crs: {
        code,
        name,
        unit: { name: isDegrees ? 'degree' : unitName(inM ?? 1), inM },
        accuracyM,
        note: noteOf(name, accuracyM, hasShift),
        toLonLat: ([x, y]) => {
          const place = guard(() => turn.forward([x, y]));
          return place !== null && Math.abs(place[1]) < 90 ? place : null;
        },
        fromLonLat: ([lon, lat]) => guard(() => turn.inverse([lon, lat])),
      },
    };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return fail('crs-unreadable', `The coordinate system “${name}” cannot be used: ${reason.slice(0, 120)}`);
  }
}

function unitName(inM: number): string {
  if (inM === 1) return 'metre';
  if (Math.abs(inM - 0.3048) < 1e-9) return 'foot';
  if (Math.abs(inM - 1200 / 3937) < 1e-9) return 'US survey foot';
  return `${inM} m`;
}

function noteOf(name: string, accuracyM: number | null, hasShift: boolean): string {
  const rest = 'The whole picture may lie off by that; areas do not change.';
  if (accuracyM === 0) return '';
  if (accuracyM === null) {
    return `How the datum of ${name} lies to WGS 84 is not known here, so no shift is made: tens of metres, perhaps more. ${rest} Check the place against the map.`;
  }
  return hasShift
    ? `${name} is brought to WGS 84 by one published mean shift, good to about ${accuracyM} m. ${rest}`
    : `${name} is taken as WGS 84; the shift left out is up to about ${accuracyM} m. ${rest}`;
}

function fail(code: string, message: string): { readonly ok: false; readonly issue: Issue } {
  return { ok: false, issue: { code, severity: 'error', message, place: {} } };
}
