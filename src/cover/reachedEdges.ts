import { lengthOfLineM, perimeterOfPartsM } from '../measure/geodesic';
import type { LocalPlane, MeasuredZone, XY } from '../measure/types';
import { identityOf } from './identity';
import { outlineOf } from './outline';
import type { OtherOutline } from './seams';
import { distanceBetween, type Segment } from './segments';
import { type StripSource, warnDistanceM } from './sources';
import { type Reach, stretchesOfRing } from './stretches';
import type { RinseEdge } from './types';

/** So many results are kept for one hardscape: visits that differ in what they treat, and a step back. */
const MOST_KEPT = 8;

/** A stretch with all that depends on the ground near it alone. */
export interface ReachedEdge {
  /** in the ring's direction. */
  readonly line: readonly XY[];
  /** geodesic, at the yard's elevation. */
  readonly lengthM: number;
  /** places in the `reaches` that were handed in. */
  readonly reachedBy: readonly number[];
  readonly near: RinseEdge['near'];
}

/** All that decides the stretches of one hardscape. */
export interface EdgeGround {
  readonly measured: MeasuredZone;
  /** treated ground that may reach it. */
  readonly reaches: readonly Reach[];
  /** other hardscape that may adjoin it. */
  readonly others: readonly OtherOutline[];
  /** sources that may lie near enough to warn of. */
  readonly sources: readonly StripSource[];
  readonly plane: LocalPlane;
}

/** By the net shape in the plane, then by all that decides its edges; newest last. */
const keptEdges = new WeakMap<object, Map<string, readonly ReachedEdge[]>>();

/**
 * The stretches of one hardscape's outline that product can reach, ring by ring, with their lengths in
 * metres and the nearest source. Kept while every object that decides them is the same.
 */
export function reachedEdges(ground: EdgeGround): readonly ReachedEdge[] {
  const { measured, reaches, others, sources, plane } = ground;
  if (reaches.length === 0) return [];
  const key = [
    identityOf(plane),
    identityOf(measured.netParts),
    measured.netPerimeterM,
    reaches.map(({ outline, reachM }) => `${identityOf(outline)}:${reachM}`),
    others.map(({ outline, isBefore }) => `${identityOf(outline)}:${isBefore}`),
    sources.map(identityOf),
  ].join(' ');
  const kept = keptEdges.get(measured.netPlaneParts) ?? new Map<string, readonly ReachedEdge[]>();
  const edges = kept.get(key) ?? findEdges(ground);
  kept.delete(key);
  kept.set(key, edges);
  const oldest = kept.size > MOST_KEPT ? kept.keys().next().value : undefined;
  if (oldest !== undefined) kept.delete(oldest);
  keptEdges.set(measured.netPlaneParts, kept);
  return edges;
}

function findEdges({ measured, reaches, others, sources, plane }: EdgeGround): ReachedEdge[] {
  const stretches = measured.netPlaneParts.flatMap((rings) =>
    rings.flatMap((ring, i) => stretchesOfRing(ring, i > 0, reaches, others)),
  );
  if (stretches.length === 0) return [];
  const outlineM = perimeterOfPartsM(measured.netParts);
  const scale = outlineM > 0 ? measured.netPerimeterM / outlineM : 1;
  return stretches.map(({ line, reachedBy }) => ({
    line,
    lengthM: scale * lengthOfLineM(line.map((p) => plane.toLonLat(p))),
    reachedBy: [...reachedBy],
    near: nearestSource(line, sources),
  }));
}

function nearestSource(line: readonly XY[], sources: readonly StripSource[]): RinseEdge['near'] {
  const legs = line.slice(1).map((end, i): Segment => [line[i] as XY, end]);
  let near: RinseEdge['near'] = null;
  for (const source of sources) {
    const { sourceId, sourceKind, shape } = source;
    const warnM = warnDistanceM(source);
    let distanceM = Number.POSITIVE_INFINITY;
    for (const leg of legs) {
      const sides: readonly Segment[] =
        'point' in shape ? [[shape.point, shape.point]] : outlineOf(shape.parts).sidesNear(leg, warnM);
      for (const side of sides) distanceM = Math.min(distanceM, distanceBetween(leg, side));
    }
    if (distanceM <= warnM && distanceM < (near?.distanceM ?? Number.POSITIVE_INFINITY)) {
      near = { sourceId, sourceKind, distanceM };
    }
  }
  return near;
}
