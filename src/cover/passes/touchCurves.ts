import { bufferOf } from '../../measure/clip';
import { isInsideParts } from '../../measure/isInsideParts';
import type { PlaneRings, XY } from '../../measure/types';
import { distanceOf } from './frame';
import { ARC_M } from './laps';
import type { GroundPoint } from './missedPoints';
import type { ZoneGround } from './zoneGround';

/** A line that a swath could be walked along, as places one step apart. */
export type Curve = readonly XY[];

/** Places of a curve lie this share of the swath apart. */
const STEP_SHARE = 0.125;
/** Curves beside what is kept off lie this much farther off than laps, m. */
const SPARE_M = 0.003;
/** Lines beside the outline, so many spacings in from it. */
const INSETS = [0.02, 0.25, 0.5];
/** The most places of all curves along outlines. */
const MOST_PLACES = 4000;
/** A straight line may end so far beyond the ground, as a share of half the swath. */
const BEYOND_SHARE = 0.9;

/** Distance between places of a curve, m. */
export const stepOfCurves = (swathM: number): number => STEP_SHARE * swathM;

/** Lines along the outline and along what is kept off, half a swath from it, as far as they are on the ground. */
export function curvesAlong(zone: ZoneGround): Curve[] {
  const { parts, keepOff, options } = zone;
  const { spacingM, swathM } = options;
  const off = keepOff.length > 0 ? bufferOf({ parts: keepOff }, swathM / 2 + ARC_M + SPARE_M) : [];
  const beside = off.flatMap((rings) => runsOf(zone, rings, true));
  const inside = INSETS.flatMap((share) =>
    bufferOf({ parts }, -share * spacingM).flatMap((rings) => runsOf(zone, rings, false)),
  );
  return [...beside, ...inside];
}

function runsOf(zone: ZoneGround, rings: PlaneRings, looksInside: boolean): Curve[] {
  const lengthM = rings
    .flat()
    .reduce((sum, p, i, all) => sum + (i > 0 ? distanceOf(p, all[i - 1] as XY) : 0), 0);
  const stepM = Math.max(stepOfCurves(zone.options.swathM), lengthM / MOST_PLACES);
  return rings.flatMap((ring) =>
    partRuns(stepsAlong(ring, stepM), (p) => isClear(zone, p) && (!looksInside || zone.walkable.isFree(p))),
  );
}

/** Stretches of places that may be walked; of a closed line the last goes on into the first. */
function partRuns(places: readonly XY[], isGood: (p: XY) => boolean): Curve[] {
  const runs: XY[][] = [];
  let open: XY[] | null = null;
  for (const p of places) {
    if (!isGood(p)) {
      open = null;
      continue;
    }
    if (!open) {
      open = [];
      runs.push(open);
    }
    open.push(p);
  }
  const [first, last] = [runs[0], runs.at(-1)];
  if (first && last && first !== last && distanceOf(last.at(-1) as XY, first[0] as XY) < 1e-6) {
    runs.shift();
    last.push(...first.slice(1));
  }
  return runs.filter((run) => run.length > 1);
}

function isClear({ shy, options }: ZoneGround, p: XY): boolean {
  if (!shy) return true;
  return shy.isFree(p) && (shy.nearest(p)?.distanceM ?? Infinity) >= options.swathM / 2 + ARC_M;
}

function stepsAlong(line: readonly XY[], stepM: number): XY[] {
  const steps: XY[] = line[0] ? [line[0]] : [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as XY, line[i] as XY];
    const count = Math.max(1, Math.ceil(distanceOf(a, b) / stepM));
    for (let k = 1; k <= count; k++)
      steps.push([a[0] + ((b[0] - a[0]) * k) / count, a[1] + ((b[1] - a[1]) * k) / count]);
  }
  return steps;
}

/**
 * Straight lines through a missed piece: along its long axis, across it, along the passes, and along what is
 * kept off beside it, moved away from that where the swath would touch it.
 */
export function straightCurves(
  zone: ZoneGround,
  piece: readonly GroundPoint[],
  headingDeg: number | null,
): Curve[] {
  const sum = piece.reduce((s, { areaM2 }) => s + areaM2, 0);
  if (!(sum > 0)) return [];
  const middle: XY = [0, 1].map(
    (k) => piece.reduce((s, p) => s + p.areaM2 * (p.at[k] as number), 0) / sum,
  ) as [number, number];
  const [xx, xy, yy] = piece.reduce(
    ([a, b, c], { at, areaM2 }) => {
      const [dx, dy] = [at[0] - middle[0], at[1] - middle[1]];
      return [a + areaM2 * dx * dx, b + areaM2 * dx * dy, c + areaM2 * dy * dy];
    },
    [0, 0, 0] as [number, number, number],
  );
  const axis = Math.atan2(2 * xy, xx - yy) / 2;
  const place = movedClear(zone, middle);
  if (!place) return [];
  const angles = [axis, axis + Math.PI / 2];
  if (headingDeg !== null) angles.push(Math.PI / 2 - (headingDeg * Math.PI) / 180);
  if (place.wallAngle !== null) angles.push(place.wallAngle);
  const reachM = Math.max(...piece.map(({ at }) => distanceOf(at, place.at))) + zone.options.swathM / 2;
  return angles.flatMap((angle) => {
    const line = lineThrough(zone, place.at, [Math.cos(angle), Math.sin(angle)], reachM);
    return line.length > 1 ? [line] : [];
  });
}

/** A place on the ground, clear of what is kept off, and how the edge of that runs. */
function movedClear(zone: ZoneGround, from: XY): { at: XY; wallAngle: number | null } | null {
  const { shy, walkable, options } = zone;
  let at = walkable.isFree(from) ? from : (walkable.nearest(from)?.at ?? from);
  let wallAngle: number | null = null;
  const clear = options.swathM / 2 + ARC_M + SPARE_M;
  for (let tries = 0; tries < 4 && shy; tries++) {
    const nearest = shy.nearest(at);
    if (!nearest || nearest.distanceM >= clear - 1e-6) break;
    const size = distanceOf(at, nearest.on);
    if (size < 1e-9 || !shy.isFree(at)) return null;
    const [dx, dy] = [(at[0] - nearest.on[0]) / size, (at[1] - nearest.on[1]) / size];
    at = [nearest.on[0] + dx * clear, nearest.on[1] + dy * clear];
    wallAngle = Math.atan2(dx, -dy);
  }
  return walkable.isFree(at) && isClear(zone, at) ? { at, wallAngle } : null;
}

/** Places both ways along a direction, as far as the ground goes and a little beyond. */
function lineThrough(zone: ZoneGround, at: XY, [ux, uy]: XY, reachM: number): Curve {
  const { walkable, options, parts } = zone;
  const stepM = stepOfCurves(options.swathM);
  const beyond = Math.floor((BEYOND_SHARE * options.swathM) / 2 / stepM);
  const holes = parts.flatMap((rings) => rings.slice(1).map((ring): PlaneRings => [ring]));
  const go = (sign: number): XY[] => {
    const line: XY[] = [];
    let outside = 0;
    for (let k = 1; k * stepM <= reachM; k++) {
      const p: XY = [at[0] + sign * k * stepM * ux, at[1] + sign * k * stepM * uy];
      if (!isClear(zone, p)) break;
      if (!walkable.isFree(p)) {
        outside += 1;
        if (outside > beyond || isInsideParts(p, holes)) break;
      } else if (outside > 0) break;
      line.push(p);
    }
    return line;
  };
  return [...go(-1).reverse(), at, ...go(1)];
}
