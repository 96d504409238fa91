import { dayNumber } from '../yard/calendar';
import type { Product, Visit, Yard } from '../yard/types';

/** Days of the running year that a label's yearly limits look back over. */
export const YEAR_DAYS = 365;

/** The day a visit was done, else the day it is planned for; null: none yet. */
export function dateOfVisit({ doneOn, date }: Visit): string | null {
  return doneOn ?? date;
}

const days = new WeakMap<Visit, number | null>();

/** The same as a number of days (see `dayNumber`). */
export function dayOfVisit(visit: Visit): number | null {
  const known = days.get(visit);
  if (known !== undefined) return known;
  const day = dayNumber(dateOfVisit(visit));
  days.set(visit, day);
  return day;
}

/** True for two visits on one day: what they lay down goes down at once. */
export function isSameDay(a: Visit, b: Visit): boolean {
  const day = dayOfVisit(a);
  return day !== null && day === dayOfVisit(b);
}

/** True where `other` falls in the year that ends with `visit`: its calendar year, or the 365 days up to it. */
export function isInYearOf(visit: Visit, other: Visit): boolean {
  const [day, otherDay] = [dayOfVisit(visit), dayOfVisit(other)];
  if (day === null || otherDay === null || otherDay > day) return false;
  return day - otherDay < YEAR_DAYS || dateOfVisit(other)?.slice(0, 4) === dateOfVisit(visit)?.slice(0, 4);
}

/**
 * The other visits that a visit is held together with: those of its day, and those that put out a product of it
 * whose label limits the year or the days between, as far as those limits reach. Visits without a day may fall
 * anywhere.
 */
export function visitsHeldWith(yard: Yard, visit: Visit): readonly Visit[] {
  const ids = new Set(visit.doses.map((dose) => dose.productId));
  const products = yard.products.filter((product) => ids.has(product.id));
  return yard.visits.filter(
    (other) =>
      other.id !== visit.id &&
      (isSameDay(visit, other) || products.some((product) => isReached(product, visit, other))),
  );
}

function isReached({ id, limits }: Product, visit: Visit, other: Visit): boolean {
  const { minIntervalDays, maxPerYear, maxDosesPerYear } = limits;
  const isYearly = maxPerYear !== null || maxDosesPerYear !== null;
  if (!isYearly && minIntervalDays === null) return false;
  if (other.doses.every((dose) => dose.productId !== id)) return false;
  const [day, otherDay] = [dayOfVisit(visit), dayOfVisit(other)];
  if (day === null || otherDay === null) return true;
  if (minIntervalDays !== null && Math.abs(day - otherDay) < minIntervalDays) return true;
  return isYearly && isInYearOf(visit, other);
}
