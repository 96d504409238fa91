import Flatbush from 'flatbush';
import simplify from 'simplify-js';
import { bufferOf, differenceOf } from '../../measure/clip';
import { isInsideParts } from '../../measure/isInsideParts';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';

/** Ways keep so far off the corners they go round, m. */
const OFF_M = 0.002;
/** Outlines of many corners are gone round by fewer, this far off, m. */
const COARSE_M = 0.06;
/** Outlines with more bends than this are gone round by fewer. */
const MANY_BENDS = 12;
/** The most corners that one way is looked for among. */
const MOST_NODES = 600;

/** One outline with free ground on its left. */
interface Wall {
  readonly ring: readonly XY[];
  /** places just off its bends, where a shortest way may turn. */
  readonly nodes: readonly XY[];
}

/** The nearest place on a wall, a place just off it on free ground, and how far it is. */
export interface Nearest {
  readonly on: XY;
  readonly at: XY;
  readonly distanceM: number;
}

/** Ground that can be walked, made ready for many ways. */
export interface Walkable {
  readonly walls: readonly Wall[];
  readonly isFree: (at: XY) => boolean;
  /** walls that a straight line crosses, by index. */
  readonly crossed: (from: XY, to: XY) => Set<number>;
  /** null where there are no walls. */
  readonly nearest: (at: XY) => Nearest | null;
}

/**
 * Ground to walk on.
 * @param inside ground that the walk stays on; null: everywhere
 * @param keepOut ground that it never enters
 */
export function makeWalkable(inside: readonly PlaneRings[] | null, keepOut: readonly PlaneRings[]): Walkable {
  const free = inside === null ? null : keepOut.length === 0 ? inside : differenceOf(inside, keepOut);
  const rings =
    free === null
      ? keepOut.flatMap((part) => (part[0] ? [turned(part[0], false)] : []))
      : free.flatMap((part) => part.map((ring, i) => turned(ring, i === 0)));
  const isFree =
    free === null
      ? (at: XY) =>
          !isInsideParts(
            at,
            keepOut.map((part) => part.slice(0, 1)),
          )
      : (at: XY) => isInsideParts(at, free);
  const edges = new Edges(rings);
  const walls = rings.map((ring): Wall => ({ ring, nodes: nodesOf(ring).filter(isFree) }));
  return {
    walls,
    isFree,
    crossed: (from, to) => edges.crossed(from, to),
    nearest: (at) => edges.nearest(at),
  };
}

/** @returns the ring turned left (free ground inside) or right (free ground outside) */
function turned(ring: readonly XY[], isLeft: boolean): readonly XY[] {
  return signedArea(ring) > 0 === isLeft ? ring : ring.toReversed();
}

/** Places just off each bend that juts into the free ground. */
function nodesOf(ring: readonly XY[]): XY[] {
  const exact = bendsOf(ring, OFF_M);
  if (exact.length <= MANY_BENDS) return exact;
  let tolerance = COARSE_M;
  for (let tries = 0; tries < 8; tries++, tolerance *= 2) {
    const isHole = signedArea(ring) < 0;
    const grown = bufferOf({ parts: [[isHole ? ring.toReversed() : ring]] }, isHole ? tolerance : -tolerance);
    const found = grown.flatMap((part) => {
      const outer = part[0];
      if (!outer) return [];
      const thin = simplify(
        outer.map(([x, y]) => ({ x, y })),
        tolerance * 0.9,
        true,
      );
      return bendsOf(
        turned(
          thin.map(({ x, y }): XY => [x, y]),
          !isHole,
        ),
        0,
      );
    });
    if (found.length <= Math.max(MANY_BENDS, MOST_NODES / 4))
      return found.length > 0 ? found : exact.slice(0, MOST_NODES);
  }
  return exact.slice(0, MOST_NODES);
}

