import { dateOfVisit } from '../plan/heldWith';
import { addDays, daysBetween, sameDayOfYear } from '../yard/calendar';
import type { Program, Visit, Yard } from '../yard/types';
import { programDates } from './programDates';
import { contentMark } from './programMark';

/** What of a year is taken over to another, and how its days are moved. */
export interface SeasonCopy {
  readonly fromYear: number;
  readonly toYear: number;
  /** whole weeks keep the day of the week; `same-day` keeps day and month (29 February gives the 28th). */
  readonly shift: { readonly kind: 'weeks'; readonly weeks: number } | { readonly kind: 'same-day' };
  /** `all`: every visit of the year by the day it was done, else planned for; `done`: those done; `none`. */
  readonly visits: 'all' | 'done' | 'none';
  /** programs that begin in the year too. */
  readonly withPrograms: boolean;
}

/** The whole weeks nearest to the time between the same days of two years: 52 from one year to the next. */
export function weeksBetweenYears(fromYear: number, toYear: number): number {
  return Math.round(((toYear - fromYear) * 365.2425) / 7);
}

/**
 * A day of the year copied from as a day of the year copied to. Whole weeks that would miss that year by a few
 * days (52 from 1 January) are one more or one less.
 */
export function shiftDay(date: string, { shift, fromYear, toYear }: SeasonCopy): string {
  const yearOf = (day: string) => Number(day.slice(0, 4));
  const year = yearOf(date) + toYear - fromYear;
  if (shift.kind === 'same-day') return sameDayOfYear(date, year);
  const moved = addDays(date, 7 * shift.weeks) ?? date;
  const nearer = yearOf(moved) === year ? moved : addDays(moved, yearOf(moved) < year ? 7 : -7);
  return nearer !== null && yearOf(nearer) === year ? nearer : moved;
}

/** The last day of a program copied: by whole weeks it moves as its first day does, so that its length stays. */
function shiftEnd({ from, to }: Program, copy: SeasonCopy): string {
  const days = copy.shift.kind === 'weeks' ? daysBetween(from, shiftDay(from, copy)) : null;
  return days === null ? shiftDay(to, copy) : (addDays(to, days) ?? to);
}

/**
 * Copies a year's visits and programs to another year, as new entries. Visits are planned ones again: what was
 * really used and overrides stay with the old. A visit of a program that is copied too belongs to the copy, on
 * the day that stands at the same place in its rule; any other is copied as made by hand. Where both partners
 * of a pair are copied the copies are paired.
 * @param newId makes an id that is new in the yard, from the word "visit", "dose" or "program"
 * @returns the very document where there is nothing to copy
 */
export function copySeason(yard: Yard, copy: SeasonCopy, newId: (prefix: string) => string): Yard {
  const isIn = (date: string | null) => Number(date?.slice(0, 4)) === copy.fromYear;
  const oldPrograms = copy.withPrograms ? yard.programs.filter((one) => isIn(one.from)) : [];
  const ids = new Map(oldPrograms.map((one) => [one.id, newId('program')]));
  const oldVisits = yard.visits.filter(
    (visit) =>
      isIn(dateOfVisit(visit)) &&
      (copy.visits === 'all' || (copy.visits === 'done' && visit.doneOn !== null)),
  );
  if (oldPrograms.length + oldVisits.length === 0) return yard;

  const renamed = (name: string) => name.replaceAll(String(copy.fromYear), String(copy.toYear));
  const programs = oldPrograms.map((one): Program => {
    const { pace } = one;
    const partner = pace.kind === 'with' ? ids.get(pace.programId) : undefined;
    return {
      ...one,
      id: ids.get(one.id) as string,
      name: renamed(one.name),
      from: shiftDay(one.from, copy),
      to: shiftEnd(one, copy),
      pace: pace.kind === 'with' && partner !== undefined ? { ...pace, programId: partner } : pace,
      doses: one.doses.map((dose) => ({ ...dose, id: newId('dose') })),
      skips: [],
    };
  });
  const all = [...yard.programs, ...programs];
  /** old day of the rule to new, by old program. */
  const days = new Map(
    oldPrograms.map((old, i) => {
      const next = programDates(programs[i] as Program, all).dates;
      const dates = programDates(old, yard.programs).dates;
      return [
        old.id,
        new Map(dates.flatMap((date, k) => (next[k] ? [[date, next[k]] as const] : []))),
      ] as const;
    }),
  );
  const visits = oldVisits.map((one): Visit => {
    const day = one.program && days.get(one.program.id)?.get(one.program.date);
    const programId = one.program && ids.get(one.program.id);
    const own = dateOfVisit(one) as string;
    const isOnDay = one.program !== null && own === one.program.date;
    // by whole weeks a visit keeps its days from the rule's
    const apart = one.program && copy.shift.kind === 'weeks' ? daysBetween(one.program.date, own) : null;
    const moved = day && apart !== null ? addDays(day, apart) : null;
    const next = { ...one, name: renamed(one.name) };
    const { asMade } = one.program ?? {};
    const isAsMade = asMade !== undefined && contentMark(one) === asMade;
    return {
      ...next,
      id: newId('visit'),
      // on the very day of the rule where it was so before: a leap day in between puts shifted days off by one
      date: isOnDay && day ? day : (moved ?? shiftDay(own, copy)),
      doses: one.doses.map((dose) => ({ ...dose, id: newId('dose'), actual: null, taken: null, laid: null })),
      doneOn: null,
      program:
        programId && day ? { id: programId, date: day, asMade: isAsMade ? contentMark(next) : asMade } : null,
    };
  });
  const skipped = programs.map((one, i): Program => {
    const old = oldPrograms[i] as Program;
    const moved = (old.skips ?? []).flatMap((date) => days.get(old.id)?.get(date) ?? []);
    return moved.length > 0 ? { ...one, skips: moved } : one;
  });
  return { ...yard, programs: [...yard.programs, ...skipped], visits: [...yard.visits, ...visits] };
}
