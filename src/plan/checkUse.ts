import type { Applicator, Issue, Product } from '../yard/types';
import { packsOfUse } from './applyUse';
import { labelIssue } from './labelIssue';
import { convertAmount, isLiquid, measuredUnit, productRate } from './rate';
import { productVolume } from './sprayRate';

/** More spray than any lawn label asks for, L/m² (25 gal per 1,000 sq ft); above is a slip of unit. Common practice, no source. */
const MOST_CARRIER_L_PER_M2 = 1;
const SPREADERS: readonly Applicator[] = ['broadcast-spreader', 'drop-spreader'];

/**
 * What cannot be right in one use of a label: its rate, packs, carrier and spread distance, and the
 * label's limits held against its rate. Paths as if the use stood in the product itself.
 * @param product as the use has it (see `applyUse`)
 */
export function checkUse(product: Product): Issue[] {
  return [
    ...checkUsePacks(product),
    ...checkDensityGiven(product),
    ...productRate(product).issues,
    ...checkAgainstLimits(product),
    ...checkCarrier(product),
    ...checkSpread(product),
  ];
}

function checkUsePacks(product: Product): Issue[] {
  const { packs, packIds } = product;
  if (packs.length === 0) return [];
  const known = packsOfUse(product);
  const issues = (packIds ?? [])
    .filter((id) => packs.every((pack) => pack.id !== id))
    .map((id) =>
      labelIssue(
        product,
        'use-pack-unknown',
        'packIds',
        `this use names a pack size (${id}) that is not listed; it is left out.`,
        'warning',
      ),
    );
  if (known.length === 0) {
    const sentence = 'choose at least one pack size that this use opens.';
    return [...issues, labelIssue(product, 'use-no-packs', 'packIds', sentence)];
  }
  const unit = measuredUnit(product);
  for (const pack of known) {
    const i = packs.indexOf(pack);
    if (!(pack.content.value > 0) || convertAmount(pack.content, unit, product.densityKgPerL)) continue;
    const sentence = `pack ${i + 1} is measured otherwise than the first; give the density or use one measure.`;
    issues.push(labelIssue(product, 'pack-unit', `packs[${i}].content`, sentence));
  }
  return issues;
}

function checkDensityGiven(product: Product): Issue[] {
  const { analysis, densityKgPerL, ingredients, rate } = product;
  const carries =
    analysis.nPct > 0 ||
    analysis.p2o5Pct > 0 ||
    analysis.k2oPct > 0 ||
    Object.values(analysis.elementsPct).some((pct) => pct > 0) ||
    ingredients.some(({ pct }) => pct > 0);
  const isNeeded = isLiquid(product) && carries && rate.basis !== 'nutrient-per-area';
  if (densityKgPerL !== null || !isNeeded) return [];
  const sentence =
    'without its density the nutrients of a liquid cannot be counted; it is on the label or the safety data sheet.';
  return [labelIssue(product, 'density-missing', 'densityKgPerL', sentence, 'warning')];
}

function checkAgainstLimits(product: Product): Issue[] {
  const { rate } = productRate(product);
  if (rate === null) return [];
  const fields = [
    ['maxPerDose', 'the most for one dose'],
    ['maxPerYear', 'the most for a year'],
  ] as const;
  return fields.flatMap(([field, words]): Issue[] => {
    const limit = product.limits[field];
    if (limit === null || !(limit.value > 0)) return [];
    const most = convertAmount(limit, rate.perM2.unit, product.densityKgPerL);
    const path = `limits.${field}`;
    if (most === null) {
      const sentence = `${words} is in another measure than the rate; give the density.`;
      return [labelIssue(product, 'limit-unit', path, sentence)];
    }
    if (!(most.value < rate.perM2.value * (1 - 1e-9))) return [];
    const sentence = `${words} is less than the label rate itself; one of them is wrong.`;
    return [labelIssue(product, 'limit-below-rate', path, sentence, 'warning')];
  });
}

function checkCarrier(product: Product): Issue[] {
  const { carrierLPerM2: carrier, carrierIsTotal, applicator, form } = product;
  const { rate } = productRate(product);
  const told = (code: string, sentence: string, severity: Issue['severity'] = 'warning') => [
    labelIssue(product, code, 'carrierLPerM2', sentence, severity),
  ];
  if (carrier === null || carrier === 0)
    return applicator === 'tank-sprayer' && form !== 'ready-to-use'
      ? told('carrier-missing', 'for a tank, say how much water goes with it on an area.')
      : [];
  if (!(carrier > 0)) return told('carrier-negative', 'the carrier water cannot be less than zero.', 'error');
  if (rate !== null && carrierIsTotal && carrier < productVolume(product, rate))
    return told(
      'carrier-below-rate',
      'the whole spray is less than the product in it; the carrier figure may be the water added.',
      'error',
    );
  if (applicator !== null && SPREADERS.includes(applicator))
    return told('carrier-dry', 'a spreader takes no water; leave the carrier empty or choose a sprayer.');
  if (applicator === 'hose-end')
    return told(
      'carrier-hose',
      'a hose-end bottle draws its water from the hose, so none is mixed in; leave the carrier empty.',
    );
  return carrier > MOST_CARRIER_L_PER_M2
    ? told('carrier-odd', 'that is more water than a sprayer puts out; check the unit.')
    : [];
}

function checkSpread(product: Product): Issue[] {
  return product.spreadDistanceM >= 0
    ? []
    : [
        labelIssue(
          product,
          'spread-negative',
          'spreadDistanceM',
          'the spread distance cannot be less than zero.',
        ),
      ];
}