/** Corners that turn right, moved to the left by `offM` along both sides. */
function bendsOf(ring: readonly XY[], offM: number): XY[] {
  const found: XY[] = [];
  const count = ring.length - 1;
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [ring[(i + count - 1) % count], ring[i], ring[(i + 1) % count]];
    if (!a || !b || !c) continue;
    const [ux, uy] = unit(a, b);
    const [vx, vy] = unit(b, c);
    if (ux * vy - uy * vx > -1e-9) continue;
    // away from the obstacle: between the two left normals
    const [mx, my] = [-uy - vy, ux + vx];
    const size = Math.hypot(mx, my);
    const reach = size > 0.2 ? (2 * offM) / (size * size) : 0;
    found.push(size > 0.2 ? [b[0] + mx * reach, b[1] + my * reach] : [b[0] + ux * offM, b[1] + uy * offM]);
  }
  return found;
}

function unit(a: XY, b: XY): XY {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.hypot(dx, dy);
  return size > 0 ? [dx / size, dy / size] : [0, 0];
}

/** All edges of the walls, found by place. */
class Edges {
  private readonly index: Flatbush | null;
  private readonly ends: Float64Array;
  private readonly owner: Int32Array;

  constructor(rings: readonly (readonly XY[])[]) {
    const count = rings.reduce((sum, ring) => sum + Math.max(0, ring.length - 1), 0);
    this.ends = new Float64Array(count * 4);
    this.owner = new Int32Array(count);
    this.index = count > 0 ? new Flatbush(count) : null;
    let at = 0;
    rings.forEach((ring, wall) => {
      for (let i = 1; i < ring.length; i++) {
        const [a, b] = [ring[i - 1], ring[i]] as [XY, XY];
        this.ends.set([a[0], a[1], b[0], b[1]], at * 4);
        this.owner[at++] = wall;
        this.index?.add(
          Math.min(a[0], b[0]),
          Math.min(a[1], b[1]),
          Math.max(a[0], b[0]),
          Math.max(a[1], b[1]),
        );
      }
    });
    this.index?.finish();
  }

  crossed(p: XY, q: XY): Set<number> {
    const found = new Set<number>();
    this.index?.search(
      Math.min(p[0], q[0]),
      Math.min(p[1], q[1]),
      Math.max(p[0], q[0]),
      Math.max(p[1], q[1]),
      (i) => {
        const wall = this.owner[i] as number;
        if (!found.has(wall) && this.crosses(i, p, q)) found.add(wall);
        return false;
      },
    );
    return found;
  }

  private crosses(i: number, p: XY, q: XY): boolean {
    const e = this.ends;
    const [ax, ay, bx, by] = [e[4 * i], e[4 * i + 1], e[4 * i + 2], e[4 * i + 3]] as [
      number,
      number,
      number,
      number,
    ];
    const side = (x: number, y: number) => (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);
    const other = ([x, y]: XY) => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    return side(ax, ay) > 0 !== side(bx, by) > 0 && other(p) > 0 !== other(q) > 0;
  }

  nearest(p: XY): Nearest | null {
    if (this.index === null) return null;
    let best: Nearest | null = null;
    // boxes come by distance: when one is farther than the best edge, no other can be nearer
    for (const i of this.index.neighbors(p[0], p[1], 12)) {
      const e = this.ends;
      const a: XY = [e[4 * i] as number, e[4 * i + 1] as number];
      const b: XY = [e[4 * i + 2] as number, e[4 * i + 3] as number];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const size = dx * dx + dy * dy;
      const t = size > 0 ? Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size)) : 0;
      const on: XY = [a[0] + t * dx, a[1] + t * dy];
      const distanceM = Math.hypot(on[0] - p[0], on[1] - p[1]);
      if (best && distanceM >= best.distanceM) continue;
      const [ux, uy] = unit(a, b);
      best = { on, at: [on[0] - uy * OFF_M, on[1] + ux * OFF_M], distanceM };
    }
    return best;
  }
}

