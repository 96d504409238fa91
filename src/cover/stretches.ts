import { signedArea } from '../measure/signedArea';
import type { XY } from '../measure/types';
import type { Outline } from './outline';
import { type OtherOutline, seamsOf } from './seams';
import { pointAt, type Segment, type Span, sidesOf, spanWithin } from './segments';

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
 * @param ring closed, in the plane, either way round
 * @param isHole whether the ground of the hardscape lies outside the ring
 * @param others other hardscapes, at least those within SEAM_M of the ring
 * @returns in the ring's direction; a run over the ring's first point is one stretch
 */
export function stretchesOfRing(
  ring: readonly XY[],
  isHole: boolean,
  reaches: readonly Reach[],
  others: readonly OtherOutline[],
): Stretch[] {
  const outward = signedArea(ring) > 0 === isHole ? 1 : -1;
  const runs: Piece[][] = [];
  let open: Piece[] | null = null;
  for (const segment of sidesOf([[ring]])) {
    for (const piece of piecesOf(segment, outward, reaches, others)) {
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
function piecesOf(
  segment: Segment,
  outward: 1 | -1,
  reaches: readonly Reach[],
  others: readonly OtherOutline[],
): Piece[] {
  const within = reaches.flatMap((reach, index) => {
    const spans = spansOf(segment, reach);
    return spans.length > 0 ? [{ index, spans }] : [];
  });
  if (within.length === 0) return [{ segment, span: [0, 1], reachedBy: new Set() }];
  const seams = seamsOf(segment, outward, others);
  const cuts = new Set([0, 1, ...seams.cuts, ...within.flatMap(({ spans }) => spans.flat())]);
  const shares = [...cuts].sort((a, b) => a - b);
  const pieces: Piece[] = [];
  for (let i = 1; i < shares.length; i += 1) {
    const span: Span = [shares[i - 1] as number, shares[i] as number];
    const middle = (span[0] + span[1]) / 2;
    const reachedBy = new Set(
      within.flatMap(({ index, spans }) =>
        spans.some(([from, to]) => from <= middle && middle <= to) ? [index] : [],
      ),
    );
    const isSeam = reachedBy.size > 0 && seams.holds(middle);
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
