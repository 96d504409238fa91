import { readNutrient, tableOfTest } from '../soil/interpretSoil';
import { isTestOld, phosphorusGate, testOfZone } from '../soil/phosphorusGate';
import { soilTestName } from '../soil/soilNames';
import type { Issue, Override, Product, SoilTest, Visit, VisitDose, Yard, Zone } from '../yard/types';
import type { TreatableZone } from './types';

/** Code of the refusal, and of the override that sets it aside. */
export const SOIL_REFUSAL = 'soil-phosphorus-excess';

/** What the soil says on one dose. */
export interface SoilVerdict {
  /** true: the dose is left out of the plan. */
  readonly isRefused: boolean;
  readonly issues: readonly Issue[];
}

/** The override that holds for this dose of this product; null when none. */
export function overrideOf(yard: Yard, visitId: string, dose: VisitDose): Override | null {
  return (
    yard.overrides.find(
      (each) =>
        each.code === SOIL_REFUSAL &&
        each.visitId === visitId &&
        each.doseId === dose.id &&
        each.productId === dose.productId,
    ) ?? null
  );
}

/** Zones of a dose that the soil refuses phosphorus, in the order of the document. */
export function refusedZones(yard: Yard, zoneIds: readonly string[]): readonly Zone[] {
  return yard.zones.filter(
    (zone) => zoneIds.includes(zone.id) && phosphorusGate(yard, zone).verdict === 'refused',
  );
}

/**
 * Holds a dose against the soil tests of its ground. Phosphorus on a zone whose test calls for none refuses
 * the whole dose (`soil-phosphorus-excess`), unless an override is logged for it; on ground without a test
 * it is let through as a fallback, with a warning that asks for one. Potassium where there is more than
 * enough, and tests older than three years, are noted. A visit that is done is history and is not judged;
 * zones with no ground left to treat are passed over.
 */
export function soilGate(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  product: Product,
  ground: readonly TreatableZone[],
): SoilVerdict {
  const { p2o5Pct, k2oPct } = product.analysis;
  const ids = ground.filter((zone) => zone.areaM2 > 0).map((zone) => zone.zoneId);
  const zones = yard.zones.filter((zone) => ids.includes(zone.id));
  if (visit.doneOn !== null || zones.length === 0) return { isRefused: false, issues: [] };
  const place = { visitId: visit.id, doseId: dose.id, productId: dose.productId };
  const issue = (code: string, severity: Issue['severity'], sentence: string): Issue => ({
    code,
    severity,
    message: `${product.name}: ${sentence}`,
    place,
  });
  const issues: Issue[] = [];
  let isRefused = false;
  if (p2o5Pct > 0) {
    const refused = refusedZones(yard, ids);
    const override = overrideOf(yard, visit.id, dose);
    if (refused.length > 0) {
      const why = reasonsOf(yard, refused);
      isRefused = override === null;
      issues.push(
        override === null
          ? issue(
              SOIL_REFUSAL,
              'error',
              `${why}: no phosphorus is called for. This dose is left out of the plan.`,
            )
          : issue(
              'soil-phosphorus-overridden',
              'warning',
              `${why}: no phosphorus is called for. Put out all the same, decided ${override.on}: ${override.reason}`,
            ),
      );
    }
    const untested = zones.filter((zone) => phosphorusGate(yard, zone).verdict === 'no-test');
    if (untested.length > 0) {
      issues.push(
        issue(
          'soil-no-test',
          'warning',
          `${untestedWords(yard, untested)}. Have the soil tested before phosphorus goes on; until then this dose stands as a fallback only, and a product without phosphorus needs no test.`,
        ),
      );
    }
  }
  if (k2oPct > 0) {
    const rich = zones.filter((zone) => hasMuchPotassium(yard, zone));
    if (rich.length > 0) {
      issues.push(
        issue(
          'soil-potassium-high',
          'note',
          `${listOf(rich)}: the soil test has more than enough potassium.`,
        ),
      );
    }
  }
  if (p2o5Pct > 0 || k2oPct > 0) issues.push(...oldTests(yard, visit, zones, p2o5Pct > 0 ? 'P' : 'K', issue));
  return { isRefused, issues };
}

function hasMuchPotassium(yard: Yard, zone: Zone): boolean {
  const test = testOfZone(yard, zone, 'K');
  return test !== null && readNutrient(test, 'K', tableOfTest(test))?.level === 'very-high';
}

function oldTests(
  yard: Yard,
  { date }: Visit,
  zones: readonly Zone[],
  nutrient: 'P' | 'K',
  issue: (code: string, severity: Issue['severity'], sentence: string) => Issue,
): readonly Issue[] {
  if (date === null) return [];
  const tests = new Set<SoilTest>(zones.flatMap((zone) => testOfZone(yard, zone, nutrient) ?? []));
  return [...tests]
    .filter((test) => isTestOld(test, date))
    .map((test) =>
      issue(
        'soil-test-old',
        'note',
        `the soil test “${soilTestName(test)}” of ${test.date} is more than three years old on the day of the visit; have the soil tested anew.`,
      ),
    );
}

/** "Back lawn has P 92 ppm (…); Strip, Front lawn have P 80 ppm (…)": zones of one reason together. */
function reasonsOf(yard: Yard, zones: readonly Zone[]): string {
  const byReason = new Map<string, Zone[]>();
  for (const zone of zones) {
    const { reason } = phosphorusGate(yard, zone);
    byReason.set(reason, [...(byReason.get(reason) ?? []), zone]);
  }
  return [...byReason]
    .map(([reason, own]) => `${listOf(own)} ${own.length === 1 ? 'has' : 'have'} ${reason}`)
    .join('; ');
}

function untestedWords(yard: Yard, zones: readonly Zone[]): string {
  const reasons = new Set(zones.map((zone) => phosphorusGate(yard, zone).reason));
  return `${listOf(zones)}: ${[...reasons].join('; ')}`;
}

function nameOf(zone: Zone): string {
  return zone.name.trim() || 'Ground without a name';
}

function listOf(zones: readonly Zone[]): string {
  return zones.map(nameOf).join(', ');
}
