import { measuredUnit, productRate } from '../../plan/rate';
import { M_PER_FT } from '../../units/factors';
import { analysisWords } from '../../words/productWords';
import { newProduct } from '../../yard/defaults';
import type { Amount, LabelRate, Product, ProductForm, RateBasis, UnitSystem, Visit } from '../../yard/types';

/** How far past the edge most products land where nobody said what puts them out, m, round in the units shown. */
const FIRST_SPREAD_M: Readonly<Record<UnitSystem, number>> = { us: 2 * M_PER_FT, metric: 0.6 };

/** A new product with nothing filled in that only the label knows. Ids are made by the caller. */
export function blankProduct(id: string, packId: string, name: string, units: UnitSystem): Product {
  return newProduct(id, {
    name,
    spreadDistanceM: FIRST_SPREAD_M[units],
    form: 'liquid-concentrate',
    rate: { basis: 'volume-per-area', rateLPerM2: 0 },
    packs: [{ id: packId, content: { unit: 'L', value: 0 }, price: null }],
  });
}

/**
 * The label rate said by another basis: the same rate where the product is known well enough to turn
 * one into the other, else 0, for the person to fill in.
 */
export function rateInBasis(product: Product, basis: RateBasis): LabelRate {
  if (product.rate.basis === basis) return product.rate;
  const read = productRate(product);
  const known = 'rate' in read ? read.rate : null;
  switch (basis) {
    case 'area-per-container': {
      const pack = product.packs[0];
      const same = known && pack && known.perM2.unit === pack.content.unit && known.perM2.value > 0;
      return {
        basis,
        areaM2: same ? pack.content.value / known.perM2.value : 0,
        packId: pack?.id ?? '',
      };
    }
    case 'volume-per-area':
      return { basis, rateLPerM2: known?.lPerM2 ?? 0 };
    case 'mass-per-area':
      return { basis, rateKgPerM2: known?.kgPerM2 ?? 0 };
    case 'nutrient-per-area':
      return { basis, nutrient: 'N', rateKgPerM2: ((known?.kgPerM2 ?? 0) * product.analysis.nPct) / 100 };
    case 'pure-live-seed': {
      const { seed } = product;
      const live = seed ? (seed.purityPct * seed.germinationPct) / 10_000 : 0;
      return { basis, rateKgPerM2: (known?.kgPerM2 ?? 0) * live };
    }
    case 'effective-lime':
      return { basis, rateKgPerM2: ((known?.kgPerM2 ?? 0) * (product.limePct ?? 0)) / 100 };
    case 'depth':
      // 1 L/m² is a layer of 1 mm
      return { basis, depthM: (known?.lPerM2 ?? 0) / 1000 };
  }
}

/** How labels of each form usually give the rate. Common practice, no source. */
const USUAL_BASIS: Readonly<Record<ProductForm, RateBasis>> = {
  'ready-to-use': 'volume-per-area',
  'liquid-concentrate': 'volume-per-area',
  'soluble-powder': 'mass-per-area',
  granular: 'mass-per-area',
  seed: 'mass-per-area',
  mulch: 'depth',
  topdressing: 'depth',
  'soil-amendment': 'mass-per-area',
};

/** Forms that are spread dry: no water is mixed in. */
const DRY_FORMS: readonly ProductForm[] = ['granular', 'seed', 'mulch', 'topdressing'];

/** True for what is spread as it is, without water to carry it. */
export function isSpreadDry(product: Product): boolean {
  return DRY_FORMS.includes(product.form);
}

/** True for a rate nobody has filled in yet. */
export function isRateEmpty(rate: LabelRate): boolean {
  switch (rate.basis) {
    case 'area-per-container':
      return rate.areaM2 === 0;
    case 'volume-per-area':
      return rate.rateLPerM2 === 0;
    case 'depth':
      return rate.depthM === 0;
    default:
      return rate.rateKgPerM2 === 0;
  }
}

/**
 * The product in another form. What is still empty follows the form: the rate takes the basis labels of
 * that form use, packs the unit it is sold by; what is spread dry has no carrier.
 */
export function inForm(before: Product, form: ProductForm): Product {
  const rate = isRateEmpty(before.rate) ? rateInBasis({ ...before, form }, USUAL_BASIS[form]) : before.rate;
  const carrierLPerM2 = DRY_FORMS.includes(form) ? null : before.carrierLPerM2;
  const product: Product = { ...before, rate, carrierLPerM2 };
  const unit = measuredUnit({ ...product, form, packs: [] });
  const packs = product.packs.map((pack) =>
    pack.content.value === 0 ? { ...pack, content: { unit, value: 0 } as Amount } : pack,
  );
  return { ...product, form, packs };
}

/** The three numbers of a label, where they say anything: of seed or mulch "0-0-0" does not. */
export function shownAnalysis(product: Product): string {
  const { nPct, p2o5Pct, k2oPct } = product.analysis;
  return nPct > 0 || p2o5Pct > 0 || k2oPct > 0 ? analysisWords(product) : '';
}

/** Visits with a dose of the product. */
export function visitsWith(visits: readonly Visit[], productId: string): readonly Visit[] {
  return visits.filter((visit) => visit.doses.some((dose) => dose.productId === productId));
}
