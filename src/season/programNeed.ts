import { type HeldNeed, heldNeed } from '../need/flushHold';
import { monthlyNeed } from '../need/monthlyNeed';
import type { NutrientNeed, Yard } from '../yard/types';
import { isInStretch } from '../yard/yearDay';
import { needsByZone } from './needsByZone';

/** N that a month of a zone already gets, within and outside of its hold, kg/m². */
export interface MonthTaken {
  readonly early: number;
  readonly late: number;
}

/** N already got by month (YYYY-MM). */
export type TakenByMonth = (month: string) => MonthTaken;

/** The need of a zone, its months with the hold kept; `held` null: its split lacks the climate. */
export interface ZoneNeed {
  readonly need: NutrientNeed;
  readonly held: HeldNeed | null;
}

/** N that a visit is to bring to a zone, kg/m²: of its own month and, after the hold, of the months that waited. */
export interface DayWant {
  readonly nKgPerM2: number;
  /** where it is counted, in the order it is taken from. */
  readonly parts: readonly {
    readonly month: string;
    readonly part: keyof MonthTaken;
    readonly nKgPerM2: number;
  }[];
  /** true where the month wants some but others bring it all. */
  readonly isMet: boolean;
}

/** What the visits of a program leave of the need of a zone, kg/m². */
export interface NeedLeft {
  /** wanted after the hold, where no visit comes after it. */
  readonly leftOverKgPerM2: number;
  /** of the months from the first visit to the last that have none. */
  readonly skippedKgPerM2: number;
}

/** N that is not worth a word, kg/m² (1 mg/m²): rounding of the months' sums. */
export const TRIFLE = 1e-6;
const NONE: MonthTaken = { early: 0, late: 0 };

/** The need of each zone by zone id; zones without one are left out. */
export function zoneNeeds(yard: Yard): ReadonlyMap<string, ZoneNeed> {
  const needs = needsByZone(yard);
  const known = new Map(
    [...new Set(needs.values())].map((need) => {
      const plain = monthlyNeed(need, yard.climate);
      return [need, { need, held: plain && heldNeed(plain, need.hold) }] as const;
    }),
  );
  return new Map(
    [...needs].flatMap(([id, need]) => {
      const own = known.get(need);
      return own ? [[id, own] as const] : [];
    }),
  );
}

/** True for a day within the hold of a need. */
export function isHeldDay({ need: { hold } }: ZoneNeed, date: string): boolean {
  return hold !== null && isInStretch(date, hold.from, hold.to);
}

/** What a month still wants, in all and of it within the hold. */
function restOf(held: HeldNeed, month: string, { early, late }: MonthTaken) {
  const index = Number(month.slice(5)) - 1;
  const all = Math.max(0, (held.months[index] ?? 0) - early - late);
  return { all, early: Math.min(all, Math.max(0, (held.withinKgPerM2[index] ?? 0) - early)) };
}

/**
 * The N that a zone wants of each visit of a program: the share of what its month wants beside `fixed`, at most
 * what `taken` leaves of it, in equal parts over the visits of that month. Where part of the month lies in
 * the hold before the spring flush, the visits within share what may go down within, and those outside of it
 * the rest (all of the month where none lies within). Where all of a month's visits lie within, its rest goes to
 * the first visit after the hold.
 * @param dates days on which the visits stand, rising; one may stand there twice
 * @param fixed what doses not by need lay down; @param taken the same and what doses by need have got so far
 */
export function wantsOfDays(
  own: ZoneNeed & { readonly held: HeldNeed },
  dates: readonly string[],
  share: number,
  fixed: TakenByMonth,
  taken: TakenByMonth,
): readonly DayWant[] {
  const months = new Map<string, ReturnType<typeof wantOfMonth>>();
  function wantOfMonth(month: string) {
    const days = dates.filter((day) => day.startsWith(month));
    const within = days.filter((day) => isHeldDay(own, day)).length;
    const pick = (by: TakenByMonth | null) => {
      const { all, early } = restOf(own.held, month, by?.(month) ?? NONE);
      return { early, late: within > 0 ? all - early : all };
    };
    const [whole, base, left] = [pick(null), pick(fixed), pick(taken)];
    const of = (part: keyof MonthTaken) => Math.min(share * base[part], left[part]);
    return { month, count: days.length, within, whole, early: of('early'), late: of('late') };
  }
  for (const date of dates) {
    const month = date.slice(0, 7);
    if (!months.has(month)) months.set(month, wantOfMonth(month));
  }
  let waiting: string[] = [];
  return dates.map((date) => {
    const month = date.slice(0, 7);
    const each = months.get(month) as ReturnType<typeof wantOfMonth>;
    const part = isHeldDay(own, date) ? 'early' : 'late';
    const count = part === 'early' ? each.within : each.count - each.within;
    const parts = [{ month, part: part as keyof MonthTaken, nKgPerM2: each[part] / count }];
    if (part === 'early') {
      if (each.within === each.count && !waiting.includes(month)) waiting.push(month);
    } else {
      for (const name of waiting) {
        const nKgPerM2 = months.get(name)?.late ?? 0;
        if (nKgPerM2 > 0) parts.push({ month: name, part: 'late', nKgPerM2 });
      }
      waiting = [];
    }
    const nKgPerM2 = parts.reduce((sum, one) => sum + one.nKgPerM2, 0);
    return { nKgPerM2, parts, isMet: nKgPerM2 <= TRIFLE && each.whole[part] > TRIFLE };
  });
}

/** What the visits of a program leave of the need of a zone. @param taken all that is laid down, in the end */
export function needLeft(
  own: ZoneNeed & { readonly held: HeldNeed },
  dates: readonly string[],
  taken: TakenByMonth,
): NeedLeft {
  const last = dates.at(-1);
  const outside = dates.findLast((day) => !isHeldDay(own, day)) ?? '';
  const rest = (month: string) => restOf(own.held, month, taken(month));
  const waiting = new Set(dates.filter((day) => day > outside).map((day) => day.slice(0, 7)));
  const leftOverKgPerM2 = [...waiting]
    .filter((month) => month !== outside.slice(0, 7))
    .reduce((sum, month) => sum + rest(month).all - rest(month).early, 0);
  const present = new Set(dates.map((day) => day.slice(0, 7)));
  const skippedKgPerM2 = monthsBetween(dates[0], last)
    .filter((month) => !present.has(month))
    .reduce((sum, month) => sum + rest(month).all, 0);
  return { leftOverKgPerM2, skippedKgPerM2 };
}

/** Every month (YYYY-MM) from that of the first day to that of the last. */
function monthsBetween(first: string | undefined, last: string | undefined): readonly string[] {
  if (first === undefined || last === undefined) return [];
  const count = (date: string) => 12 * Number(date.slice(0, 4)) + Number(date.slice(5, 7)) - 1;
  return Array.from({ length: count(last) - count(first) + 1 }, (_, i) => {
    const month = count(first) + i;
    return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}`;
  });
}
