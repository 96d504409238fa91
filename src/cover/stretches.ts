import type { XY } from '../measure/types';
import type { Outline } from './outline';
import { crossingShare, pointAt, type Segment, type Span, sidesOf, spanInBand, spanWithin } from './segments';

/** Two hardscapes nearer than this along their outlines adjoin: their seam is no edge of the ground. */
export const SEAM_M = 0.02;
/** Sine of the greatest angle between two outlines that still run side by side, about 3 degrees. */
const SEAM_SINE = 0.05;

/** Something that reaches over the edge: the index says which. */
export interface Reach {
  readonly outline: Outline;
  readonly reachM: number;
}

/** A connected run of one outline, with the indices of all that reach it. */
export interface Stretch {
  readonly line: readonly XY[];
  readonly reachedBy: ReadonlySet<number>;
}

interface Piece {
  readonly segment: Segment;
  readonly span: Span;
  readonly reachedBy: ReadonlySet<number>;
}

/**
 * Stretches of a closed outline within reach, seams with other hardscape left out.
 * A point counts when its distance to the outline of some treated shape is not more than that shape's
 * reach; treated shapes and hardscape are net shapes, so neither lies inside the other.
 * @param ring closed, in the plane
 * @param others other hardscapes, at least those within SEAM_M of the ring
 * @returns in the ring's direction; a run over the ring's first point is one stretch
 */
export function stretchesOfRing(
  ring: readonly XY[],
  reaches: readonly Reach[],
  others: readonly Outline[],
): Stretch[] {
  const runs: Piece[][] = [];
  let open: Piece[] | null = null;
  for (const segment of sidesOf([[ring]])) {
    for (const piece of piecesOf(segment, reaches, others)) {
      if (piece.reachedBy.size === 0) {
        open = null;
      } else if (open) {
        open.push(piece);
      } else {
        open = [piece];
        runs.push(open);
      }
    }
  }
  const first = runs[0];
  const last = runs.at(-1);
  const startsAtFirst = first?.[0] && isSame(pointAt(first[0].segment, first[0].span[0]), ring[0]);
  if (runs.length > 1 && first && last && open === last && startsAtFirst) {
    runs.pop();
    runs[0] = [...last, ...first];
  }
  return runs.map(joinPieces);
}

function isSame(p: XY, q: XY | undefined): boolean {
  return q !== undefined && p[0] === q[0] && p[1] === q[1];
}

/** Cuts a segment wherever anything about it may change, and asks each piece at its middle. */
function piecesOf(segment: Segment, reaches: readonly Reach[], others: readonly Outline[]): Piece[] {
  const within = reaches.flatMap((reach, index) => {
    const spans = spansOf(segment, reach);
    return spans.length > 0 ? [{ index, spans }] : [];
  });
  if (within.length === 0) return [{ segment, span: [0, 1], reachedBy: new Set() }];
  const closeSides = others.flatMap((other) => other.sidesNear(segment, SEAM_M));
  const seams = closeSides
    .filter((side) => runsAlong(segment, side))
    .flatMap((side) => clampSpan(spanInBand(segment, side, SEAM_M)));
  const cuts = new Set([0, 1]);
  for (const span of [...within.flatMap(({ spans }) => spans), ...seams]) {
    cuts.add(span[0]);
    cuts.add(span[1]);
  }
  for (const side of closeSides) {
    const share = crossingShare(segment, side);
    if (share !== null) cuts.add(share);
  }
  const shares = [...cuts].sort((a, b) => a - b);
  const pieces: Piece[] = [];
  for (let i = 1; i < shares.length; i += 1) {
    const span: Span = [shares[i - 1] as number, shares[i] as number];
    const middle = (span[0] + span[1]) / 2;
    const holds = (spans: readonly Span[]): boolean =>
      spans.some(([from, to]) => from <= middle && middle <= to);
    const reachedBy = new Set(within.flatMap(({ index, spans }) => (holds(spans) ? [index] : [])));
    const point = pointAt(segment, middle);
    const isSeam = reachedBy.size > 0 && (holds(seams) || others.some((other) => other.holds(point)));
    pieces.push({ segment, span, reachedBy: isSeam ? new Set() : reachedBy });
  }
  return pieces;
}

function spansOf(segment: Segment, { outline, reachM }: Reach): Span[] {
  return outline
    .sidesNear(segment, reachM)
    .map((side) => spanWithin(segment, side, reachM))
    .filter((span) => span !== null);
}

function clampSpan(span: Span | null): Span[] {
  const held: Span = [Math.max(0, span?.[0] ?? 1), Math.min(1, span?.[1] ?? 0)];
  return held[0] < held[1] ? [held] : [];
}

function runsAlong([a, b]: Segment, [c, d]: Segment): boolean {
  const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  const lengths = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(d[0] - c[0], d[1] - c[1]);
  return Math.abs(cross) <= SEAM_SINE * lengths;
}

function joinPieces(pieces: readonly Piece[]): Stretch {
  const line: XY[] = [];
  const reachedBy = new Set<number>();
  for (const [index, piece] of pieces.entries()) {
    if (index === 0) line.push(pointAt(piece.segment, piece.span[0]));
    const next = pieces[index + 1];
    // points inside one side are only where a reach begins or ends: the line needs corners alone
    if (next?.segment !== piece.segment || next.span[0] !== piece.span[1]) {
      line.push(piece.span[1] === 1 ? piece.segment[1] : pointAt(piece.segment, piece.span[1]));
    }
    for (const reach of piece.reachedBy) reachedBy.add(reach);
  }
  return { line, reachedBy };
}
