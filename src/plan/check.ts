import type { Issue, Product } from '../yard/types';
import { convertAmount, isLiquid, measuredUnit, productRate } from './rate';
import { productVolume } from './sprayRate';

/** Liquids, granules and mulches of the trade lie well inside; outside is a slip of unit. Common practice, no source. */
const DENSITY_RANGE_KG_PER_L = [0.1, 3] as const;

/**
 * What cannot be right on a label, each as one plain sentence with the field in `place.path` (a path in
 * Product, such as `analysis.nPct` or `packs[1].content`). Errors stop a dose from being planned;
 * warnings do not.
 */
export function checkProduct(product: Product): Issue[] {
  return [
    ...checkAnalysis(product),
    ...checkPacks(product),
    ...checkDensity(product),
    ...productRate(product).issues,
    ...checkLimits(product),
    ...checkRest(product),
  ];
}

type Severity = Issue['severity'];

function issueOn(
  product: Product,
  code: string,
  path: string,
  sentence: string,
  severity: Severity = 'error',
): Issue {
  const name = product.name.trim() === '' ? 'This product' : product.name;
  return { code, severity, message: `${name}: ${sentence}`, place: { productId: product.id, path } };
}

function checkAnalysis(product: Product): Issue[] {
  const { nPct, p2o5Pct, k2oPct, slowNPctOfN } = product.analysis;
  const issues: Issue[] = [];
  const numbers = [
    ['nPct', nPct, 'N'],
    ['p2o5Pct', p2o5Pct, 'P2O5'],
    ['k2oPct', k2oPct, 'K2O'],
  ] as const;
  for (const [field, pct, name] of numbers) {
    if (!(pct >= 0 && pct <= 100)) {
      issues.push(
        issueOn(
          product,
          'analysis-out-of-range',
          `analysis.${field}`,
          `${name} must be from 0 to 100 %, not ${pct}.`,
        ),
      );
    }
  }
  const total = nPct + p2o5Pct + k2oPct;
  if (issues.length === 0 && total > 100 * (1 + 1e-9)) {
    issues.push(
      issueOn(
        product,
        'analysis-over-100',
        'analysis',
        `the analysis adds up to ${Number(total.toFixed(2))} %; it cannot be over 100 %.`,
      ),
    );
  }
  if (slowNPctOfN !== null && !(slowNPctOfN >= 0 && slowNPctOfN <= 100)) {
    issues.push(
      issueOn(
        product,
        'slow-n-out-of-range',
        'analysis.slowNPctOfN',
        'the slow-release share must be from 0 to 100 % of the nitrogen.',
      ),
    );
  }
  return issues;
}

function checkPacks(product: Product): Issue[] {
  if (product.packs.length === 0) {
    return [
      issueOn(product, 'no-packs', 'packs', 'add at least one pack size, so that containers can be counted.'),
    ];
  }
  const ids = product.packs.map((pack) => pack.id);
  const strangers = Object.keys(product.onHand)
    .filter((packId) => !ids.includes(packId))
    .map((packId) =>
      issueOn(
        product,
        'on-hand-unknown',
        `onHand.${packId}`,
        `a count of packs on hand names a pack size (${packId}) that is not listed; it is left out.`,
        'warning',
      ),
    );
  const known = product.packs.flatMap((pack, i) => {
    const path = `packs[${i}]`;
    const issues: Issue[] = [];
    const first = ids.indexOf(pack.id);
    if (first < i) {
      issues.push(
        issueOn(
          product,
          'pack-id-double',
          `${path}.id`,
          `pack ${i + 1} has the same id as pack ${first + 1} (${pack.id}), so they cannot be told apart; take one out and add it anew.`,
        ),
      );
    }
    if (!(pack.content.value > 0)) {
      issues.push(
        issueOn(product, 'pack-empty', `${path}.content`, `pack ${i + 1} must hold more than zero.`),
      );
    } else if (!convertAmount(pack.content, measuredUnit(product), product.densityKgPerL)) {
      issues.push(
        issueOn(
          product,
          'pack-unit',
          `${path}.content`,
          `pack ${i + 1} is measured otherwise than the first; give the density or use one measure.`,
        ),
      );
    }
    if (pack.price !== null && !(pack.price >= 0)) {
      issues.push(
        issueOn(
          product,
          'price-negative',
          `${path}.price`,
          `the price of pack ${i + 1} cannot be less than zero.`,
        ),
      );
    }
    const onHand = product.onHand[pack.id];
    if (onHand !== undefined && !(onHand >= 0)) {
      issues.push(
        issueOn(
          product,
          'on-hand-negative',
          `onHand.${pack.id}`,
          `what is on hand of pack ${i + 1} cannot be less than zero.`,
        ),
      );
    }
    return issues;
  });
  return [...known, ...strangers];
}

