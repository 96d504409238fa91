import { dayNumber } from '../yard/calendar';
import type { Product } from '../yard/types';
import type { NeedLine } from './types';

/** When the lines of a need fall, and what keeps until when. Days are counted from 1970-01-01. */
export interface Days {
  /** of each line; visits without a day count as on the last that has one; all 0 where none has. */
  readonly ofLine: readonly number[];
  /** days on which is bought: the first, and each first line that what was bought before does not keep for. */
  readonly orders: readonly number[];
  /** days a closed container keeps from its order, and an opened one from its opening; infinite where the label is silent. */
  readonly closedLife: number;
  readonly openedLife: number;
  readonly hasDays: boolean;
}

/**
 * The days of a need. Packs are bought as late as the number of orders allows: the first order serves all
 * lines within the shelf life of its day, the next begins at the first line after that, and so on, which
 * gives the fewest orders. What is on the shelf counts as bought, and what is open on it as opened, on the
 * first day.
 * @param lines in the order of their days
 */
export function daysOfNeed(lines: readonly NeedLine[], product: Product): Days {
  const own = lines.map((line) => dayNumber(line.date));
  const dated = own.filter((day) => day !== null);
  const last = Math.max(0, ...dated);
  const ofLine = own.map((day) => day ?? last);
  const closedLife = product.shelfLifeDays ?? Number.POSITIVE_INFINITY;
  const openedLife = product.openedLifeDays ?? Number.POSITIVE_INFINITY;
  const orders: number[] = [];
  for (const day of ofLine) {
    const order = orders.at(-1);
    if (order === undefined || day > order + closedLife) orders.push(day);
  }
  return { ofLine, orders, closedLife, openedLife, hasDays: dated.length > 0 };
}

/** Index of the order that serves a day. */
export function orderOf(day: number, { orders }: Days): number {
  return Math.max(
    0,
    orders.findLastIndex((order) => order <= day),
  );
}

/** Last day on which what is opened on a day is good: neither opened nor bought too long ago. */
export function goodUntil(day: number, days: Days): number {
  return Math.min(day + days.openedLife, (days.orders[orderOf(day, days)] ?? day) + days.closedLife);
}
