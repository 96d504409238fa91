import { levelOf } from '../soil/interpretSoil';
import { phosphorusGate } from '../soil/phosphorusGate';
import { soilTestName } from '../soil/soilNames';
import { isTestLater, isTestOld, testOfZone } from '../soil/testOfZone';
import type { PhosphorusGate } from '../soil/types';
import type { Issue, Product, SoilTest, Visit, VisitDose, Yard, Zone } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';
import { decisionOn, decisionWords, SOIL_REFUSAL } from './soilOverride';
import type { TreatableZone } from './types';

/** What the soil says on one dose. */
export interface SoilVerdict {
  /** true: the dose is left out of the plan. */
  readonly isRefused: boolean;
  readonly issues: readonly Issue[];
}

/** Makes an issue that stands at the dose. */
type MakeIssue = (code: string, severity: Issue['severity'], sentence: string) => Issue;

/**
 * Zones of a dose that the soil refuses phosphorus on a day, in the order of the document.
 * @param day YYYY-MM-DD of the visit; null: none is set, and the newest tests count
 */
export function refusedZones(yard: Yard, zoneIds: readonly string[], day: string | null): readonly Zone[] {
  return zonesOf(yard, zoneIds).filter((zone) => phosphorusGate(yard, zone, day).verdict === 'refused');
}

/**
 * Holds a dose against the soil tests of its ground that count on the day of the visit. Phosphorus on a zone
 * whose test calls for none refuses the whole dose (`soil-phosphorus-excess`), unless a logged decision holds
 * for it; on ground without a test it is let through as a fallback, with a warning that asks for one. Where
 * the lab's word of a need goes before a table that calls for none, that is a warning. Potassium where
 * there is more than enough, tests older than three years, and tests sampled after the visit, are noted. A
 * visit that is done is history and is not judged; zones with no ground left to treat are passed over.
 */
export function soilGate(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  product: Product,
  ground: readonly TreatableZone[],
): SoilVerdict {
  const { p2o5Pct, k2oPct } = product.analysis;
  if (visit.doneOn !== null || (p2o5Pct === 0 && k2oPct === 0)) return { isRefused: false, issues: [] };
  const zones = zonesOf(
    yard,
    ground.filter((zone) => zone.areaM2 > 0).map((zone) => zone.zoneId),
  );
  const place = { visitId: visit.id, doseId: dose.id, productId: dose.productId };
  const issue: MakeIssue = (code, severity, sentence) => ({
    code,
    severity,
    message: `${product.name}: ${sentence}`,
    place,
  });
  const { isRefused, issues } =
    p2o5Pct > 0 ? phosphorusVerdict(yard, visit, dose, zones, issue) : { isRefused: false, issues: [] };
  const rich = k2oPct > 0 ? zones.filter((zone) => hasMuchPotassium(yard, zone, visit.date)) : [];
  const potassium = rich.length > 0 ? [potassiumIssue(yard, rich, issue)] : [];
  const aged = ageIssues(yard, visit, zones, p2o5Pct > 0 ? 'P' : 'K', issue);
  return { isRefused, issues: [...issues, ...potassium, ...aged] };
}

