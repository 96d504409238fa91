import Flatbush from 'flatbush';
import { type Box, boxesNear } from '../measure/planeBox';
import type { LocalPlane, MeasuredZone, XY } from '../measure/types';
import type { Zone } from '../yard/types';
import { FALL_REACH_M, fallOf } from './fall';
import { type Outline, outlineOf } from './outline';
import { type ReachedEdge, reachedEdges } from './reachedEdges';
import { rinseWater } from './rinseWater';
import { SEAM_M } from './seams';
import { type StripSource, sourcesToWarn } from './sources';
import { splashBands } from './splashBands';
import type { Reach } from './stretches';
import type { RinseEdge, TreatedZone } from './types';
import { orderWalk } from './walk';

/** Stretches shorter than this are left out: no one walks for them. */
export const LEAST_STRETCH_M = 0.05;

/** Set operations round to this grid, m: an edge exactly at the spread distance counts. */
const GRID_M = 1e-6;

/** One zone's treated ground with how far its products land beyond it. */
export interface TreatedReach extends Pick<RinseEdge, 'treatment' | 'stains'> {
  readonly zone: TreatedZone;
  /** farthest spread of the products that go on this zone, m. */
  readonly spreadM: number;
  /** how its ground falls: slope as rise over run, direction in degrees clockwise from true north; null: level, or not told. */
  readonly fall?: Pick<Zone, 'slope' | 'downhillDeg'> | null;
}

/** A zone with its measured shape. */
interface LaidZone {
  readonly zone: Zone;
  readonly measured: MeasuredZone;
}

export interface RinseInput {
  readonly treated: readonly TreatedReach[];
  readonly hardscapes: readonly LaidZone[];
  /** what product does not fly through; none by default. */
  readonly structures?: readonly Pick<MeasuredZone, 'netPlaneParts'>[];
  /** from stripSources(). */
  readonly sources: readonly StripSource[];
  readonly plane: LocalPlane;
  /** where the walk begins, in the plane; null or absent: where it is shortest. */
  readonly from?: XY | null;
  /** of the hose with plain water, L/s; null or absent: not told. */
  readonly flowLPerS?: number | null;
}

/**
 * Every stretch of hardscape outline (net outline, holes included) that product can reach from outside: its
 * points lie no further than `spreadM` from treated ground on their outer side and are seen from there past
 * every structure, for product flies straight. So a walk has its edge on the treated side alone, however
 * narrow; how far product goes in is told by the splash band. With a spread of 0 no stretch is listed, even
 * where turf and hardscape touch. Outline with other hardscape just outside it (2 cm or less away) is a
 * seam and no edge; where hardscapes share an outer edge on the same side, it counts for the first in the
 * list. So hardscapes that overlap, adjoin or lie in each other have the edges of their union.
 * Gaps under half a metre are joined, stretches under 5 cm dropped. A stretch ends where something else is to
 * be done (see stretchesOfRing()).
 * Treatment is `sweep-then-rinse` as soon as one zone within reach got loose product.
 * `near` is the nearest source within its strip width of the stretch, or within 3 m where that is more
 * (common practice, no source): water rinsed there would run to it, strip or none.
 * @returns numbered 1, 2, 3 … in the order of a short walk (see orderWalk()); the line runs in its
 * direction. Lengths are geodesic, at the yard's elevation; splash bands and water are worked out when first
 * asked for. What depends on one hardscape and the ground near it is kept while these are the same objects.
 */
export function rinseEdges(input: RinseInput): RinseEdge[] {
  const { treated, hardscapes, sources, plane, from = null, flowLPerS = null } = input;
  const grounds = treated
    .filter((ground) => ground.spreadM > 0 && ground.zone.planeParts.length > 0)
    .map((ground): Ground => ({ ground, reach: reachOf(ground) }));
  const leastM = grounds.some(({ reach }) => reach.fall !== null) ? FALL_REACH_M : 0;
  const laid = hardscapes.map((one) => ({ ...one, outline: outlineOf(one.measured.netPlaneParts) }));
  const structures = (input.structures ?? []).map(({ netPlaneParts }) => outlineOf(netPlaneParts));
  const groundsNear = indexOf(grounds.map(({ reach }) => grow(reach.outline.box, reach.reachM)));
  const found: Found[] = [];
  for (const [place, { zone, measured, outline }] of laid.entries()) {
    const near = groundsNear(outline.box).flatMap((i) => grounds[i] ?? []);
    if (near.length === 0) continue;
    const reaches = near.map(({ reach }) => reach);
    const mostM = Math.max(...reaches.map(({ reachM }) => reachM));
    const edges = reachedEdges({
      measured,
      reaches,
      others: laid.flatMap((other, i) =>
        i !== place && boxesNear(outline.box, other.outline.box, SEAM_M)
          ? { outline: other.outline, isBefore: i < place }
          : [],
      ),
      structures: structures.filter((one) => boxesNear(outline.box, one.box, mostM)),
      sources: sourcesToWarn(sources, measured.netPlaneParts, leastM),
      plane,
    });
    for (const edge of edges)
      if (edge.lengthM >= LEAST_STRETCH_M) found.push({ zone, edge, near, line: edge.line });
  }
  const walk = orderWalk(found, from);
  const outlines = laid.map(({ outline }) => outline);
  let bands: ReadonlyMap<Found, number> | null = null;
  const bandOf = (index: number): number => {
    bands ??= bandsOf(walk, outlines, plane);
    return bands.get(walk[index] as Found) ?? 0;
  };
  return walk.map((one, index) => edgeOf(one, index, plane, () => bandOf(index), flowLPerS));
}

