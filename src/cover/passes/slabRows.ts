import { signedArea } from '../../measure/signedArea';
import type { XY } from '../../measure/types';
import type { LegKnot } from '../passTypes';
import { lengthOfLine } from './frame';
import { type Crossing, crossingsAt, type Piece, sectionOf } from './section';
import { makeWork, type Work } from './work';

/** What the rows of one heading are made from, all in its frame. */
export interface SlabGround {
  /** ground to be worked, ground on the left of its rings. */
  readonly need: readonly (readonly XY[])[];
  /** the zone: what can be walked. */
  readonly zone: readonly (readonly XY[])[];
  readonly keepOff: readonly (readonly XY[])[];
  readonly swathM: number;
  /** a pass ends where the ground of its slab gets narrower than this share of the slab. */
  readonly trimShare: number;
}

/** A stretch of a slab with the range of ground that is its own, along x. */
export interface Stretch {
  readonly xa: number;
  readonly xb: number;
  /** in the frame, towards greater x. */
  readonly work: Work;
  /** its ground that lies before and after the pass, m². */
  readonly missedM2: number;
}

/** Ground of a slab that lies so near together is one stretch, m. */
const GAP_M = 0.02;
/** A pass is no shorter than this, m. */
const LEAST_PASS_M = 0.01;
/** Lines of what is kept off count as touched when the swath reaches so far over them, m. */
const TOUCH_M = 1e-3;

/** Lines beside the middle of a slab, as shares of its width. */
const OFF_MIDDLE = [0.15, -0.15, 0.3, -0.3, 0.42, -0.42, 0.49, -0.49];

/** A place along the slab where the middle line cannot go straight on. */
interface Block {
  readonly from: number;
  readonly to: number;
  /** round it; null: the pass ends before it and another begins after it. */
  readonly round: readonly XY[] | null;
}

/**
 * The passes of one slab: along its middle over all ground of the slab, so far that slanted ends are covered
 * (the middle line ends at most half a swath beyond the zone, and never inside a hole). A hole that
 * leaves ground of the slab free beside it is passed along its edge; one that fills the slab parts the
 * pass. Where the swath would touch ground to be kept off, the pass ends.
 */
export function stretchesOf(ground: SlabGround, ya: number, yb: number): Stretch[] {
  const pieces = sectionOf(ground.need, ya, yb);
  if (pieces.length === 0) return [];
  const y = (ya + yb) / 2;
  const half = ground.swathM / 2;
  const crossings = crossingsAt(ground.zone, y);
  const kept =
    ground.keepOff.length === 0
      ? []
      : spansOf(sectionOf(ground.keepOff, y - half + TOUCH_M, y + half - TOUCH_M), GAP_M);
  return spansOf(pieces, GAP_M).flatMap((span) => {
    const own = pieces.filter((piece) => piece.xb > span.xa && piece.xa < span.xb);
    const ends = trimmedEnds(span, own, ground.trimShare * (yb - ya), ground.swathM);
    const isMet = (list: readonly Crossing[]) =>
      list.some((one, i) => i % 2 === 0 && one.x < ends.xb && (list[i + 1]?.x ?? one.x) > ends.xa);
    if (isMet(crossings) || kept.length > 0) return cutSpan(ground, span, ends, own, crossings, kept, y);
    // ground that the middle line misses: the line nearest to the middle that meets it
    for (const share of OFF_MIDDLE) {
      const beside = y + share * (yb - ya);
      const others = crossingsAt(ground.zone, beside);
      if (isMet(others)) return cutSpan(ground, span, ends, own, others, kept, beside);
    }
    return cutSpan(ground, span, ends, own, crossings, kept, y);
  });
}

interface Span {
  readonly xa: number;
  readonly xb: number;
}

/**
 * Where a pass may begin and end: the ground beyond is narrower than `leastM`. For the same ground missed this saves
 * the most walk, as each metre saved gives up the width of the ground there.
 */
function trimmedEnds(span: Span, pieces: readonly Piece[], leastM: number, mostM: number): Span {
  if (leastM <= 0) return span;
  const endFrom = (list: readonly Piece[], isBack: boolean): number => {
    for (const { xa, xb, ha, hb } of list) {
      const [x0, x1, h0, h1] = isBack ? [xb, xa, hb, ha] : [xa, xb, ha, hb];
      if (h0 >= leastM) return x0;
      if (h1 >= leastM) return x0 + ((leastM - h0) / (h1 - h0)) * (x1 - x0);
    }
    return isBack ? -Infinity : Infinity;
  };
  const [xa, xb] = [endFrom(pieces, false), endFrom(pieces.toReversed(), true)];
  if (!(xb > xa)) return span;
  return { xa: Math.min(xa, span.xa + mostM), xb: Math.max(xb, span.xb - mostM) };
}

