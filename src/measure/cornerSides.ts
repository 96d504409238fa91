import Flatbush from 'flatbush';
import type { Position, Zone } from '../yard/types';
import { ON_M } from './outline';
import type { LocalPlane, XY } from './types';

/** A corner of a drawn zone: zones that share it share its key, each with its own error. */
export interface Corner {
  readonly key: string;
  readonly at: XY;
  readonly sigmaM: number;
}
/** One side of a drawn zone. */
export interface Side {
  readonly p: Corner;
  readonly q: Corner;
}

const sideCache = new WeakMap<Zone, { plane: LocalPlane; sides: Side[] }>();

/** All sides of a zone as drawn, in the plane; kept while both are the same objects. Those of no length are left out. */
export function sidesOf(zone: Zone, plane: LocalPlane): Side[] {
  const kept = sideCache.get(zone);
  if (kept?.plane === plane) return kept.sides;
  const { vertexSigmaM } = zone.survey;
  const corner = (p: Position): Corner => ({
    key: `${p[0]},${p[1]}`,
    at: plane.toPlane(p),
    sigmaM: vertexSigmaM,
  });
  const sides: Side[] = [];
  for (const ring of zone.parts.flat()) {
    const corners = ring.map(corner);
    for (let i = 1; i < corners.length; i++) {
      const p = corners[i - 1];
      const q = corners[i];
      if (p && q && (p.at[0] !== q.at[0] || p.at[1] !== q.at[1])) sides.push({ p, q });
    }
  }
  sideCache.set(zone, { plane, sides });
  return sides;
}

/** The sides whose boxes meet that of an edge, in their own order. */
export function indexSides(sides: readonly Side[]): (a: XY, b: XY) => Side[] {
  const index = new Flatbush(sides.length);
  for (const { p, q } of sides) {
    index.add(
      Math.min(p.at[0], q.at[0]),
      Math.min(p.at[1], q.at[1]),
      Math.max(p.at[0], q.at[0]),
      Math.max(p.at[1], q.at[1]),
    );
  }
  index.finish();
  return (a, b) =>
    index
      .search(
        Math.min(a[0], b[0]) - ON_M,
        Math.min(a[1], b[1]) - ON_M,
        Math.max(a[0], b[0]) + ON_M,
        Math.max(a[1], b[1]) + ON_M,
      )
      .sort((i, j) => i - j)
      .flatMap((i) => sides[i] ?? []);
}

/** How far along a side a point lies, as a share of it held to 0..1. */
export function shareOn({ p, q }: Side, [x, y]: XY): number {
  const [dx, dy] = [q.at[0] - p.at[0], q.at[1] - p.at[1]];
  const share = ((x - p.at[0]) * dx + (y - p.at[1]) * dy) / (dx * dx + dy * dy);
  return Math.min(1, Math.max(0, share));
}
