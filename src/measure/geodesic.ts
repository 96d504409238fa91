import geographicLib from 'geographiclib-geodesic';
import type { Position, Ring, Rings } from '../yard/types';

/**
 * Geodesic lengths and areas on the WGS 84 ellipsoid by the GeographicLib routines.
 * Source: Karney 2013, "Algorithms for geodesics", doi 10.1007/s00190-012-0578-z.
 * Held by tests/reference/area.ref.test.ts.
 */
// One CommonJS object: Node's own loader finds no named exports in it.
const { Geodesic, PolygonArea } = geographicLib;
const WGS84 = Geodesic.WGS84;

/**
 * Area of one ring, unsigned, m². Closed or open, any winding; fewer than 3 corners give 0.
 * The numerical noise is about 1e-4 m² at few corners, 1e-3 m² at 1,000.
 */
export function areaOfRingM2(ring: Ring): number {
  return Math.abs(computeRing(ring).area);
}

/** Length round one ring, m. Closed or open. */
export function perimeterOfRingM(ring: Ring): number {
  return computeRing(ring).perimeter;
}

function computeRing(ring: Ring): { area: number; perimeter: number } {
  const polygon = new PolygonArea.PolygonArea(WGS84, false);
  const first = ring[0];
  const last = ring[ring.length - 1];
  const isClosed = ring.length > 1 && first && last && first[0] === last[0] && first[1] === last[1];
  const count = isClosed ? ring.length - 1 : ring.length;
  for (let i = 0; i < count; i++) {
    const p = ring[i];
    if (p) polygon.AddPoint(p[1], p[0]);
  }
  const { area, perimeter } = polygon.Compute(false, true) as { area?: number; perimeter: number };
  return { area: area ?? 0, perimeter };
}

/**
 * Ground area of one polygon, holes taken off, m², 0 or more.
 * @param rings outer first, then holes; [lon, lat] in degrees; any winding; not changed
 * Not checked: self-crossing and holes outside (see crossings.ts).
 */
export function areaOfRingsM2(rings: Rings): number {
  let areaM2 = 0;
  rings.forEach((ring, i) => {
    areaM2 += (i === 0 ? 1 : -1) * areaOfRingM2(ring);
  });
  return Math.max(0, areaM2);
}

/** Ground area of all parts of a zone, m². Parts must not overlap each other. */
export function areaOfPartsM2(parts: readonly Rings[]): number {
  return parts.reduce((sum, rings) => sum + areaOfRingsM2(rings), 0);
}

/** Ground area, m², and length of all outlines, m, of parts that do not overlap, in one go. */
export function figuresOfParts(parts: readonly Rings[]): { areaM2: number; perimeterM: number } {
  let [areaM2, perimeterM] = [0, 0];
  for (const rings of parts) {
    let own = 0;
    rings.forEach((ring, i) => {
      const { area, perimeter } = computeRing(ring);
      own += (i === 0 ? 1 : -1) * Math.abs(area);
      perimeterM += perimeter;
    });
    areaM2 += Math.max(0, own);
  }
  return { areaM2, perimeterM };
}

/** Length of an open line through the positions, m; 0 for fewer than two. */
export function lengthOfLineM(line: readonly Position[]): number {
  let lengthM = 0;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1];
    const b = line[i];
    if (a && b) lengthM += distanceM(a, b);
  }
  return lengthM;
}

/** Length of all outlines of all parts, holes included, m. */
export function perimeterOfPartsM(parts: readonly Rings[]): number {
  return parts.reduce((sum, rings) => sum + rings.reduce((s, ring) => s + perimeterOfRingM(ring), 0), 0);
}

/** Geodesic distance between two positions, m. */
export function distanceM(a: Position, b: Position): number {
  return WGS84.Inverse(a[1], a[0], b[1], b[0], Geodesic.DISTANCE).s12 ?? 0;
}

/** Bearing from a to b at a, degrees clockwise from true north, 0 to <360; 0 when a is b. */
export function bearingDeg(a: Position, b: Position): number {
  const azimuth = WGS84.Inverse(a[1], a[0], b[1], b[0], Geodesic.AZIMUTH).azi1 ?? 0;
  return (azimuth + 360) % 360;
}

/** The position `lengthM` metres from `from` along the geodesic that starts at `bearing` degrees from true north. */
export function destination(from: Position, bearing: number, lengthM: number): Position {
  const r = WGS84.Direct(from[1], from[0], bearing, lengthM);
  return [r.lon2 ?? from[0], r.lat2 ?? from[1]];
}

/** Angle at `corner` between the ways to `a` and to `b`, degrees, 0 to 180. */
export function innerAngleDeg(a: Position, corner: Position, b: Position): number {
  const turn = Math.abs(bearingDeg(corner, a) - bearingDeg(corner, b));
  return Math.min(turn, 360 - turn);
}