function checkDensity(product: Product): Issue[] {
  const { densityKgPerL: density, analysis } = product;
  if (density === null) {
    const carries = analysis.nPct > 0 || analysis.p2o5Pct > 0 || analysis.k2oPct > 0;
    const isNeeded = isLiquid(product) && carries && product.rate.basis !== 'nutrient-per-area';
    return isNeeded
      ? [
          issueOn(
            product,
            'density-missing',
            'densityKgPerL',
            'without its density the nutrients of a liquid cannot be counted; it is on the label or the safety data sheet.',
            'warning',
          ),
        ]
      : [];
  }
  const [least, most] = DENSITY_RANGE_KG_PER_L;
  if (!(density > 0)) {
    return [issueOn(product, 'density-not-positive', 'densityKgPerL', 'the density must be more than zero.')];
  }
  return density < least || density > most
    ? [
        issueOn(
          product,
          'density-odd',
          'densityKgPerL',
          'the density is unusual (water is 8.34 lb/gal, 1 kg/L); check the unit.',
          'warning',
        ),
      ]
    : [];
}

function checkLimits(product: Product): Issue[] {
  const { limits } = product;
  const issues: Issue[] = [];
  const { rate } = productRate(product);
  for (const field of ['maxPerDose', 'maxPerYear'] as const) {
    const limit = limits[field];
    if (limit === null) continue;
    const words = field === 'maxPerDose' ? 'the most for one dose' : 'the most for a year';
    if (!(limit.value > 0)) {
      issues.push(
        issueOn(
          product,
          'limit-not-positive',
          `limits.${field}`,
          `${words} must be more than zero; leave it empty when the label is silent.`,
        ),
      );
      continue;
    }
    const most = rate && convertAmount(limit, rate.perM2.unit, product.densityKgPerL);
    if (rate && !most) {
      issues.push(
        issueOn(
          product,
          'limit-unit',
          `limits.${field}`,
          `${words} is in another measure than the rate; give the density.`,
        ),
      );
    } else if (rate && most && most.value < rate.perM2.value * (1 - 1e-9)) {
      issues.push(
        issueOn(
          product,
          'limit-below-rate',
          `limits.${field}`,
          `${words} is less than the label rate itself; one of them is wrong.`,
          'warning',
        ),
      );
    }
  }
  for (const field of ['minIntervalDays', 'maxDosesPerYear'] as const) {
    const limit = limits[field];
    if (limit !== null && !(limit >= (field === 'maxDosesPerYear' ? 1 : 0))) {
      issues.push(
        issueOn(
          product,
          'limit-not-positive',
          `limits.${field}`,
          'a limit must be a positive number; leave it empty when the label is silent.',
        ),
      );
    }
  }
  return issues;
}

function checkRest(product: Product): Issue[] {
  const issues: Issue[] = [];
  if (product.name.trim() === '')
    issues.push(
      issueOn(product, 'no-name', 'name', 'give it a name, so that a helper can find it.', 'warning'),
    );
  if (!(product.spreadDistanceM >= 0)) {
    issues.push(
      issueOn(product, 'spread-negative', 'spreadDistanceM', 'the spread distance cannot be less than zero.'),
    );
  }
  if (product.carrierLPerM2 !== null && !(product.carrierLPerM2 >= 0)) {
    issues.push(
      issueOn(product, 'carrier-negative', 'carrierLPerM2', 'the carrier water cannot be less than zero.'),
    );
  }
  const { rate } = productRate(product);
  const { carrierLPerM2, carrierIsTotal } = product;
  const isTooLittle =
    rate !== null &&
    carrierIsTotal &&
    carrierLPerM2 !== null &&
    carrierLPerM2 > 0 &&
    carrierLPerM2 < productVolume(product, rate);
  if (isTooLittle) {
    issues.push(
      issueOn(
        product,
        'carrier-below-rate',
        'carrierLPerM2',
        'the whole spray is less than the product in it; the carrier figure may be the water added.',
      ),
    );
  }
  return issues;
}
