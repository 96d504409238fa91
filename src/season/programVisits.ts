import type { Issue, Program, Visit, VisitDose, Yard, ZoneChoice } from '../yard/types';
import { programDates } from './programDates';
import { doseShare } from './programDoses';
import { type NeedOnDay, needOnDay } from './programNeed';

/** What a program puts in a visit: all of it but ids and what is done by hand. */
export interface ProgramVisit {
  /** the program the visit belongs to, and its day. */
  readonly programId: string;
  readonly date: string;
  readonly name: string;
  readonly zones: ZoneChoice;
  readonly doses: readonly Pick<VisitDose, 'productId' | 'useId' | 'rateFactor' | 'zones'>[];
  readonly tankL: number | null;
}

/** The visits that programs ask for, in order of day, and what is wrong with the programs. */
export interface ProgramVisits {
  readonly visits: readonly ProgramVisit[];
  readonly issues: readonly Issue[];
}

/**
 * The visits that one program asks for. Doses of programs paired with it on the same day are in them; a program
 * that only joins the visits of another has none of its own. A day on which no dose is wanted has no visit.
 * @returns besides the issues of `programDates` and `doseShare`: `program-no-doses` (note)
 */
export function programVisits(
  yard: Yard,
  program: Program,
  needOf: NeedOnDay = needOnDay(yard),
): ProgramVisits {
  const own = programDates(program, yard.programs);
  const issues: Issue[] = [...own.issues];
  if (program.doses.length === 0)
    issues.push({
      code: 'program-no-doses',
      severity: 'note',
      message: `${program.name || 'A program without a name'} has no product yet; it makes no visits by itself.`,
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
    const doses = present.flatMap((part) => dosesOn(yard, part, date, program, needOf, issues));
    if (doses.length === 0) return [];
    const names = present.slice(1).map((part) => part.program.name || 'another');
    return {
      programId: program.id,
      date,
      name: [`${program.name || 'Visit'} ${index + 1}`, ...names].join(' + '),
      zones: program.zones,
      doses,
      tankL: present.find((part) => part.program.tankL !== null)?.program.tankL ?? null,
    };
  });
  return { visits, issues: unique(issues) };
}

interface Part {
  readonly program: Program;
  readonly dates: readonly string[];
}

function dosesOn(
  yard: Yard,
  { program, dates }: Part,
  date: string,
  host: Program,
  needOf: NeedOnDay,
  issues: Issue[],
): ProgramVisit['doses'] {
  return program.doses.flatMap((dose) => {
    const share = doseShare(yard, program, dose, date, dates, needOf);
    // a guest's own faults are told with the guest
    if (program === host) issues.push(...share.issues);
    if (!(share.rateFactor > 0)) return [];
    const own = program === host || isSameChoice(program.zones, host.zones) ? null : program.zones;
    const { productId, useId } = dose;
    return { productId, useId, rateFactor: share.rateFactor, zones: dose.zones ?? own };
  });
}

/** The issues of a program whose doses join another's visits, day by day as far as they differ. */
export function guestIssues(
  yard: Yard,
  program: Program,
  needOf: NeedOnDay = needOnDay(yard),
): readonly Issue[] {
  const { dates } = programDates(program, yard.programs);
  const issues: Issue[] = [];
  for (const date of dates) dosesOn(yard, { program, dates }, date, program, needOf, issues);
  return unique(issues);
}

/** The visits that all programs ask for, by program in their order. */
export function allProgramVisits(yard: Yard, needOf: NeedOnDay = needOnDay(yard)): ProgramVisits {
  const each = yard.programs.map((program) => programVisits(yard, program, needOf));
  const guests = yard.programs.flatMap((program) =>
    programDates(program, yard.programs).hostId === program.id ? [] : guestIssues(yard, program, needOf),
  );
  return {
    visits: each.flatMap((one) => one.visits),
    issues: [...each.flatMap((one) => one.issues), ...guests],
  };
}

/** The mark of what a program puts in a visit: 32-bit FNV-1a of name, ground, doses, tank and note. */
export function contentMark(
  visit: Omit<ProgramVisit, 'programId' | 'date'> & Pick<Partial<Visit>, 'note'>,
): string {
  const choice = (zones: ZoneChoice | null) =>
    zones && [zones.classes, zones.include, zones.exclude].map((list) => [...list].sort());
  const text = JSON.stringify([
    visit.name,
    choice(visit.zones),
    visit.doses.map((dose) => [dose.productId, dose.useId, dose.rateFactor, choice(dose.zones)]),
    visit.tankL,
    visit.note ?? '',
  ]);
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}

function isSameChoice(a: ZoneChoice, b: ZoneChoice): boolean {
  const key = ({ classes, include, exclude }: ZoneChoice) =>
    JSON.stringify([classes, include, exclude].map((list) => [...list].sort()));
  return key(a) === key(b);
}

/** Each fault once: the same is found day after day. */
function unique(issues: readonly Issue[]): readonly Issue[] {
  const seen = new Set<string>();
  return issues.filter((issue) => {
    const key = `${issue.code} ${issue.message}`;
    return seen.has(key) ? false : seen.add(key);
  });
}
