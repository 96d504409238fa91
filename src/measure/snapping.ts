import type { Position } from '../yard/types';
import type { Box } from './planeBox';
import type { XY } from './types';

/** Outlines something can snap to, in the plane. */
export interface SnapShape {
  /** empty: what is being drawn itself. */
  readonly name: string;
  /** rings or open lines. */
  readonly lines: readonly (readonly XY[])[];
  /** the same places in degrees, digit for digit. */
  readonly places: readonly (readonly Position[])[];
  readonly box: Box;
}

/** A corner from which a side goes out to the pointer, and the corner before it (null: none). */
export interface SnapAnchor {
  readonly from: XY;
  readonly before: XY | null;
}

export interface SnapQuery {
  readonly pointer: XY;
  /** how near is near, m. */
  readonly reachM: number;
  readonly shapes: readonly SnapShape[];
  readonly anchors: readonly SnapAnchor[];
  /** what is drawn so far, corner by corner: its sides give directions. */
  readonly own: readonly XY[];
  /** corners that move along with the pointer: no target, nor are their sides. */
  readonly hidden: readonly XY[];
}

/** A line held to: where it is drawn, and what it is called. */
export interface Guide {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
}

export interface Snap {
  readonly to: 'corner' | 'edge' | 'guide';
  readonly at: XY;
  /** a corner's own degrees; null for other places. */
  readonly position: Position | null;
  readonly guides: readonly Guide[];
}

/** A line the pointer may be held to; `least` and `most`: share of from-to it is good for. */
interface Line extends Guide {
  readonly least: number;
  readonly most: number;
  readonly distance: number;
  readonly isEdge: boolean;
}

const SAME_M = 2e-5;
/** Neighbours this near give directions and extensions, m. */
const NEIGHBOUR_M = 12;
/** Sides shorter than this give no direction, m. */
const LEAST_SIDE_M = 1;
/** A side is drawn on beyond its end at most so far, m. */
const EXTENSION_M = 15;
/** A direction holds within this of it. */
const ANGLE_TAN = Math.tan((3.5 * Math.PI) / 180);
/** Directions nearer than this are one. */
const SAME_ANGLE = (0.5 * Math.PI) / 180;
/** Lines that cross at a smaller angle make no corner. */
const LEAST_CROSS = Math.sin((10 * Math.PI) / 180);
const MOST_LINES = 6;

/**
 * Where the pointer is held to: the nearest corner within reach; else where two lines cross; else the
 * nearest line. Lines are neighbours' edges, their extensions, and through each anchor the directions
 * square and parallel to the side before, to earlier sides and to neighbours' edges.
 * @returns null when nothing is near. Plane metres.
 */
export function findSnap(query: SnapQuery): Snap | null {
  const corner = nearestCorner(query);
  if (corner) return corner;
  const lines = [...edgeLines(query), ...anchorLines(query)]
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MOST_LINES);
  const crossing = nearestCrossing(query, lines);
  if (crossing) return crossing;
  const line = lines.find((one) => one.isEdge) ?? lines[0];
  if (!line) return null;
  const at = footOn(query.pointer, line);
  return {
    to: line.isEdge ? 'edge' : 'guide',
    at,
    position: null,
    guides: line.isEdge ? [] : [reaching(line, at)],
  };
}

function isNear([x, y]: XY, box: Box, marginM: number): boolean {
  return (
    x >= box.minX - marginM && x <= box.maxX + marginM && y >= box.minY - marginM && y <= box.maxY + marginM
  );
}

function apart(a: XY, b: XY): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function nearestCorner({ pointer, reachM, shapes, hidden }: SnapQuery): Snap | null {
  let best: { at: XY; position: Position | null; d: number } | null = null;
  for (const shape of shapes) {
    if (!isNear(pointer, shape.box, reachM)) continue;
    for (const [i, line] of shape.lines.entries()) {
      for (const [j, at] of line.entries()) {
        const d = apart(at, pointer);
        if (d > reachM || (best && d >= best.d) || hidden.some((p) => apart(p, at) <= SAME_M)) continue;
        best = { at, position: shape.places[i]?.[j] ?? null, d };
      }
    }
  }
  return best && { to: 'corner', at: best.at, position: best.position, guides: [] };
}

/** Distance of p from the line through a and b, and the share of a-b where its foot lies. */
function footShare(p: XY, a: XY, b: XY): { distance: number; share: number; lengthM: number } {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const squared = ex * ex + ey * ey;
  const share = squared === 0 ? 0 : ((p[0] - a[0]) * ex + (p[1] - a[1]) * ey) / squared;
  const distance = Math.hypot(p[0] - a[0] - share * ex, p[1] - a[1] - share * ey);
  return { distance, share, lengthM: Math.sqrt(squared) };
}

function footOn(p: XY, { from, to, least, most }: Line): XY {
  const t = Math.min(most, Math.max(least, footShare(p, from, to).share));
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
}

