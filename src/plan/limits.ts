import { formatAmountRate } from '../units/format';
import { formatDay } from '../units/formatDay';
import type { Amount, Issue, Visit, Yard } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';
import { applyUse } from './applyUse';
import { dateOfVisit, dayOfVisit, isInYearOf, isSameDay } from './heldWith';
import { addAmounts, type ProductGround, productByZone, readAmount } from './productByZone';
import { isBulk } from './rate';
import type { VisitFigures } from './types';

const TOLERANCE = 1e-9;

interface Other {
  readonly visit: Visit;
  readonly ground: ProductGround;
}

/**
 * Holds one product of a visit against the limits on its label, zone by zone. Whatever of it goes on a zone in
 * one day is one application, by any dose of any visit and any use of the label (two half-rate passes at right
 * angles are one); amounts of product add up, each at the rate of its own use. A visit that is done counts by
 * its day and its records; what laid nothing down is no application.
 * Interval: whole days to every other day on which the same zone is treated with it. Year: both the
 * 365 days that end with this visit and its calendar year up to it (366 days in a leap year).
 * @param others other visits, those of `visitsHeldWith` at least
 * @returns `limit-dose`, `limit-interval`, `limit-year-amount`, `limit-doses-per-year` (errors), at the last
 * dose of the product; `limit-not-checked` (note) where a date is missing or an amount cannot be told in the
 * limit's measure
 */
export function labelLimitIssues(
  yard: Yard,
  own: VisitFigures,
  others: readonly VisitFigures[],
  productId: string,
): readonly Issue[] {
  const product = yard.products.find((each) => each.id === productId);
  const { byZone: now, most } = productByZone(own.laid, productId);
  if (!product || now.size === 0) return [];
  const { maxPerDose, maxPerYear, maxDosesPerYear, minIntervalDays } = product.limits;
  const hasPeriod = minIntervalDays !== null || maxPerYear !== null || maxDosesPerYear !== null;
  if (maxPerDose === null && !hasPeriod) return [];

  const { visit } = own;
  const issues: Issue[] = [];
  const last = visit.doses.findLast((dose) => dose.productId === productId);
  const place = { productId, visitId: visit.id, ...(last && { doseId: last.id }) };
  const add = (code: string, severity: Issue['severity'], message: string) =>
    issues.push({ code, severity, message: `${product.name}: ${message}`, place });
  const zoneIds = [...now.keys()];
  const zonesWords = (ids: readonly string[]) => zoneNames(yard, ids);
  const asUsed = (last && applyUse(product, last.useId)) ?? product;
  const show = (amount: Amount) => formatAmountRate(amount, yard.settings.units, isBulk(asUsed));
  /** An error where what is known of an amount passes the most, a note where the rest cannot be told; @param with visits that lay it down too */
  const holdAmount = (
    code: string,
    limit: Amount | null,
    period: string,
    what: string,
    together: readonly Other[],
  ) => {
    if (limit === null) return;
    const { unit } = limit;
    const top = limit.value * (1 + TOLERANCE);
    const bound = readAmount(
      together.reduce((sum, { ground }) => addAmounts(sum, ground.most), most),
      unit,
    );
    // no zone gets more than all the largest together
    if (bound.isWhole && bound.value <= top) return;
    const grounds = [now, ...together.map(({ ground }) => ground.byZone)];
    const read = zoneIds.map((id) => ({ id, ...sumOn(id, grounds, unit) }));
    const over = read.filter(({ value }) => value > top);
    if (over.length > 0) {
      const amount = show({ unit, value: Math.max(...over.map((one) => one.value)) });
      const where = zonesWords(over.map((one) => one.id));
      add(
        code,
        'error',
        `${amount}${period} on ${where} is over the label's most for ${what}, ${show(limit)}.`,
      );
    } else if (read.some((one) => !one.isWhole)) {
      add(
        'limit-not-checked',
        'note',
        `the label's most for ${what} is not checked: not every use of it can be told in that measure; give the density.`,
      );
    }
  };

  const laying = others.flatMap((other): Other[] => {
    const ground = productByZone(other.laid, productId);
    return ground.byZone.size > 0 ? [{ visit: other.visit, ground }] : [];
  });
  const sameDay = laying.filter((other) => isSameDay(visit, other.visit));
  const isShared = sameDay.some(({ ground }) => zoneIds.some((id) => ground.byZone.has(id)));
  holdAmount('limit-dose', maxPerDose, isShared ? ' in one day' : '', 'one application', sameDay);
  if (!hasPeriod) return issues;

  const day = dayOfVisit(visit);
  const undated = laying.filter((other) => dayOfVisit(other.visit) === null);
  if (day === null) {
    if (laying.length > 0)
      add(
        'limit-not-checked',
        'note',
        'the label limits how often it may go out; set the date of this visit so that it can be checked.',
      );
  } else if (undated.length > 0) {
    add(
      'limit-not-checked',
      'note',
      'another visit with it has no date, so interval and yearly limits leave that visit out.',
    );
  }

  for (const { visit: other, ground } of laying) {
    const otherDay = dayOfVisit(other);
    if (minIntervalDays === null || day === null || otherDay === null) continue;
    const gap = Math.abs(day - otherDay);
    if (gap === 0 || gap >= minIntervalDays) continue;
    const shared = zoneIds.filter((id) => ground.byZone.has(id));
    if (shared.length === 0) continue;
    add(
      'limit-interval',
      'error',
      `${gap} days from “${other.name}” (${formatDay(dateOfVisit(other) ?? '', true)}) on ${zonesWords(shared)}; the label asks for at least ${minIntervalDays}.`,
    );
  }

  const year = laying.filter((other) => isInYearOf(visit, other.visit));
  holdAmount('limit-year-amount', maxPerYear, ' within a year', 'a year', year);
  if (maxDosesPerYear === null) return issues;
  const groundsByDay = new Map<number | null, ProductGround['byZone'][]>();
  for (const { visit: other, ground } of year) {
    const otherDay = dayOfVisit(other);
    if (otherDay === day) continue;
    const own = groundsByDay.get(otherDay);
    if (own) own.push(ground.byZone);
    else groundsByDay.set(otherDay, [ground.byZone]);
  }
  if (1 + groundsByDay.size <= maxDosesPerYear) return issues;
  const daysBefore = [...groundsByDay.values()];
  const times = zoneIds.map((id) => {
    let count = 1;
    for (const grounds of daysBefore) if (grounds.some((byZone) => byZone.has(id))) count++;
    return { id, count };
  });
  const often = times.filter(({ count }) => count > maxDosesPerYear);
  if (often.length > 0) {
    const count = Math.max(...often.map((one) => one.count));
    const where = zonesWords(often.map((one) => one.id));
    add(
      'limit-doses-per-year',
      'error',
      `${count} applications within a year on ${where}; the label allows ${maxDosesPerYear} a year.`,
    );
  }
  return issues;
}

/** What is known of a product on one zone over several visits, per m², and whether that is all of it. */
function sumOn(
  zoneId: string,
  grounds: readonly ProductGround['byZone'][],
  unit: Amount['unit'],
): { readonly value: number; readonly isWhole: boolean } {
  let value = 0;
  let isWhole = true;
  for (const byZone of grounds) {
    const own = byZone.get(zoneId);
    if (own === undefined) continue;
    value += unit === 'kg' ? own.kgPerM2 : own.lPerM2;
    isWhole &&= unit === 'kg' ? own.isKgWhole : own.isLWhole;
  }
  return { value, isWhole };
}
