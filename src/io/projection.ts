import proj4 from 'proj4';
import type { Issue, Position } from '../yard/types';
import { importIssue } from './importTypes';

/** Turns a pair of the file's coordinates (x, y) into longitude and latitude; null where that has no meaning. */
export type ToLonLat = (x: number, y: number) => Position | null;

/** A reference system ready to use, or why it is not. */
export type ProjectionResult =
  | {
      readonly ok: true;
      readonly name: string;
      readonly toLonLat: ToLonLat | null;
      readonly issues: readonly Issue[];
    }
  | { readonly ok: false; readonly issue: Issue };

const WGS84_NAMES = /WGS[_ ]?(19)?84|CRS84|EPSG:+(4326|4979)$/i;

/**
 * Makes ready a reference system given by its WKT (as in a .prj file) or as "EPSG:n" of a UTM zone
 * (WGS 84, ETRS89, NAD83) or of the web's Mercator, by the proj4 library.
 * Zone numbers: EPSG registry, 32601-32660 and 32701-32760 (WGS 84 / UTM north and south), 25828-25838
 * (ETRS89 / UTM), 26901-26923 (NAD83 / UTM), 3857.
 * @param text WKT or "EPSG:n"; null or WGS 84 degrees need no conversion (`toLonLat` null)
 */
export function readProjection(text: string | null): ProjectionResult {
  if (text === null) return { ok: true, name: 'WGS 84', toLonLat: null, issues: [] };
  const plain = text.trim();
  const isWkt = /^[A-Z]+\w*\s*\[/i.test(plain);
  const isGeographic = /^(GEOGCS|GEOGCRS|GEODCRS)\b/i.test(plain);
  const name = isWkt ? (/\["([^"]*)"/.exec(plain)?.[1] ?? 'unnamed').replaceAll('_', ' ') : plain;
  if (!isWkt || isGeographic) {
    if (WGS84_NAMES.test(isWkt ? name : plain))
      return { ok: true, name: 'WGS 84', toLonLat: null, issues: [] };
  }
  const definition = isWkt ? plain : definitionOf(plain);
  if (definition === null) {
    const message = `The reference system “${plain.slice(0, 60)}” is not known here. Give its WKT (the text of the .prj file), or export the file as WGS 84.`;
    return { ok: false, issue: importIssue('unknown-crs', 'error', message) };
  }
  try {
    const converter = proj4(definition, 'WGS84');
    const toLonLat: ToLonLat = (x, y) => {
      const [lon, lat] = converter.forward([x, y]);
      return lon !== undefined && lat !== undefined && Number.isFinite(lon) && Number.isFinite(lat)
        ? [lon, lat]
        : null;
    };
    return { ok: true, name, toLonLat, issues: datumNotes(isWkt ? plain : name) };
  } catch {
    const message = `The reference system “${name.slice(0, 60)}” cannot be used here. Export the file as WGS 84 (EPSG:4326).`;
    return { ok: false, issue: importIssue('unknown-crs', 'error', message) };
  }
}

function definitionOf(code: string): string | null {
  const number = Number(
    /^(?:urn:ogc:def:crs:)?EPSG:[^:]*:?(\d{4,6})$|^EPSG:(\d{4,6})$/i.exec(code)?.slice(1).find(Boolean),
  );
  const utm = (zone: number, rest: string) => `+proj=utm +zone=${zone} ${rest} +units=m +no_defs`;
  if (number === 3857) return 'EPSG:3857';
  if (number >= 32601 && number <= 32660) return utm(number - 32600, '+datum=WGS84');
  if (number >= 32701 && number <= 32760) return utm(number - 32700, '+south +datum=WGS84');
  if (number >= 26901 && number <= 26923) return utm(number - 26900, '+ellps=GRS80 +towgs84=0,0,0,0,0,0,0');
  if (number >= 25828 && number <= 25838) return utm(number - 25800, '+ellps=GRS80 +towgs84=0,0,0,0,0,0,0');
  return null;
}

function datumNotes(text: string): Issue[] {
  if (/NAD[_ ]?(19)?27|North_American_1927/i.test(text)) {
    return [
      importIssue(
        'old-datum',
        'warning',
        'The file uses the datum NAD 27; without its grid of shifts the place may be off by 10 m to 200 m. The areas are hardly touched. Shift the zones on the map after they came in.',
      ),
    ];
  }
  if (/NAD[_ ]?(19)?83|North_American_1983|EPSG:269\d\d/i.test(text)) {
    return [
      importIssue(
        'near-datum',
        'note',
        'NAD 83 is taken as WGS 84; the two are 1 m to 2 m apart, and areas are the same.',
      ),
    ];
  }
  return [];
}
