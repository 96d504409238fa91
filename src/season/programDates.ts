import { dayNumber, dayOfNumber } from '../yard/calendar';
import type { Issue, Program, ProgramPace } from '../yard/types';

/** Most visits one program may ask for: a day every day of a year. */
export const MOST_VISITS = 366;

/** The days that a program asks for, in order, or why it asks for none. */
export interface ProgramDates {
  /** YYYY-MM-DD, rising, within `from` and `to`; what was removed by hand (`skips`) still in them. */
  readonly dates: readonly string[];
  /** the program whose visits these join (offset 0); itself where it makes visits of its own. */
  readonly hostId: string;
  readonly issues: readonly Issue[];
}

/**
 * The days of one program by its rule: `from`, then every so many days up to `to`. A paired program counts the
 * days its partner's rule asks for (not where a visit was moved to by hand), beginning with the first that
 * puts its own visit on or after its own `from`; it takes that and every nth after it, each so many days later.
 * @param programs all programs of the yard
 * @returns issues `program-days` (no days, or in the wrong order), `program-interval`, `program-too-many`,
 * `program-partner-missing`, `program-circular` (errors); there are no dates then
 */
export function programDates(program: Program, programs: readonly Program[]): ProgramDates {
  return datesOf(program, programs, [program.id]);
}

function datesOf(program: Program, programs: readonly Program[], chain: readonly string[]): ProgramDates {
  const { pace } = program;
  const none = (code: string, message: string, path: string): ProgramDates => ({
    dates: [],
    hostId: program.id,
    issues: [{ code, severity: 'error', message, place: { programId: program.id, path } }],
  });
  const name = program.name || 'A program without a name';
  const [from, to] = [dayNumber(program.from), dayNumber(program.to)];
  if (from === null || to === null)
    return none('program-days', `${name} needs a first and a last day.`, 'from');
  if (to < from) return none('program-days', `${name} ends before it begins.`, 'to');

  if (pace.kind === 'every') {
    if (!Number.isInteger(pace.days) || pace.days < 1)
      return none('program-interval', `${name} needs one whole day or more between its visits.`, 'pace');
    const count = Math.floor((to - from) / pace.days) + 1;
    if (count > MOST_VISITS)
      return none(
        'program-too-many',
        `${name} would make ${count} visits; at most ${MOST_VISITS} are made. Shorten it or put more days between.`,
        'to',
      );
    const dates = Array.from({ length: count }, (_, i) => dayOfNumber(from + i * pace.days));
    return { dates, hostId: program.id, issues: [] };
  }

  if (chain.includes(pace.programId))
    return none(
      'program-circular',
      `${name} is paired in a ring: it would wait for itself. Give one program of the ring a pace of its own.`,
      'pace',
    );
  const partner = programs.find((one) => one.id === pace.programId);
  if (partner === undefined)
    return none(
      'program-partner-missing',
      `${name} is paired with a program that is gone; choose another.`,
      'pace',
    );
  const isWhole = Number.isInteger(pace.nth) && Number.isInteger(pace.offsetDays);
  if (!isWhole || pace.nth < 1 || pace.offsetDays < 0)
    return none(
      'program-interval',
      `${name} needs a whole count of visits (1 or more) and of days (0 or more).`,
      'pace',
    );
  const host = datesOf(partner, programs, [...chain, partner.id]);
  if (host.issues.length > 0)
    return host.issues.some((issue) => issue.code === 'program-circular')
      ? none(
          'program-circular',
          `${name} is paired in a ring: it would wait for itself. Give one program of the ring a pace of its own.`,
          'pace',
        )
      : none('program-partner-missing', `${name} has no days while “${partner.name}” has none.`, 'pace');
  const days = host.dates
    .map((date) => (dayNumber(date) as number) + pace.offsetDays)
    .filter((day) => day >= from && day <= to);
  return {
    dates: days.filter((_, i) => i % pace.nth === 0).map(dayOfNumber),
    hostId: pace.offsetDays === 0 ? host.hostId : program.id,
    issues: [],
  };
}

/** Days between the visits of a program, by its own pace or its partner's; null: in a ring, or the partner is gone. */
export function rhythmDays(
  program: Program,
  programs: readonly Program[],
  chain: readonly string[] = [],
): number | null {
  const { pace } = program;
  if (pace.kind === 'every') return pace.days;
  const partner = programs.find((one) => one.id === pace.programId);
  if (partner === undefined || chain.includes(partner.id)) return null;
  const days = rhythmDays(partner, programs, [...chain, program.id]);
  return days === null ? null : pace.nth * days;
}

/**
 * The pace that pairs a program with another, or gives it one of its own, about as often as before.
 * @param partnerId null: a pace of its own
 */
export function paceAsBefore(
  program: Program,
  partnerId: string | null,
  programs: readonly Program[],
): ProgramPace {
  const days = rhythmDays(program, programs);
  if (partnerId === null) return { kind: 'every', days: Math.min(MOST_VISITS, days ?? 14) };
  const partner = programs.find((one) => one.id === partnerId);
  const beat = partner ? rhythmDays(partner, programs, [program.id]) : null;
  const nth = days !== null && beat !== null ? Math.max(1, Math.round(days / beat)) : 1;
  return { kind: 'with', programId: partnerId, nth, offsetDays: 0 };
}
