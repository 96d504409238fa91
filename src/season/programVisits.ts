import type { Issue, Program, VisitDose, Yard, ZoneChoice } from '../yard/types';
import { type ProgramAmounts, programAmounts } from './programAmounts';
import { programDates } from './programDates';

/** What a program puts in a visit: all of it but ids and what is done by hand. */
export interface ProgramVisit {
  /** the program the visit belongs to, and its day. */
  readonly programId: string;
  readonly date: string;
  readonly name: string;
  readonly zones: ZoneChoice;
  readonly doses: readonly Pick<VisitDose, 'productId' | 'useId' | 'rateFactor' | 'zones'>[];
  readonly tankL: number | null;
  /** true where the need sets the amount of some dose of that day. */
  readonly isByNeed: boolean;
}

/** The visits that programs ask for, in order of day, and what is wrong with the programs. */
export interface ProgramVisits {
  readonly visits: readonly ProgramVisit[];
  readonly issues: readonly Issue[];
}

/**
 * The visits that one program asks for. Doses of programs paired with it on the same day are in them; a program
 * that only joins the visits of another has none of its own. A day on which no dose is wanted has no visit.
 * @returns besides the issues of `programDates` and `programAmounts`: `program-no-doses` (note)
 */
export function programVisits(
  yard: Yard,
  program: Program,
  amounts: ProgramAmounts = programAmounts(yard),
): ProgramVisits {
  const own = programDates(program, yard.programs);
  const issues: Issue[] = [...own.issues, ...amounts.issuesOf(program.id)];
  if (program.doses.length === 0)
    issues.push({
      code: 'program-no-doses',
      severity: 'note',
      message: `${program.name || 'A program without a name'} has no product yet: until it has one it puts nothing down.`,
      place: { programId: program.id, path: 'doses' },
    });
  if (own.issues.length > 0 || own.hostId !== program.id) return { visits: [], issues };
  const guests = yard.programs.flatMap((guest) => {
    const paired = guest.id === program.id ? null : programDates(guest, yard.programs);
    return paired?.hostId === program.id ? [{ program: guest, dates: paired.dates }] : [];
  });
  const parts = [{ program, dates: own.dates }, ...guests];
  const visits = own.dates.flatMap((date, index): ProgramVisit | [] => {
    const present = parts.filter((part) => part.dates.includes(date));
    const doses = present.flatMap((part) => dosesOn(part.program, date, program, amounts));
    if (doses.length === 0) return [];
    const names = present.slice(1).map((part) => part.program.name || 'another');
    return {
      programId: program.id,
      date,
      name: [`${program.name || 'Visit'} ${index + 1}`, ...names].join(' + '),
      zones: program.zones,
      doses,
      tankL: present.find((part) => part.program.tankL !== null)?.program.tankL ?? null,
      isByNeed: present.some((part) => part.program.doses.some((dose) => dose.amount.kind === 'need')),
    };
  });
  return { visits, issues };
}

function dosesOn(
  program: Program,
  date: string,
  host: Program,
  amounts: ProgramAmounts,
): ProgramVisit['doses'] {
  return program.doses.flatMap((dose) => {
    const rateFactor = amounts.factorOf(program.id, dose.id, date);
    if (!(rateFactor > 0)) return [];
    const own = program === host || isSameChoice(program.zones, host.zones) ? null : program.zones;
    const { productId, useId } = dose;
    return { productId, useId, rateFactor, zones: dose.zones ?? own };
  });
}

/** The visits that all programs ask for, by program in their order. */
export function allProgramVisits(yard: Yard, amounts: ProgramAmounts = programAmounts(yard)): ProgramVisits {
  const each = yard.programs.map((program) => programVisits(yard, program, amounts));
  return {
    visits: each.flatMap((one) => one.visits),
    issues: each.flatMap((one) => one.issues),
  };
}

function isSameChoice(a: ZoneChoice, b: ZoneChoice): boolean {
  const key = ({ classes, include, exclude }: ZoneChoice) =>
    JSON.stringify([classes, include, exclude].map((list) => [...list].sort()));
  return key(a) === key(b);
}
