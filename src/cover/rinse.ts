import Flatbush from 'flatbush';
import { type Box, boxesNear } from '../measure/planeBox';
import type { LocalPlane, MeasuredZone, XY } from '../measure/types';
import type { Zone } from '../yard/types';
import { outlineOf } from './outline';
import { type ReachedEdge, reachedEdges } from './reachedEdges';
import { SEAM_M } from './seams';
import { type StripSource, sourcesToWarn } from './sources';
import type { RinseEdge, TreatedZone } from './types';
import { orderWalk } from './walk';

/** Stretches shorter than this are left out: no one walks for them. */
export const LEAST_STRETCH_M = 0.05;

/** Set operations round to this grid, m: an edge exactly at the spread distance counts. */
const GRID_M = 1e-6;

/** One zone's treated ground with how far its products land beyond it. */
export interface TreatedReach {
  readonly zone: TreatedZone;
  /** farthest spread of the products that go on this zone, m. */
  readonly spreadM: number;
  readonly treatment: RinseEdge['treatment'];
  readonly stains: boolean;
}

export interface RinseInput {
  readonly treated: readonly TreatedReach[];
  readonly hardscapes: readonly { readonly zone: Zone; readonly measured: MeasuredZone }[];
  /** from stripSources(). */
  readonly sources: readonly StripSource[];
  readonly plane: LocalPlane;
}

/**
 * Every stretch of hardscape outline (net outline, holes included) that product can reach: its points
 * lie no further than `spreadM` from treated ground. The distance is straight: a wall or house between
 * is not looked at, which errs to the safe side. With a spread of 0 no stretch is listed, even where
 * turf and hardscape touch. A stretch counts on its own merits: the far side of a narrow walk is listed
 * only when product reaches across. Outline with other hardscape just outside it (2 cm or less away) is a
 * seam and no edge; where hardscapes share an outer edge on the same side, it counts for the first in the
 * list. So hardscapes that overlap, adjoin or lie in each other have the edges of their union.
 * Stretches under 5 cm are dropped.
 * Treatment is `sweep-then-rinse` as soon as one zone within reach got loose product.
 * `near` is the nearest source within its strip width of the stretch, or within 3 m where that is more
 * (common practice, no source): water rinsed there would run to it, strip or none.
 * @returns numbered 1, 2, 3 … in walking order: each next one begins nearest to where the last ended;
 * its line runs in the direction of the walk. Lengths are geodesic, at the yard's elevation. What
 * depends on one hardscape and the ground near it is kept while these are the same objects.
 */
export function rinseEdges({ treated, hardscapes, sources, plane }: RinseInput): RinseEdge[] {
  const grounds = treated
    .filter((ground) => ground.spreadM > 0 && ground.zone.planeParts.length > 0)
    .map((ground) => {
      const reach = { outline: outlineOf(ground.zone.planeParts), reachM: ground.spreadM + GRID_M };
      return { ground, reach };
    });
  const laid = hardscapes.map((one) => ({ ...one, outline: outlineOf(one.measured.netPlaneParts) }));
  const groundsNear = indexOf(grounds.map(({ reach }) => grow(reach.outline.box, reach.reachM)));
  const found: Found[] = [];
  for (const [place, { zone, measured, outline }] of laid.entries()) {
    const near = groundsNear(outline.box).flatMap((i) => grounds[i] ?? []);
    if (near.length === 0) continue;
    const edges = reachedEdges({
      measured,
      reaches: near.map(({ reach }) => reach),
      others: laid.flatMap((other, i) =>
        i !== place && boxesNear(outline.box, other.outline.box, SEAM_M)
          ? { outline: other.outline, isBefore: i < place }
          : [],
      ),
      sources: sourcesToWarn(sources, measured.netPlaneParts),
      plane,
    });
    for (const edge of edges) {
      if (edge.lengthM < LEAST_STRETCH_M) continue;
      const reachedBy = edge.reachedBy.flatMap((i) => near[i]?.ground ?? []);
      found.push({ zone, edge, reachedBy, line: edge.line });
    }
  }
  return orderWalk(found).map(
    ({ zone, edge, reachedBy, line }, index): RinseEdge => ({
      number: index + 1,
      hardscapeId: zone.id,
      hardscapeName: zone.name,
      material: zone.material,
      zoneIds: [...new Set(reachedBy.map((ground) => ground.zone.zoneId))],
      lengthM: edge.lengthM,
      line: line.map((p) => plane.toLonLat(p)),
      planeLine: line,
      near: edge.near,
      treatment: reachedBy.some((ground) => ground.treatment === 'sweep-then-rinse')
        ? 'sweep-then-rinse'
        : 'rinse-toward-turf',
      stains: reachedBy.some((ground) => ground.stains),
    }),
  );
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

interface Found {
  readonly zone: Zone;
  readonly edge: ReachedEdge;
  readonly reachedBy: readonly TreatedReach[];
  /** the edge's line, turned into the direction of the walk. */
  readonly line: readonly XY[];
}
