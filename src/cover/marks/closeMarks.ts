import { formatLength } from '../../units/format';
import type { Issue, Place, UnitSystem } from '../../yard/types';
import type { Leg, RunOutMark } from '../passTypes';

/** Marks nearer to each other than this along the walk cannot be told apart while walking, m (10 ft); common practice, no source. */
export const LEAST_APART_M = 3.048;

/**
 * Tells of run-out marks that follow each other too closely to be read off while walking; the marks stay.
 * @param legs and @param marks of one dose, both in walking order
 * @returns null where all are far enough apart
 */
export function closeMarks(
  legs: readonly Leg[],
  marks: readonly RunOutMark[],
  units: UnitSystem,
  place: Place = {},
): Issue | null {
  const starts: number[] = [];
  let walkedM = 0;
  for (const leg of legs) {
    starts.push(walkedM);
    // turns and ways do not part marks: nothing goes out on them
    if (leg.knots.length > 0) walkedM += leg.lengthM;
  }
  const at = marks.map(({ legIndex, alongM }) => (starts[legIndex] ?? 0) + alongM);
  const close = at.filter((m, i) => i > 0 && m - (at[i - 1] ?? 0) < LEAST_APART_M).length;
  if (close === 0) return null;
  const message = `${close} of ${marks.length} run-out marks ${close === 1 ? 'follows' : 'follow'} the one before within ${formatLength(LEAST_APART_M, units)} of walking: there watch what is in hand, not the marks.`;
  return { code: 'marks-close', severity: 'note', message, place };
}
