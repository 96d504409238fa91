import type { XY } from '../measure/types';
import { pointAt, type Segment, type Span } from './segments';
import type { Stretch } from './stretches';

/** Gaps shorter than this are walked over, and what is shorter takes part in what is done beside it; common practice, no source. */
export const LEAST_GAP_M = 0.5;
/** What is shorter than this is done with its neighbour in any case, m. */
const LEAST_PART_M = 0.05;

/** Part of one side of an outline, in which nothing changes. */
export interface Piece {
  readonly segment: Segment;
  readonly span: Span;
  /** indices of what reaches it; empty: nothing, or it is a seam. */
  readonly reachedBy: readonly number[];
  readonly isSeam: boolean;
  readonly isNear: boolean;
  readonly isLoose: boolean;
  readonly stains: boolean;
  /** indices of the reaches whose ground falls toward it. */
  readonly falls: readonly number[];
}

type Part = Piece[];

/**
 * Stretches of a ring from its pieces, all round and in order: runs of reached pieces, gaps under LEAST_GAP_M
 * that are no seam taken in, then parted where something else is to be done. A part under LEAST_GAP_M goes
 * with a neighbour that asks for no less care.
 */
export function joinRing(pieces: readonly Piece[]): Stretch[] {
  return runsOf(closeGaps(pieces)).flatMap(({ run, isClosed }) => partsOf(run, isClosed).map(joinPieces));
}

/** Pieces of a short gap between reached ones become like the one before the gap. */
function closeGaps(pieces: readonly Piece[]): readonly Piece[] {
  const first = pieces.findIndex(isReached);
  if (first < 0 || pieces.every(isReached)) return pieces;
  const round = turn(pieces, first);
  const closed: Piece[] = [];
  let gap: Piece[] = [];
  const end = (): void => {
    const before = closed.at(-1);
    const isShort = lengthOf(gap) < LEAST_GAP_M && !gap.some((piece) => piece.isSeam);
    for (const piece of gap)
      closed.push(
        before && isShort ? { ...before, segment: piece.segment, span: piece.span, falls: [] } : piece,
      );
    gap = [];
  };
  for (const piece of round) {
    if (!isReached(piece)) {
      gap.push(piece);
      continue;
    }
    if (gap.length > 0) end();
    closed.push(piece);
  }
  if (gap.length > 0) end();
  return closed;
}

/** Runs of reached pieces; one that goes all round is closed. */
function runsOf(pieces: readonly Piece[]): { run: Piece[]; isClosed: boolean }[] {
  if (pieces.length > 0 && pieces.every(isReached)) return [{ run: [...pieces], isClosed: true }];
  const gap = pieces.findIndex((piece) => !isReached(piece));
  const runs: Piece[][] = [];
  let open: Piece[] | null = null;
  for (const piece of turn(pieces, Math.max(0, gap))) {
    if (!isReached(piece)) open = null;
    else if (open) open.push(piece);
    else {
      open = [piece];
      runs.push(open);
    }
  }
  return runs.map((run) => ({ run, isClosed: false }));
}

function partsOf(run: readonly Piece[], isClosed: boolean): readonly Part[] {
  const change = run.findIndex((piece, i) => i > 0 && !isAlike(piece, run[i - 1] as Piece));
  const parts: Part[] = [];
  for (const piece of isClosed ? turn(run, Math.max(0, change)) : run) {
    const last = parts.at(-1);
    if (last && isAlike(piece, last[0] as Piece)) last.push(piece);
    else parts.push([piece]);
  }
  for (;;) {
    const short = parts.findIndex((part, i) => hostOf(parts, i) !== null && lengthOf(part) < LEAST_GAP_M);
    if (short < 0) return parts;
    const host = hostOf(parts, short) as number;
    const kind = (parts[host] as Part)[0] as Piece;
    const taken = (parts[short] as Part).map((piece) => ({ ...piece, ...careOf(kind) }));
    const joined = host < short ? [...(parts[host] as Part), ...taken] : [...taken, ...(parts[host] as Part)];
    parts.splice(Math.min(host, short), 2, joined);
    // what it parted may be alike
    const at = Math.min(host, short);
    for (const i of [at, at - 1]) {
      const [one, next] = [parts[i], parts[i + 1]];
      if (one && next && isAlike(one[0] as Piece, next[0] as Piece)) parts.splice(i, 2, [...one, ...next]);
    }
  }
}

/** The neighbour of a part that may take it in; null: none. */
function hostOf(parts: readonly Part[], i: number): number | null {
  const part = parts[i] as Part;
  const isTiny = lengthOf(part) < LEAST_PART_M;
  for (const host of [i - 1, i + 1]) {
    const other = parts[host]?.[0];
    if (other && (isTiny || isNoLess(other, part[0] as Piece))) return host;
  }
  return null;
}

function careOf({ isNear, isLoose, stains }: Piece): Pick<Piece, 'isNear' | 'isLoose' | 'stains'> {
  return { isNear, isLoose, stains };
}

function isAlike(a: Piece, b: Piece): boolean {
  return a.isNear === b.isNear && a.isLoose === b.isLoose && a.stains === b.stains;
}

/** Whether what is done at `a` is enough at `b`. */
function isNoLess(a: Piece, b: Piece): boolean {
  return (a.isNear || !b.isNear) && (a.isLoose || !b.isLoose) && (a.stains || !b.stains);
}

function isReached({ reachedBy }: Piece): boolean {
  return reachedBy.length > 0;
}

function turn<T>(items: readonly T[], first: number): readonly T[] {
  return [...items.slice(first), ...items.slice(0, first)];
}

function lengthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { segment: [a, b], span: [from, to] }) => {
    return sum + (to - from) * Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);
}

function joinPieces(pieces: readonly Piece[]): Stretch {
  const line: XY[] = [];
  const reachedBy = new Set<number>();
  const downhill: { bit: Segment; reach: number }[] = [];
  for (const [index, { segment, span, ...piece }] of pieces.entries()) {
    if (index === 0) line.push(pointAt(segment, span[0]));
    const next = pieces[index + 1];
    // points inside one side are only where something changes: the line needs corners alone
    if (next?.segment !== segment || next.span[0] !== span[1]) {
      line.push(span[1] === 1 ? segment[1] : pointAt(segment, span[1]));
    }
    for (const reach of piece.reachedBy) reachedBy.add(reach);
    const bit: Segment = [pointAt(segment, span[0]), pointAt(segment, span[1])];
    for (const reach of piece.falls) downhill.push({ bit, reach });
  }
  return { line, reachedBy, isNear: pieces[0]?.isNear ?? false, downhill };
}
