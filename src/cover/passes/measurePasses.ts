import { planeAreaOf } from '../../measure/clip';
import { PER_M, toPaths } from '../../measure/clipPaths';
import {
  areaOfPaths,
  booleanOp,
  ClipType,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Paths64,
} from '../../measure/clipper';
import type { PlaneRings, XY } from '../../measure/types';
import type { Leg, ZonePasses } from '../passTypes';
import { distanceOf, frameOf, orientedRings, ringsInFrame } from './frame';
import { sectionOf } from './section';
import type { Walkable } from './wayWithin';

/** What the swaths of a walk reach. */
export type Reached = Pick<ZonePasses, 'missedM2' | 'doubleM2' | 'outsideM2' | 'outsideM'>;

/** Arcs of a swath that turns stray by at most this, grid units. */
const ARC = 0.002 * PER_M;
/** Beyond the ground by less is not, m. */
const NEAR_M = 0.002;

/**
 * What is missed, done twice and reached beyond the ground, from the shapes of the swaths: a swath ends
 * square where a pass ends and turns round at its corners (the outer corner of a bend is an arc, not a point).
 * Done twice is what the swaths, each as wide as the spacing, have in common inside the ground: the overlap
 * of the plan is not counted, what passes lie closer than planned is.
 * @param parts the ground, each square metre once
 */
export function measurePasses(
  legs: readonly Leg[],
  parts: readonly PlaneRings[],
  walkable: Walkable,
  spacingM: number,
  swathM: number,
): Reached {
  const working = legs.filter((leg) => leg.kind === 'pass' || leg.kind === 'lap');
  const ground = toPaths(parts);
  const perM2 = PER_M * PER_M;
  const wholeM2 = planeAreaOf(parts);
  const wide = working.flatMap((leg) => swathOf(leg, swathM));
  const left = booleanOp(ClipType.Difference, ground, wide, FillRule.NonZero);
  const missedM2 = Math.max(0, areaOfPaths(left) / perM2);
  const beyond = booleanOp(ClipType.Difference, wide, ground, FillRule.NonZero);
  const outsideM2 = Math.max(0, areaOfPaths(beyond) / perM2);
  let outsideM = 0;
  for (const path of beyond)
    for (const { x, y } of path) outsideM = Math.max(outsideM, beyondM([x / PER_M, y / PER_M], walkable));
  const even = spacingM === swathM ? wide : working.flatMap((leg) => swathOf(leg, spacingM));
  const onceM2 =
    wholeM2 -
    (spacingM === swathM
      ? missedM2
      : areaOfPaths(booleanOp(ClipType.Difference, ground, even, FillRule.NonZero)) / perM2);
  const doubleM2 = Math.max(0, sumInside(working, ground, orientedRings(parts), spacingM) - onceM2);
  return { missedM2, doubleM2, outsideM2, outsideM: outsideM > NEAR_M ? outsideM : 0 };
}

function beyondM(at: XY, walkable: Walkable): number {
  return walkable.isFree(at) ? 0 : (walkable.nearest(at)?.distanceM ?? 0);
}

/** The ground inside that each swath reaches by itself, summed, m². */
function sumInside(
  working: readonly Leg[],
  ground: Paths64,
  rings: readonly (readonly XY[])[],
  widthM: number,
): number {
  let sum = 0;
  const frames = new Map<string, { turned: XY[][]; frame: ReturnType<typeof frameOf> }>();
  for (const leg of working) {
    if (leg.line.length > 2) {
      // its length times its width, so that where it runs beside itself counts twice, less what lies beyond
      const beyond = booleanOp(ClipType.Difference, swathOf(leg, widthM), ground, FillRule.NonZero);
      sum += leg.lengthM * widthM - areaOfPaths(beyond) / (PER_M * PER_M);
      continue;
    }
    const [a, b] = [leg.line[0] as XY, leg.line[1] as XY];
    const degrees = ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + 360) % 180;
    const key = degrees.toFixed(7);
    let known = frames.get(key);
    if (!known) {
      const frame = frameOf(Number(key));
      known = { frame, turned: ringsInFrame(rings, frame) };
      frames.set(key, known);
    }
    const [p, q] = [known.frame.to(a), known.frame.to(b)];
    const [from, to] = [Math.min(p[0], q[0]), Math.max(p[0], q[0])];
    for (const { xa, xb, ha, hb } of sectionOf(known.turned, p[1] - widthM / 2, p[1] + widthM / 2)) {
      const [left, right] = [Math.max(xa, from), Math.min(xb, to)];
      if (right <= left) continue;
      const width = (x: number) => ha + ((hb - ha) * (x - xa)) / (xb - xa);
      sum += ((right - left) * (width(left) + width(right))) / 2;
    }
  }
  return sum;
}

/** Ground within half a width of a leg, its ends square; a closed lap turns at its start too. */
export function swathOf({ line }: Pick<Leg, 'line'>, widthM: number): Paths64 {
  const [first, last] = [line[0] as XY, line.at(-1) as XY];
  if (line.length === 2) return [boxAlong(first, last, widthM / 2)];
  const isClosed = line.length > 3 && distanceOf(first, last) < 1e-6;
  const path = (isClosed ? line.slice(0, -1) : line).map(([x, y]) => ({
    x: Math.round(x * PER_M),
    y: Math.round(y * PER_M),
  }));
  return inflatePaths(
    [path],
    (widthM / 2) * PER_M,
    JoinType.Round,
    isClosed ? EndType.Joined : EndType.Butt,
    2,
    ARC,
  );
}

/** The rectangle beside a straight line, on the grid, turned left. */
function boxAlong(a: XY, b: XY, half: number): Paths64[number] {
  const lengthM = distanceOf(a, b);
  const [dx, dy] =
    lengthM > 0 ? [((b[0] - a[0]) / lengthM) * half, ((b[1] - a[1]) / lengthM) * half] : [0, 0];
  const corners: XY[] = [
    [a[0] + dy, a[1] - dx],
    [b[0] + dy, b[1] - dx],
    [b[0] - dy, b[1] + dx],
    [a[0] - dy, a[1] + dx],
  ];
  return corners.map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) }));
}
