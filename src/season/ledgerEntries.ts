import { elementRates, type NutrientRates, nutrientRates, solubleNitrogen } from '../plan/nutrients';
import { convertAmount } from '../plan/rate';
import type { DoseFigures, VisitFigures } from '../plan/types';
import type { LedgerEntry } from './types';

type Rates = Pick<LedgerEntry, 'nutrientKgPerM2' | 'solubleNKgPerM2' | 'elementKgPerM2'>;

/**
 * What the doses of all visits lay on each zone, kg/m². A dose that is done counts by what was really used,
 * spread over its zones by area, whichever measure it was told in; doses of unknown density or on no ground
 * are left out (they carry an issue of their own).
 */
export function ledgerEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return entriesOf(visits, true);
}

/** What the doses of all visits were to lay down by the plan, done or not: each on its planned day, none done. */
export function plannedEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return entriesOf(visits, false);
}

function entriesOf(visits: readonly VisitFigures[], isReal: boolean): readonly LedgerEntry[] {
  return visits.flatMap(({ visit, doses }) =>
    doses.flatMap((figures): LedgerEntry[] => {
      const isDone = isReal && visit.doneOn !== null;
      const rates = (isDone ? usedRates(figures) : null) ?? plannedRates(figures);
      if (rates === null) return [];
      const { id: doseId, productId } = figures.dose;
      const date = isReal ? (visit.doneOn ?? visit.date) : (visit.date ?? visit.doneOn);
      return figures.zones.flatMap(({ zoneId, areaM2 }): LedgerEntry | [] =>
        areaM2 > 0 ? { visitId: visit.id, doseId, productId, zoneId, date, isDone, areaM2, ...rates } : [],
      );
    }),
  );
}

function plannedRates({ nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 }: DoseFigures): Rates | null {
  if (nutrientKgPerM2 === null || solubleNKgPerM2 === null || elementKgPerM2 === null) return null;
  return { nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 };
}

/**
 * By the product really used; null where nothing else than the plan is told, or what was used cannot be
 * turned into a share of the plan. A weight needs no density: percentages are by weight.
 */
function usedRates(figures: DoseFigures): Rates | null {
  const { dose, product, amount, areaM2 } = figures;
  const { actual } = dose;
  if (actual === null || !(areaM2 > 0)) return null;
  const kg = convertAmount(actual, 'kg', product.densityKgPerL);
  if (kg !== null) {
    const rate = { perM2: actual, kgPerM2: kg.value / areaM2, lPerM2: null };
    const nutrient = nutrientRates(product, rate);
    const element = elementRates(product, rate);
    return nutrient && element && asRates(nutrient, solubleNitrogen(product, nutrient.N), element);
  }
  const planned = plannedRates(figures);
  if (planned === null || actual.unit !== amount.unit || !(amount.value > 0)) return null;
  const share = actual.value / amount.value;
  const { N, P2O5, K2O } = planned.nutrientKgPerM2;
  const elements = Object.entries(planned.elementKgPerM2).map(([key, value]) => [key, value * share]);
  return asRates(
    { N: N * share, P2O5: P2O5 * share, K2O: K2O * share },
    planned.solubleNKgPerM2 * share,
    Object.fromEntries(elements),
  );
}

function asRates(
  nutrientKgPerM2: NutrientRates,
  solubleNKgPerM2: number,
  elementKgPerM2: Rates['elementKgPerM2'],
): Rates {
  return { nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 };
}

/** True for a done dose whose real amount is in the other measure while no density turns one into the other: it counts as planned. */
export function isUseUnread({ dose, product, amount }: DoseFigures): boolean {
  const { actual } = dose;
  return actual !== null && convertAmount(actual, amount.unit, product.densityKgPerL) === null;
}
