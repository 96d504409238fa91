import { packsOfUse } from '../plan/applyUse';
import { elementalPct } from '../plan/elemental';
import { nutrientPerLitre } from '../plan/nutrients';
import { pureLivePct } from '../plan/pureLiveSeed';
import { saltPerUnit } from '../plan/saltLoad';
import type { DoseFigures } from '../plan/types';
import { L_PER_GAL } from '../units/factors';
import {
  formatDuration,
  formatLength,
  formatMass,
  formatNumber,
  formatNutrientRate,
  formatTemperature,
} from '../units/format';
import { ELEMENT_NAMES } from '../yard/elementNames';
import { ELEMENTS, NUTRIENTS, type Product, type UnitSystem } from '../yard/types';
import { amountRateWords, amountWords, analysisWords, NUTRIENT_WORDS } from './productWords';

/*
 * What a label says beside its three numbers and its rate, in plain words. Each function gives an empty
 * text, or an empty list, where the label is silent.
 */

const NB = '\u00a0';

const pct = (value: number, digits = 3) => `${formatNumber(value, digits)}${NB}%`;

/** "8-0-2 (P 0, K 1.7 as elements)". */
export function elementalWords(product: Product): string {
  const { pPct, kPct } = elementalPct(product.analysis);
  return `${analysisWords(product)} (P${NB}${formatNumber(pPct, 2)}, K${NB}${formatNumber(kPct, 2)} as elements)`;
}

/** "5 % Fe, 2 % Mn", in the order of labels. */
export function elementsWords(product: Product): string {
  const { elementsPct } = product.analysis;
  return ELEMENTS.filter((element) => (elementsPct[element] ?? 0) > 0)
    .map((element) => `${pct(elementsPct[element] ?? 0, 4)} ${element}`)
    .join(', ');
}

/** "6 % humic acid, 1 % kelp extract". */
export function ingredientsWords(product: Product): string {
  return product.ingredients
    .filter((ingredient) => ingredient.pct > 0)
    .map(({ name, pct: share }) => `${pct(share, 4)} ${name.trim() || 'of an ingredient without a name'}`)
    .join(', ');
}

/** "50 % of the N slow-release". */
export function slowWords(product: Product): string {
  const { slowNPctOfN, nPct } = product.analysis;
  return slowNPctOfN === null || !(nPct > 0) ? '' : `${pct(slowNPctOfN)} of the N slow-release`;
}

/** What a dose lays down of one thing that its label guarantees or names. */
export interface LaidRow {
  readonly what: string;
  readonly rate: string;
}

/** What a dose lays down: N, P₂O₅ and K₂O, then other elements, then what else the label names; nothing of what it has none of. */
export function laidRows(
  {
    nutrientKgPerM2,
    elementKgPerM2,
    ingredients,
  }: Pick<DoseFigures, 'nutrientKgPerM2' | 'elementKgPerM2' | 'ingredients'>,
  units: UnitSystem,
): readonly LaidRow[] {
  const rows: [string, number][] = [
    ...NUTRIENTS.map((one): [string, number] => [NUTRIENT_WORDS[one], nutrientKgPerM2?.[one] ?? 0]),
    ...ELEMENTS.map((one): [string, number] => [
      `${ELEMENT_NAMES[one]} (${one})`,
      elementKgPerM2?.[one] ?? 0,
    ]),
    ...(ingredients ?? []).map((one): [string, number] => [
      one.name.trim() || 'An ingredient without a name',
      one.kgPerM2,
    ]),
  ];
  return rows.flatMap(([what, kgPerM2]) =>
    kgPerM2 > 0 ? { what, rate: formatNutrientRate(kgPerM2, units) } : [],
  );
}

/** "98 % pure, 85 % germinates: 83.3 % pure live seed". */
export function seedWords(product: Product): string {
  const { seed } = product;
  if (seed === null) return '';
  return `${pct(seed.purityPct, 4)} pure, ${pct(seed.germinationPct, 4)} germinates: ${pct(pureLivePct(seed))} pure live seed`;
}

/** "62 % effective calcium carbonate". */
export function limeWords(product: Product): string {
  return product.limePct === null ? '' : `${pct(product.limePct)} effective calcium carbonate`;
}

