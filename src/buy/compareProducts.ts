import { packsToDrawOn, usesOf } from '../plan/applyUse';
import { checkLabel } from '../plan/check';
import { checkUse } from '../plan/checkUse';
import { RELATIVE_SLACK } from '../plan/containers';
import { labelMostFactor, largestDose } from '../plan/largestDose';
import { elementRates, type NutrientRates, nutrientRates, solubleNitrogen } from '../plan/nutrients';
import { convertAmount, productRate } from '../plan/rate';
import { saltLoad } from '../plan/saltLoad';
import type { Amount, Issue, LabelElement, NutrientCaps, Product } from '../yard/types';
import type { CompareInput, CompareKey, CompareOption, Comparison, LeftOut } from './compareTypes';
import { coverNeed } from './coverNeed';
import { scoreOfPack } from './goal';
import { leftOver } from './leftOver';
import type { PackCount } from './types';
import { unitCosts } from './unitCosts';

/**
 * The wanted nitrogen by every use of every label side by side. Visits are as few as the largest dose
 * allows, and alike; packs are bought new (stock is left out) for least cost. Cost per kg N is that of the
 * product that goes out at the price of those packs (see `unitCosts`). A label or use in which something
 * cannot be right is left out, as it is from a visit.
 * @throws RangeError when ground or nitrogen is not more than 0
 */
export function compareProducts(input: CompareInput): Comparison {
  if (!(input.areaM2 > 0) || !(input.nKgPerM2 > 0))
    throw new RangeError('Products are compared on some ground for some nitrogen.');
  const options: CompareOption[] = [];
  const leftOut: LeftOut[] = [];
  for (const label of input.products) {
    const faults = checkLabel(label);
    for (const use of usesOf(label)) {
      const key = use.id === null ? label.id : `${label.id}/${use.id}`;
      const result = optionOf(input, key, use.id, use.product, faults);
      if (typeof result === 'string') leftOut.push({ key, product: use.product, why: result });
      else options.push(result);
    }
  }
  return { options, leftOut };
}

/** Whether an option has the least of one figure (ties too); no one has where all known ones are alike. */
export function isLeast(options: readonly CompareOption[], option: CompareOption, key: CompareKey): boolean {
  const value = option[key];
  if (value === null) return false;
  const values = options.flatMap((each) => each[key] ?? []);
  const most = Math.min(...values) * (1 + RELATIVE_SLACK);
  return value <= most && values.some((other) => other > most);
}

/** Sorted by one figure, least first, what is not known last; ties keep their order. */
export function sortOptions(options: readonly CompareOption[], key: CompareKey): readonly CompareOption[] {
  const of = (option: CompareOption) => option[key] ?? Number.POSITIVE_INFINITY;
  return options.toSorted((a, b) => (of(a) === of(b) ? 0 : of(a) - of(b)));
}

function optionOf(
  input: CompareInput,
  key: string,
  useId: string | null,
  product: Product,
  faults: readonly Issue[],
): CompareOption | string {
  const { areaM2, nKgPerM2 } = input;
  if (!(product.analysis.nPct > 0)) return 'it holds no nitrogen';
  const fault = [...faults, ...checkUse(product)].find((issue) => issue.severity === 'error');
  if (fault) return sentenceOf(fault);
  const { rate } = productRate(product);
  if (rate === null) return 'its label rate cannot be read';
  const atLabel = nutrientRates(product, rate);
  const most = input.dose === 'label-most' ? labelMostFactor(product) : null;
  const largest = largestDose(product, input.caps, most ?? 1);
  if (!atLabel || !largest) return 'its density is needed to tell its nitrogen';
  if (!(largest.factor > 0)) return 'a cap of zero leaves it no dose';
  const wanted = nKgPerM2 / atLabel.N;
  const visits = Math.max(1, Math.ceil((wanted / largest.factor) * (1 - RELATIVE_SLACK)));
  const rateFactor = wanted / visits;
  const each = productRate(product, rateFactor).rate;
  const laid = each && nutrientRates(product, each);
  const elements = each && elementRates(product, each);
  if (!each || !laid || !elements) return 'its label rate cannot be read';
  const amount = (times: number): Amount => ({
    unit: each.perM2.unit,
    value: each.perM2.value * areaM2 * times,
  });
  const total = amount(visits);
  const bought = buyPacks(product, total);
  const costs =
    bought.cost === null ? null : unitCosts(product, bought.cost, { ...total, value: bought.holds });
  const { minIntervalDays } = product.limits;
  return {
    key,
    productId: product.id,
    useId,
    product,
    visits,
    rateFactor,
    bound:
      visits === 1
        ? 'wanted'
        : largest.hold !== 'asked'
          ? largest.hold
          : most === null
            ? 'label-rate'
            : 'label-most',
    days: visits === 1 ? 0 : minIntervalDays === null ? null : (visits - 1) * minIntervalDays,
    perVisit: amount(1),
    total,
    solubleNPerVisit: solubleNitrogen(product, laid.N),
    saltPerVisit: saltLoad(product, each),
    nutrients: { N: laid.N * visits, P2O5: laid.P2O5 * visits, K2O: laid.K2O * visits },
    elements: Object.fromEntries(
      Object.entries(elements).map(([element, value]) => [element, value * visits]),
    ) as Partial<Record<LabelElement, number>>,
    packs: bought.packs,
    left: bought.packs.length === 0 ? null : leftOver(bought.holds, total.value),
    cost: bought.cost,
    costPerKgN: costs?.perKg.N ?? null,
    costPerM2: costs && (costs.perUnit * total.value) / areaM2,
    issues: yearIssues(product, visits, each.perM2, laid, input.caps),
  };
}

