import { ELEMENTS, type LabelElement, NUTRIENTS, type Nutrient, type Product } from '../yard/types';
import { nutrientPct } from './rate';
import type { IngredientRate, LaidDose, ProductRate, ZoneNutrients } from './types';

/** Nutrient laid down, kg/m², by nutrient; P2O5 and K2O by the oxide convention of labels. */
export type NutrientRates = Readonly<Record<Nutrient, number>>;

/**
 * Nutrient laid down, kg/m²: product mass times percent / 100. Percentages are by weight, on liquids
 * too; P2O5 and K2O as the label prints them.
 * @returns null when a liquid's density is not known and it carries nutrient
 */
export function nutrientRates(
  product: Pick<Product, 'analysis'>,
  rate: Pick<ProductRate, 'kgPerM2'>,
): NutrientRates | null {
  const pcts = NUTRIENTS.map((nutrient) => nutrientPct(product, nutrient));
  if (pcts.every((pct) => pct === 0)) return { N: 0, P2O5: 0, K2O: 0 };
  const { kgPerM2 } = rate;
  if (kgPerM2 === null) return null;
  const of = (nutrient: Nutrient) => (kgPerM2 * nutrientPct(product, nutrient)) / 100;
  return { N: of('N'), P2O5: of('P2O5'), K2O: of('K2O') };
}

/** Other guaranteed elements laid down, kg/m²; null when a liquid's density is not known and it carries any. */
export function elementRates(
  product: Pick<Product, 'analysis'>,
  rate: Pick<ProductRate, 'kgPerM2'>,
): Readonly<Partial<Record<LabelElement, number>>> | null {
  const { elementsPct } = product.analysis;
  const carried = ELEMENTS.filter((element) => (elementsPct[element] ?? 0) > 0);
  const { kgPerM2 } = rate;
  if (carried.length === 0) return {};
  if (kgPerM2 === null) return null;
  return Object.fromEntries(
    carried.map((element) => [element, (kgPerM2 * (elementsPct[element] ?? 0)) / 100]),
  );
}

/**
 * Humic acid, kelp and whatever else the label names beside plant food, laid down, kg/m², in the label's
 * order; ingredients of 0 % are left out.
 * @returns null when a liquid's density is not known and it names any
 */
export function ingredientRates(product: Product, rate: ProductRate): readonly IngredientRate[] | null {
  const named = product.ingredients.filter((ingredient) => ingredient.pct > 0);
  const { kgPerM2 } = rate;
  if (named.length === 0) return [];
  if (kgPerM2 === null) return null;
  return named.map(({ name, pct }) => ({ name, kgPerM2: (kgPerM2 * pct) / 100 }));
}

/** N that is not slow-release, kg/m². A label silent on slow release counts as all soluble, the careful reading. */
export function solubleNitrogen(product: Pick<Product, 'analysis'>, nKgPerM2: number): number {
  return nKgPerM2 * (1 - (product.analysis.slowNPctOfN ?? 0) / 100);
}

/**
 * Nutrient in a litre of product, kg/L: its density times percent / 100 (Purdue Extension, Camberato 2023:
 * 28 % N at 10.6 lb/gal is 2.97 lb N in the gallon). Null when the density is not known.
 */
export function nutrientPerLitre(product: Product, nutrient: Nutrient): number | null {
  const { densityKgPerL } = product;
  if (densityKgPerL === null || !(densityKgPerL > 0)) return null;
  return (densityKgPerL * nutrientPct(product, nutrient)) / 100;
}

/**
 * What all doses of a visit lay down on each zone, by the plan or, once it is done, by what was really used.
 * Doses of unknown density are left out (they carry an issue).
 */
export function nutrientsByZone(laid: readonly LaidDose[]): ReadonlyMap<string, ZoneNutrients> {
  const byZone = new Map<string, ZoneNutrients>();
  for (const { zones, rates, isSilentOnSlow } of laid) {
    if (rates === null) continue;
    const { N, P2O5, K2O } = rates.nutrientKgPerM2;
    for (const { zoneId } of zones) {
      const sum = byZone.get(zoneId);
      byZone.set(zoneId, {
        N: (sum?.N ?? 0) + N,
        P2O5: (sum?.P2O5 ?? 0) + P2O5,
        K2O: (sum?.K2O ?? 0) + K2O,
        solubleN: (sum?.solubleN ?? 0) + rates.solubleNKgPerM2,
        isSilentOnSlow: (sum?.isSilentOnSlow ?? false) || (isSilentOnSlow && N > 0),
      });
    }
  }
  return byZone;
}
