import { heldNeed } from '../need/flushHold';
import { monthlyNeed } from '../need/monthlyNeed';
import type { NutrientNeed, Yard, Zone } from '../yard/types';
import { isInStretch } from '../yard/yearDay';
import { needsByZone } from './needsByZone';

/** What the ground wants of one visit, or why that is not known. */
export type VisitNeed = number | 'no-need' | 'no-climate';

/**
 * The N that a zone wants of the visit on `date`, kg/m². @param dates all days of the program, `date` among them
 */
export type NeedOnDay = (zone: Zone, date: string, dates: readonly string[]) => VisitNeed;

/**
 * The N that each zone wants of one visit: the need of the month in equal parts over the visits of that month.
 * Where part of the month lies in the hold before the spring flush, the visits within share what may go
 * down within, and those outside of it the rest (all of the month where none lies within).
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
    const inMonth = dates.filter((day) => day.slice(0, 7) === date.slice(0, 7));
    const within = inMonth.filter(isWithin);
    const month = Number(date.slice(5, 7)) - 1;
    const [all, early] = [held.months[month] ?? 0, held.withinKgPerM2[month] ?? 0];
    if (isWithin(date)) return early / within.length;
    return (within.length > 0 ? all - early : all) / (inMonth.length - within.length);
  };
}
