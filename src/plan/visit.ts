import type { Issue, Product, Visit, VisitDose, Yard } from '../yard/types';
import { applyUse } from './applyUse';
import { cautionsOfDose, cautionsOfOrder, cautionsOfOverlap, type ZoneClash } from './cautions';
import { checkProduct } from './check';
import { countContainers } from './containers';
import { guideIssues } from './guides';
import { labelLimitIssues, type ZonesOfDose } from './limits';
import { elementRates, nutrientRates, nutrientsByZone, solubleNitrogen } from './nutrients';
import { convertAmount, productRate } from './rate';
import { soilGate } from './soilGate';
import { sprayRate } from './sprayRate';
import { stockIssues } from './stockIssues';
import { tankLoads } from './tankLoads';
import type { DoseFigures, DoseZone, TreatableZone, VisitFigures } from './types';

/** What one visit is planned from: the document, and the measured ground of each dose. */
export interface VisitInput {
  readonly yard: Yard;
  readonly visit: Visit;
  /** by dose id: the zones it treats, net of no-apply strips. */
  readonly zonesByDose: ReadonlyMap<string, readonly TreatableZone[]>;
  /** by dose id: one standard deviation of their summed area, m². */
  readonly sigmaByDose: ReadonlyMap<string, number>;
  /** zones of any visit's dose, for interval and yearly limits; by default those chosen in the yard. */
  readonly zonesOfDose?: ZonesOfDose;
  /** pairs of zones that both claim some ground, and how much of it, m²; none by default. */
  readonly clashes?: readonly ZoneClash[];
}

/**
 * Amounts, containers, water, tank loads and nutrients of a visit, dose by dose in their order.
 * A dose whose product is gone, whose label cannot be right or that the soil test of its ground refuses is
 * left out of `doses`, and the reason is in `issues`. Amounts are kg or L as the product is measured,
 * areas m². Never throws for what a person can enter.
 */
export function planVisit(input: VisitInput): VisitFigures {
  const { yard, visit } = input;
  const issues: Issue[] = [];
  const doses: DoseFigures[] = [];
  for (const dose of visit.doses) {
    const place = { visitId: visit.id, doseId: dose.id, productId: dose.productId };
    const label = yard.products.find((each) => each.id === dose.productId);
    if (!label) {
      const message = 'A dose names a product that is no longer on the shelf; choose another.';
      issues.push({ code: 'dose-product-missing', severity: 'error', message, place });
      continue;
    }
    const product = applyUse(label, dose.useId);
    if (!product) {
      const message = `${label.name}: this dose names a use that its label no longer has; choose another.`;
      issues.push({ code: 'dose-use-missing', severity: 'error', message, place });
      continue;
    }
    const faults = checkProduct(product).filter((issue) => issue.severity === 'error');
    const hasFactor = dose.rateFactor > 0 && Number.isFinite(dose.rateFactor);
    if (faults.length > 0 || !hasFactor) {
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
  const nutrientByZone = nutrientsByZone(doses);
  issues.push(...limitsOfVisit(input, doses));
  issues.push(...guideIssues(yard, doses, nutrientByZone, visit.id));
  issues.push(...cautionsOfOverlap(yard, visit.id, doses, input.clashes ?? []));
  issues.push(...cautionsOfOrder(visit, doses));
  issues.push(...stockIssues(yard, visit.id, doses));
  return { visit, doses, nutrientByZone, issues };
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
  const issues: Issue[] = cautionsOfDose(yard, visit, dose, product, rate);
  if (nutrientKgPerM2 === null) {
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
    solubleNKgPerM2: nutrientKgPerM2 && solubleNitrogen(product, nutrientKgPerM2.N),
    elementKgPerM2: elementRates(product, rate),
    issues,
  };
}

/** The label's limits, once for each product of the visit over all ground its doses treat; told at its last dose. */
function limitsOfVisit(input: VisitInput, doses: readonly DoseFigures[]): readonly Issue[] {
  const lastDoses = new Map(doses.map((dose) => [dose.product.id, dose]));
  return [...lastDoses.values()].flatMap(({ product, dose }) => {
    const own = doses.filter((each) => each.product.id === product.id);
    const treated = own.flatMap((each) => each.zones).filter((zone) => zone.areaM2 > 0);
    const zoneIds = [...new Set(treated.map((zone) => zone.zoneId))];
    return labelLimitIssues(input.yard, input.visit, product, zoneIds, dose.id, input.zonesOfDose);
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
