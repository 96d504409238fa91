import { formatNutrientRate } from '../units/format';
import { DEFAULT_CAPS } from '../yard/defaults';
import type { Issue, NutrientCaps, Yard } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';
import { isSameDay } from './heldWith';
import type { VisitFigures, ZoneNutrients } from './types';

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
 * Holds one visit against the yard's caps for one application (`yard.caps`; null: no cap). All that goes on a
 * zone in one day is one application, by this visit and others of that day. The label and local rules come
 * first. A visit that is done counts by what was really used.
 * @param others other visits; those of another day do not count
 * @returns warnings where the day's sum on a zone passes a cap, each once with its zones, and a note on phosphorus
 */
export function guideIssues(
  yard: Yard,
  own: VisitFigures,
  others: readonly VisitFigures[],
): readonly Issue[] {
  const visitId = own.visit.id;
  const sameDay = others.filter((other) => isSameDay(own.visit, other.visit));
  const issues: Issue[] = [];
  const check = (
    code: string,
    key: 'totalNPerDose' | 'solubleNPerDose' | 'p2o5PerDose',
    what: string,
    of: (sum: ZoneNutrients) => number,
  ) => {
    const guide = yard.caps[key];
    if (guide === null) return [];
    const over = [...own.nutrientByZone].flatMap(([zoneId, sum]) => {
      if (!(of(sum) > 0)) return [];
      const more = sameDay.flatMap((other) => other.nutrientByZone.get(zoneId) ?? []);
      const value = more.reduce((total, each) => total + of(each), of(sum));
      const isSilent = sum.isSilentOnSlow || more.some((each) => each.isSilentOnSlow);
      return value > guide * (1 + TOLERANCE)
        ? [{ zoneId, value, isSilent, isShared: more.some((each) => of(each) > 0) }]
        : [];
    });
    if (over.length === 0) return [];
    const most = formatNutrientRate(Math.max(...over.map(({ value }) => value)), yard.settings.units);
    const limit = formatNutrientRate(guide, yard.settings.units);
    const where = zoneNames(
      yard,
      over.map(({ zoneId }) => zoneId),
    );
    const shared = over.some(({ isShared }) => isShared) ? ', other visits of the day counted in,' : '';
    issues.push({
      code,
      severity: 'warning',
      message: `${what} of ${most} on ${where}${shared} is over ${limit} at once (${capSource(key, guide)}). The label and local rules decide.`,
      place: { visitId },
    });
    return over;
  };
  const fast = check('guide-soluble-n', 'solubleNPerDose', 'Soluble nitrogen', (sum) => sum.solubleN);
  if (fast.some(({ isSilent }) => isSilent)) {
    issues.push({
      code: 'slow-share-unknown',
      severity: 'note',
      message: 'Where a label is silent on slow release, all its nitrogen is counted as soluble.',
      place: { visitId },
    });
  }
  check('guide-total-n', 'totalNPerDose', 'Nitrogen', (sum) => sum.N);
  check('guide-p2o5', 'p2o5PerDose', 'P2O5', (sum) => sum.P2O5);
  if ([...own.nutrientByZone.values()].some((sum) => sum.P2O5 > 0)) {
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
