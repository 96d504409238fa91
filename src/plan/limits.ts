import { formatAmountRate } from '../units/format';
import { visitZones } from '../yard/choose';
import type { Amount, Issue, Product, Visit, Yard } from '../yard/types';
import {
  type AreaOfDose,
  addAmounts,
  NOTHING,
  productByZone,
  readAmount,
  type ZoneAmount,
  type ZonesOfDose,
} from './productByZone';
import { isBulk } from './rate';

export type { AreaOfDose, ZonesOfDose } from './productByZone';

const TOLERANCE = 1e-9;
const YEAR_DAYS = 365;

/**
 * Holds one product of a visit against the limits on its label, zone by zone. All doses of the product
 * in one visit on one zone count as one application, whatever use of the label they are by (two half-rate
 * passes at right angles are one); amounts of product add up, each at the rate of its own use. A visit that
 * is done counts by its day and, where `areaOfDose` is given, by what was really used.
 * Interval: whole days to every other dated visit that treats the same zone with it. Year: both the
 * 365 days that end with this visit and its calendar year up to it (366 days in a leap year).
 * @param product as it stands on the shelf, or as any of its uses has it
 * @param zoneIds zones this visit treats with the product; @param zonesOfDose by default the zones chosen in the yard
 * @param doseId the dose that the issues stand at
 * @returns `limit-dose`, `limit-interval`, `limit-year-amount`, `limit-doses-per-year` (errors);
 * `limit-not-checked` (note) where a date is missing or an amount cannot be told in the limit's measure
 */
export function labelLimitIssues(
  yard: Yard,
  visit: Visit,
  product: Product,
  zoneIds: readonly string[],
  doseId: string,
  zonesOfDose: ZonesOfDose = (other, dose) => visitZones(yard, other, dose).map((zone) => zone.id),
  areaOfDose: AreaOfDose | null = null,
): readonly Issue[] {
  const { limits } = product;
  if (zoneIds.length === 0) return [];
  const label = yard.products.find((each) => each.id === product.id) ?? product;
  const amountsOn = (of: Visit) => productByZone(label, of, zonesOfDose, areaOfDose);
  const issues: Issue[] = [];
  const place = { productId: product.id, visitId: visit.id, doseId };
  const add = (code: string, severity: Issue['severity'], message: string) =>
    issues.push({ code, severity, message: `${product.name}: ${message}`, place });
  const zonesWords = (ids: readonly string[]) =>
    ids.map((id) => yard.zones.find((zone) => zone.id === id)?.name || 'unnamed zone').join(', ');
  const show = (amount: Amount) => formatAmountRate(amount, yard.settings.units, isBulk(product));
  /** An error where an amount passes the most, a note where it cannot be told; @param of amount on a zone */
  const holdAmount = (
    code: string,
    most: Amount | null,
    period: string,
    what: string,
    of: (zoneId: string) => ZoneAmount,
  ) => {
    if (most === null) return;
    const read = zoneIds.map((id) => ({ id, value: readAmount(of(id), most.unit) }));
    const over = read.flatMap(({ id, value }) =>
      value !== null && value > most.value * (1 + TOLERANCE) ? [{ id, value }] : [],
    );
    if (over.length > 0) {
      const amount = show({ unit: most.unit, value: Math.max(...over.map((one) => one.value)) });
      const where = zonesWords(over.map((one) => one.id));
      add(
        code,
        'error',
        `${amount}${period} on ${where} is over the label's most for ${what}, ${show(most)}.`,
      );
    } else if (read.some((one) => one.value === null)) {
      add(
        'limit-not-checked',
        'note',
        `the label's most for ${what} is not checked: not every use of it can be told in that measure; give the density.`,
      );
    }
  };

  const now = amountsOn(visit);
  const { maxPerDose, maxPerYear, maxDosesPerYear, minIntervalDays } = limits;
  holdAmount('limit-dose', maxPerDose, '', 'one application', (id) => now.get(id) ?? NOTHING);
  if (minIntervalDays === null && maxPerYear === null && maxDosesPerYear === null) return issues;

  const others = yard.visits
    .filter((other) => other.id !== visit.id)
    .map((other) => ({ other, amounts: amountsOn(other) }))
    .filter(({ amounts }) => amounts.size > 0);
  const day = dayNumber(dateOf(visit));
  if (day === null) {
    if (others.length > 0)
      add(
        'limit-not-checked',
        'note',
        'the label limits how often it may go out; set the date of this visit so that it can be checked.',
      );
    if (maxPerYear === null) return issues;
  }
  const dated = others.flatMap(({ other, amounts }) => {
    const otherDay = dayNumber(dateOf(other));
    return otherDay === null || day === null
      ? []
      : [{ other, gap: Math.abs(day - otherDay), before: otherDay <= day, amounts }];
  });
  if (day !== null && dated.length < others.length)
    add(
      'limit-not-checked',
      'note',
      'another visit with it has no date, so interval and yearly limits leave that visit out.',
    );

  for (const { other, gap, amounts } of dated) {
    const shared = zoneIds.filter((id) => amounts.has(id));
    if (minIntervalDays === null || gap >= minIntervalDays || shared.length === 0) continue;
    add(
      'limit-interval',
      'error',
      `${gap} days from “${other.name}” (${dateOf(other)}) on ${zonesWords(shared)}; the label asks for at least ${minIntervalDays}.`,
    );
  }

  const sameYear = (other: Visit) => dateOf(other)?.slice(0, 4) === dateOf(visit)?.slice(0, 4);
  const year = dated.filter((one) => one.before && (one.gap < YEAR_DAYS || sameYear(one.other)));
  holdAmount('limit-year-amount', maxPerYear, ' within a year', 'a year', (id) =>
    year.reduce((sum, one) => addAmounts(sum, one.amounts.get(id) ?? NOTHING), now.get(id) ?? NOTHING),
  );
  const times = (id: string) => 1 + year.filter((one) => one.amounts.has(id)).length;
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

/** The day a visit was done, else the day it is planned for. */
function dateOf(visit: Visit): string | null {
  return visit.doneOn ?? visit.date;
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
