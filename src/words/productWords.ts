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

/** What a dose is called. */
export function doseName(dose: VisitDose, products: readonly Product[]): string {
  return productName(products.find((product) => product.id === dose.productId));
}
