import type { HeldNeed } from '../need/flushHold';
import { dateOfVisit } from '../plan/heldWith';
import { formatNutrientRate } from '../units/format';
import type { Issue, Program, ProgramDose, Yard } from '../yard/types';
import { MONTH_NAMES } from '../yard/yearDay';
import { programDates } from './programDates';
import { doseIssue, type ReadDose, readDose } from './programDoses';
import { type GroundEntry, type GroundLaid, laidOfUse, laidOfVisits } from './programGround';
import {
  isHeldDay,
  type MonthTaken,
  needLeft,
  TRIFLE,
  wantsOfDays,
  type ZoneNeed,
  zoneNeeds,
} from './programNeed';
import { roomOfDay } from './programRoom';
import { type ProgramStands, programStands } from './programStands';

/** How much of the label rate each dose of the programs puts out. */
export interface ProgramAmounts extends ProgramStands {
  /** share of the label rate on a day of the program's rule; 0: nothing is wanted, the dose is left out. */
  factorOf(programId: string, doseId: string, date: string): number;
  /** what is wrong with the doses of a program, each fault once. */
  issuesOf(programId: string): readonly Issue[];
}

/** Shares of the label are held to a thousandth, always down. */
const STEP = 1000;

interface Slot {
  /** day of the rule, and the day it stands on. */
  readonly date: string;
  readonly on: string;
}

interface Row extends ReadDose {
  readonly program: Program;
  readonly dose: ProgramDose;
  readonly slots: readonly Slot[];
  /** days of all its visits, those kept as they are too. */
  readonly days: readonly string[];
}

/**
 * The amounts of all programs. First stands what no need sets: what is done, visits made or changed by hand, and
 * the doses by the label of every program. What that lays on a zone is taken off its month's held need; doses by
 * need share what is left in this order: programs as listed, the doses of one as listed, each over the visits of
 * the month in equal parts. A visit that was moved counts for the month it stands in. No dose goes over `maxFactor`
 * or, with all else that lies on its ground that day, over the label's most for one dose, the yard's caps of
 * one dose and the rules for one dose. What one month gets too much is not taken off another.
 * @param anew ids of programs whose moves, edits and removals by hand are forgotten
 * @returns issues with the program and `path` `doses[i]`: those of `readDose`, and the notes `program-need-differs`,
 * `program-need-capped`, `program-need-met`, `program-need-held`, `program-need-gap`
 */
export function programAmounts(yard: Yard, anew: readonly string[] = []): ProgramAmounts {
  const stands = programStands(yard, anew);
  const needs = zoneNeeds(yard);
  const issues = new Map<string, Issue[]>(yard.programs.map(({ id }) => [id, []]));
  const tell = (programId: string, issue: Issue) => {
    const own = issues.get(programId);
    if (own && !own.some(({ code, message }) => code === issue.code && message === issue.message))
      own.push(issue);
  };
  const rows = yard.programs.flatMap((program) => rowsOf(yard, program, stands, needs, tell));
  const ground = new Ground(needs);
  for (const entry of laidOfVisits(yard, stands.fixed)) ground.addByDay(entry);
  const factors = new Map<string, number>();
  const keyOf = (programId: string, doseId: string, date: string) => `${date} ${doseId} ${programId}`;
  for (const { program, dose, product, zones, slots } of rows) {
    const { amount } = dose;
    if (amount.kind !== 'label') continue;
    const laid = laidOfUse(product, amount.rateFactor);
    for (const { date, on } of slots) {
      factors.set(keyOf(program.id, dose.id, date), amount.rateFactor);
      if (laid) for (const { id: zoneId } of zones) ground.addByDay({ zoneId, date: on, laid });
    }
  }
  const fixed = ground.takenSoFar();
  for (const row of rows)
    for (const [date, factor] of shareNeed(yard, row, needs, ground, fixed, tell))
      factors.set(keyOf(row.program.id, row.dose.id, date), factor);
  for (const row of rows) tellLeft(yard, row, needs, ground, tell);
  return {
    ...stands,
    factorOf: (programId, doseId, date) => factors.get(keyOf(programId, doseId, date)) ?? 0,
    issuesOf: (programId) => issues.get(programId) ?? [],
  };
}

type Tell = (programId: string, issue: Issue) => void;

function rowsOf(
  yard: Yard,
  program: Program,
  stands: ProgramStands,
  needs: ReadonlyMap<string, ZoneNeed>,
  tell: Tell,
): readonly Row[] {
  const { dates, hostId, issues } = programDates(program, yard.programs);
  if (issues.length > 0 || dates.length === 0) return [];
  const slots: Slot[] = [];
  const days: string[] = [];
  for (const date of dates) {
    const stand = stands.standOf(hostId, date);
    if (stand.kind === 'open') slots.push({ date, on: stand.date });
    if (stand.kind !== 'removed')
      days.push(stand.kind === 'open' ? stand.date : (dateOfVisit(stand.visit) ?? date));
  }
  slots.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  days.sort();
  return program.doses.flatMap((dose): readonly Row[] => {
    const read = readDose(yard, program, dose, needs);
    if ('code' in read) {
      tell(program.id, read);
      return [];
    }
    return [{ ...read, program, dose, slots, days }];
  });
}

