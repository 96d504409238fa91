import { planeAreaOf } from '../../measure/clip';
import { PER_M, toPaths } from '../../measure/clipPaths';
import { areaOfPaths, booleanOp, ClipType, FillRule, type Paths64 } from '../../measure/clipper';
import type { PlaneRings, XY } from '../../measure/types';
import type { Leg } from '../passTypes';
import { distanceOf, frameOf, orientedRings, ringsInFrame } from './frame';
import { sectionOf } from './section';
import { swathOf } from './swathOf';
import type { Walkable } from './wayWithin';

/** What one swath by itself does on the ground. */
export interface SwathFacts {
  /** the same for the stretch walked from elsewhere or back. */
  readonly key: string;
  readonly paths: Paths64;
  /** ground inside that it reaches, m²; where it runs beside itself that counts twice. */
  readonly insideM2: number;
  /** farthest that it reaches beyond the ground, m. */
  readonly outsideM: number;
}

/** A stretch of a walk that is worked. */
export type Worked = Pick<Leg, 'kind' | 'line' | 'lengthM'>;

/** The ground of a zone with what is known of swaths on it: layouts of a zone have most of them in common. */
export interface GroundFacts {
  readonly paths: Paths64;
  readonly areaM2: number;
  factsOf(work: Worked, widthM: number): SwathFacts;
  /** ground that laps leave; kept for the next layout with the same laps. */
  leftBeside(laps: readonly SwathFacts[]): Paths64;
}

const known = new WeakMap<readonly PlaneRings[], GroundFacts>();

/** Facts of some ground; the same ones at each call with the same array. @param parts each square metre once; not changed */
export function groundFacts(parts: readonly PlaneRings[], walkable: Walkable): GroundFacts {
  const facts = known.get(parts) ?? createFacts(parts, walkable);
  known.set(parts, facts);
  return facts;
}

function createFacts(parts: readonly PlaneRings[], walkable: Walkable): GroundFacts {
  const paths = toPaths(parts);
  const rings = orientedRings(parts);
  const swaths = new Map<string, SwathFacts>();
  const left = new Map<string, Paths64>();
  const frames = new Map<string, { turned: XY[][]; frame: ReturnType<typeof frameOf> }>();
  const beyondM = (at: XY): number => (walkable.isFree(at) ? 0 : (walkable.nearest(at)?.distanceM ?? 0));
  const farthest = (some: Paths64): number =>
    some.reduce(
      (most, path) => path.reduce((m, { x, y }) => Math.max(m, beyondM([x / PER_M, y / PER_M])), most),
      0,
    );

  const straightM2 = (a: XY, b: XY, widthM: number): number => {
    const degrees = ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + 360) % 180;
    const key = degrees.toFixed(7);
    let along = frames.get(key);
    if (!along) {
      const frame = frameOf(Number(key));
      along = { frame, turned: ringsInFrame(rings, frame) };
      frames.set(key, along);
    }
    const [p, q] = [along.frame.to(a), along.frame.to(b)];
    const [from, to] = [Math.min(p[0], q[0]), Math.max(p[0], q[0])];
    let sum = 0;
    for (const { xa, xb, ha, hb } of sectionOf(along.turned, p[1] - widthM / 2, p[1] + widthM / 2)) {
      const [first, last] = [Math.max(xa, from), Math.min(xb, to)];
      if (last <= first) continue;
      const width = (x: number) => ha + ((hb - ha) * (x - xa)) / (xb - xa);
      sum += ((last - first) * (width(first) + width(last))) / 2;
    }
    return sum;
  };
  const make = (work: Worked, key: string, widthM: number): SwathFacts => {
    const swath = swathOf(work, widthM);
    if (work.line.length === 2) {
      const [a, b] = work.line as unknown as readonly [XY, XY];
      return { key, paths: swath, insideM2: straightM2(a, b, widthM), outsideM: farthest(swath) };
    }
    // its length times its width, so that where it runs beside itself counts twice, less what lies beyond
    const beyond = booleanOp(ClipType.Difference, swath, paths, FillRule.NonZero);
    const insideM2 = work.lengthM * widthM - areaOfPaths(beyond) / (PER_M * PER_M);
    return { key, paths: swath, insideM2, outsideM: farthest(beyond) };
  };
  return {
    paths,
    areaM2: planeAreaOf(parts),
    factsOf(work, widthM) {
      const key = `${widthM} ${keyOf(work.line)}`;
      const facts = swaths.get(key) ?? make(work, key, widthM);
      swaths.set(key, facts);
      return facts;
    },
    leftBeside(laps) {
      if (laps.length === 0) return paths;
      const key = laps
        .map((lap) => lap.key)
        .toSorted()
        .join();
      const swath = laps.flatMap((lap) => lap.paths);
      const made = left.get(key) ?? booleanOp(ClipType.Difference, paths, swath, FillRule.NonZero);
      left.set(key, made);
      return made;
    },
  };
}

const keys = new WeakMap<readonly XY[], string>();

function keyOf(line: readonly XY[]): string {
  const key = keys.get(line) ?? nameOf(line);
  keys.set(line, key);
  return key;
}

/** To a ten-millionth of a metre. */
const placeOf = ([x, y]: XY): string => `${Math.round(x * 1e7)} ${Math.round(y * 1e7)}`;

/** Names a line, whichever way it is walked and wherever a closed one begins: by its length and moments. */
function nameOf(line: readonly XY[]): string {
  const [first, last] = [line[0] as XY, line.at(-1) as XY];
  const [one, two] = [placeOf(first), placeOf(last)];
  const ends = one < two ? `${one} ${two}` : `${two} ${one}`;
  if (line.length === 2) return ends;
  let [lengthM, momentX, momentY, momentXX, momentXY] = [0, 0, 0, 0, 0];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as XY, line[i] as XY];
    const sideM = distanceOf(a, b);
    const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    lengthM += sideM;
    momentX += sideM * x;
    momentY += sideM * y;
    // exact along a straight side, so that a corner put into it changes nothing
    momentXX += (sideM * (a[0] * a[0] + a[0] * b[0] + b[0] * b[0])) / 3;
    momentXY += (sideM * (2 * (a[0] * a[1] + b[0] * b[1]) + a[0] * b[1] + b[0] * a[1])) / 6;
  }
  const isClosed = distanceOf(first, last) < 1e-6;
  const moments = [lengthM, momentX, momentY, momentXX, momentXY].map((moment) => Math.round(moment * 1e4));
  return `${moments.join(' ')} ${isClosed ? '' : ends}`;
}