/** "salt index 74.4, 3.1 for each unit of plant food": by weight, and by what it feeds. */
export function saltWords(product: Product): string {
  const { saltIndex, analysis } = product;
  if (saltIndex === null) return '';
  const perUnit = saltPerUnit(saltIndex, analysis.nPct + analysis.p2o5Pct + analysis.k2oPct);
  const byFood = perUnit === null ? '' : `, ${formatNumber(perUnit, 2)} for each unit of plant food`;
  return `salt index ${formatNumber(saltIndex)}${byFood}`;
}

/** "A gallon holds 2.97 lb N."; empty where the density is not known or nothing of it feeds. */
export function volumeWords(product: Product, units: UnitSystem): string {
  const litres = units === 'us' ? L_PER_GAL : 1;
  const held = NUTRIENTS.flatMap((nutrient) => {
    const kgPerL = nutrientPerLitre(product, nutrient) ?? 0;
    return kgPerL > 0 ? `${formatMass(kgPerL * litres, units)} ${NUTRIENT_WORDS[nutrient]}` : [];
  });
  return held.length === 0 ? '' : `A ${units === 'us' ? 'gallon' : 'litre'} holds ${held.join(', ')}.`;
}

/** All that the label says is inside, beside the three numbers, one entry for each kind. */
export function contentsWords(product: Product): readonly string[] {
  return [
    slowWords(product),
    elementsWords(product),
    ingredientsWords(product),
    seedWords(product),
    limeWords(product),
    saltWords(product),
  ].filter((words) => words !== '');
}

/** The label's limits, one entry each: "at most 5 lb per 1,000 sq ft at once". */
export function limitsWords(product: Product, units: UnitSystem): readonly string[] {
  const { maxPerDose, maxPerYear, minIntervalDays, maxDosesPerYear, maxAirTempC } = product.limits;
  const words: string[] = [];
  if (maxPerDose !== null) words.push(`at most ${amountRateWords(product, maxPerDose, units)} at once`);
  if (maxPerYear !== null) words.push(`at most ${amountRateWords(product, maxPerYear, units)} a year`);
  if (minIntervalDays !== null) words.push(`at least ${count(minIntervalDays, 'day')} between`);
  if (maxDosesPerYear !== null) words.push(`at most ${count(maxDosesPerYear, 'application')} a year`);
  if (maxAirTempC !== null) words.push(`not above ${formatTemperature(maxAirTempC, units)} in the air`);
  return words;
}

/** "no rain for 4 h after it is down". */
export function rainfastWords(product: Product): string {
  const { rainfastS } = product;
  return rainfastS === null || rainfastS === 0
    ? ''
    : `no rain for ${formatDuration(rainfastS)} after it is down`;
}

/**
 * "water in with 0.25 in", or "water in".
 * @param product as the use has it: one use may be watered in and another not
 */
export function waterInWords(product: Product, units: UnitSystem): string {
  const { waterIn, waterInDepthM } = product;
  if (!waterIn) return '';
  return waterInDepthM === null || waterInDepthM === 0
    ? 'water in'
    : `water in with ${formatLength(waterInDepthM, units)}`;
}

/** "keeps 730 days closed, 180 days opened". */
export function lifeWords(product: Product): string {
  const { shelfLifeDays, openedLifeDays } = product;
  const parts = [
    shelfLifeDays === null ? '' : `${count(shelfLifeDays, 'day')} closed`,
    openedLifeDays === null ? '' : `${count(openedLifeDays, 'day')} opened`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `keeps ${parts.join(', ')}`;
}

/**
 * Which packs a use opens, where not all: "from the 32 fl oz pack only".
 * @param product as the use has it
 */
export function usePacksWords(product: Product, units: UnitSystem): string {
  const own = packsOfUse(product);
  if (own.length === 0 || own.length === product.packs.length) return '';
  const sizes = own.map((pack) => amountWords(product, pack.content, units));
  return `from the ${sizes.join(' or ')} pack only`;
}

function count(value: number, one: string): string {
  return `${formatNumber(value, 4)}${NB}${value === 1 ? one : `${one}s`}`;
}