/** Edges within reach, and edges whose line, carried on beyond an end, passes within reach. */
function edgeLines({ pointer, reachM, shapes, hidden }: SnapQuery): Line[] {
  const found: Line[] = [];
  for (const shape of shapes) {
    if (!isNear(pointer, shape.box, Math.max(reachM, EXTENSION_M))) continue;
    for (const line of shape.lines) {
      for (let i = 1; i < line.length; i++) {
        const [a, b] = [line[i - 1], line[i]];
        if (!a || !b || hidden.some((p) => apart(p, a) <= SAME_M || apart(p, b) <= SAME_M)) continue;
        const { distance, share, lengthM } = footShare(pointer, a, b);
        if (distance > reachM) continue;
        const words = shape.name ? `in line with ${shape.name}` : 'in line';
        const beyondM = share < 0 ? -share * lengthM : (share - 1) * lengthM;
        if (beyondM <= 0)
          found.push({ from: a, to: b, words, least: 0, most: 1, distance: distance / 2, isEdge: true });
        else if (
          lengthM >= LEAST_SIDE_M &&
          beyondM <= Math.min(EXTENSION_M, 3 * lengthM) &&
          distance <= reachM / 2
        ) {
          const [from, to] = share < 0 ? [a, b] : [b, a];
          found.push({ from, to, words, least: -Infinity, most: Infinity, distance, isEdge: false });
        }
      }
    }
  }
  return found;
}

interface Direction {
  readonly angle: number;
  readonly words: string;
}

/** An angle as that of a line, 0 to π. */
function lineAngle(angle: number): number {
  const half = ((angle % Math.PI) + Math.PI) % Math.PI;
  return half >= Math.PI - 1e-12 ? 0 : half;
}

/** Lines through the anchors in every direction worth holding to, within reach of the pointer. */
function anchorLines(query: SnapQuery): Line[] {
  const { pointer, reachM, anchors } = query;
  const others = anchors.length > 0 ? sideDirections(query) : [];
  return anchors.flatMap(({ from, before }): Line[] => {
    const aheadM = apart(from, pointer);
    if (aheadM <= reachM) return [];
    const wanted: Direction[] = [];
    const add = (one: Direction) => {
      const isKnown = wanted.some((each) => {
        const gap = Math.abs(each.angle - one.angle);
        return Math.min(gap, Math.PI - gap) < SAME_ANGLE;
      });
      if (!isKnown) wanted.push(one);
    };
    if (before && apart(before, from) > SAME_M) {
      const angle = Math.atan2(from[1] - before[1], from[0] - before[0]);
      add({ angle: lineAngle(angle + Math.PI / 2), words: 'right angle' });
      add({ angle: lineAngle(angle), words: 'straight on' });
    }
    for (const one of others) add(one);
    return wanted.flatMap(({ angle, words }): Line[] => {
      const to: XY = [from[0] + Math.cos(angle), from[1] + Math.sin(angle)];
      const { distance } = footShare(pointer, from, to);
      if (distance > Math.min(reachM * 0.75, aheadM * ANGLE_TAN)) return [];
      return [{ from, to, words, least: -Infinity, most: Infinity, distance, isEdge: false }];
    });
  });
}

/** Directions of the sides drawn so far and of neighbours' edges near the pointer, and square to them. */
function sideDirections({ pointer, shapes, own, anchors }: SnapQuery): Direction[] {
  const found: Direction[] = [];
  const push = (a: XY, b: XY, name: string) => {
    if (apart(a, b) < LEAST_SIDE_M) return;
    const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
    found.push({ angle: lineAngle(angle), words: `parallel to ${name}` });
    found.push({ angle: lineAngle(angle + Math.PI / 2), words: `right angle to ${name}` });
  };
  for (let i = 1; i < own.length; i++) {
    const [a, b] = [own[i - 1], own[i]];
    if (a && b) push(a, b, `side ${i}`);
  }
  for (const shape of shapes) {
    if (
      shape.name === '' ||
      ![pointer, ...anchors.map(({ from }) => from)].some((p) => isNear(p, shape.box, NEIGHBOUR_M))
    )
      continue;
    for (const line of shape.lines) {
      for (let i = 1; i < line.length; i++) {
        const [a, b] = [line[i - 1], line[i]];
        if (a && b && distanceToSide(pointer, a, b) <= NEIGHBOUR_M) push(a, b, shape.name);
      }
    }
  }
  return found;
}

function distanceToSide(p: XY, a: XY, b: XY): number {
  const { share } = footShare(p, a, b);
  const t = Math.min(1, Math.max(0, share));
  return apart(p, [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
}

/** Where two of the lines cross, nearest the pointer. */
function nearestCrossing({ pointer, reachM }: SnapQuery, lines: readonly Line[]): Snap | null {
  let best: { at: XY; d: number; pair: [Line, Line] } | null = null;
  for (const [i, a] of lines.entries()) {
    for (const b of lines.slice(i + 1)) {
      const at = crossingOf(a, b);
      const d = at ? apart(at, pointer) : Infinity;
      if (at && d <= reachM && (!best || d < best.d)) best = { at, d, pair: [a, b] };
    }
  }
  if (!best) return null;
  const { at, pair } = best;
  const guides = pair.filter((line) => !line.isEdge).map((line) => reaching(line, at));
  return { to: pair.some((line) => line.isEdge) ? 'edge' : 'guide', at, position: null, guides };
}

function crossingOf(a: Line, b: Line): XY | null {
  const [ax, ay, bx, by] = [
    a.to[0] - a.from[0],
    a.to[1] - a.from[1],
    b.to[0] - b.from[0],
    b.to[1] - b.from[1],
  ];
  const cross = ax * by - ay * bx;
  if (Math.abs(cross) < LEAST_CROSS * Math.hypot(ax, ay) * Math.hypot(bx, by)) return null;
  const [dx, dy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const [s, t] = [(dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross];
  if (s < a.least || s > a.most || t < b.least || t > b.most) return null;
  return [a.from[0] + s * ax, a.from[1] + s * ay];
}

/** The guide drawn from where it comes from as far as the place held to. */
function reaching({ from, words }: Line, at: XY): Guide {
  return { from, to: at, words };
}
