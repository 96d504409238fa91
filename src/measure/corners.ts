import type { Position, Ring, Rings, Yard, Zone } from '../yard/types';
import { checkRing } from './crossings';
import { ringsToPlane } from './plane';
import type { LocalPlane, PlaneRings, XY } from './types';

/** Two corners of one place in the plane lie within this, m: the grid of the set operations and its rounding. */
const SAME_M = 3e-6;
/** A corner this near an edge lies on it, m. */
const ON_EDGE_M = 2e-5;

/** Gives plane points their position in degrees, the same position for the same point. */
export interface CornerBook {
  toRings(parts: readonly PlaneRings[]): Rings[];
  /** positions that were not in the book at the start. */
  added(): readonly Position[];
}

/**
 * A book of the corners of zones: a set operation's output corner that is an input corner gets that
 * corner's own degrees back, digit for digit, and a new one the same degrees wherever it comes up.
 */
export function createCornerBook(
  zones: readonly Pick<Zone, 'parts'>[],
  plane: LocalPlane,
  more: readonly Ring[] = [],
): CornerBook {
  const cells = new Map<string, { xy: XY; position: Position }[]>();
  const added: Position[] = [];
  const cell = (v: number) => Math.floor(v / SAME_M);
  const put = (xy: XY, position: Position) => {
    const key = `${cell(xy[0])},${cell(xy[1])}`;
    cells.set(key, [...(cells.get(key) ?? []), { xy, position }]);
  };
  const find = (xy: XY): Position | undefined => {
    let best: { d: number; position: Position } | undefined;
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        for (const item of cells.get(`${cell(xy[0]) + i},${cell(xy[1]) + j}`) ?? []) {
          const d = Math.hypot(item.xy[0] - xy[0], item.xy[1] - xy[1]);
          if (d <= SAME_M && (!best || d < best.d)) best = { d, position: item.position };
        }
      }
    }
    return best?.position;
  };
  const rings = [...zones.flatMap((zone) => zone.parts.flatMap((part) => [...part])), ...more];
  for (const p of rings.flat()) {
    const xy = plane.toPlane(p);
    if (!find(xy)) put(xy, p);
  }
  const positionOf = (xy: XY): Position => {
    const known = find(xy);
    if (known) return known;
    const made = roundPosition(plane.toLonLat(xy));
    put(xy, made);
    added.push(made);
    return made;
  };
  return {
    toRings: (parts) =>
      parts.flatMap((part): Rings[] => {
        const made = part.map((ring) => withoutRepeats(ring.map(positionOf))).filter((r) => r.length >= 4);
        return made.length > 0 ? [made] : [];
      }),
    added: () => added,
  };
}

/** 11 decimals: a micrometre. */
export function roundPosition([lon, lat]: Position): Position {
  return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
}

function withoutRepeats(ring: Ring): Ring {
  return ring.filter((p, i) => {
    const before = ring[i - 1];
    return !before || before[0] !== p[0] || before[1] !== p[1];
  });
}

/**
 * Puts the corners into the edges of every zone that they lie on, so that neighbours keep one border.
 * A zone that the insertion would make cross itself stays as it was. Untouched zones stay the same objects.
 * @param skipIds zones left alone
 */
export function insertCorners(
  yard: Yard,
  corners: readonly Position[],
  plane: LocalPlane,
  skipIds: readonly string[] = [],
): Yard {
  if (corners.length === 0) return yard;
  let isChanged = false;
  const zones = yard.zones.map((zone) => {
    if (!zone.isPlaced) return zone;
    if (skipIds.includes(zone.id)) return zone;
    let isTouched = false;
    const parts = zone.parts.map((rings) =>
      rings.map((ring) => {
        const made = insertInRing(ring, corners, plane);
        if (made === ring || checkRing(made).length > 0) return ring;
        isTouched = true;
        return made;
      }),
    );
    if (!isTouched) return zone;
    isChanged = true;
    return { ...zone, parts };
  });
  return isChanged ? { ...yard, zones } : yard;
}

function insertInRing(ring: Ring, corners: readonly Position[], plane: LocalPlane): Ring {
  const missing = corners.filter((c) => !ring.some((p) => p[0] === c[0] && p[1] === c[1]));
  if (missing.length === 0) return ring;
  const xys = ringsToPlane([ring], plane)[0] ?? [];
  const made: Position[] = [];
  let isChanged = false;
  ring.forEach((p, i) => {
    made.push(p);
    const [a, b] = [xys[i], xys[i + 1]];
    if (!a || !b) return;
    const on = missing
      .map((corner) => ({ corner, share: shareOnEdge(plane.toPlane(corner), a, b) }))
      .filter((item): item is { corner: Position; share: number } => item.share !== null)
      .sort((x, y) => x.share - y.share);
    if (on.length > 0) isChanged = true;
    made.push(...on.map((item) => item.corner));
  });
  return isChanged ? made : ring;
}

/** Share of a->b at which `o` lies on it, strictly between its ends; null when it does not. */
function shareOnEdge(o: XY, a: XY, b: XY): number | null {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(ex, ey);
  if (length < 2 * ON_EDGE_M) return null;
  const along = ((o[0] - a[0]) * ex + (o[1] - a[1]) * ey) / length;
  const off = ((o[0] - a[0]) * ey - (o[1] - a[1]) * ex) / length;
  return Math.abs(off) <= ON_EDGE_M && along > ON_EDGE_M && along < length - ON_EDGE_M
    ? along / length
    : null;
}
