import type { Position, Rings } from '../yard/types';
import type { LocalPlane, PlaneRings, XY } from './types';

/** WGS 84 semi-major axis, m, and flattening. Source: EPSG 7030. */
const A = 6378137;
const F = 1 / 298.257223563;
const E2 = F * (2 - F);
const RAD = Math.PI / 180;

/**
 * Metric plane round an origin: x east, y north, metres, by the radii of curvature of the WGS 84
 * ellipsoid at the origin (prime vertical N, meridian M). Affine in (lon, lat), so straight edges stay
 * straight. Crossing 180° is handled by the shorter way round. Lengths away from the origin's latitude
 * err as said at LocalPlane: by r·tan|lat|/R.
 * Source of N and M: Karney 2013, doi 10.1007/s00190-012-0578-z (ellipsoid); textbook radii.
 * @param origin degrees; latitude strictly between -90 and 90
 * @throws RangeError when the origin is not such a position
 */
export function createPlane(origin: Position): LocalPlane {
  const [lon0, lat0] = origin;
  if (!Number.isFinite(lon0) || !(Math.abs(lat0) < 90)) {
    throw new RangeError(
      `The origin of a plane must be a longitude and a latitude inside ±90°, not ${lon0}, ${lat0}.`,
    );
  }
  const sin = Math.sin(lat0 * RAD);
  const w2 = 1 - E2 * sin * sin;
  const mPerDegLon = (A / Math.sqrt(w2)) * Math.cos(lat0 * RAD) * RAD;
  const mPerDegLat = ((A * (1 - E2)) / (w2 * Math.sqrt(w2))) * RAD;
  return {
    origin,
    toPlane: ([lon, lat]) => [turn(lon - lon0) * mPerDegLon, (lat - lat0) * mPerDegLat],
    toLonLat: ([x, y]) => [lon0 + x / mPerDegLon, lat0 + y / mPerDegLat],
  };
}

function turn(deltaLon: number): number {
  if (deltaLon > 180) return deltaLon - 360;
  if (deltaLon < -180) return deltaLon + 360;
  return deltaLon;
}

/** Rings in degrees to rings in the plane, same order and closing. */
export function ringsToPlane(rings: Rings, plane: LocalPlane): PlaneRings {
  return rings.map((ring) => ring.map((p) => plane.toPlane(p)));
}

/** Rings in the plane to rings in degrees, same order and closing. */
export function ringsToLonLat(rings: PlaneRings, plane: LocalPlane): Rings {
  return rings.map((ring) => ring.map((p: XY) => plane.toLonLat(p)));
}
