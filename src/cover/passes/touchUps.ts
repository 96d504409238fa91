import simplify from 'simplify-js';
import { toPaths } from '../../measure/clipPaths';
import { booleanOp, ClipType, FillRule } from '../../measure/clipper';
import type { XY } from '../../measure/types';
import type { LegKnot } from '../passTypes';
import { distanceOf, lengthOfLine } from './frame';
import { swathOf } from './measurePasses';
import { type GroundPoint, piecesOf, pointsOf } from './missedPoints';
import { type Curve, curvesAlong, stepOfCurves, straightCurves } from './touchCurves';
import { makeWork, type Work } from './work';
import type { ZoneGround } from './zoneGround';

/** Ground missed is looked at as so many points. */
const MOST_POINTS = 500;
/** Straight lines are laid through so many pieces. */
const MOST_PIECES = 12;
const MOST_TOUCH_UPS = 40;
/** Touch-ups go on, however long for their ground, until less than this share is missed. */
const MISSED_ENOUGH = 0.004;
/** Pieces that are smaller than this share of the ground by themselves are left. */
const LEAST_PIECE = 2e-5;
/** A touch-up brings at least so many squares of the spacing of new ground: no one walks a stub for less. */
const LEAST_NEW = 0.2;
/** New ground over length times spacing that a touch-up must bring: the best first. The last only while much is missed. */
const WORTHS = [0.5, 0.2, 0.08, 0.02];
const ALWAYS_WORTH = 0.2;
/** The way to a touch-up counts as so many spacings of it. */
const WAY_SHARE = 0.5;
/** Lines are drawn with fewer corners where they stray less, m. */
const SMOOTH_M = 0.002;

/** For one zone: touch-ups for any layout of it. */
export type TouchUps = (works: readonly Work[], headingDeg: number | null) => Work[];

/**
 * Short passes over what a layout misses. Ground missed is taken as points; lines to walk lie along the outline, half a
 * swath beside what is kept off, and straight through the pieces; on each line the stretch is taken whose new ground
 * is worth most over its length (greatest sum of a run, Kadane's method: Bentley 1984, doi 10.1145/358234.381162, from
 * memory), the best of all lines first, and so on with what is left. No line leaves the ground but at straight ends, by
 * less than half a swath, and none comes nearer than half a swath to what is kept off.
 */
export function makeTouchUps(zone: ZoneGround): TouchUps {
  const { parts, options, areaM2 } = zone;
  const ground = toPaths(parts);
  let along: readonly Curve[] | undefined;
  return (works, headingDeg) => {
    const wide = works.flatMap((work) => swathOf(work, options.swathM));
    const pieces = piecesOf(booleanOp(ClipType.Difference, ground, wide, FillRule.NonZero));
    const rings = pieces.flat();
    const coarse = pointsOf(rings, options.swathM / 4);
    const missedM2 = coarse.reduce((sum, point) => sum + point.areaM2, 0);
    if (missedM2 - zone.unreachableM2 < MISSED_ENOUGH * areaM2) return [];
    const stepM = Math.min(options.swathM / 8, Math.max(0.05, Math.sqrt(missedM2 / MOST_POINTS)));
    const points = pointsOf(rings, stepM);
    along ??= curvesAlong(zone);
    const lines = [
      ...along,
      ...pieces
        .slice(0, MOST_PIECES)
        .flatMap((piece) => straightCurves(zone, pointsOf(piece, stepM), headingDeg)),
    ].map((curve) => binned(curve, points, options.swathM));
    return chosen(lines, points, missedM2 - zone.unreachableM2, zone);
  };
}

/** A curve with the points that a swath along it covers, by the place nearest to them. */
interface Line {
  readonly curve: Curve;
  readonly near: readonly { readonly point: number; readonly bin: number }[];
}

function binned(curve: Curve, points: readonly GroundPoint[], swathM: number): Line {
  const most = (0.49 * swathM) ** 2;
  const near: { point: number; bin: number }[] = [];
  const box = [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number];
  for (const [x, y] of curve) {
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x);
    box[3] = Math.max(box[3], y);
  }
  const half = swathM / 2;
  const stepM = curve.reduce(
    (most, p, k) => Math.max(most, k > 0 ? distanceOf(curve[k - 1] as XY, p) : 0),
    1e-6,
  );
  for (const [point, { at }] of points.entries()) {
    if (at[0] < box[0] - half || at[0] > box[2] + half || at[1] < box[1] - half || at[1] > box[3] + half)
      continue;
    let [bin, least] = [-1, most];
    for (let k = 0; k < curve.length; ) {
      const p = curve[k] as XY;
      const d = (p[0] - at[0]) ** 2 + (p[1] - at[1]) ** 2;
      if (d < least) [bin, least] = [k, d];
      // places sooner along the curve cannot be nearer
      k += Math.max(1, Math.floor((Math.sqrt(d) - Math.sqrt(least)) / stepM));
    }
    if (bin < 0 || isPastEnd(curve, bin, at)) continue;
    near.push({ point, bin });
  }
  return { curve, near };
}

