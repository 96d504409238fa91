import type { XY } from '../../measure/types';
import type { Leg, RunOutMark } from '../passTypes';
import { partOfLine } from './alongLine';

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
 * @param legs and @param marks of one dose
 */
export function stretchesByVessel(
  legs: readonly Leg[],
  marks: readonly RunOutMark[],
): readonly VesselStretch[] {
  const ends = marks.filter(({ left }) => left === 0);
  const stretches: { vessel: number; lines: XY[][] }[] = [];
  let vessel = marks[0]?.vessel ?? 0;
  const add = (line: XY[]) => {
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
