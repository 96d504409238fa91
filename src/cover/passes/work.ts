import type { XY } from '../../measure/types';
import type { LegKnot } from '../passTypes';
import { distanceOf, lengthOfLine } from './frame';

/** One stretch to be worked, that can be walked either way. */
export interface Work {
  readonly kind: 'lap' | 'pass';
  readonly line: readonly XY[];
  readonly lengthM: number;
  readonly knots: readonly LegKnot[];
}

/** Stretches that follow each other in a row, with ways between them. */
export type Row = readonly Work[];

/** A stretch from its line and the ground it takes on. @param knots ascending by place; the last holds all of it */
export function makeWork(kind: Work['kind'], line: readonly XY[], knots: readonly LegKnot[]): Work {
  const lengthM = lengthOfLine(line);
  return { kind, line, lengthM, knots: tidyKnots(knots, lengthM) };
}

/** First at 0 with nothing, last at the end with all, ascending in both. */
function tidyKnots(knots: readonly LegKnot[], lengthM: number): LegKnot[] {
  const all = Math.max(0, knots.at(-1)?.areaM2 ?? 0);
  const inner: LegKnot[] = [];
  const near = lengthM * 1e-9;
  for (const { atM, areaM2 } of knots) {
    const before = inner.at(-1);
    if (atM <= near || atM >= lengthM - near || areaM2 <= 0 || areaM2 >= all) continue;
    if (before && (atM - before.atM <= near || areaM2 < before.areaM2)) continue;
    inner.push({ atM, areaM2 });
  }
  return [{ atM: 0, areaM2: 0 }, ...inner, { atM: lengthM, areaM2: all }];
}

/** The same walked from its end. */
export function reverseWork(work: Work): Work {
  const all = areaOfWork(work);
  return {
    ...work,
    line: work.line.toReversed(),
    knots: work.knots.map(({ atM, areaM2 }) => ({ atM: work.lengthM - atM, areaM2: all - areaM2 })).reverse(),
  };
}

/** All ground that a stretch takes on, plane m². */
export function areaOfWork(work: Work): number {
  return work.knots.at(-1)?.areaM2 ?? 0;
}

/** Where a stretch begins and ends. */
export const startOf = (work: Work): XY => work.line[0] as XY;
export const endOf = (work: Work): XY => work.line.at(-1) as XY;

/** A row walked from its end. */
export function reverseRow(row: Row): Row {
  return row.map(reverseWork).reverse();
}

/** Length of stretches one after another, straight ways between them included, m. */
export function lengthOfRow(row: Row): number {
  return row.reduce((sum, work, i) => {
    const before = row[i - 1];
    return sum + work.lengthM + (before ? distanceOf(endOf(before), startOf(work)) : 0);
  }, 0);
}
