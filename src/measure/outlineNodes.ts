import type { Curve, Position, Ring, Rings } from '../yard/types';
import { type Curved, findAllCurves, flattenCurve, type PlacedCurve } from './curves';

/** A curved side between two nodes. */
export interface Bend {
  readonly kind: Curve['kind'];
  /** points it passes through between its ends; one for an arc. */
  readonly inner: readonly Position[];
  /** corners of the ring between the ends. */
  readonly flat: readonly Position[];
}

/** A ring by what a person can take hold of: plain corners and ends of curves, and the sides between them. */
export interface NodeRing {
  readonly nodes: readonly Position[];
  /** side from each node to the next (the last back to the first); null: straight. */
  readonly bends: readonly (Bend | null)[];
}

/** One list of rings a part. */
export type NodeParts = readonly (readonly NodeRing[])[];

/** Which node: part, ring (0 is the outer one), place in the ring. */
export interface NodePath {
  readonly part: number;
  readonly ring: number;
  readonly node: number;
}

/** A curved side laid anew between its ends; null (straight) without points between. */
export function bendBetween(
  a: Position,
  inner: readonly Position[],
  b: Position,
  kind: Curve['kind'],
): Bend | null {
  if (inner.length === 0) return null;
  return { kind, inner, flat: flattenCurve({ kind, points: [a, ...inner, b] }).slice(1, -1) };
}

/** The outline of a zone as nodes and sides. Curves that no longer agree are left out. */
export function collapseParts(zone: Curved): NodeParts {
  const { found } = findAllCurves(zone);
  return zone.parts.map((rings, part) =>
    rings.map((ring, r) =>
      collapseRing(
        ring,
        found.filter((one) => one.part === part && one.ring === r),
      ),
    ),
  );
}

function collapseRing(ring: Ring, found: readonly PlacedCurve[]): NodeRing {
  const open = ring.slice(0, -1);
  const starts = new Map(found.map((one) => [one.from, one]));
  const inside = new Set<number>();
  for (const { from, to } of found) {
    const count = (to - from + open.length) % open.length || open.length;
    for (let i = 1; i < count; i++) inside.add((from + i) % open.length);
  }
  const nodes: Position[] = [];
  const bends: (Bend | null)[] = [];
  open.forEach((at, i) => {
    if (inside.has(i)) return;
    nodes.push(at);
    const one = starts.get(i);
    if (!one) {
      bends.push(null);
      return;
    }
    const points = one.isTurned ? [...one.curve.points].reverse() : one.curve.points;
    const count = (one.to - i + open.length) % open.length || open.length;
    const flat = Array.from({ length: count - 1 }, (_, j) => open[(i + j + 1) % open.length] ?? at);
    bends.push({ kind: one.curve.kind, inner: points.slice(1, -1), flat });
  });
  return { nodes, bends };
}

/** Rings and curves of nodes and sides; closed. */
export function expandParts(parts: NodeParts): { parts: Rings[]; curves: Curve[] } {
  const curves: Curve[] = [];
  const rings = parts.map((part) =>
    part.map((ring) => {
      ring.bends.forEach((bend, i) => {
        const [a, b] = endsOf(ring, i);
        if (bend) curves.push({ kind: bend.kind, points: [a, ...bend.inner, b] });
      });
      return ringOfNodes(ring);
    }),
  );
  return { parts: rings, curves };
}

/** The closed ring of nodes and sides. */
export function ringOfNodes({ nodes, bends }: NodeRing): Ring {
  const open = nodes.flatMap((node, i) => [node, ...(bends[i]?.flat ?? [])]);
  return open[0] ? [...open, open[0]] : [];
}

/** The nodes at the ends of a side. */
export function endsOf({ nodes }: NodeRing, side: number): [Position, Position] {
  const none: Position = [0, 0];
  return [nodes[side] ?? none, nodes[(side + 1) % nodes.length] ?? none];
}

/** Every corner of a side from node to node, ends included. */
export function lineOfSide(ring: NodeRing, side: number): Position[] {
  const [a, b] = endsOf(ring, side);
  return [a, ...(ring.bends[side]?.flat ?? []), b];
}

/** The parts with one ring changed; everything else is shared with the input. */
export function withRing(
  parts: NodeParts,
  at: { readonly part: number; readonly ring: number },
  change: (ring: NodeRing) => NodeRing,
): NodeParts {
  return parts.map((rings, p) =>
    p !== at.part ? rings : rings.map((ring, r) => (r === at.ring ? change(ring) : ring)),
  );
}

