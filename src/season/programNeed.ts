import { type HeldNeed, heldNeed } from '../need/flushHold';
import { monthlyNeed } from '../need/monthlyNeed';
import type { NutrientNeed, Yard, Zone } from '../yard/types';
import { isInStretch } from '../yard/yearDay';
import { needsByZone } from './needsByZone';

/** What the ground wants of one visit, or why that is not known. */
export type VisitNeed = DayNeed | 'no-need' | 'no-climate';

export interface DayNeed {
  /** N that the visit is to bring, kg/m². */
  readonly nKgPerM2: number;
  /** N wanted after the hold that no later visit of the program brings, kg/m²; told at its last visit, else 0. */
  readonly leftOverKgPerM2: number;
  /** N of the months from the program's first visit to its last that have none, kg/m²; the same on every day. */
  readonly skippedKgPerM2: number;
}

/**
 * The N that a zone wants of the visit on `date`. @param dates all days of the program, rising, `date` among them
 */
export type NeedOnDay = (zone: Zone, date: string, dates: readonly string[]) => VisitNeed;

/**
 * The N that each zone wants of one visit: the need of the month in equal parts over the visits of that month.
 * Where part of the month lies in the hold before the spring flush, the visits within share what may go
 * down within, and those outside of it the rest (all of the month where none lies within). Where all of a
 * month's visits lie within, its rest goes to the program's first visit after the hold.
 */
export function needOnDay(yard: Yard): NeedOnDay {
  const needs = needsByZone(yard);
  const months = new Map<NutrientNeed, HeldNeed | null>();
  for (const need of new Set(needs.values())) {
    const plain = monthlyNeed(need, yard.climate);
    months.set(need, plain && heldNeed(plain, need.hold));
  }
  // all zones of a need ask for the same days: each list of days is planned once
  const planned = new WeakMap<readonly string[], Map<NutrientNeed, ReadonlyMap<string, DayNeed>>>();
  return (zone, date, dates) => {
    const need = needs.get(zone.id);
    if (need === undefined) return 'no-need';
    const held = months.get(need);
    if (!held) return 'no-climate';
    const ofDates = planned.get(dates) ?? new Map<NutrientNeed, ReadonlyMap<string, DayNeed>>();
    planned.set(dates, ofDates);
    const days = ofDates.get(need) ?? needOfDays(need, held, dates);
    ofDates.set(need, days);
    return days.get(date) ?? { nKgPerM2: 0, leftOverKgPerM2: 0, skippedKgPerM2: 0 };
  };
}

/** What each day of a program is to bring. @param held the months of the need with its hold kept */
function needOfDays(
  { hold }: NutrientNeed,
  held: HeldNeed,
  dates: readonly string[],
): ReadonlyMap<string, DayNeed> {
  const isWithin = (day: string) => hold !== null && isInStretch(day, hold.from, hold.to);
  const months = monthsBetween(dates).map((month) => {
    const index = Number(month.slice(5)) - 1;
    const [all, early] = [held.months[index] ?? 0, held.withinKgPerM2[index] ?? 0];
    const days = dates.filter((day) => day.startsWith(month));
    return { month, all, early, count: days.length, within: days.filter(isWithin).length };
  });
  const byName = new Map(months.map((each) => [each.month, each]));
  const skippedKgPerM2 = months.reduce((sum, { all, count }) => sum + (count === 0 ? all : 0), 0);
  /** months whose visits all lay in the hold that runs, and wait for the first after it. */
  const waiting = new Set<string>();
  const takeRest = () => {
    const rest = [...waiting].map((month) => byName.get(month));
    waiting.clear();
    return rest.reduce((sum, each) => sum + (each ? Math.max(0, each.all - each.early) : 0), 0);
  };
  const plan = new Map<string, DayNeed>();
  for (const [index, date] of dates.entries()) {
    const own = byName.get(date.slice(0, 7));
    if (own === undefined) continue;
    const { month, all, early, count, within } = own;
    if (isWithin(date)) {
      if (within === count) waiting.add(month);
      const leftOverKgPerM2 = index === dates.length - 1 ? takeRest() : 0;
      plan.set(date, { nKgPerM2: early / within, leftOverKgPerM2, skippedKgPerM2 });
    } else {
      const late = within > 0 ? Math.max(0, all - early) : all;
      plan.set(date, {
        nKgPerM2: late / (count - within) + takeRest(),
        leftOverKgPerM2: 0,
        skippedKgPerM2,
      });
    }
  }
  return plan;
}

/** Every month (YYYY-MM) from that of the first day to that of the last. */
function monthsBetween(dates: readonly string[]): readonly string[] {
  const count = (date: string) => 12 * Number(date.slice(0, 4)) + Number(date.slice(5, 7)) - 1;
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return [];
  return Array.from({ length: count(last) - count(first) + 1 }, (_, i) => {
    const month = count(first) + i;
    return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}`;
  });
}