interface Bought {
  readonly packs: readonly PackCount[];
  readonly holds: number;
  readonly cost: number | null;
}

/** Packs for an amount: of least cost among those with a price, else the fewest. */
function buyPacks(product: Product, total: Amount): Bought {
  const sizes = packsToDrawOn(product).flatMap((pack) => {
    const content = convertAmount(pack.content, total.unit, product.densityKgPerL);
    return content && content.value > 0 ? { ...pack, content: content.value } : [];
  });
  const priced = sizes.filter((size) => size.price !== null);
  const goal = priced.length > 0 ? 'cost' : 'packs';
  const offered = priced.length > 0 ? priced : sizes;
  const best = coverNeed(
    total.value,
    offered.map(({ price, content }) => ({ content, score: scoreOfPack(goal, price, content) })),
    total.value * RELATIVE_SLACK,
  );
  if (best === null || total.value <= 0) return { packs: [], holds: 0, cost: null };
  const counted = offered.map((size, i) => ({ ...size, count: best.counts[i] ?? 0 }));
  const sum = (of: (size: (typeof counted)[number]) => number) =>
    counted.reduce((so, size) => so + size.count * of(size), 0);
  return {
    packs: counted.flatMap(({ id, count }) => (count > 0 ? { packId: id, count } : [])),
    holds: sum((size) => size.content),
    cost: goal === 'cost' ? sum((size) => size.price ?? 0) : null,
  };
}

/** An issue's words for the middle of a sentence, without the product's name. */
function sentenceOf({ message }: Issue): string {
  return message
    .slice(message.indexOf(': ') + 1)
    .trim()
    .replace(/\.$/, '');
}

/** What all visits together go over: the label's year, and the yard's caps of a year. @param laid by one visit, kg/m² */
function yearIssues(
  product: Product,
  visits: number,
  perM2: Amount,
  laid: NutrientRates,
  caps: NutrientCaps,
): readonly Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, message: string) =>
    issues.push({ code, severity: 'warning', message, place: { productId: product.id } });
  const { maxDosesPerYear, maxPerYear } = product.limits;
  if (maxDosesPerYear !== null && visits > maxDosesPerYear)
    add('compare-doses-per-year', `more visits than the ${maxDosesPerYear} a year of its label`);
  const most = maxPerYear && convertAmount(maxPerYear, perM2.unit, product.densityKgPerL);
  if (most && perM2.value * visits > most.value * (1 + RELATIVE_SLACK))
    add('compare-year-amount', 'more in all than its label allows in a year');
  const ofYear = [
    ['N', caps.nPerYear, 'nitrogen'],
    ['P2O5', caps.p2o5PerYear, 'P₂O₅'],
    ['K2O', caps.k2oPerYear, 'K₂O'],
  ] as const;
  for (const [nutrient, cap, name] of ofYear)
    if (cap !== null && laid[nutrient] * visits > cap * (1 + RELATIVE_SLACK))
      add(`compare-${nutrient.toLowerCase()}-year`, `more ${name} in all than the yard’s cap for a year`);
  return issues;
}
