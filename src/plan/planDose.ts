import type { Issue, Product, VisitDose, Yard } from '../yard/types';
import { packsOfUse } from './applyUse';
import { cautionsOfDose } from './cautions';
import { countContainers } from './containers';
import { equipmentOfDose } from './equipmentOfDose';
import { elementRates, ingredientRates, nutrientRates, solubleNitrogen } from './nutrients';
import { convertAmount, productRate } from './rate';
import { saltLoad } from './saltLoad';
import { sprayRate } from './sprayRate';
import { tankLoads } from './tankLoads';
import type { DoseFigures, DoseZone } from './types';
import type { VisitInput } from './visit';

/**
 * All figures of one dose.
 * @param product as the dose's use of the label has it, found to be in order
 * @returns null when its label gives no rate
 */
export function planDose(input: VisitInput, dose: VisitDose, product: Product): DoseFigures | null {
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
  const containers = packsOfUse(product).flatMap((pack) => {
    const need = convertAmount(amount, pack.content.unit, product.densityKgPerL);
    return need ? [countContainers(need, pack, areaM2, areaSigmaM2)] : [];
  });
  const spray = sprayRate(product, rate);
  const tankL = visit.tankL ?? ownTankL(yard, dose, product);
  const nutrientKgPerM2 = nutrientRates(product, rate);
  const elementKgPerM2 = elementRates(product, rate);
  const ingredients = ingredientRates(product, rate);
  const place = { visitId: visit.id, doseId: dose.id, productId: product.id };
  const issues: Issue[] = cautionsOfDose(yard, visit, dose, product, rate);
  if (nutrientKgPerM2 === null || elementKgPerM2 === null || ingredients === null) {
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
    tank: spray && tankL !== null && tankL > 0 ? tankLoads(rate, spray, tankL, areaM2) : null,
    nutrientKgPerM2,
    solubleNKgPerM2: nutrientKgPerM2 && solubleNitrogen(product, nutrientKgPerM2.N),
    elementKgPerM2,
    ingredients,
    saltKgPerM2: saltLoad(product, rate),
    issues,
  };
}

/** What the sprayer that a dose goes out with holds, L; null: it is another kind of equipment, or not told. */
function ownTankL(yard: Yard, dose: VisitDose, product: Product): number | null {
  const { applicator, holds } = equipmentOfDose(yard, dose, product).equipment;
  return applicator === 'tank-sprayer' && holds?.unit === 'L' ? holds.value : null;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
