import type { Issue, Product, Visit, VisitDose, Yard } from '../yard/types';
import { checkProduct } from './check';
import { countContainers } from './containers';
import { labelLimitIssues, nitrogenGuideIssues } from './limits';
import { nutrientRates, nutrientsByZone } from './nutrients';
import { convertAmount, productRate } from './rate';
import { sprayRate, tankLoads } from './tank';
import type { DoseFigures, DoseZone, TreatableZone, VisitFigures } from './types';

export interface VisitInput {
  readonly yard: Yard;
  readonly visit: Visit;
  /** by dose id: the zones it treats, net of no-apply strips. */
  readonly zonesByDose: ReadonlyMap<string, readonly TreatableZone[]>;
  /** by dose id: one standard deviation of their summed area, m². */
  readonly sigmaByDose: ReadonlyMap<string, number>;
}

/**
 * Amounts, containers, water, tank loads and nutrients of a visit, dose by dose in their order.
 * A dose whose product is gone or whose label cannot be right is left out of `doses`, and the reason is
 * in `issues`.
 */
export function planVisit(input: VisitInput): VisitFigures {
  const { yard, visit } = input;
  const issues: Issue[] = [];
  const doses: DoseFigures[] = [];
  for (const dose of visit.doses) {
    const place = { visitId: visit.id, doseId: dose.id, productId: dose.productId };
    const product = yard.products.find((each) => each.id === dose.productId);
    if (!product) {
      const message = 'A dose names a product that is no longer on the shelf; choose another.';
      issues.push({ code: 'dose-product-missing', severity: 'error', message, place });
      continue;
    }
    const faults = checkProduct(product).filter((issue) => issue.severity === 'error');
    if (faults.length > 0 || !(dose.rateFactor > 0)) {
      const factorFault: Issue = {
        code: 'dose-rate-not-positive',
        severity: 'error',
        message: `${product.name}: the share of the label rate must be more than zero.`,
        place,
      };
      const all = dose.rateFactor > 0 ? faults : [...faults, factorFault];
      issues.push(...all.map((issue) => ({ ...issue, place: { ...issue.place, ...place } })));
      continue;
    }
    const figures = planDose(input, dose, product);
    if (figures) doses.push(figures);
  }
  issues.push(...sameTankIssues(visit, doses));
  return { visit, doses, nutrientByZone: nutrientsByZone(doses), issues };
}

function planDose(input: VisitInput, dose: VisitDose, product: Product): DoseFigures | null {
  const { yard, visit } = input;
  const { rate } = productRate(product, dose.rateFactor);
  if (!rate) return null;
  const zones: DoseZone[] = (input.zonesByDose.get(dose.id) ?? []).map((zone) => ({
    ...zone,
    amount: { unit: rate.perM2.unit, value: rate.perM2.value * zone.areaM2 },
  }));
  const areaM2 = sum(zones.map((zone) => zone.areaM2));
  const areaSigmaM2 = input.sigmaByDose.get(dose.id) ?? 0;
  const amount = { unit: rate.perM2.unit, value: rate.perM2.value * areaM2 };
  const containers = product.packs.flatMap((pack) => {
    const need = convertAmount(amount, pack.content.unit, product.densityKgPerL);
    return need ? [countContainers(need, pack, areaM2, areaSigmaM2)] : [];
  });
  const spray = sprayRate(product, rate);
  const nutrientKgPerM2 = nutrientRates(product, rate);
  const place = { visitId: visit.id, doseId: dose.id, productId: product.id };
  const issues: Issue[] = [...labelLimitIssues(yard, visit, dose, product, rate, zones)];
  if (nutrientKgPerM2) issues.push(...nitrogenGuideIssues(yard, visit, dose, product, nutrientKgPerM2));
  else {
    const message = `${product.name}: nutrients are not counted until its density is known.`;
    issues.push({ code: 'nutrients-no-density', severity: 'warning', message, place });
  }
  if (areaM2 <= 0) {
    const message = `${product.name}: no ground is chosen for this dose.`;
    issues.push({ code: 'dose-no-ground', severity: 'warning', message, place });
  }
  return {
    dose,
    product,
    rate,
    zones,
    areaM2,
    areaSigmaM2,
    stripM2: sum(zones.map((zone) => zone.stripM2)),
    amount,
    containers,
    carrierL: spray ? spray.waterLPerM2 * areaM2 : null,
    tank:
      spray && visit.tankL !== null && visit.tankL > 0 ? tankLoads(rate, spray, visit.tankL, areaM2) : null,
    nutrientKgPerM2,
    issues,
  };
}

/** Two sprays from one tank in a visit: a caution, common practice, no source. */
function sameTankIssues(visit: Visit, doses: readonly DoseFigures[]): Issue[] {
  const sprays = doses.filter((dose) => dose.tank !== null);
  if (sprays.length < 2) return [];
  const names = sprays.map((dose) => dose.product.name).join(', then ');
  const message = `${names}: rinse the tank between them. Mix two in one load only where both labels allow it, after a jar test.`;
  return [{ code: 'tank-shared', severity: 'note', message, place: { visitId: visit.id } }];
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