function spansOf(pieces: readonly Piece[], gapM: number): Span[] {
  const spans: { xa: number; xb: number }[] = [];
  for (const { xa, xb } of pieces) {
    const last = spans.at(-1);
    if (last && xa - last.xb <= gapM) last.xb = Math.max(last.xb, xb);
    else spans.push({ xa, xb });
  }
  return spans;
}

function cutSpan(
  ground: SlabGround,
  span: Span,
  ends: Span,
  pieces: readonly Piece[],
  crossings: readonly Crossing[],
  kept: readonly Span[],
  y: number,
): Stretch[] {
  const half = ground.swathM / 2;
  const isHole = (crossing: Crossing) => signedArea(ground.zone[crossing.ring] ?? []) < 0;
  const blocks: Block[] = [];
  let { xa: start, xb: end } = ends;
  // outside before the first crossing, between the second and third, …, after the last
  for (let i = 0; i <= crossings.length; i += 2) {
    const [before, after] = [crossings[i - 1], crossings[i]];
    const from = before?.x ?? -Infinity;
    const to = after?.x ?? Infinity;
    if (to <= start || from >= end) continue;
    const meetsStart = from <= start;
    const meetsEnd = to >= end;
    if (meetsStart && meetsEnd) continue; // the middle line meets no ground: the swath alone does
    if (meetsStart && after) start = Math.max(start, isHole(after) ? to : to - half);
    else if (meetsEnd && before) end = Math.min(end, isHole(before) ? from : from + half);
    else if (before && after) {
      const round = kept.length === 0 ? roundOf(ground.zone, before, after, y, half) : null;
      blocks.push({ from, to, round });
    }
  }
  for (const { xa, xb } of kept) {
    if (xb <= start || xa >= end) continue;
    if (xa <= start) start = xb;
    else if (xb >= end) end = xa;
    else blocks.push({ from: xa, to: xb, round: null });
  }
  if (end - start < LEAST_PASS_M) {
    if (kept.length > 0 && end < start) return [];
    const middle = (Math.max(start, span.xa) + Math.min(end, span.xb)) / 2;
    [start, end] = [middle - LEAST_PASS_M / 2, middle + LEAST_PASS_M / 2];
  }
  return layStretches(span, pieces, mergeBlocks(blocks), start, end, y);
}