/** The ring with other nodes at some places; curves that end there are laid anew. */
export function withNodes(ring: NodeRing, moved: ReadonlyMap<number, Position>): NodeRing {
  const nodes = ring.nodes.map((at, i) => moved.get(i) ?? at);
  const bends = ring.bends.map((bend, i) => {
    const isMoved = moved.has(i) || moved.has((i + 1) % nodes.length);
    return bend && isMoved ? bendBetween(...spread({ nodes, bends: [] }, i, bend)) : bend;
  });
  return { nodes, bends };
}

function spread(
  ring: NodeRing,
  side: number,
  bend: Bend,
): [Position, readonly Position[], Position, Curve['kind']] {
  const [a, b] = endsOf(ring, side);
  return [a, bend.inner, b, bend.kind];
}

/** One node elsewhere. */
export function moveNode(parts: NodeParts, path: NodePath, to: Position): NodeParts {
  return withRing(parts, path, (ring) => withNodes(ring, new Map([[path.node, to]])));
}

/** A point of a curve elsewhere. @param index among the points between its ends */
export function moveBendPoint(parts: NodeParts, path: NodePath, index: number, to: Position): NodeParts {
  return changeBend(parts, path, (bend) => bend.inner.map((p, i) => (i === index ? to : p)));
}

/** A further point of a smooth line. @param index place among the points between its ends */
export function insertBendPoint(parts: NodeParts, path: NodePath, index: number, at: Position): NodeParts {
  return changeBend(parts, path, (bend) => [...bend.inner.slice(0, index), at, ...bend.inner.slice(index)]);
}

/** A curve with one point fewer; an arc, or a smooth line of a single point, becomes a straight side. */
export function deleteBendPoint(parts: NodeParts, path: NodePath, index: number): NodeParts {
  return changeBend(parts, path, (bend) => bend.inner.filter((_, i) => i !== index));
}

function changeBend(
  parts: NodeParts,
  path: NodePath,
  change: (bend: Bend) => readonly Position[],
): NodeParts {
  return withRing(parts, path, (ring) => ({
    ...ring,
    bends: ring.bends.map((bend, i) => {
      if (i !== path.node || !bend) return bend;
      const [a, b] = endsOf(ring, i);
      return bendBetween(a, change(bend), b, bend.kind);
    }),
  }));
}

/** A new corner on the straight side after the node named. */
export function insertNode(parts: NodeParts, path: NodePath, at: Position): NodeParts {
  return withRing(parts, path, ({ nodes, bends }) => ({
    nodes: [...nodes.slice(0, path.node + 1), at, ...nodes.slice(path.node + 1)],
    bends: [...bends.slice(0, path.node + 1), null, ...bends.slice(path.node + 1)],
  }));
}

/**
 * The parts without one node. Curves at it run on to the next node through the points they had: one
 * point makes an arc, more a smooth line. A hole or further part that has too few nodes left goes as a whole.
 * @returns null when the only part's outline would have too few
 */
export function deleteNode(parts: NodeParts, path: NodePath): NodeParts | null {
  const ring = parts[path.part]?.[path.ring];
  if (!ring) return null;
  const less = withoutNode(ring, path.node);
  if (new Set(ringOfNodes(less).map(String)).size >= 3 && less.nodes.length > 0)
    return withRing(parts, path, () => less);
  if (path.ring > 0)
    return parts.map((rings, p) => (p === path.part ? rings.filter((_, r) => r !== path.ring) : rings));
  return parts.length > 1 ? parts.filter((_, p) => p !== path.part) : null;
}

function withoutNode({ nodes, bends }: NodeRing, node: number): NodeRing {
  const n = nodes.length;
  const before = (node + n - 1) % n;
  const [a, b] = [nodes[before], nodes[(node + 1) % n]];
  if (!a || !b || n < 2) return { nodes: [], bends: [] };
  const inner = [...(bends[before]?.inner ?? []), ...(bends[node]?.inner ?? [])];
  const merged = bendBetween(a, inner, b, inner.length === 1 ? 'arc' : 'smooth');
  return {
    nodes: nodes.filter((_, i) => i !== node),
    bends: bends.map((bend, i) => (i === before ? merged : bend)).filter((_, i) => i !== node),
  };
}

/** Every node and curve point through a change of place; curves are laid anew. */
export function transformNodes(parts: NodeParts, place: (p: Position) => Position): NodeParts {
  return parts.map((rings) =>
    rings.map((ring) => {
      const nodes = ring.nodes.map(place);
      const bends = ring.bends.map((bend, i) => {
        const [a, b] = endsOf({ nodes, bends: [] }, i);
        return bend && bendBetween(a, bend.inner.map(place), b, bend.kind);
      });
      return { nodes, bends };
    }),
  );
}
