import { KG_PER_LB, M2_PER_1000_SQFT } from '../units/factors';
import { formatNutrientRate } from '../units/format';
import type { Issue, Yard } from '../yard/types';
import type { NutrientRates } from './nutrients';
import type { DoseFigures } from './types';

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
const TOLERANCE = 1e-9;

/**
 * General published guides on one visit; the label and local rules come first.
 * Soluble N at most 0.7 lb/1,000 sq ft at once and P2O5 at most 0.25: Florida Urban Turf Fertilizer
 * Rule RE-1.003(2), in Trenholm, UF/IFAS EP353 (ENH1089). Total N at most 1 lb/1,000 sq ft at once:
 * Univ. of Illinois 1995; the same in USGA Green Section Record 62(11) as the upper end of the range.
 */
export const GUIDES = {
  solubleN: 0.7 * LB_PER_1000,
  totalN: 1 * LB_PER_1000,
  p2o5: 0.25 * LB_PER_1000,
} as const;

/**
 * @param byZone sums of the visit, kg/m², by zone id
 * @returns warnings where a zone's sum passes a guide, each once with its zones, and a note on phosphorus
 */
export function guideIssues(
  yard: Yard,
  doses: readonly DoseFigures[],
  byZone: ReadonlyMap<string, NutrientRates>,
  visitId: string,
): readonly Issue[] {
  const soluble = new Map<string, number>();
  const names = new Map<string, string>();
  const silent = new Set<string>();
  for (const dose of doses) {
    const own = dose.nutrientKgPerM2;
    if (own === null) continue;
    const solubleN = dose.solubleNKgPerM2 ?? 0;
    for (const zone of dose.zones) {
      names.set(zone.zoneId, zone.name);
      soluble.set(zone.zoneId, (soluble.get(zone.zoneId) ?? 0) + solubleN);
      if (own.N > 0 && dose.product.analysis.slowNPctOfN === null) silent.add(zone.zoneId);
    }
  }
  const issues: Issue[] = [];
  const check = (
    code: string,
    guide: number,
    what: string,
    source: string,
    of: (zoneId: string) => number,
  ) => {
    const over = [...byZone.keys()].filter((id) => of(id) > guide * (1 + TOLERANCE));
    if (over.length === 0) return [];
    const most = formatNutrientRate(Math.max(...over.map(of)), yard.settings.units);
    const limit = formatNutrientRate(guide, yard.settings.units);
    const where = over.map((id) => names.get(id) || 'unnamed zone').join(', ');
    issues.push({
      code,
      severity: 'warning',
      message: `${what} of ${most} on ${where} is over ${limit} at once (${source}). The label and local rules decide.`,
      place: { visitId },
    });
    return over;
  };
  const fast = check(
    'guide-soluble-n',
    GUIDES.solubleN,
    'Soluble nitrogen',
    'UF/IFAS EP353, Florida rule',
    (id) => soluble.get(id) ?? 0,
  );
  if (fast.some((id) => silent.has(id))) {
    issues.push({
      code: 'slow-share-unknown',
      severity: 'note',
      message: 'Where a label is silent on slow release, all its nitrogen is counted as soluble.',
      place: { visitId },
    });
  }
  check(
    'guide-total-n',
    GUIDES.totalN,
    'Nitrogen',
    'Univ. of Illinois, 1995',
    (id) => byZone.get(id)?.N ?? 0,
  );
  check('guide-p2o5', GUIDES.p2o5, 'P2O5', 'UF/IFAS EP353, Florida rule', (id) => byZone.get(id)?.P2O5 ?? 0);
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