/** Amounts of a dose by need on each day of its rule; they are laid on the ground as they are found. */
function shareNeed(
  yard: Yard,
  { program, dose, product, laid, zones, slots }: Row,
  needs: ReadonlyMap<string, ZoneNeed>,
  ground: Ground,
  fixed: ReadonlyMap<string, MonthTaken>,
  tell: Tell,
): readonly (readonly [string, number])[] {
  const { amount } = dose;
  if (amount.kind !== 'need' || laid === null) return [];
  const note = (code: string, message: string) =>
    tell(program.id, doseIssue(program, dose, code, 'note', message));
  const dates = slots.map((slot) => slot.on);
  const wants = zones.flatMap(({ id }) => {
    const own = needs.get(id);
    if (!own || !isKnown(own)) return [];
    const of = (by: ReadonlyMap<string, MonthTaken>) => (month: string) => by.get(`${month} ${id}`) ?? NONE;
    return [{ zoneId: id, days: wantsOfDays(own, dates, amount.share, of(fixed), of(ground.taken)) }];
  });
  const met = new Set<string>();
  const found = slots.map(({ date, on }, i): readonly [string, number] => {
    const all = wants.map(({ days }) => days[i]?.nKgPerM2 ?? 0);
    const least = Math.min(...all);
    if (Math.max(...all) > least * (1 + 1e-6) + TRIFLE)
      note(
        'program-need-differs',
        'its zones want different amounts of N; the least is used, so that none gets too much. A program for each makes both right.',
      );
    if (wants.some(({ days }) => days[i]?.isMet)) met.add(on.slice(0, 7));
    const wanted = least / laid.N;
    const rooms = zones.map(({ id }) => roomOfDay(yard, product, ground.onDay(id, on)));
    const most = Math.min(amount.maxFactor, ...rooms);
    if (wanted > most * (1 + 1e-6))
      note(
        'program-need-capped',
        `${product.name} is held below what the month wants, by the most of one dose with what else goes down that day. More visits bring the rest.`,
      );
    const factor = Math.floor(Math.min(wanted, most) * STEP + 1e-9) / STEP;
    const own = factor > 0 ? laidOfUse(product, factor) : null;
    if (own)
      for (const { zoneId, days } of wants) {
        ground.lay({ zoneId, date: on, laid: own });
        let left = own.N;
        for (const { month, part, nKgPerM2 } of days[i]?.parts ?? []) {
          const got = Math.min(left, nKgPerM2);
          ground.take(zoneId, month, part, got);
          left -= got;
        }
      }
    return [date, factor];
  });
  if (met.size > 0)
    note(
      'program-need-met',
      `what other visits and doses lay down already meets the need of ${monthWords([...met])}, so ${product.name} is left out there.`,
    );
  return found;
}

/** Tells what is wanted in the end and no visit of the program brings. */
function tellLeft(
  yard: Yard,
  { program, dose, zones, days }: Row,
  needs: ReadonlyMap<string, ZoneNeed>,
  ground: Ground,
  tell: Tell,
): void {
  if (dose.amount.kind !== 'need') return;
  let [leftOver, skipped] = [0, 0];
  for (const { id } of zones) {
    const own = needs.get(id);
    if (!own || !isKnown(own)) continue;
    const left = needLeft(own, days, (month) => ground.taken.get(`${month} ${id}`) ?? NONE);
    leftOver = Math.max(leftOver, left.leftOverKgPerM2);
    skipped = Math.max(skipped, left.skippedKgPerM2);
  }
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  const note = (code: string, message: string) =>
    tell(program.id, doseIssue(program, dose, code, 'note', message));
  if (leftOver > TRIFLE)
    note(
      'program-need-held',
      `nitrogen of ${show(leftOver)} is wanted after the hold before the spring flush, where it has no visit. A visit after the hold brings it.`,
    );
  if (skipped > TRIFLE)
    note(
      'program-need-gap',
      `the months between its visits that have none want nitrogen of ${show(skipped)}, which this program does not bring. A visit in each month does.`,
    );
}

function isKnown(own: ZoneNeed): own is ZoneNeed & { readonly held: HeldNeed } {
  return own.held !== null;
}

/** "June and July", "May, June and July". */
function monthWords(months: readonly string[]): string {
  const names = [...new Set(months.toSorted().map((month) => MONTH_NAMES[Number(month.slice(5)) - 1] ?? ''))];
  return [names.slice(0, -1).join(', '), names.at(-1)].filter((part) => part).join(' and ');
}

const NONE: MonthTaken = { early: 0, late: 0 };

/** What lies on each zone by day, and what its months have got of their need. */
class Ground {
  private readonly days = new Map<string, GroundLaid[]>();
  /** by "YYYY-MM zone". */
  readonly taken = new Map<string, MonthTaken>();

  constructor(private readonly needs: ReadonlyMap<string, ZoneNeed>) {}

  onDay(zoneId: string, date: string): readonly GroundLaid[] {
    return this.days.get(`${date} ${zoneId}`) ?? [];
  }

  lay({ zoneId, date, laid }: GroundEntry): void {
    const key = `${date} ${zoneId}`;
    const own = this.days.get(key);
    if (own) own.push(laid);
    else this.days.set(key, [laid]);
  }

  /** Lays it down, counted for the month of its day. */
  addByDay(entry: GroundEntry): void {
    const { zoneId, date, laid } = entry;
    this.lay(entry);
    const need = this.needs.get(zoneId);
    if (need && laid.N > 0)
      this.take(zoneId, date.slice(0, 7), isHeldDay(need, date) ? 'early' : 'late', laid.N);
  }

  take(zoneId: string, month: string, part: keyof MonthTaken, nKgPerM2: number): void {
    const key = `${month} ${zoneId}`;
    const now = this.taken.get(key) ?? NONE;
    this.taken.set(key, { ...now, [part]: now[part] + nKgPerM2 });
  }

  takenSoFar(): ReadonlyMap<string, MonthTaken> {
    return new Map(this.taken);
  }
}
