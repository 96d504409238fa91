import proj4 from 'proj4';
import { describe, expect, it } from 'vitest';
import { areaOfRingM2, destination, distanceM, perimeterOfRingM } from '../../src/measure/geodesic';
import { measureYard } from '../../src/measure/measureYard';
import { createPlane } from '../../src/measure/plane';
import { emptyYard, newZone } from '../../src/yard/defaults';
import type { Position, Ring } from '../../src/yard/types';
import { seededRandom } from '../bench/benchYard';

const close = (corners: readonly Position[]): Ring => [...corners, corners[0] as Position];
const fromLatLon = (...pairs: [number, number][]): Ring =>
  close(pairs.map(([lat, lon]): Position => [lon, lat]));

/**
 * The two polygons here come from the documentation of GeographicLib, which is the library that the
 * program uses: they show that it is called rightly, not that it is right. The closed formula and the
 * projection by another library further down are the independent checks.
 */
describe('polygons published with the library', () => {
  // GeographicLib JavaScript documentation, "Examples", measuring areas: Antarctica.
  const antarctica = fromLatLon(
    [-63.1, -58],
    [-72.9, -74],
    [-71.9, -102],
    [-74.9, -102],
    [-74.3, -131],
    [-77.5, -163],
    [-77.4, 163],
    [-71.7, 172],
    [-65.9, 140],
    [-65.7, 113],
    [-66.6, 88],
    [-66.9, 59],
    [-69.8, 25],
    [-70.0, -4],
    [-71.0, -14],
    [-77.3, -33],
    [-77.9, -46],
    [-74.7, -61],
  );
  it('Antarctica, to the digits printed in the GeographicLib documentation', () => {
    expect(areaOfRingM2(antarctica).toFixed(1)).toBe('13662703680020.1');
    expect(perimeterOfRingM(antarctica).toFixed(3)).toBe('16831067.893');
  });

  it('the square of one degree at the equator, as in the PolygonArea example of geographiclib-rs', () => {
    const square = fromLatLon([0, 0], [0, 1], [1, 1], [1, 0]);
    // The last printed digits are below the rounding of the area's accumulator: 1e-15 of the Earth's half.
    expect(Math.abs(areaOfRingM2(square) - 12308778361.469452)).toBeLessThan(1e-3);
    expect(Math.abs(perimeterOfRingM(square) - 443770.917248302)).toBeLessThan(1e-6);
  });
});

/**
 * Area between two parallels and two meridians of the WGS 84 ellipsoid, m²: a²·Δλ·(q2 - q1)/2 with the q
 * of authalic latitude. Snyder 1987, Map Projections: A Working Manual, USGS Professional Paper 1395,
 * eq. 3-12. No routine of the program or of GeographicLib takes part.
 */
function cellAreaM2(south: number, north: number, widthDeg: number): number {
  const a = 6378137;
  const f = 1 / 298.257223563;
  const e2 = f * (2 - f);
  const e = Math.sqrt(e2);
  const q = (latDeg: number) => {
    const sin = Math.sin((latDeg * Math.PI) / 180);
    return (1 - e2) * (sin / (1 - e2 * sin * sin) - (1 / (2 * e)) * Math.log((1 - e * sin) / (1 + e * sin)));
  };
  return (a * a * ((widthDeg * Math.PI) / 180) * (q(north) - q(south))) / 2;
}

describe('the closed formula of the ellipsoid (Snyder 1987, eq. 3-12)', () => {
  it.each([-90, -60, -1, 0, 25, 40, 65, 89])(
    'cell of one degree north of latitude %d within 2e-9',
    (south) => {
      // Parallels are no geodesics: 4,000 chords stray from one by less than 1e-9 of the cell.
      const steps = 4000;
      const along = Array.from({ length: steps + 1 }, (_, i) => i / steps);
      const ring = close([
        ...along.map((lon): Position => [lon, south]),
        ...along.map((share): Position => [1 - share, south + 1]),
      ]);
      const expectedM2 = cellAreaM2(south, south + 1, 1);
      expect(Math.abs(areaOfRingM2(ring) / expectedM2 - 1)).toBeLessThan(2e-9);
    },
  );

  it.each([-75, -33, 0, 25, 30, 35, 40, 45, 48, 70])(
    'lawn of 0.0002 degrees north of latitude %d within 1e-3 m²',
    (south) => {
      const ring = fromLatLon([south, 10], [south, 10.0002], [south + 0.0002, 10.0002], [south + 0.0002, 10]);
      expect(Math.abs(areaOfRingM2(ring) - cellAreaM2(south, south + 0.0002, 0.0002))).toBeLessThan(1e-3);
    },
  );

  it('both hemispheres make the whole ellipsoid, 510,065,621.724 km² (GRS 80 and WGS 84 tables, from memory)', () => {
    expect(cellAreaM2(-90, 90, 360) / 1e6).toBeCloseTo(510065621.724, 2);
  });
});

