import Flatbush from 'flatbush';
import FlatQueue from 'flatqueue';
import { isInsideParts } from '../../measure/isInsideParts';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';
import { type Outline, outlineOf } from '../outline';
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

const gap = (a: XY, b: XY): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);

/** Length of an open line, m. */
export function lengthOfLine(line: readonly XY[]): number {
  return line.slice(1).reduce((sum, point, i) => sum + gap(line[i] as XY, point), 0);
}

/** One piece of blocked ground. */
interface Block {
  readonly outline: Outline;
  /** its corners that a way may bend round, as places in the row of all. */
  readonly bends: readonly number[];
}

/**
 * Shortest ways round blocked ground in the plane, by its visibility graph (Lozano-Pérez & Wesley 1979, doi
 * 10.1145/359156.359164), searched by A* (Hart, Nilsson & Raphael 1968, doi 10.1109/TSSC.1968.300136; both from memory) that looks
 * along a line only when it is the next best. Corners of a piece take part once it is found in the way: a way
 * round it is no shorter than the line it blocks, so the search stays exact. A place inside blocked ground is
 * joined to the nearest one on its outline.
 * @param blocked parts that do not overlap or touch (see `unionOf`)
 */
export function createWays(blocked: readonly PlaneRings[]): Ways {
  const sides = sidesOf(blocked);
  const bends: XY[] = [];
  const blocks = blocked.map((part): Block => {
    const first = bends.length;
    bends.push(...bendsOf([part]));
    return { outline: outlineOf([part]), bends: range(first, bends.length) };
  });
  const courts = blocked.flatMap((rings) => rings.slice(1)).toSorted((a, b) => sizeOf(a) - sizeOf(b));
  const met = new Map<number, readonly number[]>();
  const near = nearBlocks(blocks);

  /** the pieces that a straight line goes through. */
  const blocksOn = (a: XY, b: XY): number[] =>
    near(a, b).filter((i) => metresInside([a, b], (blocks[i] as Block).outline, CUT_M) > CUT_M);
  const isClear = (a: XY, b: XY): boolean => blocksOn(a, b).length === 0;

  /** the court that a place lies in; -1: outside of all. */
  const courtOf = (place: XY): number =>
    courts.findIndex(
      (ring) =>
        isInsideParts(place, [[ring]]) ||
        sidesOf([[ring]]).some((side) => distanceToSegment(place, side) < CUT_M),
    );

  const standOutside = (place: XY): XY =>
    near(place, place).some((i) => isWellInside(place, (blocks[i] as Block).outline))
      ? nearestOn(place, sides)
      : place;

  const search = (from: XY, to: XY, toll: Toll | undefined): XY[] | null => {
    const corners = toll?.corners ?? [];
    const places = [...bends, ...corners, from, to];
    const [start, goal] = [places.length - 2, places.length - 1];
    const metBetween = (i: number, j: number): readonly number[] => {
      const [a, b] = [places[i] as XY, places[j] as XY];
      if (i >= bends.length || j >= bends.length) return blocksOn(a, b);
      const key = i < j ? i * bends.length + j : j * bends.length + i;
      const made = met.get(key) ?? blocksOn(a, b);
      met.set(key, made);
      return made;
    };
    /** places that take part. */
    const active = [...range(bends.length, start), goal];
    const isActive = new Uint8Array(blocks.length);
    const via = new Int32Array(places.length).fill(-1);
    const costs = new Float64Array(places.length);
    const closed: number[] = [];
    const isClosed = new Uint8Array(places.length);
    const queue = new FlatQueue<number>();
    const steps: Step[] = [];
    const push = (at: number, by: number, costM: number, isSure: boolean): void => {
      steps.push({ at, by, costM, isSure });
      queue.push(steps.length - 1, costM + gap(places[at] as XY, to));
    };
    const tryFrom = (by: number, all: readonly number[]): void => {
      for (const at of all) {
        if (isClosed[at]) continue;
        push(at, by, (costs[by] as number) + gap(places[by] as XY, places[at] as XY), false);
      }
    };
    const close = (at: number, by: number, costM: number): void => {
      via[at] = by;
      costs[at] = costM;
      isClosed[at] = 1;
      closed.push(at);
      tryFrom(at, active);
    };
    close(start, -1, 0);
    for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
      const { at, by, costM, isSure } = steps[next] as Step;
      if (isClosed[at]) continue;
      if (!isSure) {
        const inTheWay = metBetween(by, at);
        for (const block of inTheWay) {
          if (isActive[block]) continue;
          isActive[block] = 1;
          const fresh = (blocks[block] as Block).bends;
          active.push(...fresh);
          for (const from of closed) tryFrom(from, fresh);
        }
        if (inTheWay.length > 0) continue;
        const extra = toll?.extraM(places[by] as XY, places[at] as XY) ?? 0;
        if (extra > 0) {
          push(at, by, costM + extra, true);
          continue;
        }
      }
      if (at === goal) {
        via[at] = by;
        return lineBack(places, via, goal);
      }
      close(at, by, costM);
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

/** A line of the search that may be taken next. */
interface Step {
  readonly at: number;
  readonly by: number;
  /** m from the start to its end. */
  readonly costM: number;
  /** it was looked along, and its toll is in. */
  readonly isSure: boolean;
}

/** The pieces whose boxes a line's box meets. */
function nearBlocks(blocks: readonly Block[]): (a: XY, b: XY) => number[] {
  if (blocks.length === 0) return () => [];
  const index = new Flatbush(blocks.length);
  for (const { outline } of blocks) {
    const { minX, minY, maxX, maxY } = outline.box;
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return (a, b) =>
    index.search(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]));
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
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
