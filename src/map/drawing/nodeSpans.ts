import { endsOf, lineOfSide, type NodeParts, type NodePath, type NodeRing } from '../../measure/outlineNodes';
import type { Position } from '../../yard/types';

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
