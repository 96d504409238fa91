import { formatAmountRate } from '../units/format';
import { visitZones } from '../yard/choose';
import type { Amount, Issue, Product, Visit, VisitDose, Yard } from '../yard/types';
import { convertAmount, isBulk, productRate } from './rate';

const TOLERANCE = 1e-9;
const YEAR_DAYS = 365;

/** Ids of the zones that a dose of a visit treats. */
export type ZonesOfDose = (visit: Visit, dose: VisitDose) => readonly string[];

/**
 * Holds one product of a visit against the limits on its label, zone by zone. All doses of the product
 * in one visit on one zone count as one application (two half-rate passes at right angles are one).
 * Interval: whole days to every other dated visit that treats the same zone with it. Year: both the
 * 365 days that end with this visit and its calendar year up to it (366 days in a leap year).
 * @param zoneIds zones this visit treats with the product; @param zonesOfDose by default the zones chosen in the yard
 * @param doseId the dose that the issues stand at
 * @returns `limit-dose`, `limit-interval`, `limit-year-amount`, `limit-doses-per-year` (errors);
 * `limit-not-checked` (note) where a date is missing
 */
export function labelLimitIssues(
  yard: Yard,
  visit: Visit,
  product: Product,
  zoneIds: readonly string[],
  doseId: string,
  zonesOfDose: ZonesOfDose = (other, dose) => visitZones(yard, other, dose).map((zone) => zone.id),
): readonly Issue[] {
  const { limits } = product;
  const { rate } = productRate(product);
  if (rate === null || zoneIds.length === 0) return [];
  const factorOn = factorsByZone(product.id, zonesOfDose);
  const issues: Issue[] = [];
  const place = { productId: product.id, visitId: visit.id, doseId };
  const add = (code: string, severity: Issue['severity'], message: string) =>
    issues.push({ code, severity, message: `${product.name}: ${message}`, place });
  const zonesWords = (ids: readonly string[]) =>
    ids.map((id) => yard.zones.find((zone) => zone.id === id)?.name || 'unnamed zone').join(', ');
  const now = factorOn(visit);
  const amountOf = (factor: number): Amount => ({
    unit: rate.perM2.unit,
    value: rate.perM2.value * factor,
  });
  const exceeds = (factor: number, limit: Amount): boolean => {
    const amount = convertAmount(amountOf(factor), limit.unit, product.densityKgPerL);
    return amount !== null && amount.value > limit.value * (1 + TOLERANCE);
  };
  const show = (amount: Amount) => formatAmountRate(amount, yard.settings.units, isBulk(product));

  const perDose = limits.maxPerDose;
  const over = perDose ? zoneIds.filter((id) => exceeds(now.get(id) ?? 0, perDose)) : [];
  if (perDose && over.length > 0) {
    const most = show(amountOf(Math.max(...over.map((id) => now.get(id) ?? 0))));
    add(
      'limit-dose',
      'error',
      `${most} on ${zonesWords(over)} is over the label's most for one application, ${show(perDose)}.`,
    );
  }

  const hasDates =
    limits.minIntervalDays !== null || limits.maxPerYear !== null || limits.maxDosesPerYear !== null;
  const others = yard.visits.filter((other) => other.id !== visit.id && factorOn(other).size > 0);
  const day = dayNumber(visit.date);
  if (!hasDates) return issues;
  if (day === null) {
    if (others.length > 0)
      add(
        'limit-not-checked',
        'note',
        'the label limits how often it may go out; set the date of this visit so that it can be checked.',
      );
    if (limits.maxPerYear === null) return issues;
  }
  const dated = others.flatMap((other) => {
    const otherDay = dayNumber(other.date);
    return otherDay === null || day === null
      ? []
      : [{ other, gap: Math.abs(day - otherDay), before: otherDay <= day, factors: factorOn(other) }];
  });
  if (day !== null && dated.length < others.length)
    add(
      'limit-not-checked',
      'note',
      'another visit with it has no date, so interval and yearly limits leave that visit out.',
    );

  const interval = limits.minIntervalDays;
  for (const { other, gap, factors } of dated) {
    const shared = zoneIds.filter((id) => factors.has(id));
    if (interval === null || gap >= interval || shared.length === 0) continue;
    add(
      'limit-interval',
      'error',
      `${gap} days from “${other.name}” (${other.date}) on ${zonesWords(shared)}; the label asks for at least ${interval}.`,
    );
  }

  const sameYear = (other: Visit) => other.date?.slice(0, 4) === visit.date?.slice(0, 4);
  const year = dated.filter((one) => one.before && (one.gap < YEAR_DAYS || sameYear(one.other)));
  const { maxPerYear, maxDosesPerYear } = limits;
  const yearFactor = (id: string) =>
    year.reduce((sum, one) => sum + (one.factors.get(id) ?? 0), now.get(id) ?? 0);
  const overYear = maxPerYear ? zoneIds.filter((id) => exceeds(yearFactor(id), maxPerYear)) : [];
  if (maxPerYear && overYear.length > 0) {
    const most = show(amountOf(Math.max(...overYear.map(yearFactor))));
    add(
      'limit-year-amount',
      'error',
      `${most} within a year on ${zonesWords(overYear)} is over the label's most for a year, ${show(maxPerYear)}.`,
    );
  }
  const times = (id: string) => 1 + year.filter((one) => one.factors.has(id)).length;
  const often = maxDosesPerYear === null ? [] : zoneIds.filter((id) => times(id) > maxDosesPerYear);
  if (maxDosesPerYear !== null && often.length > 0) {
    const most = Math.max(...often.map(times));
    add(
      'limit-doses-per-year',
      'error',
      `${most} applications within a year on ${zonesWords(often)}; the label allows ${maxDosesPerYear} a year.`,
    );
  }
  return issues;
}

/** For a visit: the sum of rate factors of one product by zone id. */
function factorsByZone(productId: string, zonesOfDose: ZonesOfDose) {
  return (visit: Visit): ReadonlyMap<string, number> => {
    const factors = new Map<string, number>();
    for (const dose of visit.doses) {
      if (dose.productId !== productId) continue;
      for (const id of zonesOfDose(visit, dose)) factors.set(id, (factors.get(id) ?? 0) + dose.rateFactor);
    }
    return factors;
  };
}

/** Days since 1970-01-01 of a YYYY-MM-DD date; null for none or an impossible one. */
export function dayNumber(date: string | null): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date ?? '');
  if (match === null) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const ms = Date.UTC(year, month - 1, day);
  const back = new Date(ms);
  return back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? ms / 86_400_000 : null;
}
