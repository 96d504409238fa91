import { applyUse, usesOf } from '../plan/applyUse';
import { isBulk } from '../plan/rate';
import {
  formatAmount,
  formatAmountRate,
  formatArea,
  formatLength,
  formatNumber,
  formatNutrientRate,
} from '../units/format';
import type {
  Amount,
  Applicator,
  Nutrient,
  Product,
  ProductForm,
  RateBasis,
  UnitSystem,
  VisitDose,
  ZoneClass,
} from '../yard/types';

export const FORM_WORDS: Readonly<Record<ProductForm, string>> = {
  'ready-to-use': 'Ready to use (hose-end or as it is)',
  'liquid-concentrate': 'Liquid concentrate',
  'soluble-powder': 'Soluble powder',
  granular: 'Granular',
  seed: 'Seed',
  mulch: 'Mulch',
  topdressing: 'Topdressing',
  'soil-amendment': 'Soil amendment',
};

export const BASIS_WORDS: Readonly<Record<RateBasis, string>> = {
  'area-per-container': 'One pack covers an area',
  'volume-per-area': 'Volume of product per area',
  'mass-per-area': 'Weight of product per area',
  'nutrient-per-area': 'Weight of a nutrient per area',
  'pure-live-seed': 'Weight of pure live seed per area',
  'effective-lime': 'Weight of effective lime per area',
  depth: 'Depth of a layer',
};

/** What puts a product out. */
export const APPLICATOR_WORDS: Readonly<Record<Applicator, string>> = {
  'hose-end': 'Hose-end bottle',
  'tank-sprayer': 'Backpack or tank sprayer',
  'broadcast-spreader': 'Broadcast spreader',
  'drop-spreader': 'Drop spreader',
  'by-hand': 'By hand',
};

export const NUTRIENT_WORDS: Readonly<Record<Nutrient, string>> = { N: 'N', P2O5: 'P₂O₅', K2O: 'K₂O' };

export const CLASS_WORDS: Readonly<Record<ZoneClass, string>> = {
  'turf-low-cut': 'Low-cut turf',
  'turf-regular': 'Regular turf',
  bed: 'Beds',
  other: 'Other ground',
};

/** "8-0-2", as printed on a label. */
export function analysisWords(product: Product): string {
  const { nPct, p2o5Pct, k2oPct } = product.analysis;
  return [nPct, p2o5Pct, k2oPct].map((pct) => formatNumber(pct, 4)).join('-');
}

/** An amount of the product: bulk goods by cubic measure, others as they are poured or weighed. */
export function amountWords(product: Product, amount: Amount, units: UnitSystem): string {
  return formatAmount(amount, units, isBulk(product));
}

/** The same, by ground. @param perM2 amount per m² */
export function amountRateWords(product: Product, perM2: Amount, units: UnitSystem): string {
  return formatAmountRate(perM2, units, isBulk(product));
}

/** The label rate in plain words. */
export function rateWords(product: Product, units: UnitSystem): string {
  const { rate } = product;
  switch (rate.basis) {
    case 'area-per-container': {
      const pack = product.packs.find((one) => one.id === rate.packId);
      const what = pack ? `one ${amountWords(product, pack.content, units)} pack` : 'one pack';
      return `${what} covers ${formatArea(rate.areaM2, units, 4)}`;
    }
    case 'volume-per-area':
      return amountRateWords(product, { unit: 'L', value: rate.rateLPerM2 }, units);
    case 'mass-per-area':
      return amountRateWords(product, { unit: 'kg', value: rate.rateKgPerM2 }, units);
    case 'nutrient-per-area':
      return `${NUTRIENT_WORDS[rate.nutrient]} at ${formatNutrientRate(rate.rateKgPerM2, units)}`;
    case 'pure-live-seed':
      return `${formatAmountRate({ unit: 'kg', value: rate.rateKgPerM2 }, units)} of pure live seed`;
    case 'effective-lime':
      return `${formatAmountRate({ unit: 'kg', value: rate.rateKgPerM2 }, units)} of effective lime`;
    case 'depth':
      return `a layer of ${formatLength(rate.depthM, units)}`;
  }
}

/** "32 fl oz, 1 gal". */
export function packsWords(product: Product, units: UnitSystem): string {
  return product.packs.map((pack) => amountWords(product, pack.content, units)).join(', ');
}

/** The product's name, or words for none. */
export function productName(product: Pick<Product, 'name'> | undefined): string {
  return product?.name.trim() || 'Product without a name';
}

/**
 * What a use of the label is called: its name, else what puts it out.
 * @param product as the use has it (see `applyUse`)
 */
export function useName(product: Pick<Product, 'useName' | 'applicator'>): string {
  const { useName: name, applicator } = product;
  return name.trim() || (applicator === null ? 'Use of the label' : APPLICATOR_WORDS[applicator]);
}

/** The same where uses are listed: beside a name of its own stands what puts it out: "Light (broadcast spreader)". */
export function useTitle(product: Pick<Product, 'useName' | 'applicator'>): string {
  const name = useName(product);
  const { applicator } = product;
  if (applicator === null) return name;
  const by = APPLICATOR_WORDS[applicator];
  return name.toLowerCase().includes(by.toLowerCase()) ? name : `${name} (${lowerFirst(by)})`;
}

/** A use of a label for a person to choose: "Light rate" and "3 lb per 1,000 sq ft". */
export interface UseChoice {
  /** null: the first use. */
  readonly id: string | null;
  readonly name: string;
  readonly words: string;
}

/** All uses of a label with their names and rates, the first one first. */
export function useChoices(product: Product, units: UnitSystem): readonly UseChoice[] {
  return usesOf(product).map((use) => ({
    id: use.id,
    name: useTitle(use.product),
    words: rateWords(use.product, units),
  }));
}

/**
 * The product's name; of a label with several uses, with the name of the use.
 * @param product as the use has it
 */
export function dosedName(product: Product): string {
  return product.otherUses.length > 0
    ? `${productName(product)}, ${lowerFirst(useName(product))}`
    : productName(product);
}

/** What a dose is called: the name of its product and, of several, of its use; as recorded where it is done. */
export function doseName(dose: VisitDose, products: readonly Product[]): string {
  if (dose.laid !== null) {
    const name = dose.laid.productName.trim() || productName(undefined);
    return dose.laid.useName.trim() === '' ? name : `${name}, ${lowerFirst(dose.laid.useName.trim())}`;
  }
  const product = products.find((each) => each.id === dose.productId);
  const used = product && applyUse(product, dose.useId);
  return used ? dosedName(used) : productName(product);
}

/** "Backpack" within a sentence: "backpack"; what begins with two capitals or a figure stays. */
function lowerFirst(words: string): string {
  return /^[A-Z][^A-Z]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;
}
