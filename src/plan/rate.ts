import type { Amount, Applicator, Issue, Nutrient, Product, ProductForm, RateBasis } from '../yard/types';
import { packsOfUse } from './applyUse';
import { pureLivePct } from './pureLiveSeed';
import type { ProductRate } from './types';

const LIQUID_FORMS: readonly ProductForm[] = ['ready-to-use', 'liquid-concentrate'];

/** What sprays; the other applicators spread. */
const SPRAYERS: readonly Applicator[] = ['hose-end', 'tank-sprayer'];

/**
 * True for what is poured: a liquid form, or a soil amendment sold by volume and not laid by depth, unless
 * its use is to spread it (liquid humic acid against a bale of peat; common practice, no source). Mulch and
 * topdressing by volume are bulk goods.
 */
export function isLiquid(product: Product): boolean {
  const { form, rate, applicator } = product;
  if (LIQUID_FORMS.includes(form)) return true;
  if (form !== 'soil-amendment' || rate.basis === 'depth') return false;
  if (applicator !== null && !SPRAYERS.includes(applicator)) return false;
  const first = packsOfUse(product)[0];
  return first === undefined ? rate.basis === 'volume-per-area' : first.content.unit === 'L';
}

/**
 * True for loose goods reckoned by the cubic measure: mulch, topdressing, what is laid by depth, and what
 * else is dry and sold by volume, such as granules by the cubic foot (common practice, no source).
 */
export function isBulk(product: Product): boolean {
  const { form, rate } = product;
  if (LIQUID_FORMS.includes(form)) return false;
  if (form === 'mulch' || form === 'topdressing' || rate.basis === 'depth') return true;
  return !isLiquid(product) && packsOfUse(product)[0]?.content.unit === 'L';
}

/** Percent by weight of one nutrient on the label (oxide convention for P and K). */
export function nutrientPct({ analysis }: Pick<Product, 'analysis'>, nutrient: Nutrient): number {
  const { nPct, p2o5Pct, k2oPct } = analysis;
  return nutrient === 'N' ? nPct : nutrient === 'P2O5' ? p2o5Pct : k2oPct;
}

/** Bases of a rate that say a weight. */
const WEIGHED: readonly RateBasis[] = [
  'mass-per-area',
  'nutrient-per-area',
  'pure-live-seed',
  'effective-lime',
];

/** The unit a use is measured out in: that of its packs, else by its form (bulk goods: by their rate). */
export function measuredUnit(product: Product): Amount['unit'] {
  const first = packsOfUse(product)[0];
  if (first) return first.content.unit;
  return isLiquid(product) || (isBulk(product) && !WEIGHED.includes(product.rate.basis)) ? 'L' : 'kg';
}

/** An amount in the other reading; null when the density is needed and not known. Nothing is nothing in any. */
export function convertAmount(
  amount: Amount,
  unit: Amount['unit'],
  densityKgPerL: number | null,
): Amount | null {
  if (amount.unit === unit) return amount;
  if (amount.value === 0) return { unit, value: 0 };
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
 * `rate-pack-other-use`, `rate-not-positive`, `rate-no-nutrient`, `rate-no-seed-tag`, `rate-no-lime-value`,
 * `rate-no-density`
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
      if (!packsOfUse(product).includes(pack)) {
        const message = `${product.name}: the coverage is of a pack that this use does not open; choose one of its own.`;
        return rateIssue(product, 'rate-pack-other-use', message, 'rate.packId');
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
      const live = product.seed ? pureLivePct(product.seed) / 100 : 0;
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
