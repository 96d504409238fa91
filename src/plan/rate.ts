import type { Amount, Issue, Nutrient, Product, ProductForm } from '../yard/types';
import type { ProductRate } from './types';

const LIQUID_FORMS: readonly ProductForm[] = ['ready-to-use', 'liquid-concentrate'];

/**
 * True for what is poured: a liquid form, or a soil amendment sold by volume and not laid by depth (liquid
 * humic acid and the like; common practice, no source). Mulch and topdressing by volume are bulk goods.
 */
export function isLiquid(product: Product): boolean {
  if (LIQUID_FORMS.includes(product.form)) return true;
  if (product.form !== 'soil-amendment' || product.rate.basis === 'depth') return false;
  const first = product.packs[0];
  return first === undefined ? product.rate.basis === 'volume-per-area' : first.content.unit === 'L';
}

/**
 * True for loose goods reckoned by the cubic measure: mulch, topdressing, and what is laid by depth
 * (common practice, no source).
 */
export function isBulk(product: Product): boolean {
  if (LIQUID_FORMS.includes(product.form)) return false;
  return product.form === 'mulch' || product.form === 'topdressing' || product.rate.basis === 'depth';
}

/** Percent by weight of one nutrient on the label (oxide convention for P and K). */
export function nutrientPct(product: Product, nutrient: Nutrient): number {
  const { nPct, p2o5Pct, k2oPct } = product.analysis;
  return nutrient === 'N' ? nPct : nutrient === 'P2O5' ? p2o5Pct : k2oPct;
}

/** The unit the product is measured out in: that of its packs, else by its form (bulk goods: by their rate). */
export function measuredUnit(product: Product): Amount['unit'] {
  const byWeight = product.rate.basis === 'mass-per-area' || product.rate.basis === 'nutrient-per-area';
  const poured = isLiquid(product) || (isBulk(product) && !byWeight);
  return product.packs[0]?.content.unit ?? (poured ? 'L' : 'kg');
}

/** An amount in the other reading; null when the density is needed and not known. */
export function convertAmount(
  amount: Amount,
  unit: Amount['unit'],
  densityKgPerL: number | null,
): Amount | null {
  if (amount.unit === unit) return amount;
  if (densityKgPerL === null || !(densityKgPerL > 0)) return null;
  return unit === 'kg'
    ? { unit, value: amount.value * densityKgPerL }
    : { unit, value: amount.value / densityKgPerL };
}

/**
 * The label rate as product per m², in the unit it is measured out in and in both readings.
 * Product for a nutrient rate: wanted nutrient / (percent / 100), e.g. Univ. of Nebraska-Lincoln, lawn
 * fertilizer calculations (1.0 lb N with 28-3-6: 3.57 lb per 1,000 sq ft).
 * @param factor multiplies the label rate; 1 is the label rate
 * @returns the rate, or the issues that say why there is none: `rate-no-coverage`, `rate-pack-missing`,
 * `rate-not-positive`, `rate-no-nutrient`, `rate-no-density`
 */
export function productRate(
  product: Product,
  factor = 1,
):
  | { readonly rate: ProductRate; readonly issues: readonly [] }
  | { readonly rate: null; readonly issues: readonly Issue[] } {
  const base = basisPerM2(product);
  if ('code' in base) return { rate: null, issues: [base] };
  const amount: Amount = { unit: base.unit, value: base.value * factor };
  if (!Number.isFinite(amount.value)) {
    const message = `${product.name}: the label rate is not a number.`;
    return { rate: null, issues: [rateIssue(product, 'rate-not-positive', message, 'rate')] };
  }
  const { densityKgPerL } = product;
  const perM2 = convertAmount(amount, measuredUnit(product), densityKgPerL);
  if (!perM2) {
    const message = `${product.name}: the rate and the packs are in different measures (mass and volume), so the density is needed.`;
    return { rate: null, issues: [rateIssue(product, 'rate-no-density', message, 'densityKgPerL')] };
  }
  return {
    rate: {
      perM2,
      kgPerM2: convertAmount(amount, 'kg', densityKgPerL)?.value ?? null,
      lPerM2: convertAmount(amount, 'L', densityKgPerL)?.value ?? null,
    },
    issues: [],
  };
}

function basisPerM2(product: Product): Amount | Issue {
  const { rate } = product;
  const notPositive = (field: string) =>
    rateIssue(product, 'rate-not-positive', `${product.name}: the label rate must be more than zero.`, field);
  switch (rate.basis) {
    case 'area-per-container': {
      const pack = product.packs.find((each) => each.id === rate.packId);
      if (!pack) {
        const message = `${product.name}: the coverage names no pack; choose which pack covers that area.`;
        return rateIssue(product, 'rate-pack-missing', message, 'rate.packId');
      }
      if (!(rate.areaM2 > 0)) {
        const message = `${product.name}: the area one container covers must be more than zero.`;
        return rateIssue(product, 'rate-no-coverage', message, 'rate.areaM2');
      }
      return { unit: pack.content.unit, value: pack.content.value / rate.areaM2 };
    }
    case 'volume-per-area':
      return rate.rateLPerM2 > 0 ? { unit: 'L', value: rate.rateLPerM2 } : notPositive('rate.rateLPerM2');
    case 'mass-per-area':
      return rate.rateKgPerM2 > 0 ? { unit: 'kg', value: rate.rateKgPerM2 } : notPositive('rate.rateKgPerM2');
    case 'nutrient-per-area': {
      const pct = nutrientPct(product, rate.nutrient);
      if (!(pct > 0)) {
        const message = `${product.name}: the rate is by ${rate.nutrient}, but the analysis has none of it.`;
        return rateIssue(product, 'rate-no-nutrient', message, 'rate.nutrient');
      }
      return rate.rateKgPerM2 > 0
        ? { unit: 'kg', value: rate.rateKgPerM2 / (pct / 100) }
        : notPositive('rate.rateKgPerM2');
    }
    case 'pure-live-seed': {
      const live = product.seed ? (product.seed.purityPct / 100) * (product.seed.germinationPct / 100) : 0;
      if (!(live > 0)) {
        const message = `${product.name}: the rate is by pure live seed, so purity and germination of the tag are needed.`;
        return rateIssue(product, 'rate-no-seed-tag', message, 'seed');
      }
      return rate.rateKgPerM2 > 0
        ? { unit: 'kg', value: rate.rateKgPerM2 / live }
        : notPositive('rate.rateKgPerM2');
    }
    case 'effective-lime': {
      const effective = (product.limePct ?? 0) / 100;
      if (!(effective > 0)) {
        const message = `${product.name}: the rate is by effective lime, so the effective neutralising value of the label is needed.`;
        return rateIssue(product, 'rate-no-lime-value', message, 'limePct');
      }
      return rate.rateKgPerM2 > 0
        ? { unit: 'kg', value: rate.rateKgPerM2 / effective }
        : notPositive('rate.rateKgPerM2');
    }
    case 'depth':
      // one metre of depth is 1,000 L on each m²
      return rate.depthM > 0 ? { unit: 'L', value: rate.depthM * 1000 } : notPositive('rate.depthM');
  }
}

function rateIssue(product: Product, code: string, message: string, path: string): Issue {
  return { code, severity: 'error', message, place: { productId: product.id, path } };
}
