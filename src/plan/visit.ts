import type { Issue, Visit, Yard } from '../yard/types';
import { applyUse } from './applyUse';
import { cautionsOfOrder, cautionsOfOverlap, type ZoneClash } from './cautions';
import { checkLabel } from './check';
import { checkUse } from './checkUse';
import { laidDose, recordOf } from './laidDose';
import { nutrientsByZone } from './nutrients';
import { planDose } from './planDose';
import { soilGate } from './soilGate';
import { stockIssues } from './stockIssues';
import type { DoseFigures, TreatableZone, VisitFigures } from './types';

/** What one visit is planned from: the document, and the measured ground of each dose. */
export interface VisitInput {
  readonly yard: Yard;
  readonly visit: Visit;
  /** by dose id: the zones it treats, net of no-apply strips. */
  readonly zonesByDose: ReadonlyMap<string, readonly TreatableZone[]>;
  /** by dose id: one standard deviation of their summed area, m². */
  readonly sigmaByDose: ReadonlyMap<string, number>;
  /** pairs of zones that both claim some ground, and how much of it, m²; none by default. */
  readonly clashes?: readonly ZoneClash[];
}

/**
 * Amounts, containers, water, tank loads and nutrients of a visit, dose by dose in their order, by itself
 * (`holdVisit` holds it together with other visits). A dose whose product is gone, whose label cannot be right or that the soil test of its ground refuses is
 * left out of `doses`, and the reason is in `issues`. Amounts are kg or L as the product is measured,
 * areas m². A dose that is done and has a record, or laid nothing, is history: where today's shelf has no such
 * label any more nothing is said against it. Never throws for what a person can enter.
 */
export function planVisit(input: VisitInput): VisitFigures {
  const { yard, visit } = input;
  const issues: Issue[] = [];
  const doses: DoseFigures[] = [];
  for (const dose of visit.doses) {
    const isHistory = visit.doneOn !== null && (recordOf(visit, dose) !== null || dose.actual?.value === 0);
    const place = { visitId: visit.id, doseId: dose.id, productId: dose.productId };
    const label = yard.products.find((each) => each.id === dose.productId);
    if (!label) {
      if (isHistory) continue;
      const message = 'A dose names a product that is no longer on the shelf; choose another.';
      issues.push({ code: 'dose-product-missing', severity: 'error', message, place });
      continue;
    }
    const product = applyUse(label, dose.useId);
    if (!product) {
      if (isHistory) continue;
      const message = `${label.name}: this dose names a use that its label no longer has; choose another.`;
      issues.push({ code: 'dose-use-missing', severity: 'error', message, place });
      continue;
    }
    const faults = [...checkLabel(label), ...checkUse(product)].filter((issue) => issue.severity === 'error');
    const hasFactor = dose.rateFactor > 0 && Number.isFinite(dose.rateFactor);
    if (faults.length > 0 || !hasFactor) {
      if (isHistory) continue;
      const factorFault: Issue = {
        code: 'dose-rate-not-positive',
        severity: 'error',
        message: `${product.name}: the share of the label rate must be a number more than zero.`,
        place,
      };
      const all = hasFactor ? faults : [...faults, factorFault];
      issues.push(...all.map((issue) => ({ ...issue, place: { ...issue.place, ...place } })));
      continue;
    }
    const soil = soilGate(yard, visit, dose, product, input.zonesByDose.get(dose.id) ?? []);
    issues.push(...soil.issues);
    if (soil.isRefused) continue;
    const figures = planDose(input, dose, product);
    if (figures) doses.push(figures);
  }
  if (visit.tankL !== null && !(visit.tankL > 0)) {
    const message = 'The tank must hold more than zero; leave it empty for none.';
    const place = { visitId: visit.id, path: 'tankL' };
    issues.push({ code: 'tank-not-positive', severity: 'error', message, place });
  }
  const laid = visit.doses.flatMap((dose) => {
    const figures = doses.find((each) => each.dose.id === dose.id) ?? null;
    return laidDose(visit, dose, figures) ?? [];
  });
  issues.push(...cautionsOfOverlap(yard, visit.id, doses, input.clashes ?? []));
  issues.push(...cautionsOfOrder(visit, doses));
  // what a done visit used has left the shelf
  if (visit.doneOn === null) issues.push(...stockIssues(yard, visit.id, doses));
  return { visit, doses, laid, nutrientByZone: nutrientsByZone(laid), issues };
}
