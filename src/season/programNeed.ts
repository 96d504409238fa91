import { heldNeed } from '../need/flushHold';
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
  const months = new Map<NutrientNeed, ReturnType<typeof heldNeed> | null>();
  for (const need of new Set(needs.values())) {
    const plain = monthlyNeed(need, yard.climate);
    months.set(need, plain && heldNeed(plain, need.hold));
  }
  return (zone, date, dates) => {
    const need = needs.get(zone.id);
    if (need === undefined) return 'no-need';
    const held = months.get(need);
    if (!held) return 'no-climate';
    const { hold } = need;
    const isWithin = (day: string) => hold !== null && isInStretch(day, hold.from, hold.to);
    const visitsOf = (month: string) => dates.filter((day) => day.startsWith(month));
    const amounts = (month: string) => {
      const index = Number(month.slice(5)) - 1;
      const [all, early] = [held.months[index] ?? 0, held.withinKgPerM2[index] ?? 0];
      return { early, late: Math.max(0, all - early) };
    };
    /** The rests of the months whose visits end with the hold's visit at `last`, back to the hold's first. */
    const restBefore = (last: number): number => {
      const first = dates.findLastIndex((day, i) => i <= last && !isWithin(day)) + 1;
      const held = new Set(dates.slice(first, last + 1).map((day) => day.slice(0, 7)));
      return [...held]
        .filter((month) => visitsOf(month).every(isWithin))
        .reduce((sum, month) => sum + amounts(month).late, 0);
    };
    const month = date.slice(0, 7);
    const at = dates.indexOf(date);
    const inMonth = visitsOf(month);
    const within = inMonth.filter(isWithin).length;
    const { early, late } = amounts(month);
    if (isWithin(date)) {
      const isLast = at === dates.length - 1;
      return { nKgPerM2: early / within, leftOverKgPerM2: isLast ? restBefore(at) : 0 };
    }
    const own = (within > 0 ? late : early + late) / (inMonth.length - within);
    return { nKgPerM2: own + (at > 0 ? restBefore(at - 1) : 0), leftOverKgPerM2: 0 };
  };
}
