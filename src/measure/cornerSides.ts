import Flatbush from 'flatbush';
import type { Position, Zone } from '../yard/types';
import { findPulls, type Pull } from './curvePulls';
import { ON_M } from './outline';
import type { LocalPlane, XY } from './types';

/** A corner of a drawn zone: zones that share it share its key, each with its own error. */
export interface Corner {
  readonly key: string;
  readonly at: XY;
  readonly sigmaM: number;
  /** a corner that a curve made follows the curve's points and has no error of its own; null: it stands for itself. */
  readonly pulls: readonly Pull[] | null;
}
/** The error of scale of what a zone was measured by: all it measured grows from one middle. */
export interface Scale {
  readonly key: string;
  /** relative standard deviation. */
  readonly sigma: number;
  readonly middle: XY;
}
/** One side of a drawn zone. */
export interface Side {
  readonly p: Corner;
  readonly q: Corner;
  /** null: none. */
  readonly scale: Scale | null;
}
/** The sides of a zone, and the keys of all that its outline hangs on. */
interface Outline {
  readonly plane: LocalPlane;
  readonly sides: readonly Side[];
  readonly keys: ReadonlySet<string>;
  readonly scale: Scale | null;
}

const outlines = new WeakMap<Zone, Outline>();

/** All sides of a zone as drawn, in the plane; kept while both are the same objects. Those of no length are left out. */
export function sidesOf(zone: Zone, plane: LocalPlane): readonly Side[] {
  return outlineOf(zone, plane).sides;
}

/** Keys of the corners, curve points and scale that a zone's outline hangs on. */
export function keysOf(zone: Zone, plane: LocalPlane): ReadonlySet<string> {
  return outlineOf(zone, plane).keys;
}

/** The error of scale of a zone; null when it has none. */
export function scaleOf(zone: Zone, plane: LocalPlane): Scale | null {
  return outlineOf(zone, plane).scale;
}

function outlineOf(zone: Zone, plane: LocalPlane): Outline {
  const kept = outlines.get(zone);
  if (kept?.plane === plane) return kept;
  const { vertexSigmaM } = zone.survey;
  // Zones without a place lie on each other: their corners are no shared corners.
  const mark = zone.isPlaced ? '' : `${zone.id} `;
  const scale = scaleOfZone(zone);
  const pullsByRing = zone.curves.length > 0 ? findPulls(zone) : null;
  const keys = new Set<string>(scale ? [scale.key] : []);
  const sides: Side[] = [];
  for (const ring of zone.parts.flat()) {
    const pullsAt = pullsByRing?.get(ring);
    const last = ring.length - 1;
    const corners = ring.map((p: Position, i): Corner => {
      const found = pullsAt?.get(i === last ? 0 : i) ?? null;
      const pulls = found && mark ? found.map((pull) => ({ ...pull, key: mark + pull.key })) : found;
      const key = `${mark}${p[0]},${p[1]}`;
      keys.add(key);
      for (const pull of pulls ?? []) keys.add(pull.key);
      return { key, at: plane.toPlane(p), sigmaM: vertexSigmaM, pulls };
    });
    for (let i = 1; i < corners.length; i++) {
      const p = corners[i - 1];
      const q = corners[i];
      if (p && q && (p.at[0] !== q.at[0] || p.at[1] !== q.at[1])) sides.push({ p, q, scale });
    }
  }
  const made: Outline = { plane, sides, keys, scale };
  outlines.set(zone, made);
  return made;
}

/**
 * Zones of one source and method grow together, about the middle of the yard. Those of one method whose
 * source is not told are taken as measured by the same instrument, which is the cautious reading: their errors
 * add up, and a zone split or copied keeps the error it had.
 */
function scaleOfZone({ survey }: Zone): Scale | null {
  const { scaleSigma: sigma, source, method } = survey;
  return sigma > 0 ? { key: `scale ${method} ${source}`, sigma, middle: [0, 0] } : null;
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
