import FlatQueue from 'flatqueue';
import { isInsideParts } from '../../measure/isInsideParts';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';
import { outlineOf } from '../outline';
import { distanceToSegment, type Segment, sidesOf } from '../segments';
import { isWellInside, metresInside } from './metresInside';

/** What a line may cut off a corner of blocked ground, m. */
const CUT_M = 2e-3;

/** A way on open ground. */
export interface Way {
  /** two points or more, from the one place to the other. */
  readonly line: readonly XY[];
  readonly lengthM: number;
}

/** What makes some ground dearer to walk. */
export interface Toll {
  /** corners of that ground, where a way round it bends. */
  readonly corners: readonly XY[];
  /** what a straight line costs beyond its length, m; 0 or more. */
  extraM(from: XY, to: XY): number;
}

/** Ways round blocked ground. */
export interface Ways {
  /** the shortest; with a toll the cheapest over straight lines between corners. null: blocked ground lies all round one of the places. */
  between(from: XY, to: XY, toll?: Toll): Way | null;
  isClear(from: XY, to: XY): boolean;
  /** the place itself, or the nearest one on the outline of the blocked ground that it lies in. */
  standOutside(place: XY): XY;
}

const gap = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Length of an open line, m. */
export function lengthOfLine(line: readonly XY[]): number {
  return line.slice(1).reduce((sum, point, i) => sum + gap(line[i] as XY, point), 0);
}

/**
 * Shortest ways round blocked ground in the plane, by its visibility graph (Lozano-Pérez & Wesley 1979, doi
 * 10.1145/359156.359164), searched by A* (Hart, Nilsson & Raphael 1968) that looks along a line only when it is
 * the next best. A place inside blocked ground is joined to the nearest one on its outline.
 * @param blocked parts that do not overlap or touch (see `unionOf`)
 */
export function createWays(blocked: readonly PlaneRings[]): Ways {
  const outline = outlineOf(blocked);
  const sides = sidesOf(blocked);
  const bends = bendsOf(blocked);
  const courts = blocked.flatMap((rings) => rings.slice(1)).toSorted((a, b) => sizeOf(a) - sizeOf(b));
  const seen = new Map<number, boolean>();
  const isClear = (a: XY, b: XY): boolean => metresInside([a, b], outline, CUT_M) <= CUT_M;

  /** the court that a place lies in; -1: outside of all. */
  const courtOf = (place: XY): number =>
    courts.findIndex(
      (ring) =>
        isInsideParts(place, [[ring]]) ||
        sidesOf([[ring]]).some((side) => distanceToSegment(place, side) < CUT_M),
    );

  const standOutside = (place: XY): XY => (isWellInside(place, outline) ? nearestOn(place, sides) : place);

  const search = (from: XY, to: XY, toll: Toll | undefined): XY[] | null => {
    const points: XY[] = [...bends, ...(toll?.corners ?? []), from, to];
    const [start, goal] = [points.length - 2, points.length - 1];
    const canSee = (i: number, j: number): boolean => {
      const [a, b] = [points[i] as XY, points[j] as XY];
      if (i >= bends.length || j >= bends.length) return isClear(a, b);
      const key = i < j ? i * bends.length + j : j * bends.length + i;
      const known = seen.get(key);
      if (known !== undefined) return known;
      const sees = isClear(a, b);
      seen.set(key, sees);
      return sees;
    };
    const via = new Int32Array(points.length).fill(-1);
    const isClosed = new Uint8Array(points.length);
    const queue = new FlatQueue<number>();
    const steps: {
      readonly at: number;
      readonly by: number;
      readonly costM: number;
      readonly isSure: boolean;
    }[] = [];
    const push = (at: number, by: number, costM: number, isSure: boolean): void => {
      steps.push({ at, by, costM, isSure });
      queue.push(steps.length - 1, costM + gap(points[at] as XY, to));
    };
    const spread = (by: number, costM: number): void => {
      isClosed[by] = 1;
      for (let at = 0; at < points.length; at += 1)
        if (!isClosed[at]) push(at, by, costM + gap(points[by] as XY, points[at] as XY), false);
    };
    spread(start, 0);
    for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
      const step = steps[next];
      if (!step || isClosed[step.at]) continue;
      const { at, by, costM, isSure } = step;
      if (!isSure) {
        if (!canSee(by, at)) continue;
        const extra = toll?.extraM(points[by] as XY, points[at] as XY) ?? 0;
        if (extra > 0) {
          push(at, by, costM + extra, true);
          continue;
        }
      }
      via[at] = by;
      if (at === goal) return lineBack(points, via, goal);
      spread(at, costM);
    }
    return null;
  };

  return {
    isClear,
    standOutside,
    between(from, to, toll) {
      const [a, b] = [standOutside(from), standOutside(to)];
      if (courts.length > 0 && courtOf(a) !== courtOf(b)) return null;
      const isFree = isClear(a, b) && !(toll && toll.extraM(a, b) > 0);
      const inner = isFree ? [a, b] : search(a, b, toll);
      if (!inner) return null;
      const line = [...(a === from ? [] : [from]), ...inner, ...(b === to ? [] : [to])];
      return { line, lengthM: lengthOfLine(line) };
    },
  };
}

function lineBack(points: readonly XY[], via: Int32Array, goal: number): XY[] {
  const line: XY[] = [];
  for (let at = goal; at >= 0; at = via[at] as number) line.unshift(points[at] as XY);
  return line;
}

function sizeOf(ring: readonly XY[]): number {
  return Math.abs(signedArea(ring));
}

/** The nearest place on any of the sides; the place itself where there are none. */
export function nearestOn(place: XY, sides: readonly Segment[]): XY {
  let [best, least]: [XY, number] = [place, Number.POSITIVE_INFINITY];
  for (const side of sides) {
    const foot = footOn(place, side);
    const away = gap(place, foot);
    if (away < least) [best, least] = [foot, away];
  }
  return best;
}

function footOn([x, y]: XY, [a, b]: Segment): XY {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy);
  const held = Math.min(1, Math.max(0, t));
  return [a[0] + held * dx, a[1] + held * dy];
}

/** Corners that a way may bend round: where shapes are less than straight, holes seen from within. */
export function bendsOf(parts: readonly PlaneRings[]): XY[] {
  return parts.flatMap((rings) =>
    rings.flatMap((ring, i) => {
      const corners = ring.slice(0, -1);
      const isLeft = signedArea(ring) > 0;
      if (isLeft !== (i === 0)) corners.reverse();
      return corners.filter((at, k) => {
        const before = corners.at(k - 1) as XY;
        const after = corners[(k + 1) % corners.length] as XY;
        return (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0]) > 0;
      });
    }),
  );
}
