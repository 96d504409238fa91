import type { LabelElement } from '../yard/types';
import { elementRates, type NutrientRates, nutrientRates, solubleNitrogen } from './nutrients';
import { convertAmount } from './rate';
import type { DoseFigures } from './types';

/** What a dose lays down, kg per m² of its ground. */
export interface LaidRates {
  readonly nutrientKgPerM2: NutrientRates;
  readonly solubleNKgPerM2: number;
  readonly elementKgPerM2: Readonly<Partial<Record<LabelElement, number>>>;
}

/**
 * What a dose lays down: by the plan, or where it is done by what was really used, spread over its zones by
 * area, whichever measure it was told in. A weight needs no density: percentages are by weight. As planned
 * where nothing else is told, or where no density turns what was told round (see `isUseUnread`).
 * @returns null when a density is needed and not known
 */
export function laidRates(figures: DoseFigures, isDone: boolean): LaidRates | null {
  return (isDone ? usedRates(figures) : null) ?? plannedRates(figures);
}

/** True for a real amount in the other measure while no density turns one into the other: it counts as planned. */
export function isUseUnread({ dose, product, amount }: DoseFigures): boolean {
  const { actual } = dose;
  return (
    actual !== null && actual.value > 0 && convertAmount(actual, amount.unit, product.densityKgPerL) === null
  );
}

function plannedRates({ nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 }: DoseFigures): LaidRates | null {
  if (nutrientKgPerM2 === null || solubleNKgPerM2 === null || elementKgPerM2 === null) return null;
  return { nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2 };
}

function usedRates(figures: DoseFigures): LaidRates | null {
  const { dose, product, amount, areaM2 } = figures;
  const { actual } = dose;
  if (actual === null || !(areaM2 > 0)) return null;
  const kg = actual.value === 0 ? { value: 0 } : convertAmount(actual, 'kg', product.densityKgPerL);
  if (kg !== null) {
    const rate = { perM2: actual, kgPerM2: kg.value / areaM2, lPerM2: null };
    const nutrientKgPerM2 = nutrientRates(product, rate);
    const elementKgPerM2 = elementRates(product, rate);
    if (nutrientKgPerM2 === null || elementKgPerM2 === null) return null;
    return { nutrientKgPerM2, solubleNKgPerM2: solubleNitrogen(product, nutrientKgPerM2.N), elementKgPerM2 };
  }
  const planned = plannedRates(figures);
  if (planned === null || actual.unit !== amount.unit || !(amount.value > 0)) return null;
  const share = actual.value / amount.value;
  const { N, P2O5, K2O } = planned.nutrientKgPerM2;
  const elements = Object.entries(planned.elementKgPerM2).map(([key, value]) => [key, value * share]);
  return {
    nutrientKgPerM2: { N: N * share, P2O5: P2O5 * share, K2O: K2O * share },
    solubleNKgPerM2: planned.solubleNKgPerM2 * share,
    elementKgPerM2: Object.fromEntries(elements),
  };
}
