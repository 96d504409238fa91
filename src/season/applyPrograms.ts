import { dayNumber } from '../yard/calendar';
import { newDose } from '../yard/defaults';
import type { Issue, Visit, VisitDose, Yard } from '../yard/types';
import { programAmounts } from './programAmounts';
import { programDates } from './programDates';
import { contentMark, wasEdited } from './programMark';
import { allProgramVisits, type ProgramVisit } from './programVisits';

/** What making the visits of programs does. */
export interface AppliedPrograms {
  /** the very document where nothing changes. */
  readonly yard: Yard;
  readonly added: number;
  /** changed to what the program now says, in place. */
  readonly renewed: number;
  readonly removed: number;
  /** visits of programs left as they are because they are done or were edited by hand. */
  readonly kept: number;
  readonly issues: readonly Issue[];
}

/**
 * Makes the visits that the programs ask for and brings those made before up to date. What a person did stays:
 * - a visit that is done, or whose content was edited by hand, is left as it is;
 * - one that was only moved keeps its day and gets the program's content, by need that of the month it stands in;
 * - one removed by hand (`Program.skips`) does not come back;
 * - an untouched one that its program no longer asks for goes.
 * A program with a fault makes nothing, and its visits are left alone. Doing it twice changes nothing.
 * @param newId makes an id that is new in the yard, from the word "visit" or "dose"
 * @param anew ids of programs whose planned visits are all made again: edits by hand and removals are forgotten,
 * only what is done stays
 */
export function applyPrograms(
  yard: Yard,
  newId: (prefix: string) => string,
  anew: readonly string[] = [],
): AppliedPrograms {
  const programs = anew.some((id) => yard.programs.some((one) => one.id === id && one.skips?.length))
    ? yard.programs.map((one) => (anew.includes(one.id) && one.skips?.length ? { ...one, skips: [] } : one))
    : yard.programs;
  const before = programs === yard.programs ? yard : { ...yard, programs };
  const { visits: asked, issues } = allProgramVisits(before, programAmounts(before, anew));
  const wanted = new Map(asked.map((one) => [keyOf(one.programId, one.date), one]));
  const faulty = new Set(
    programs.filter((one) => programDates(one, programs).issues.length > 0).map((one) => one.id),
  );
  const skipped = new Set(programs.flatMap((one) => (one.skips ?? []).map((date) => keyOf(one.id, date))));
  const overridden = new Set(yard.overrides.map((one) => one.visitId));
  const count = { added: 0, renewed: 0, removed: 0, kept: 0 };
  const met = new Set<string>();

  const old = before.visits.flatMap((visit): Visit | [] => {
    const { program } = visit;
    if (program === null || faulty.has(program.id) || !programs.some((one) => one.id === program.id))
      return visit;
    const key = keyOf(program.id, program.date);
    const ask = wanted.get(key);
    const isFirst = !met.has(key);
    met.add(key);
    const isAnew = anew.includes(program.id);
    const isEdited = !isAnew && (overridden.has(visit.id) || isChanged(visit, ask));
    if (visit.doneOn !== null || isEdited || !isFirst) {
      count.kept += 1;
      return visit;
    }
    const isMoved = visit.date !== program.date && !isAnew;
    if (ask === undefined) {
      if (isMoved) {
        count.kept += 1;
        return visit;
      }
      count.removed += 1;
      return [];
    }
    const next = filled(visit, ask, isMoved ? visit.date : ask.date, newId);
    if (next !== visit) count.renewed += 1;
    return next;
  });
  const fresh = [...wanted]
    .filter(([key]) => !met.has(key) && !skipped.has(key))
    .map(([, ask]) => ask)
    .sort((a, b) => (dayNumber(a.date) ?? 0) - (dayNumber(b.date) ?? 0))
    .map((ask) => filled(null, ask, ask.date, newId));
  count.added = fresh.length;
  const isSame =
    fresh.length === 0 && old.length === before.visits.length && old.every((v, i) => v === before.visits[i]);
  return { yard: isSame ? before : { ...before, visits: [...old, ...fresh] }, ...count, issues };
}

function keyOf(programId: string, date: string): string {
  return `${date} ${programId}`;
}

/**
 * True where a visit was changed by hand and is not what its program asks for. Where the need sets an amount a changed
 * visit stays changed: what it lays down is taken off before the need is shared.
 */
function isChanged(visit: Visit, ask: ProgramVisit | undefined): boolean {
  if (!wasEdited(visit)) return false;
  const isOpen =
    visit.program !== null && visit.doses.every((dose) => dose.actual === null && dose.taken === null);
  return !isOpen || ask === undefined || ask.isByNeed || contentMark(visit) !== contentMark(ask);
}

/** A visit as its program wants it; the doses keep their ids where product and use are the same. The very visit where it is so. */
function filled(
  visit: Visit | null,
  ask: ProgramVisit,
  date: string | null,
  newId: (prefix: string) => string,
): Visit {
  const asMade = contentMark(ask);
  if (visit?.program?.asMade === asMade && contentMark(visit) === asMade && visit.date === date) return visit;
  const spare = [...(visit?.doses ?? [])];
  const doses = ask.doses.map((dose): VisitDose => {
    const at = spare.findIndex((one) => one.productId === dose.productId && one.useId === dose.useId);
    const [same] = at < 0 ? [] : spare.splice(at, 1);
    // how it is walked is the person's own, whatever the program puts down
    const passes = same && { passes: same.passes };
    return { ...newDose(same?.id ?? newId('dose'), dose.productId), ...passes, ...dose };
  });
  const { name, zones, tankL } = ask;
  const program = { id: ask.programId, date: ask.date, asMade };
  const id = visit?.id ?? newId('visit');
  return {
    startMarkId: null,
    endMarkId: null,
    ...visit,
    id,
    name,
    date,
    zones,
    doses,
    tankL,
    note: '',
    doneOn: null,
    program,
  };
}
