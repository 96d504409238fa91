import type { LocalPlane, MeasuredZone, PlaneRings, XY } from '../measure/types';
import { newZone } from '../yard/defaults';
import type { Position, Zone, ZoneKind } from '../yard/types';
import type { TreatedZone } from './types';

/** For tests alone: an affine plane with the WGS 84 radii at its origin, and shapes laid in it by hand. */
export function testPlane(origin: Position = [-97.4312, 39.8214]): LocalPlane {
  const phi = (origin[1] * Math.PI) / 180;
  const w = 1 - 6.69437999014e-3 * Math.sin(phi) ** 2;
  const northM = ((6378137 * (1 - 6.69437999014e-3)) / w ** 1.5) * (Math.PI / 180);
  const eastM = (6378137 / Math.sqrt(w)) * Math.cos(phi) * (Math.PI / 180);
  return {
    origin,
    toPlane: (p) => [(p[0] - origin[0]) * eastM, (p[1] - origin[1]) * northM],
    toLonLat: (p) => [origin[0] + p[0] / eastM, origin[1] + p[1] / northM],
  };
}

/** Closed ring of a box. */
export function boxRing(x0: number, y0: number, x1: number, y1: number): XY[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ];
}

function planeArea(ring: readonly XY[]): number {
  let twice = 0;
  for (let i = 1; i < ring.length; i += 1) {
    const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return Math.abs(twice) / 2;
}

function planeLength(ring: readonly XY[]): number {
  return ring.slice(1).reduce((sum, b, i) => {
    const a = ring[i] as XY;
    return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);
}

/** A zone whose net shape is the given one. */
export function laidZone(
  id: string,
  kind: ZoneKind,
  planeParts: readonly PlaneRings[],
  plane: LocalPlane,
): { zone: Zone; measured: MeasuredZone } {
  const parts = planeParts.map((rings) => rings.map((ring) => ring.map((p) => plane.toLonLat(p))));
  const areaM2 = planeParts.reduce(
    (sum, rings) => sum + rings.reduce((s, ring, i) => s + (i === 0 ? 1 : -1) * planeArea(ring), 0),
    0,
  );
  const measured: MeasuredZone = {
    zoneId: id,
    grossM2: areaM2,
    netM2: areaM2,
    netSigmaM2: 0.02 * areaM2,
    netPerimeterM: planeParts.flat().reduce((sum, ring) => sum + planeLength(ring), 0),
    netParts: parts,
    netPlaneParts: planeParts,
    cutBy: [],
    gradient: new Map(),
  };
  return { zone: newZone(id, kind, parts, { name: id }), measured };
}

/** Treated ground of the given shape, no strips. */
export function laidGround(id: string, planeParts: readonly PlaneRings[], plane: LocalPlane): TreatedZone {
  const { measured } = laidZone(id, 'turf', planeParts, plane);
  return {
    zoneId: id,
    areaM2: measured.netM2,
    areaSigmaM2: measured.netSigmaM2,
    gradient: measured.gradient,
    stripM2: 0,
    strips: [],
    parts: measured.netParts,
    planeParts,
  };
}