describe('lawns of 0.0002 degrees each way', () => {
  // Values computed with the GeographicLib routines outside this program, not published.
  it.each([
    [25, 447.301, 84.6892],
    [30, 427.8292, 82.9355],
    [35, 405.102, 80.8915],
    [40, 379.2665, 78.5713],
    [45, 350.495, 75.9914],
    [48, 331.904, 74.3262],
  ])('at latitude %d: %d m² and %d m', (lat, areaM2, perimeterM) => {
    const ring = fromLatLon([lat, -90], [lat, -89.9998], [lat + 0.0002, -89.9998], [lat + 0.0002, -90]);
    expect(Math.abs(areaOfRingM2(ring) - areaM2)).toBeLessThan(6e-4);
    expect(Math.abs(perimeterOfRingM(ring) - perimeterM)).toBeLessThan(6e-5);
  });
});

describe('an equal-area projection by another library', () => {
  /**
   * proj4 Lambert azimuthal equal-area on the WGS 84 ellipsoid, centred on the yard (EPSG Guidance Note
   * 7-2, method 9820, whose formulas it carries out). Edges are taken as geodesics, as GeographicLib
   * does: points on them are found by bearing and distance, so that both mean the same ground.
   */
  function projectedAreaM2(ring: Ring, [lon0, lat0]: Position): number {
    const project = proj4(
      '+proj=longlat +datum=WGS84',
      `+proj=laea +lat_0=${lat0} +lon_0=${lon0} +x_0=0 +y_0=0 +ellps=WGS84`,
    );
    const dense: Position[] = [];
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1] as Position, ring[i] as Position];
      for (let k = 0; k < 4; k++) dense.push(geodesicPoint(a, b, k / 4));
    }
    const plane = dense.map((p) => project.forward([p[0], p[1]]) as [number, number]);
    let twice = 0;
    plane.forEach((a, i) => {
      const b = plane[(i + 1) % plane.length] as [number, number];
      twice += a[0] * b[1] - b[0] * a[1];
    });
    return Math.abs(twice) / 2;
  }

  it('agrees on 1,000 random yards at all latitudes within 1e-6, or 1e-3 m² where that is more', () => {
    const random = seededRandom(4326);
    const misses: string[] = [];
    for (let n = 0; n < 1000; n++) {
      // evenly by latitude, the last degree at either pole left out
      const middle: Position = [random() * 360 - 180, random() * 178 - 89];
      const radiusM = 5 * 40 ** random();
      const count = 3 + Math.floor(random() * 18);
      const corners = Array.from({ length: count }, (_, k) =>
        destination(middle, (360 * (k + 0.8 * random())) / count, radiusM * (0.4 + 0.6 * random())),
      );
      const ring = close(corners);
      const oursM2 = areaOfRingM2(ring);
      const theirsM2 = projectedAreaM2(ring, middle);
      if (!(Math.abs(oursM2 - theirsM2) <= Math.max(1e-6 * theirsM2, 1e-3))) {
        misses.push(`${middle.join(', ')}: ${oursM2} and ${theirsM2}`);
      }
      expect(oursM2).toBeGreaterThan(1);
    }
    expect(misses).toEqual([]);
  });

  function geodesicPoint(a: Position, b: Position, share: number): Position {
    if (share === 0) return a;
    const east = b[0] - a[0] - 360 * Math.round((b[0] - a[0]) / 360);
    // First guess on the chord; then along the true azimuth from a.
    const lengthM = distanceM(a, [a[0] + east, b[1]]);
    return destination(a, azimuthDeg(a, b), share * lengthM);
  }
});

/** Azimuth at `a`, found by hand so that it does not rest on bearingDeg: bisection on where the end falls. */
function azimuthDeg(a: Position, b: Position): number {
  const lengthM = distanceM(a, b);
  const plane = createPlane(a);
  const [x, y] = plane.toPlane(b);
  let azimuth = (Math.atan2(x, y) * 180) / Math.PI;
  for (let i = 0; i < 20; i++) {
    const end = destination(a, azimuth, lengthM);
    const [ex, ey] = plane.toPlane(end);
    const turn = ((Math.atan2(x, y) - Math.atan2(ex, ey)) * 180) / Math.PI;
    if (Math.abs(turn) < 1e-12) break;
    azimuth += turn;
  }
  return azimuth;
}

describe('error of an area', () => {
  it('is √2·l·s for a square: 43.105 m² for 30.48 m and 1 m (Chrisman & Yandell 1988, from memory)', () => {
    const plane = createPlane([-83, 40]);
    const l = 30.48;
    const ring = close(
      [
        [0, 0],
        [l, 0],
        [l, l],
        [0, l],
      ].map(([x = 0, y = 0]) => plane.toLonLat([x, y])),
    );
    const zone = newZone('lawn', 'turf', [[ring]], {
      survey: { method: 'walked', vertexSigmaM: 1, scaleSigma: 0, source: '' },
    });
    const measured = measureYard({ ...emptyYard('y', 'Yard'), zones: [zone] });
    expect(measured.zones.get('lawn')?.netSigmaM2).toBeCloseTo(43.105, 2);
  });
});
