import type { AppliedPrograms } from '../season/applyPrograms';
import type { ProductNeighbours } from '../season/calendarNeighbours';
import { formatDay } from '../units/formatDay';
import { chosenZones, zoneClass } from '../yard/choose';
import type { Issue, Program, UnitSystem, Visit, Yard, ZoneChoice, ZoneClass } from '../yard/types';
import { ZONE_CLASSES } from '../yard/types';
import { CLASS_WORDS, doseName, productName } from './productWords';

/** Monday first, as ISO 8601 counts. */
export const WEEKDAY_WORDS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** The first day of the week: Sunday where US units are used, else Monday. */
export function firstWeekdayOf(units: UnitSystem): 1 | 7 {
  return units === 'us' ? 7 : 1;
}

/** "Wed, May 14", with the year where asked: "Wed, May 14, 2031". What is no day comes back as it is. */
export function dayWords(date: string, withYear = false): string {
  return formatDay(date, withYear);
}

/** The name of a visit, or words for none. */
export function visitName(visit: Pick<Visit, 'name'>): string {
  return visit.name.trim() || 'Visit without a name';
}

/** The name of a program, or words for none. */
export function programName(program: Pick<Program, 'name'> | undefined): string {
  return program?.name.trim() || 'Program without a name';
}

/** "2 weeks", "10 days", "day". */
export function daysWords(days: number): string {
  if (days === 1) return 'day';
  if (days % 7 !== 0) return `${days} days`;
  return days === 7 ? 'week' : `${days / 7} weeks`;
}

/** "1st", "2nd", "3rd", "11th". */
export function ordinal(count: number): string {
  const tens = count % 100;
  const end = tens >= 11 && tens <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th');
  return `${count}${end}`;
}

/** When the visits of a program fall: "every 2 weeks", "with every 4th visit of “Light liquid”". */
export function paceWords(program: Program, programs: readonly Program[]): string {
  const { pace } = program;
  if (pace.kind === 'every') return `every ${daysWords(pace.days)}`;
  const partner = programs.find((one) => one.id === pace.programId);
  const whose = `${pace.nth === 1 ? 'every' : `every ${ordinal(pace.nth)}`} visit of “${programName(partner)}”`;
  if (pace.offsetDays === 0) return `with ${whose}`;
  return `${pace.offsetDays === 1 ? 'a day' : `${pace.offsetDays} days`} after ${whose}`;
}

/** The ground of a choice: its classes, or the names of its zones where it has none. */
export function choiceWords(yard: Yard, choice: ZoneChoice): string {
  const zones = chosenZones(yard, choice);
  if (zones.length === 0) return 'no ground chosen';
  if (choice.classes.length === 0 || choice.include.length > 0)
    return zones.map((zone) => zone.name || 'unnamed ground').join(', ');
  const classes = ZONE_CLASSES.filter((one) => choice.classes.includes(one));
  const words = classes
    .map((one, i) => (i === 0 ? CLASS_WORDS[one] : CLASS_WORDS[one].toLowerCase()))
    .join(', ');
  return choice.exclude.length > 0 ? `${words} without ${choice.exclude.length} of the zones` : words;
}

/** The classes of ground a visit treats, in the order of `ZONE_CLASSES`. */
export function classesOfVisit(yard: Yard, visit: Visit): readonly ZoneClass[] {
  const choices =
    visit.doses.length === 0 ? [visit.zones] : visit.doses.map((dose) => dose.zones ?? visit.zones);
  const zones = new Set(choices.flatMap((choice) => chosenZones(yard, choice)));
  return ZONE_CLASSES.filter((one) => [...zones].some((zone) => zoneClass(zone) === one));
}

/** The products of a visit, each once: "Liquid 12-0-6, Granular 20-0-10". */
export function productsWords(yard: Yard, visit: Visit): string {
  return [...new Set(visit.doses.map((dose) => doseName(dose, yard.products)))].join(', ');
}

/** What making the visits would do, or did: "12 to add, 3 to bring up to date, 1 to take away". */
export function appliedWords({ added, renewed, removed }: Omit<AppliedPrograms, 'yard' | 'issues'>): string {
  const parts = [
    added > 0 ? `${added} to add` : '',
    renewed > 0 ? `${renewed} to bring up to date` : '',
    removed > 0 ? `${removed} to take away` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing to change' : parts.join(', ');
}

/** Patterns to begin with, by their ids. */
export const PATTERN_WORDS: Readonly<Record<string, { readonly name: string; readonly words: string }>> = {
  'liquid-and-granular': {
    name: 'Two grounds, two paces',
    words: 'Light liquid on low-cut turf every two weeks, granules on regular turf every eight.',
  },
  'liquid-joined': {
    name: 'Liquid, with granules now and then',
    words: 'Light liquid on all turf every two weeks; granules join it about every eighth week.',
  },
  liquid: { name: 'Light liquid alone', words: 'Light liquid on all turf every two weeks.' },
  granular: { name: 'Granules alone', words: 'Granules on all turf every eight weeks.' },
};

/** What speaks against a day as sentences to be read out; words for nothing where there is none. */
export function sayIssues(issues: readonly Issue[]): string {
  if (issues.length === 0) return 'Nothing speaks against this day.';
  return issues
    .map((issue) => `${issue.severity === 'error' ? 'Not right' : 'Check'}: ${issue.message}`)
    .join(' ');
}

/** "Light liquid goes on the same ground 2 days before (Liquid 1) and 12 days after (Liquid 3)." */
export function neighbourWords(yard: Yard, { productId, before, after }: ProductNeighbours): string {
  const days = (count: number) => (count === 1 ? 'a day' : `${count} days`);
  const parts = [
    ...(before === null
      ? []
      : [
          `${before.days === 0 ? 'the same day' : `${days(before.days)} before`} (${visitName(before.visit)})`,
        ]),
    ...(after === null ? [] : [`${days(after.days)} after (${visitName(after.visit)})`]),
  ];
  const name = productName(yard.products.find((one) => one.id === productId));
  return `${name} goes on the same ground ${parts.join(' and ')}.`;
}

/** What is told of a move that was left before it was put down. @param date where it was held */
export function leftWords(visit: Visit, date: string): string {
  const stays = visit.date === null ? 'stays without a day' : `stays on ${dayWords(visit.date, true)}`;
  return `“${visitName(visit)}” ${stays}: the move to ${dayWords(date, true)} was not put down.`;
}
