import { lengthOfLineM, perimeterOfPartsM } from '../measure/geodesic';
import type { LocalPlane, MeasuredZone, XY } from '../measure/types';
import type { Zone } from '../yard/types';
import { distanceBetween, type Segment, sidesOf } from './segments';
import type { StripSource } from './sources';
import { type Reach, type Stretch, stretchesOfRing } from './stretches';
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
 * only when product reaches across. Seams where two hardscapes adjoin (2 cm or less apart), and outline
 * that lies on other hardscape, are no edges. Stretches under 5 cm are dropped.
 * Treatment is `sweep-then-rinse` as soon as one zone within reach got loose product.
 * `near` is the nearest source whose strip width reaches the stretch.
 * @returns numbered 1, 2, 3 … in walking order: each next one begins nearest to where the last ended;
 * its line runs in the direction of the walk. Lengths are geodesic, at the yard's elevation.
 */
export function rinseEdges({ treated, hardscapes, sources, plane }: RinseInput): RinseEdge[] {
  const grounds = treated.filter((ground) => ground.spreadM > 0 && ground.zone.planeParts.length > 0);
  const reaches: Reach[] = grounds.map((ground) => ({
    sides: sidesOf(ground.zone.planeParts),
    reachM: ground.spreadM + GRID_M,
  }));
  const found: Found[] = [];
  for (const { zone, measured } of hardscapes) {
    const others = hardscapes.flatMap((other) =>
      other.zone.id === zone.id ? [] : other.measured.netPlaneParts,
    );
    const outlineM = perimeterOfPartsM(measured.netParts);
    const scale = outlineM > 0 ? measured.netPerimeterM / outlineM : 1;
    for (const ring of measured.netPlaneParts.flat()) {
      for (const stretch of stretchesOfRing(ring, reaches, others)) {
        const lengthM = scale * lengthOfLineM(stretch.line.map((p) => plane.toLonLat(p)));
        if (lengthM >= LEAST_STRETCH_M) found.push({ zone, stretch, lengthM, line: stretch.line });
      }
    }
  }
  return orderWalk(found).map((one, index): RinseEdge => {
    const reachedBy = [...one.stretch.reachedBy].flatMap((i) => grounds[i] ?? []);
    return {
      number: index + 1,
      hardscapeId: one.zone.id,
      hardscapeName: one.zone.name,
      material: one.zone.material,
      zoneIds: [...new Set(reachedBy.map((ground) => ground.zone.zoneId))],
      lengthM: one.lengthM,
      line: one.line.map((p) => plane.toLonLat(p)),
      planeLine: one.line,
      near: nearestSource(one.line, sources),
      treatment: reachedBy.some((ground) => ground.treatment === 'sweep-then-rinse')
        ? 'sweep-then-rinse'
        : 'rinse-toward-turf',
      stains: reachedBy.some((ground) => ground.stains),
    };
  });
}

interface Found {
  readonly zone: Zone;
  readonly stretch: Stretch;
  readonly lengthM: number;
  readonly line: readonly XY[];
}

function nearestSource(line: readonly XY[], sources: readonly StripSource[]): RinseEdge['near'] {
  const legs = line.slice(1).map((end, i): Segment => [line[i] as XY, end]);
  let near: RinseEdge['near'] = null;
  for (const { sourceId, sourceKind, shape, widthM } of sources) {
    const sides: readonly Segment[] = 'point' in shape ? [[shape.point, shape.point]] : sidesOf(shape.parts);
    let distanceM = Number.POSITIVE_INFINITY;
    for (const leg of legs) {
      for (const side of sides) distanceM = Math.min(distanceM, distanceBetween(leg, side));
    }
    if (distanceM <= widthM && distanceM < (near?.distanceM ?? Number.POSITIVE_INFINITY)) {
      near = { sourceId, sourceKind, distanceM };
    }
  }
  return near;
}
