import { loadCrs } from '../picture/crs';
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

/** WGS 84 in degrees by its usual names: an EPSG or OGC code, or the head of its WKT. */
const WGS84 =
  /^((urn:ogc:def:crs:)?(EPSG:[\d.]*:?(4326|4979)|OGC:[\d.]*:?CRS84h?)|GEOG(CS|CRS)\s*\[\s*"[^"]*WGS[ _]?(19)?84")/i;

/**
 * Makes ready a reference system given by its WKT (as in a .prj file) or its EPSG code.
 * @param text null or WGS 84 in degrees need no conversion (`toLonLat` null)
 */
export async function readProjection(text: string | null): Promise<ProjectionResult> {
  const isPlain = text === null || WGS84.test(text.trim());
  if (isPlain) return { ok: true, name: 'WGS 84', toLonLat: null, issues: [] };
  const loaded = await loadCrs(text);
  if (!loaded.ok) {
    return { ok: false, issue: { ...loaded.issue, code: 'unknown-crs' } };
  }
  const { crs } = loaded;
  const issues: Issue[] = [];
  if (crs.accuracyM !== 0) {
    const how =
      crs.accuracyM === null
        ? 'how it lies to WGS 84 is not known here, so everything may stand tens of metres off'
        : `it is brought to WGS 84 to about ${crs.accuracyM} m`;
    issues.push(
      importIssue(
        'datum-shift',
        crs.accuracyM === null || crs.accuracyM > 5 ? 'warning' : 'note',
        `The file is in ${crs.name}; ${how}. Areas do not change. Check the place on the map.`,
      ),
    );
  }
  return { ok: true, name: crs.name, toLonLat: (x, y) => crs.toLonLat([x, y]), issues };
}
