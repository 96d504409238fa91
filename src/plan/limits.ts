import { KG_PER_LB, M2_PER_1000_SQFT } from '../units/factors';
import { formatAmountRate, formatNutrientRate } from '../units/format';
import { visitZones } from '../yard/choose';
import type { Amount, Issue, Product, Visit, VisitDose, Yard } from '../yard/types';
import type { NutrientRates } from './nutrients';
import { convertAmount, productRate } from './rate';
import type { DoseZone, ProductRate } from './types';

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
/** Soluble nitrogen at once, kg/m². Source: Trenholm, UF/IFAS ENH1089, Urban Turf Fertilizer Rule. */
export const SOLUBLE_N_GUIDE_KG_PER_M2 = 0.7 * LB_PER_1000;
/** All nitrogen at once, kg/m². Source: USGA Green Section Record 62(11), home lawn tips (0.5 to 1.0 lb per 1,000 sq ft). */
export const TOTAL_N_GUIDE_KG_PER_M2 = 1.0 * LB_PER_1000;
const SLACK = 1 + 1e-9;
const MS_PER_DAY = 86_400_000;

interface DoseOn {
  readonly visit: Visit;
  readonly dose: VisitDose;
  readonly days: number;
}

/**
 * The label's own limits, held against this dose and the same product's doses of the yard's other dated
 * visits on any of the same zones. Codes: `limit-dose`, `limit-year-amount`, `limit-interval`,
 * `limit-doses-per-year` (errors); `limit-not-checked` (note) when this visit has no date.
 * A year is the calendar year of the visit.
 */
export function labelLimitIssues(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  product: Product,
  rate: ProductRate,
  zones: readonly DoseZone[],
): Issue[] {
  const { limits } = product;
  const { units } = yard.settings;
  const place = { visitId: visit.id, doseId: dose.id, productId: product.id };
  const issues: Issue[] = [];
  const over = (code: string, message: string) => issues.push({ code, severity: 'error', message, place });

  const most = inUnit(limits.maxPerDose, rate, product);
  if (most !== null && rate.perM2.value > most * SLACK) {
    const [is, may] = [rate.perM2, { unit: rate.perM2.unit, value: most }].map((each) =>
      formatAmountRate(each, units),
    );
    over('limit-dose', `${product.name}: ${is} is over the label's most for one dose, ${may}.`);
  }
  const hasCalendarLimit =
    limits.minIntervalDays !== null || limits.maxPerYear !== null || limits.maxDosesPerYear !== null;
  if (!hasCalendarLimit) return issues;
  if (visit.date === null) {
    const message = `${product.name}: give the visit a date to check the label's interval and yearly limits.`;
    return [...issues, { code: 'limit-not-checked', severity: 'note', message, place }];
  }
  const others = otherDoses(yard, visit, dose, zones);
  const interval = limits.minIntervalDays;
  const nearest = others.reduce<DoseOn | null>(
    (best, each) => (!best || Math.abs(each.days) < Math.abs(best.days) ? each : best),
    null,
  );
  if (interval !== null && nearest && Math.abs(nearest.days) < interval) {
    const when =
      nearest.days === 0
        ? 'the same day'
        : `${Math.abs(nearest.days)} days ${nearest.days < 0 ? 'before' : 'after'}`;
    over(
      'limit-interval',
      `${product.name}: the label asks for ${interval} days between doses; “${nearest.visit.name}” puts it on some of the same ground ${when}.`,
    );
  }
  const year = visit.date.slice(0, 4);
  const sameYear = others.filter((each) => each.visit.date?.startsWith(year));
  const count = sameYear.length + 1;
  if (limits.maxDosesPerYear !== null && count > limits.maxDosesPerYear) {
    over(
      'limit-doses-per-year',
      `${product.name}: this makes ${count} doses in ${year}; the label allows ${limits.maxDosesPerYear}.`,
    );
  }
  const mostYear = inUnit(limits.maxPerYear, rate, product);
  const total = sameYear.reduce(
    (sum, each) => sum + (productRate(product, each.dose.rateFactor).rate?.perM2.value ?? 0),
    rate.perM2.value,
  );
  if (mostYear !== null && total > mostYear * SLACK) {
    const [is, may] = [total, mostYear].map((value) =>
      formatAmountRate({ unit: rate.perM2.unit, value }, units),
    );
    over(
      'limit-year-amount',
      `${product.name}: ${is} in ${year} is over the label's most for a year, ${may}.`,
    );
  }
  return issues;
}

/**
 * Published guides for nitrogen at once, as notes that defer to the label and the local code:
 * `guide-soluble-n`, `guide-total-n`. With no slow-release share on the label all of it counts as soluble.
 */
export function nitrogenGuideIssues(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  product: Product,
  nutrients: NutrientRates,
): Issue[] {
  const { units } = yard.settings;
  const place = { visitId: visit.id, doseId: dose.id, productId: product.id };
  const soluble = nutrients.N * (1 - (product.analysis.slowNPctOfN ?? 0) / 100);
  const tell = (code: string, what: string, is: number, guide: number): Issue => ({
    code,
    severity: 'warning',
    message: `${product.name}: ${formatNutrientRate(is, units)} of ${what} at once; a common guide is at most ${formatNutrientRate(guide, units)}. The label and the local code decide.`,
    place,
  });
  if (nutrients.N > TOTAL_N_GUIDE_KG_PER_M2 * SLACK) {
    return [tell('guide-total-n', 'nitrogen', nutrients.N, TOTAL_N_GUIDE_KG_PER_M2)];
  }
  if (soluble > SOLUBLE_N_GUIDE_KG_PER_M2 * SLACK) {
    return [tell('guide-soluble-n', 'soluble nitrogen', soluble, SOLUBLE_N_GUIDE_KG_PER_M2)];
  }
  return [];
}

function inUnit(limit: Amount | null, rate: ProductRate, product: Product): number | null {
  return limit === null
    ? null
    : (convertAmount(limit, rate.perM2.unit, product.densityKgPerL)?.value ?? null);
}

/** Other doses of the product on any of the zones, dated, with days from this visit (negative: before). */
function otherDoses(yard: Yard, visit: Visit, dose: VisitDose, zones: readonly DoseZone[]): DoseOn[] {
  const ids = new Set(zones.map((zone) => zone.zoneId));
  const own = dayNumber(visit.date);
  if (own === null) return [];
  return yard.visits.flatMap((other) => {
    const day = dayNumber(other.date);
    if (day === null) return [];
    return other.doses
      .filter((each) => each.productId === dose.productId && each !== dose)
      .filter((each) => visitZones(yard, other, each).some((zone) => ids.has(zone.id)))
      .map((each) => ({ visit: other, dose: each, days: day - own }));
  });
}

function dayNumber(date: string | null): number | null {
  const ms = date === null ? Number.NaN : Date.parse(`${date}T00:00:00Z`);
  return Number.isNaN(ms) ? null : Math.round(ms / MS_PER_DAY);
}
