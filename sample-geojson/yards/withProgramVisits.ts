import { applyPrograms } from '../../src/season/applyPrograms';
import type { Yard } from '../../src/yard/types';

/** The yard with the visits its programs make; ids are counted, so that the file is the same each time. */
export function withProgramVisits(yard: Yard): Yard {
  const counts = new Map<string, number>();
  const newId = (prefix: string) => {
    const count = (counts.get(prefix) ?? 0) + 1;
    counts.set(prefix, count);
    return `${prefix}-by-program-${count}`;
  };
  const { yard: made, issues } = applyPrograms(yard, newId);
  if (issues.length > 0) throw new Error(issues.map((issue) => issue.message).join(' '));
  return made;
}
