import type { CompareKey, CompareOption, DoseBound } from '../../buy/compareTypes';
import { unitChoices } from '../../units/choices';
import { KG_PER_LB, M2_PER_1000_SQFT } from '../../units/factors';
import { formatMoney, formatNumber } from '../../units/format';
import { amountWords, NUTRIENT_WORDS } from '../../words/productWords';
import { ELEMENTS, type UnitSystem } from '../../yard/types';

const NB = '\u00a0';

/** Why the visits are as many as they are. */
export const BOUND_WORDS: Readonly<Record<DoseBound, string>> = {
  wanted: 'one visit brings all',
  'label-rate': 'each at most the label rate',
  'label-most': 'each at most the label’s most',
  'total-n-cap': 'each held to the cap of nitrogen at once',
  'soluble-n-cap': 'each held to the cap of soluble nitrogen at once',
  'p2o5-cap': 'each held to the cap of P₂O₅ at once',
};

/** What the figures are sorted by. */
export const KEY_WORDS: Readonly<Record<CompareKey, string>> = {
  cost: 'Cost of whole packs',
  costPerKgN: 'Cost of nitrogen, only what is used',
  visits: 'Visits',
  days: 'Days from first to last visit',
  solubleNPerVisit: 'Soluble N at once',
  saltPerVisit: 'Salt at once',
};

/** "lb per 1,000 sq ft" or "g/m²": the unit of the rates beside each other. */
export function rateUnit(units: UnitSystem): string {
  return unitChoices('mass-per-area', units)[0]?.label ?? '';
}

/** A rate in that unit, without it. @param kgPerM2 null: a dash */
export function rateNumber(kgPerM2: number | null, units: UnitSystem): string {
  return kgPerM2 === null ? '–' : formatNumber(unitChoices('mass-per-area', units)[0]?.fromSI(kgPerM2) ?? 0);
}

/** "$2.17", for each lb or kg of nitrogen. @param costPerKgN null: a dash */
export function nitrogenCost(costPerKgN: number | null, units: UnitSystem, currency: string): string {
  if (costPerKgN === null) return '–';
  return formatMoney(costPerKgN * (units === 'us' ? KG_PER_LB : 1), currency);
}

/** "$4.20 per 1,000 sq ft"; null where the cost is not known. */
export function groundCost(option: CompareOption, units: UnitSystem, currency: string): string | null {
  if (option.costPerM2 === null) return null;
  return units === 'us'
    ? `${formatMoney(option.costPerM2 * M2_PER_1000_SQFT, currency)} per${NB}1,000${NB}sq${NB}ft`
    : `${formatMoney(option.costPerM2 * 100, currency)} per${NB}100${NB}m²`;
}

/** "2 packs of 16 lb, 1 of 48 lb"; words for none. */
export function boughtWords({ product, packs }: CompareOption, units: UnitSystem): string {
  const parts = packs.flatMap(({ packId, count }, i) => {
    const pack = product.packs.find((each) => each.id === packId);
    if (!pack) return [];
    const what = i === 0 ? (count === 1 ? 'pack of' : 'packs of') : 'of';
    return `${count} ${what} ${amountWords(product, pack.content, units)}`;
  });
  return parts.join(', ') || 'no pack size on its label';
}

/** What all visits bring beside nitrogen: "P₂O₅ 0.3, Fe 0.01 lb per 1,000 sq ft"; null for nothing. */
export function alongWords({ nutrients, elements }: CompareOption, units: UnitSystem): string | null {
  const parts = [
    ...(['P2O5', 'K2O'] as const).map((name) => [NUTRIENT_WORDS[name], nutrients[name]] as const),
    ...ELEMENTS.map((element) => [element, elements[element] ?? 0] as const),
  ].flatMap(([name, laid]) => (laid > 0 ? `${name}${NB}${rateNumber(laid, units)}` : []));
  return parts.length > 0 ? `${parts.join(', ')} ${rateUnit(units)}` : null;
}

/** "over 126 days", at the label's least interval; "interval not told" where the label is silent. */
export function spanWords({ visits, days }: CompareOption): string {
  if (visits === 1) return 'all at once';
  return days === null ? 'interval not told' : `over ${days} days`;
}
