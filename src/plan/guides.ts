import { formatNutrientRate } from '../units/format';
import { DEFAULT_CAPS } from '../yard/defaults';
import type { Issue, NutrientCaps, Visit, Yard } from '../yard/types';
import { laidRates } from './laidRates';
import type { NutrientRates } from './nutrients';
import type { DoseFigures } from './types';

const TOLERANCE = 1e-9;

/** Where the published defaults of `DEFAULT_CAPS` are from; null: there is no published default. */
const PUBLISHED: Readonly<Record<keyof NutrientCaps, string | null>> = {
  totalNPerDose: 'Univ. of Illinois, 1995',
  solubleNPerDose: 'UF/IFAS EP353, Florida rule',
  p2o5PerDose: 'UF/IFAS EP353, Florida rule',
  nPerYear: null,
  p2o5PerYear: 'UF/IFAS EP353, Florida rule',
  k2oPerYear: null,
};

/** The published default of a cap, kg/m², and where it is from; null: there is none. */
export function publishedCap(
  key: keyof NutrientCaps,
): { readonly kgPerM2: number; readonly source: string } | null {
  const kgPerM2 = DEFAULT_CAPS[key];
  const source = PUBLISHED[key];
  return kgPerM2 === null || source === null ? null : { kgPerM2, source };
}

/** The source of a cap in words: that of the published default while it stands, else the person's own entry. */
export function capSource(key: keyof NutrientCaps, cap: number): string {
  const usual = DEFAULT_CAPS[key];
  const isUsual = usual !== null && Math.abs(cap - usual) <= 1e-6 * usual;
  return (isUsual && PUBLISHED[key]) || 'the cap you set';
}

/**
 * Holds one visit against the yard's caps for one application (`yard.caps`; null: no cap). The label and
 * local rules come first.
 * A visit that is done counts by what was really used.
 * @returns warnings where a zone's sum passes a cap, each once with its zones, and a note on phosphorus
 */
export function guideIssues(yard: Yard, visit: Visit, doses: readonly DoseFigures[]): readonly Issue[] {
  const visitId = visit.id;
  const byZone = new Map<string, NutrientRates>();
  const soluble = new Map<string, number>();
  const names = new Map<string, string>();
  const silent = new Set<string>();
  for (const dose of doses) {
    const laid = laidRates(dose, visit.doneOn !== null);
    if (laid === null) continue;
    const own = laid.nutrientKgPerM2;
    for (const zone of dose.zones) {
      if (!(zone.areaM2 > 0)) continue;
      const { N, P2O5, K2O } = byZone.get(zone.zoneId) ?? { N: 0, P2O5: 0, K2O: 0 };
      byZone.set(zone.zoneId, { N: N + own.N, P2O5: P2O5 + own.P2O5, K2O: K2O + own.K2O });
      names.set(zone.zoneId, zone.name);
      soluble.set(zone.zoneId, (soluble.get(zone.zoneId) ?? 0) + laid.solubleNKgPerM2);
      if (own.N > 0 && dose.product.analysis.slowNPctOfN === null) silent.add(zone.zoneId);
    }
  }
  const issues: Issue[] = [];
  const check = (
    code: string,
    key: 'totalNPerDose' | 'solubleNPerDose' | 'p2o5PerDose',
    what: string,
    of: (zoneId: string) => number,
  ) => {
    const guide = yard.caps[key];
    if (guide === null) return [];
    const over = [...byZone.keys()].filter((id) => of(id) > guide * (1 + TOLERANCE));
    if (over.length === 0) return [];
    const most = formatNutrientRate(Math.max(...over.map(of)), yard.settings.units);
    const limit = formatNutrientRate(guide, yard.settings.units);
    const where = over.map((id) => names.get(id) || 'unnamed zone').join(', ');
    issues.push({
      code,
      severity: 'warning',
      message: `${what} of ${most} on ${where} is over ${limit} at once (${capSource(key, guide)}). The label and local rules decide.`,
      place: { visitId },
    });
    return over;
  };
  const fast = check('guide-soluble-n', 'solubleNPerDose', 'Soluble nitrogen', (id) => soluble.get(id) ?? 0);
  if (fast.some((id) => silent.has(id))) {
    issues.push({
      code: 'slow-share-unknown',
      severity: 'note',
      message: 'Where a label is silent on slow release, all its nitrogen is counted as soluble.',
      place: { visitId },
    });
  }
  check('guide-total-n', 'totalNPerDose', 'Nitrogen', (id) => byZone.get(id)?.N ?? 0);
  check('guide-p2o5', 'p2o5PerDose', 'P2O5', (id) => byZone.get(id)?.P2O5 ?? 0);
  if ([...byZone.values()].some((sum) => sum.P2O5 > 0)) {
    issues.push({
      code: 'phosphorus-soil-test',
      severity: 'note',
      message:
        'This visit lays down phosphorus. Many states allow it on lawns only where a soil test shows a need or turf is new; check local rules.',
      place: { visitId },
    });
  }
  return issues;
}
