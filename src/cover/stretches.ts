import { signedArea } from '../measure/signedArea';
import type { XY } from '../measure/types';
import { joinRing, type Piece } from './joinRing';
import { outerSides, outwardOf } from './outerSides';
import type { Outline } from './outline';
import { type OtherOutline, seamsOf } from './seams';
import { type Segment, type Span, sidesOf, spanWithin } from './segments';
import { seenSpans } from './sight';

/** Something that reaches over the edge: the index says which. */
export interface Reach {
  readonly outline: Outline;
  readonly reachM: number;
  /** what lies loose is swept first. */
  readonly isLoose: boolean;
  readonly stains: boolean;
  /** unit vector down the fall of the ground; null: level, or not told. */
  readonly fall: XY | null;
}

/** What water must not run to: it is near an edge within `withinM` of it. */
export interface Spared {
  readonly withinM: number;
  sidesNear(segment: Segment, reachM: number): readonly Segment[];
}

/** A connected run of one outline in which the same is done, with the indices of all that reach it. */
export interface Stretch {
  readonly line: readonly XY[];
  readonly reachedBy: ReadonlySet<number>;
  /** it lies within its distance of something spared, but for bits under half a metre. */
  readonly isNear: boolean;
  /** bits that the ground of a reach falls toward. */
  readonly downhill: readonly { readonly bit: Segment; readonly reach: number }[];
}

/** All that decides the stretches of a ring. */
export interface RingGround {
  readonly reaches: readonly Reach[];
  /** other hardscapes, at least those within SEAM_M of the ring. */
  readonly others: readonly OtherOutline[];
  /** structures, at least those within reach of the ring. */
  readonly structures: readonly Outline[];
  readonly spared: readonly Spared[];
}

/** Ground that runs along an edge at less than this angle does not fall over it: sine of 15 degrees, common practice, no source. */
const LEAST_FALL_SINE = Math.sin(Math.PI / 12);

/**
 * Stretches of a closed outline that product reaches, seams with other hardscape left out.
 * A point counts when some treated ground on its outer side (see outerSides()) lies not further from it than
 * that ground's reach and is seen from it past all structures. A stretch ends where something else is to be
 * done: where loose product or one that stains begins, or the distance to what is spared. Gaps under
 * half a metre are joined.
 * @param ring closed, in the plane, either way round
 * @param isHole whether the ground of the hardscape lies outside the ring
 * @returns in the ring's direction; a run over the ring's first point is one stretch
 */
export function stretchesOfRing(ring: readonly XY[], isHole: boolean, ground: RingGround): Stretch[] {
  const outward = signedArea(ring) > 0 === isHole ? 1 : -1;
  const pieces = sidesOf([[ring]]).flatMap((segment) => piecesOf(segment, outward, ground));
  return joinRing(pieces);
}

/** Cuts a segment wherever anything about it may change, and asks each piece at its middle. */
function piecesOf(segment: Segment, outward: 1 | -1, ground: RingGround): Piece[] {
  const { reaches, others, structures, spared } = ground;
  const within = reaches.flatMap((reach, index) => {
    const spans = spansOf(segment, outward, reach, structures);
    return spans.length > 0 ? [{ index, reach, spans }] : [];
  });
  const none = { segment, isSeam: false, isNear: false, isLoose: false, stains: false, falls: [] };
  if (within.length === 0) return [{ ...none, span: [0, 1], reachedBy: [] }];
  const seams = seamsOf(segment, outward, others);
  const nearby = spared.flatMap(({ withinM, sidesNear }) =>
    sidesNear(segment, withinM).flatMap((side) => {
      const span = spanWithin(segment, side, withinM);
      return span ? [span] : [];
    }),
  );
  const [nx, ny] = outwardOf(segment, outward);
  const cuts = [...seams.cuts, ...nearby.flat(), ...within.flatMap(({ spans }) => spans.flat())];
  const shares = [...new Set([0, 1, ...cuts])].sort((a, b) => a - b);
  return shares.slice(1).map((to, i): Piece => {
    const span: Span = [shares[i] as number, to];
    const middle = (span[0] + span[1]) / 2;
    const reachedBy = within.filter(({ spans }) => holds(spans, middle));
    if (reachedBy.length === 0) return { ...none, span, reachedBy: [] };
    if (seams.holds(middle)) return { ...none, span, reachedBy: [], isSeam: true };
    return {
      segment,
      span,
      reachedBy: reachedBy.map(({ index }) => index),
      isSeam: false,
      isNear: holds(nearby, middle),
      isLoose: reachedBy.some(({ reach }) => reach.isLoose),
      stains: reachedBy.some(({ reach }) => reach.stains),
      falls: reachedBy.flatMap(({ index, reach: { fall } }) =>
        fall && -(fall[0] * nx + fall[1] * ny) >= LEAST_FALL_SINE ? index : [],
      ),
    };
  });
}

function holds(spans: readonly Span[], share: number): boolean {
  return spans.some(([from, to]) => from <= share && share <= to);
}

function spansOf(
  segment: Segment,
  outward: 1 | -1,
  { outline, reachM }: Reach,
  structures: readonly Outline[],
): readonly Span[] {
  const sides = outerSides(segment, outward, outline, reachM);
  const spans = sides.flatMap((side) => {
    const span = spanWithin(segment, side, reachM);
    return span ? [span] : [];
  });
  return seenSpans(segment, outward, sides, spans, reachM, structures);
}
