import type L from 'leaflet';
import { endsOf, lineOfSide, type NodeParts, type NodePath, type NodeRing } from '../../measure/outlineNodes';
import type { Position } from '../../yard/types';
import { toLatLng } from '../coords';

/** A corner of the outline, or a side of it, under the pointer. */
export type Hit =
  | { readonly on: 'node'; readonly path: NodePath; readonly at: Position }
  | { readonly on: 'side'; readonly path: NodePath };

/** Corners count within this of the pointer, sides within the next, px. */
const NODE_PX = 16;
const SIDE_PX = 20;

function distancePx(map: L.Map, at: L.Point, a: Position, b: Position): number {
  const [p, q] = [map.latLngToLayerPoint(toLatLng(a)), map.latLngToLayerPoint(toLatLng(b))];
  const d = q.subtract(p);
  const squared = d.x * d.x + d.y * d.y;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - p.x) * d.x + (at.y - p.y) * d.y) / squared));
  return Math.hypot(at.x - p.x - t * d.x, at.y - p.y - t * d.y);
}

/** The corner within reach, else the nearest side. @param nodes false: sides only */
export function hitOutline(map: L.Map, parts: NodeParts, latLng: L.LatLng, nodes = true): Hit | null {
  const at = map.latLngToLayerPoint(latLng);
  let best: { hit: Hit; px: number } | null = null;
  for (const [part, rings] of parts.entries()) {
    for (const [r, ring] of rings.entries()) {
      for (const [node, place] of ring.nodes.entries()) {
        const path = { part, ring: r, node };
        const px = map.latLngToLayerPoint(toLatLng(place)).distanceTo(at);
        if (nodes && px <= NODE_PX && (!best || best.hit.on === 'side' || px < best.px))
          best = { hit: { on: 'node', path, at: place }, px };
        if (best?.hit.on === 'node') continue;
        const line = lineOfSide(ring, node);
        for (let i = 1; i < line.length; i++) {
          const away = distancePx(map, at, line[i - 1] ?? place, line[i] ?? place);
          if (away <= SIDE_PX && (!best || away < best.px)) best = { hit: { on: 'side', path }, px: away };
        }
      }
    }
  }
  return best?.hit ?? null;
}

/** A stretch of a ring from a node to a node, in the ring's direction; equal nodes: the whole ring. */
export interface NodeSpan {
  readonly part: number;
  readonly ring: number;
  readonly from: number;
  readonly to: number;
}

/** The side after a node as a stretch. */
export function spanOfSide(parts: NodeParts, { part, ring, node }: NodePath): NodeSpan {
  const count = parts[part]?.[ring]?.nodes.length ?? 1;
  return { part, ring, from: node, to: (node + 1) % count };
}

/** The shorter way between two nodes of one ring, or the whole ring for one node; null on two rings. */
export function spanBetween(parts: NodeParts, a: NodePath, b: NodePath): NodeSpan | null {
  const ring = parts[a.part]?.[a.ring];
  if (!ring || a.part !== b.part || a.ring !== b.ring) return null;
  const there = { part: a.part, ring: a.ring, from: a.node, to: b.node };
  if (a.node === b.node) return there;
  const back = { ...there, from: b.node, to: a.node };
  return lengthOf(ring, there) <= lengthOf(ring, back) ? there : back;
}

function sidesOf(ring: NodeRing, { from, to }: NodeSpan): number[] {
  const n = ring.nodes.length;
  const count = (to - from + n) % n || n;
  return Array.from({ length: count }, (_, i) => (from + i) % n);
}

/** Rough length, by degrees: only to tell the shorter way. */
function lengthOf(ring: NodeRing, span: NodeSpan): number {
  const line = lineOfSpan(ring, span);
  const squeeze = Math.cos(((line[0]?.[1] ?? 0) * Math.PI) / 180);
  return line.slice(1).reduce((sum, p, i) => {
    const q = line[i] ?? p;
    return sum + Math.hypot((p[0] - q[0]) * squeeze, p[1] - q[1]);
  }, 0);
}

/** Every corner of the stretch, ends included. */
export function lineOfSpan(ring: NodeRing, span: NodeSpan): Position[] {
  const sides = sidesOf(ring, span);
  const line = sides.flatMap((side) => lineOfSide(ring, side).slice(0, -1));
  const last = sides.at(-1);
  return last === undefined ? line : [...line, endsOf(ring, last)[1]];
}

/** Corners and curve points of the stretch, ends included: what a smooth line through it passes. */
export function pointsOfSpan(ring: NodeRing, span: NodeSpan): Position[] {
  const sides = sidesOf(ring, span);
  const points = sides.flatMap((side) => [endsOf(ring, side)[0], ...(ring.bends[side]?.inner ?? [])]);
  const last = sides.at(-1);
  return last === undefined ? points : [...points, endsOf(ring, last)[1]];
}

/** The ring with the stretch as one side: a curve through `inner`, or straight without it. */
export function replaceSpan(ring: NodeRing, span: NodeSpan, bend: NodeRing['bends'][number]): NodeRing {
  const sides = sidesOf(ring, span);
  const gone = new Set(sides.slice(1));
  const kept = ring.nodes.map((_, i) => i).filter((i) => !gone.has(i));
  return {
    nodes: kept.map((i) => ring.nodes[i] as Position),
    bends: kept.map((i) => (i === span.from ? bend : (ring.bends[i] ?? null))),
  };
}