function reachOf({ zone, spreadM, treatment, stains, fall }: TreatedReach): Reach {
  return {
    outline: outlineOf(zone.planeParts),
    reachM: spreadM + GRID_M,
    isLoose: treatment === 'sweep-then-rinse',
    stains,
    fall: fall ? fallOf(fall) : null,
  };
}

/** Splash bands in m². What two share counts for one that is kept dry, so that no water is reckoned there. */
function bandsOf(
  walk: readonly Found[],
  hardscapes: readonly Outline[],
  plane: LocalPlane,
): ReadonlyMap<Found, number> {
  const isDry = ({ edge }: Found): boolean => edge.near !== null;
  const order = [...walk.filter(isDry), ...walk.filter((one) => !isDry(one))];
  const bands = splashBands(order.map(bandGround), hardscapes, plane);
  return new Map(order.map((one, i) => [one, bands[i]?.areaM2 ?? 0]));
}

function bandGround({ line, edge, near }: Found) {
  const reaches = edge.reachedBy.flatMap((i) => near[i]?.reach ?? []);
  return { line, scale: edge.scale, reaches };
}

function edgeOf(
  { zone, edge, near, line }: Found,
  index: number,
  plane: LocalPlane,
  bandOf: () => number,
  flowLPerS: number | null,
): RinseEdge {
  const reachedBy = edge.reachedBy.flatMap((i) => near[i]?.ground ?? []);
  const { downhill } = edge;
  const slopes = downhill?.reachedBy.map((i) => near[i]?.ground.fall?.slope ?? 0) ?? [];
  return {
    number: index + 1,
    hardscapeId: zone.id,
    hardscapeName: zone.name,
    material: zone.material,
    zoneIds: [...new Set(reachedBy.map((ground) => ground.zone.zoneId))],
    lengthM: edge.lengthM,
    line: line.map((p) => plane.toLonLat(p)),
    planeLine: line,
    get bandM2() {
      return bandOf();
    },
    get water() {
      return edge.near || !flowLPerS ? null : rinseWater(edge.lengthM, bandOf(), flowLPerS);
    },
    near: edge.near,
    downhill: downhill && {
      lengthM: Math.min(edge.lengthM, downhill.lengthM),
      slope: Math.max(0, ...slopes),
      leadsTo: downhill.leadsTo,
    },
    treatment: reachedBy.some((ground) => ground.treatment === 'sweep-then-rinse')
      ? 'sweep-then-rinse'
      : 'rinse-toward-turf',
    stains: reachedBy.some((ground) => ground.stains),
  };
}

function grow({ minX, minY, maxX, maxY }: Box, byM: number): Box {
  return { minX: minX - byM, minY: minY - byM, maxX: maxX + byM, maxY: maxY + byM };
}

/** @returns a question: which of the boxes meet this one, by their indices, ascending. */
function indexOf(boxes: readonly Box[]): (box: Box) => number[] {
  if (boxes.length === 0) return () => [];
  const index = new Flatbush(boxes.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  return ({ minX, minY, maxX, maxY }) => index.search(minX, minY, maxX, maxY).sort((i, j) => i - j);
}

interface Ground {
  readonly ground: TreatedReach;
  readonly reach: Reach;
}

interface Found {
  readonly zone: Zone;
  readonly edge: ReachedEdge;
  /** treated ground that may reach its hardscape. */
  readonly near: readonly Ground[];
  /** the edge's line, turned into the direction of the walk. */
  readonly line: readonly XY[];
}