/** Whether a place lies beyond the square end of a line. */
function isPastEnd(curve: Curve, bin: number, at: XY): boolean {
  if (bin > 0 && bin < curve.length - 1) return false;
  const end = curve[bin] as XY;
  const inner = curve[bin === 0 ? 1 : bin - 1] as XY;
  return (at[0] - end[0]) * (end[0] - inner[0]) + (at[1] - end[1]) * (end[1] - inner[1]) > 0;
}

function chosen(
  lines: readonly Line[],
  points: readonly GroundPoint[],
  allM2: number,
  zone: ZoneGround,
): Work[] {
  const { spacingM } = zone.options;
  const leastM2 = LEAST_NEW * spacingM * spacingM;
  const left = points.map((point) => point.areaM2);
  const made: Work[] = [];
  let missedM2 = allM2;
  for (const worth of WORTHS) {
    while (made.length < MOST_TOUCH_UPS) {
      if (worth < ALWAYS_WORTH && missedM2 < MISSED_ENOUGH * zone.areaM2) return made;
      let best: { run: Run; line: Line } | undefined;
      for (const line of lines) {
        const run = bestRun(line, left, worth * spacingM);
        if (
          run &&
          run.areaM2 >= leastM2 &&
          run.net > WAY_SHARE * worth * spacingM * spacingM &&
          (!best || run.net > best.run.net)
        )
          best = { run, line };
      }
      if (!best || best.run.areaM2 < LEAST_PIECE * zone.areaM2) break;
      made.push(workOf(best.line, best.run, left, stepOfCurves(zone.options.swathM)));
      for (const { point, bin } of best.line.near)
        if (bin >= best.run.from && bin <= best.run.to) left[point] = 0;
      missedM2 -= best.run.areaM2;
    }
  }
  return made;
}

interface Run {
  readonly from: number;
  readonly to: number;
  readonly areaM2: number;
  /** ground less the price of its length, m². */
  readonly net: number;
}

/** The stretch of a line whose ground is worth most over its length. @param priceM m² for each metre */
function bestRun({ curve, near }: Line, left: readonly number[], priceM: number): Run | null {
  if (near.length === 0) return null;
  const gain = new Float64Array(curve.length);
  for (const { point, bin } of near) gain[bin] = (gain[bin] as number) + (left[point] as number);
  let best: Run | null = null;
  let [from, areaM2, net] = [0, 0, 0];
  for (let k = 0; k < gain.length; k++) {
    const price = k > from ? priceM * distanceOf(curve[k - 1] as XY, curve[k] as XY) : 0;
    if (net - price <= 0) [from, areaM2, net] = [k, 0, 0];
    else net -= price;
    net += gain[k] as number;
    areaM2 += gain[k] as number;
    if (net > (best?.net ?? 0)) best = { from, to: k, areaM2, net };
  }
  return best;
}

/** A pass along a stretch of a line, a step longer at both ends, with the ground it takes on. */
function workOf({ curve, near }: Line, { from, to }: Run, left: readonly number[], stepM: number): Work {
  const [first, last] = [Math.max(0, from - 1), Math.min(curve.length - 1, to + 1)];
  const places = curve.slice(first, last + 1);
  const line = simplify(
    places.map(([x, y]) => ({ x, y })),
    SMOOTH_M,
    true,
  ).map(({ x, y }): XY => [x, y]);
  const gain = new Float64Array(places.length);
  for (const { point, bin } of near)
    if (bin >= from && bin <= to) gain[bin - first] = (gain[bin - first] as number) + (left[point] as number);
  const knots: LegKnot[] = [{ atM: 0, areaM2: 0 }];
  let [atM, areaM2] = [0, 0];
  for (let k = 0; k < places.length; k++) {
    if (k > 0) atM += distanceOf(places[k - 1] as XY, places[k] as XY);
    areaM2 += gain[k] as number;
    knots.push({ atM: Math.min(atM + stepM / 2, lengthOfLine(line)), areaM2 });
  }
  return makeWork('pass', line, knots);
}