/**
 * Shortest way between two places on walkable ground: visibility graph of the bends (Lozano-Pérez & Wesley
 * 1979, doi 10.1145/359156.359164) searched by A* (Hart, Nilsson & Raphael 1968, doi 10.1109/TSSC.1968.300136; both from memory). Only
 * outlines that lie in the way are looked at: those that the straight line crosses, then those that
 * the way round them crosses, until it crosses none. Round outlines of many corners are passed within 12 cm.
 * A place off the ground goes straight to the nearest ground first.
 * @returns from, bends, to; the straight line where no way was found (parts that do not hang together)
 */
export function wayWithin(walkable: Walkable, from: XY, to: XY): XY[] {
  if (walkable.crossed(from, to).size === 0 && walkable.isFree(middle(from, to))) return [from, to];
  const [a, b] = [ontoGround(walkable, from), ontoGround(walkable, to)];
  const inner = innerWay(walkable, a, b);
  // along an edge, too, is straight
  if (inner === null || (inner.length === 2 && isNear(a, from) && isNear(b, to))) return [from, to];
  const bends = inner.filter(
    (p, i) => !isNear(p, from) && !isNear(p, to) && (i === 0 || !isNear(p, inner[i - 1] as XY)),
  );
  return [from, ...bends, to];
}

function innerWay(walkable: Walkable, from: XY, to: XY): XY[] | null {
  const active = walkable.crossed(from, to);
  if (active.size === 0) return [from, to];
  for (let round = 0; round < 12; round++) {
    const nodes = [from, to, ...[...active].flatMap((wall) => walkable.walls[wall]?.nodes ?? [])];
    const line = searchWay(walkable, nodes.slice(0, MOST_NODES), active);
    if (line === null) return null;
    let isClear = true;
    for (let i = 1; i < line.length; i++) {
      for (const wall of walkable.crossed(line[i - 1] as XY, line[i] as XY)) {
        if (active.has(wall)) continue;
        active.add(wall);
        isClear = false;
      }
    }
    if (isClear) return line;
  }
  return null;
}

/** A* from the first node to the second over lines that cross none of the walls looked at. */
function searchWay(walkable: Walkable, nodes: readonly XY[], active: ReadonlySet<number>): XY[] | null {
  const goal = nodes[1] as XY;
  const cost = nodes.map(() => Infinity);
  const before = nodes.map(() => -1);
  const isDone = nodes.map(() => false);
  cost[0] = 0;
  for (;;) {
    let at = -1;
    let least = Infinity;
    for (let i = 0; i < nodes.length; i++) {
      if (isDone[i] || cost[i] === Infinity) continue;
      const guess = (cost[i] as number) + distance(nodes[i] as XY, goal);
      if (guess < least) [at, least] = [i, guess];
    }
    if (at < 0) return null;
    if (at === 1) break;
    isDone[at] = true;
    const here = nodes[at] as XY;
    for (let i = 1; i < nodes.length; i++) {
      if (isDone[i]) continue;
      const next = (cost[at] as number) + distance(here, nodes[i] as XY);
      if (next >= (cost[i] as number) || blocks(walkable, here, nodes[i] as XY, active)) continue;
      cost[i] = next;
      before[i] = at;
    }
  }
  const line: XY[] = [];
  for (let i = 1; i >= 0; i = before[i] as number) line.unshift(nodes[i] as XY);
  return line;
}

function blocks(walkable: Walkable, from: XY, to: XY, active: ReadonlySet<number>): boolean {
  for (const wall of walkable.crossed(from, to)) if (active.has(wall)) return true;
  return false;
}

/** The place itself when it lies free, else just inside the nearest outline. */
function ontoGround(walkable: Walkable, at: XY): XY {
  const nearest = walkable.nearest(at);
  if (nearest === null || (nearest.distanceM > OFF_M / 2 && walkable.isFree(at))) return at;
  return nearest.at;
}

const middle = (a: XY, b: XY): XY => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const distance = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const isNear = (a: XY, b: XY): boolean => distance(a, b) < 3 * OFF_M;