/** Blocks in order; those that overlap become one that parts the pass. */
function mergeBlocks(blocks: readonly Block[]): Block[] {
  const merged: Block[] = [];
  for (const block of blocks.toSorted((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    if (last && block.from <= last.to)
      merged[merged.length - 1] = { from: last.from, to: Math.max(last.to, block.to), round: null };
    else merged.push(block);
  }
  return merged;
}

/** Along the outline from one crossing to the next, on the side that strays less; null when that is too far. */
function roundOf(
  rings: readonly (readonly XY[])[],
  before: Crossing,
  after: Crossing,
  y: number,
  mostM: number,
): XY[] | null {
  const ring = rings[before.ring];
  if (before.ring !== after.ring || !ring) return null;
  const count = ring.length - 1;
  const walk = (from: Crossing, to: Crossing): XY[] => {
    const line: XY[] = [[from.x, y]];
    for (let i = from.edge; i !== to.edge; i = (i + 1) % count) line.push(ring[(i + 1) % count] as XY);
    line.push([to.x, y]);
    return line;
  };
  const ways = [walk(before, after), walk(after, before).reverse()];
  const strays = ways.map((way) => way.reduce((most, p) => Math.max(most, Math.abs(p[1] - y)), 0));
  const best = (strays[0] as number) <= (strays[1] as number) ? 0 : 1;
  const line = ways[best] as XY[];
  const isFar = (strays[best] as number) > mostM || lengthOfLine(line) > 3 * (after.x - before.x) + mostM;
  return isFar ? null : line;
}

function layStretches(
  span: Span,
  pieces: readonly Piece[],
  blocks: readonly Block[],
  start: number,
  end: number,
  y: number,
): Stretch[] {
  const found: Stretch[] = [];
  let line: XY[] = [[start, y]];
  let anchors: { x: number; atM: number }[] = [{ x: start, atM: 0 }];
  let ownFrom = span.xa;
  const finish = (x: number, ownTo: number) => {
    if (x - (line[0] as XY)[0] < LEAST_PASS_M) x = (line[0] as XY)[0] + LEAST_PASS_M;
    line.push([x, y]);
    anchors.push({ x, atM: lengthOfLine(line) });
    const work = makeWork('pass', line, knotsOf(pieces, ownFrom, ownTo, anchors));
    const missedM2 = areaBetween(pieces, ownFrom, (line[0] as XY)[0]) + areaBetween(pieces, x, ownTo);
    found.push({ xa: ownFrom, xb: ownTo, work, missedM2 });
  };
  for (const block of blocks) {
    if (block.from <= start || block.to >= end) continue;
    if (block.round) {
      anchors.push({ x: block.from, atM: lengthOfLine([...line, block.round[0] as XY]) });
      line.push(...block.round);
      anchors.push({ x: block.to, atM: lengthOfLine(line) });
      continue;
    }
    const parting = narrowest(pieces, block.from, block.to);
    finish(block.from, parting);
    ownFrom = parting;
    line = [[block.to, y]];
    anchors = [{ x: block.to, atM: 0 }];
  }
  finish(end, span.xb);
  return found;
}

function areaBetween(pieces: readonly Piece[], from: number, to: number): number {
  let sum = 0;
  for (const { xa, xb, ha, hb } of pieces) {
    const [a, b] = [Math.max(xa, from), Math.min(xb, to)];
    if (b <= a) continue;
    const width = (x: number) => ha + ((hb - ha) * (x - xa)) / (xb - xa);
    sum += ((b - a) * (width(a) + width(b))) / 2;
  }
  return sum;
}

/** Where between two places the ground of the slab is narrowest. */
function narrowest(pieces: readonly Piece[], from: number, to: number): number {
  let [best, least] = [(from + to) / 2, Infinity];
  for (const { xa, xb, ha, hb } of pieces) {
    for (const [x, h] of [
      [xa, ha],
      [xb, hb],
    ] as const) {
      if (x <= from || x >= to || h >= least) continue;
      [best, least] = [x, h];
    }
  }
  return best;
}

/** Ground taken on along a pass: integral of the width. @param anchors places x with how far along the line they are */
function knotsOf(
  pieces: readonly Piece[],
  from: number,
  to: number,
  anchors: readonly { x: number; atM: number }[],
): LegKnot[] {
  const knots: LegKnot[] = [];
  let areaM2 = 0;
  const all = pieces.reduce((sum, { xa, xb, ha, hb }) => sum + ((xb - xa) * (ha + hb)) / 2, 0);
  for (const { xa, xb, ha, hb } of pieces) {
    const [a, b] = [Math.max(xa, from), Math.min(xb, to)];
    if (b <= a) continue;
    const width = (x: number) => ha + ((hb - ha) * (x - xa)) / (xb - xa);
    const [wa, wb] = [width(a), width(b)];
    // a chord of the parabola strays by at most |wb - wa| · length / 8 of n² of them
    const steps = Math.min(
      16,
      Math.ceil(Math.sqrt((Math.abs(wb - wa) * (b - a)) / 8 / (all * 2e-4 + 1e-12))),
    );
    const count = Math.max(1, steps);
    if (knots.length === 0) knots.push({ atM: placeOf(a, anchors), areaM2: 0 });
    for (let i = 1; i <= count; i++) {
      const x = a + ((b - a) * i) / count;
      const inside = ((x - a) * (wa + width(x))) / 2;
      knots.push({ atM: placeOf(x, anchors), areaM2: areaM2 + inside });
    }
    areaM2 += ((b - a) * (wa + wb)) / 2;
  }
  return knots;
}

function placeOf(x: number, anchors: readonly { x: number; atM: number }[]): number {
  let before = anchors[0] as { x: number; atM: number };
  if (x <= before.x) return 0;
  for (const next of anchors) {
    if (x <= next.x && next.x > before.x)
      return before.atM + ((next.atM - before.atM) * (x - before.x)) / (next.x - before.x);
    before = next;
  }
  return before.atM;
}
