import { markDone } from '../../src/season/markDone';
import { deriveYard } from '../../src/session/derive';
import '../../src/session/deriveVisit';
import type { Yard } from '../../src/yard/types';

/** The yard with a record of what was laid down at each visit that is done, as marking it done keeps one. */
export function withRecords(yard: Yard): Yard {
  const derived = deriveYard(yard);
  return yard.visits.reduce((next, { id, doneOn }) => {
    const figures = derived.visit(id)?.figures;
    return figures && doneOn !== null ? markDone(next, figures, doneOn, false) : next;
  }, yard);
}
