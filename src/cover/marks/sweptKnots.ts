import { planeAreaOf } from '../../measure/clip';
import { boxOf } from '../../measure/planeBox';
import type { PlaneRings, XY } from '../../measure/types';
import type { Leg, LegKnot } from '../passTypes';
import { createGroundPoints, type GroundPoints } from './groundPoints';

/** Points across a swath, and the most points of one zone. */
const ACROSS = 16;
const MOST_POINTS = 300_000;
/** Cells of the rows of one part, most of them no ground where it is long and thin. */
const MOST_CELLS = 4_000_000;
/** Knots for each swath of way. */
const KNOTS_A_SWATH = 2;

/** A zone by its ground. */
export interface SweptGround {
  readonly zoneId: string;
  /** treated ground, each square metre once, in the plane of the legs. */
  readonly parts: readonly PlaneRings[];
}

/**
 * The legs with knots by what their swaths reach first, in walking order: ground that a later swath reaches again
 * is no gain of it, whichever of the two was laid for it. What no swath reaches is spread over the zone, so that its
 * knots sum to its ground in each coat. Counted by points (see `createGroundPoints`), some 16 across a swath:
 * stretches of 100 m² came within 0.1 % of what clipping their swaths gives.
 * @param legs of one dose in walking order; turns and ways stay as they are
 * @param widthM what one pass does at the full rate: the distance between passes, m; more than 0
 */
export function sweptKnots(
  legs: readonly Leg[],
  zones: readonly SweptGround[],
  widthM: number,
): readonly Leg[] {
  const made = [...legs];
  for (const { zoneId, parts } of zones) {
    const areaM2 = planeAreaOf(parts);
    const apartM = Math.max(
      widthM / ACROSS,
      Math.sqrt(areaM2 / MOST_POINTS),
      ...parts.map((part) => diagonalOf(part) / Math.sqrt(MOST_CELLS)),
    );
    for (const coat of [1, 2] as const) {
      const own = legs.flatMap((leg, i) =>
        leg.zoneId === zoneId && leg.coat === coat && leg.knots.length > 0 && leg.lengthM > 0 ? i : [],
      );
      if (own.length === 0) continue;
      // parts may lie far from each other: each has rows of its own
      const points = parts.map((part) => createGroundPoints([part], apartM));
      const left = () => points.reduce((sum, each) => sum + each.left(), 0);
      const whole = left();
      const bins = own.map((i) => takenAlong(legs[i] as Leg, points, widthM));
      const reached = whole - left();
      // ground too small for points keeps its knots
      if (reached === 0) continue;
      own.forEach((i, k) => {
        const leg = legs[i] as Leg;
        made[i] = { ...leg, knots: knotsOf(bins[k] as Float64Array, leg.lengthM, areaM2 / reached) };
      });
    }
  }
  return made;
}

/** Points that a leg takes, counted in equal parts of its length. */
function takenAlong({ line, lengthM }: Leg, points: readonly GroundPoints[], widthM: number): Float64Array {
  const bins = new Float64Array(Math.max(1, Math.ceil((lengthM * KNOTS_A_SWATH) / widthM)));
  const count = (atM: number, taken: number) => {
    const bin = Math.min(bins.length - 1, Math.max(0, Math.floor((atM / lengthM) * bins.length)));
    bins[bin] = (bins[bin] ?? 0) + taken;
  };
  const [first, last] = [line[0] as XY, line.at(-1) as XY];
  const isClosed = line.length > 3 && Math.hypot(last[0] - first[0], last[1] - first[1]) < 1e-6;
  let fromM = 0;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1] as XY, line[i] as XY];
    for (const each of points) each.takeBeside(a, b, widthM / 2, (alongM) => count(fromM + alongM, 1));
    fromM += Math.hypot(b[0] - a[0], b[1] - a[1]);
    // the swath turns round at its corners, also where a closed lap begins
    if (i === line.length - 1 && !isClosed) continue;
    for (const each of points) count(fromM, each.takeRound(b, widthM / 2));
  }
  return bins;
}

function knotsOf(bins: Float64Array, lengthM: number, pointM2: number): LegKnot[] {
  const knots: LegKnot[] = [{ atM: 0, areaM2: 0 }];
  let areaM2 = 0;
  bins.forEach((taken, i) => {
    areaM2 += taken * pointM2;
    knots.push({ atM: (lengthM * (i + 1)) / bins.length, areaM2 });
  });
  return knots;
}

function diagonalOf(part: PlaneRings): number {
  const { minX, minY, maxX, maxY } = boxOf([part]);
  return part.length === 0 ? 0 : Math.hypot(maxX - minX, maxY - minY);
}
