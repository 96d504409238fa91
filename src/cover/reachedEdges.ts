import { lengthOfLineM, perimeterOfPartsM } from '../measure/geodesic';
import type { LocalPlane, MeasuredZone, XY } from '../measure/types';
import { leadsTo } from './fall';
import { identityOf } from './identity';
import type { Outline } from './outline';
import type { OtherOutline } from './seams';
import { distanceBetween, type Segment } from './segments';
import { type StripSource, sidesOfSource, warnDistanceM } from './sources';
import { type Reach, stretchesOfRing } from './stretches';
import type { NearSource } from './types';

/** So many results are kept for one hardscape: visits that differ in what they treat, and a step back. */
const MOST_KEPT = 8;

/** A stretch with all that depends on the ground near it alone. */
export interface ReachedEdge {
  /** in the ring's direction. */
  readonly line: readonly XY[];
  /** geodesic, at the yard's elevation. */
  readonly lengthM: number;
  /** what turns lengths on the ellipsoid into those of the measured zone. */
  readonly scale: number;
  /** places in the `reaches` that were handed in. */
  readonly reachedBy: readonly number[];
  readonly near: NearSource | null;
  readonly downhill: {
    readonly lengthM: number;
    readonly reachedBy: readonly number[];
    readonly leadsTo: NearSource | null;
  } | null;
}

/** All that decides the stretches of one hardscape. */
export interface EdgeGround {
  readonly measured: MeasuredZone;
  /** treated ground that may reach it. */
  readonly reaches: readonly Reach[];
  /** other hardscape that may adjoin it. */
  readonly others: readonly OtherOutline[];
  /** structures that may stand between. */
  readonly structures: readonly Outline[];
  /** sources that may lie near enough to warn of, or down a fall. */
  readonly sources: readonly StripSource[];
  readonly plane: LocalPlane;
}

/** By the net shape in the plane, then by all that decides its edges; newest last. */
const keptEdges = new WeakMap<object, Map<string, readonly ReachedEdge[]>>();

/**
 * The stretches of one hardscape's outline that product can reach, ring by ring, with their lengths in
 * metres, the nearest source and where the ground falls. Kept while every object that decides them is the same.
 */
export function reachedEdges(ground: EdgeGround): readonly ReachedEdge[] {
  const { measured, reaches, others, structures, sources, plane } = ground;
  if (reaches.length === 0) return [];
  const key = [
    identityOf(plane),
    identityOf(measured.netParts),
    measured.netPerimeterM,
    reaches.map(({ outline, reachM, isLoose, stains, fall }) =>
      [identityOf(outline), reachM, isLoose, stains, fall].join(':'),
    ),
    others.map(({ outline, isBefore }) => `${identityOf(outline)}:${isBefore}`),
    `behind ${structures.map(identityOf)}`,
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

function findEdges(ground: EdgeGround): ReachedEdge[] {
  const { measured, reaches, sources, plane } = ground;
  const spared = sources.map((source) => ({
    withinM: warnDistanceM(source),
    sidesNear: (segment: Segment, reachM: number) => sidesOfSource(source, segment, reachM),
  }));
  const stretches = measured.netPlaneParts.flatMap((rings) =>
    rings.flatMap((ring, i) => stretchesOfRing(ring, i > 0, { ...ground, spared })),
  );
  if (stretches.length === 0) return [];
  const outlineM = perimeterOfPartsM(measured.netParts);
  const scale = outlineM > 0 ? measured.netPerimeterM / outlineM : 1;
  const lengthOf = (line: readonly XY[]): number => scale * lengthOfLineM(line.map((p) => plane.toLonLat(p)));
  return stretches.map(({ line, reachedBy, isNear, downhill }): ReachedEdge => {
    const bits = [...new Map(downhill.map(({ bit }) => [bit, bit])).values()];
    const falls = downhill.flatMap(({ bit, reach }) => {
      const fall = reaches[reach]?.fall;
      return fall ? [{ bit, fall }] : [];
    });
    return {
      line,
      lengthM: lengthOf(line),
      scale,
      reachedBy: [...reachedBy],
      near: isNear ? nearestSource(line, sources) : null,
      downhill:
        bits.length === 0
          ? null
          : {
              lengthM: bits.reduce((sum, bit) => sum + lengthOf(bit), 0),
              reachedBy: [...new Set(downhill.map(({ reach }) => reach))],
              leadsTo: leadsTo(falls, sources),
            },
    };
  });
}

function nearestSource(line: readonly XY[], sources: readonly StripSource[]): NearSource | null {
  const legs = line.slice(1).map((end, i): Segment => [line[i] as XY, end]);
  let near: NearSource | null = null;
  for (const source of sources) {
    const { sourceId, sourceKind } = source;
    const warnM = warnDistanceM(source);
    let distanceM = Number.POSITIVE_INFINITY;
    for (const leg of legs) {
      for (const side of sidesOfSource(source, leg, warnM))
        distanceM = Math.min(distanceM, distanceBetween(leg, side));
    }
    if (distanceM <= warnM && distanceM < (near?.distanceM ?? Number.POSITIVE_INFINITY)) {
      near = { sourceId, sourceKind, distanceM };
    }
  }
  return near;
}
