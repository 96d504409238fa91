import type { Visit, Yard } from '../yard/types';
import { programDates } from './programDates';
import { wasEdited } from './programMark';

/** How the visit of a program that its rule sets on a day stands. */
export type VisitStand =
  /** to be filled by the program, on the day it stands: its own, or where it was moved to. */
  | { readonly kind: 'open'; readonly date: string }
  /** done, or its content was changed by hand: it stays as it is. */
  | { readonly kind: 'kept'; readonly visit: Visit }
  /** removed by hand. */
  | { readonly kind: 'removed' };

/** How all visits of programs stand. */
export interface ProgramStands {
  /** @param programId the program that makes the visit (the host of a joined one); @param date as its rule has it */
  standOf(programId: string, date: string): VisitStand;
  /** visits that no program fills: done, changed or made by hand, or moved where its day is no longer asked for. */
  readonly fixed: readonly Visit[];
}

/** How the visits of programs stand. @param anew ids of programs whose edits, moves and removals are forgotten */
export function programStands(yard: Yard, anew: readonly string[] = []): ProgramStands {
  const programs = new Map(
    yard.programs.map((program) => {
      const { dates, hostId, issues } = programDates(program, yard.programs);
      const asked = new Set(hostId === program.id ? dates : []);
      return [program.id, { asked, isFaulty: issues.length > 0 }] as const;
    }),
  );
  const overridden = new Set(yard.overrides.map((one) => one.visitId));
  const stands = new Map<string, VisitStand>();
  const fixed: Visit[] = [];
  for (const visit of yard.visits) {
    const { program } = visit;
    const own = program && programs.get(program.id);
    if (!program || !own || own.isFaulty) {
      fixed.push(visit);
      continue;
    }
    const key = keyOf(program.id, program.date);
    const isFirst = !stands.has(key);
    const isAnew = anew.includes(program.id);
    const isEdited = !isAnew && (overridden.has(visit.id) || wasEdited(visit));
    const isKept = visit.doneOn !== null || isEdited || !isFirst;
    const isMoved = !isAnew && visit.date !== program.date;
    if (isKept || (isMoved && !own.asked.has(program.date))) fixed.push(visit);
    if (isFirst)
      stands.set(
        key,
        isKept
          ? { kind: 'kept', visit }
          : { kind: 'open', date: (isMoved ? visit.date : null) ?? program.date },
      );
  }
  for (const { id, skips } of yard.programs) {
    if (anew.includes(id)) continue;
    for (const date of skips ?? []) {
      const key = keyOf(id, date);
      if (!stands.has(key)) stands.set(key, { kind: 'removed' });
    }
  }
  return {
    standOf: (programId, date) => stands.get(keyOf(programId, date)) ?? { kind: 'open', date },
    fixed,
  };
}

function keyOf(programId: string, date: string): string {
  return `${date} ${programId}`;
}