function phosphorusVerdict(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  zones: readonly Zone[],
  issue: MakeIssue,
): SoilVerdict {
  const byGate = new Map<PhosphorusGate, Zone[]>();
  for (const zone of zones) {
    const gate = phosphorusGate(yard, zone, visit.date);
    const own = byGate.get(gate);
    if (own) own.push(zone);
    else byGate.set(gate, [zone]);
  }
  const gatesOf = (verdict: PhosphorusGate['verdict']) =>
    [...byGate].filter(([gate]) => gate.verdict === verdict);
  const zonesAt = (gates: readonly (readonly [PhosphorusGate, readonly Zone[]])[]) =>
    gates.flatMap(([, own]) => own);
  const issues: Issue[] = [];
  let isRefused = false;

  const refused = gatesOf('refused');
  if (refused.length > 0) {
    const why = reasonsOf(yard, refused);
    const differ = refused.flatMap(([{ disagreement }]) => (disagreement === null ? [] : ` ${disagreement}`));
    const decision = decisionOn(yard, visit, dose, zonesAt(refused));
    isRefused = decision === null || decision.lapses.length > 0;
    const { override, lapses } = decision ?? { override: null, lapses: [] };
    const lapse =
      override === null || !isRefused
        ? ''
        : ` The decision of ${override.on} was for ${decisionWords(yard, override)}; it does not hold here: ${lapses.join('; ')}.`;
    const said = `${why}: no phosphorus is called for.${differ.join('')}`;
    issues.push(
      isRefused || override === null
        ? issue(SOIL_REFUSAL, 'error', `${said} This dose is left out of the plan.${lapse}`)
        : issue(
            'soil-phosphorus-overridden',
            'warning',
            `${said} Put out all the same, decided ${override.on}: ${override.reason}`,
          ),
    );
  }
  for (const [{ disagreement }, own] of gatesOf('allowed')) {
    if (disagreement === null) continue;
    issues.push(issue('soil-lab-table', 'warning', `${namesOf(yard, own)}: ${disagreement}`));
  }
  const untested = gatesOf('no-test');
  if (untested.length > 0) {
    const reasons = new Set(untested.map(([{ reason }]) => reason));
    issues.push(
      issue(
        'soil-no-test',
        'warning',
        `${namesOf(yard, zonesAt(untested))}: ${[...reasons].join('; ')}. Have the soil tested before phosphorus goes on; until then this dose stands as a fallback only, and a product without phosphorus needs no test.`,
      ),
    );
  }
  return { isRefused, issues };
}

function hasMuchPotassium(yard: Yard, zone: Zone, day: string | null): boolean {
  const test = testOfZone(yard, zone, 'K', day);
  return test !== null && levelOf(test, 'K')?.level === 'very-high';
}

function potassiumIssue(yard: Yard, zones: readonly Zone[], issue: MakeIssue): Issue {
  const words = `${namesOf(yard, zones)}: the soil test has more than enough potassium.`;
  return issue('soil-potassium-high', 'note', words);
}

/** `soil-test-old`, `soil-test-later` (notes): tests that hardly speak for the day of the visit. */
function ageIssues(
  yard: Yard,
  { date }: Visit,
  zones: readonly Zone[],
  nutrient: 'P' | 'K',
  issue: MakeIssue,
): readonly Issue[] {
  if (date === null) return [];
  const tests = new Set<SoilTest>(zones.flatMap((zone) => testOfZone(yard, zone, nutrient, date) ?? []));
  return [...tests].flatMap((test) => {
    const name = `“${soilTestName(test)}” of ${test.date}`;
    if (isTestLater(test, date)) {
      const words = `no soil test was sampled by the day of the visit; ${name} is taken in its place.`;
      return [issue('soil-test-later', 'note', words)];
    }
    const words = `the soil test ${name} is more than three years old on the day of the visit; have the soil tested anew.`;
    return isTestOld(test, date) ? [issue('soil-test-old', 'note', words)] : [];
  });
}

/** "Back lawn has P 92 ppm (…); Strip, Front lawn have P 80 ppm (…)": zones of one reason together. */
function reasonsOf(yard: Yard, refused: readonly (readonly [PhosphorusGate, readonly Zone[]])[]): string {
  return refused
    .map(([{ reason }, own]) => `${namesOf(yard, own)} ${own.length === 1 ? 'has' : 'have'} ${reason}`)
    .join('; ');
}

function zonesOf(yard: Yard, zoneIds: readonly string[]): readonly Zone[] {
  const ids = new Set(zoneIds);
  return yard.zones.filter((zone) => ids.has(zone.id));
}

function namesOf(yard: Yard, zones: readonly Zone[]): string {
  return zoneNames(
    yard,
    zones.map((zone) => zone.id),
  );
}
