import type { XY } from '../../measure/types';
import type { Leg, RunOutMark } from '../passTypes';
import { partOfLine } from './alongLine';
import { doneAt, walkProgress } from './walkProgress';

/** Ground within this share of the whole is the same place. */
const SAME = 1e-6;

/** What of a walk is done from one vessel. */
export interface VesselStretch {
  /** index in the dose's vessels, from 0. */
  readonly vessel: number;
  /** lines in the plane, in walking order, each along one leg. */
  readonly lines: readonly (readonly XY[])[];
}

/**
 * Laps and passes split where vessels run out, for drawing each vessel's ground in a tint of its own. Turns and
 * ways with the applicator shut are in none. It begins with the vessel of the first mark; without any mark all is one stretch.
 * Ground that is left when the last vessel is used up is in none either.
 * @param legs and @param marks of one dose
 * @param count of its vessels; 0: none is known, and all is one stretch
 */
export function stretchesByVessel(
  legs: readonly Leg[],
  marks: readonly RunOutMark[],
  count: number,
): readonly VesselStretch[] {
  const progress = walkProgress(legs, []);
  const wholeM2 = (progress.startM2.at(-1) ?? 0) * (1 - SAME);
  // the last vessel goes on where no ground is left: a pass over what is done already is still walked with it
  const ends = marks.filter(
    (mark) => mark.left === 0 && (mark.vessel + 1 < count || doneAt(progress, mark) < wholeM2),
  );
  const stretches: { vessel: number; lines: XY[][] }[] = [];
  let vessel = marks[0]?.vessel ?? 0;
  const add = (line: XY[]) => {
    if (vessel >= Math.max(1, count)) return;
    const last = stretches.at(-1);
    if (last?.vessel === vessel) last.lines.push(line);
    else stretches.push({ vessel, lines: [line] });
  };
  legs.forEach((leg, index) => {
    if (leg.knots.length === 0 || !(leg.lengthM > 0)) return;
    let fromM = 0;
    for (const end of ends) {
      if (end.legIndex !== index) continue;
      if (end.alongM > fromM) add(partOfLine(leg.line, fromM / leg.lengthM, end.alongM / leg.lengthM));
      fromM = Math.max(fromM, end.alongM);
      vessel = end.vessel + 1;
    }
    if (fromM < leg.lengthM) add(partOfLine(leg.line, fromM / leg.lengthM, 1));
  });
  return stretches;
}
