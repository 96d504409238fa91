import { fromTree, operate, PER_M, toPaths } from '../measure/clipPaths';
import {
  booleanOp,
  ClipType,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Paths64,
} from '../measure/clipper';
import type { PlaneRings, XY } from '../measure/types';
import { stretchesByVessel } from './marks/stretchesByVessel';
import type { DoseCoverage, Leg, RunOutMark } from './passTypes';

/** Ground that one vessel does in one coat. */
export interface VesselGround {
  /** index in the dose's vessels, from 0. */
  readonly vessel: number;
  /** in the yard's plane. */
  readonly parts: readonly PlaneRings[];
}

/** Rounded outer corners of a swath stray from the arc by at most this: a drawing needs no finer, m. */
const ARC_M = 0.03;

/**
 * The ground that each vessel of a dose does, for drawing: its swaths as wide as they are wet or strewn, cut
 * at the marks where it runs out. Ground reached twice is of the vessel that comes first.
 * @param coat whose legs are taken
 * @param swathM more than 0, m
 * @param within ground that the drawing keeps to (the zones' shapes); null: none
 * @returns none for ground that no vessel does; in the order in which the vessels are used, those without ground left out
 */
export function vesselGround(
  dose: Pick<DoseCoverage, 'legs' | 'marks' | 'vessels'>,
  coat: 1 | 2,
  swathM: number,
  within: readonly PlaneRings[] | null,
): readonly VesselGround[] {
  const { legs, marks } = ofCoat(dose.legs, dose.marks, coat);
  const keep = within && toPaths(within);
  const grounds: VesselGround[] = [];
  let taken: Paths64 = [];
  for (const { vessel, lines } of stretchesByVessel(legs, marks, dose.vessels.length)) {
    const swept = inflatePaths(
      lines.map(toPath),
      (swathM / 2) * PER_M,
      JoinType.Round,
      EndType.Butt,
      2,
      ARC_M * PER_M,
    );
    const kept = keep ? booleanOp(ClipType.Intersection, swept, keep, FillRule.NonZero) : swept;
    const parts = fromTree(operate(ClipType.Difference, kept, taken));
    if (parts.length > 0) grounds.push({ vessel, parts });
    taken = booleanOp(ClipType.Union, [...taken, ...kept], null, FillRule.NonZero);
  }
  return grounds;
}

/** A line on the grid; a closed one runs on past its first corner, so that this is joined like the others. */
function toPath(line: readonly XY[]): Paths64[number] {
  const [first, second] = line;
  const last = line.at(-1);
  const isClosed = first && second && line.length > 3 && last?.[0] === first[0] && last[1] === first[1];
  return (isClosed ? [...line, second] : line).map(([x, y]) => ({
    x: Math.round(x * PER_M),
    y: Math.round(y * PER_M),
  }));
}

/** Legs of one coat; a vessel that runs out on the other is at its end where this one goes on. */
function ofCoat(
  all: readonly Leg[],
  marks: readonly RunOutMark[],
  coat: 1 | 2,
): { legs: readonly Leg[]; marks: readonly RunOutMark[] } {
  if (all.every((leg) => leg.coat === coat)) return { legs: all, marks };
  const isOwn = (leg: Leg) => leg.coat === coat && leg.knots.length > 0;
  const before: number[] = [];
  let count = 0;
  for (const leg of all) {
    before.push(count);
    if (isOwn(leg)) count += 1;
  }
  return {
    legs: all.filter(isOwn),
    marks: marks.map((mark) => {
      const leg = all[mark.legIndex];
      const legIndex = before[mark.legIndex] ?? 0;
      return { ...mark, legIndex, alongM: leg && isOwn(leg) ? mark.alongM : 0 };
    }),
  };
}
