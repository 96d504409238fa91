import type { Issue, Product } from '../yard/types';
import { usesOf } from './applyUse';
import { checkContents } from './checkContents';
import { checkPacks } from './checkPacks';
import { checkUse } from './checkUse';
import { labelIssue } from './labelIssue';

/** Liquids, granules and mulches of the trade lie well inside; outside is a slip of unit. Common practice, no source. */
const DENSITY_RANGE_KG_PER_L = [0.1, 3] as const;
/** Nothing is watered in deeper (4 in), and no spray asks for longer without rain (a week). Common practice, no source. */
const MOST_WATER_IN_M = 0.1016;
const MOST_RAINFAST_S = 7 * 86_400;
/** Members that each use has of its own; all else on a label holds for every use. */
const USE_PATH = /^(rate|packIds|carrier|spreadDistanceM|applicator|waterIn)/;

/**
 * What cannot be right on a label, each as one plain sentence with the field in `place.path` (a path in
 * Product, such as `analysis.nPct`, `packs[1].content` or `otherUses[0].rate.areaM2`). Errors stop a dose
 * from being planned; warnings do not. What several uses share is told once.
 */
export function checkProduct(product: Product): Issue[] {
  const uses = usesOf(product);
  const ofUses = uses.flatMap((use, i) => {
    const own = checkUse(use.product);
    return i === 0 ? own : own.map((issue) => atUse(issue, product, i - 1, use.name));
  });
  const seen = new Set<string>();
  return [...checkLabel(product), ...ofUses].filter((issue) => {
    const key = `${issue.code} ${issue.place.path}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The part of `checkProduct` that holds for the label as a whole; the rest is `checkUse` of each use. */
export function checkLabel(product: Product): Issue[] {
  return [
    ...checkContents(product),
    ...checkPacks(product),
    ...checkDensity(product),
    ...checkLimits(product),
    ...checkCare(product),
    ...checkUseNames(product),
  ];
}

/** An issue of another use than the first: it names the use, and stands at the use where the field is its own. */
function atUse(issue: Issue, product: Product, index: number, name: string): Issue {
  const path = issue.place.path ?? '';
  const head = issue.message.indexOf(': ');
  const called = name.trim() === '' ? `use ${index + 2}` : `use “${name.trim()}”`;
  const message =
    head < 0 ? issue.message : `${issue.message.slice(0, head)}: ${called}: ${issue.message.slice(head + 2)}`;
  const at = USE_PATH.test(path) ? `otherUses[${index}].${path}` : path;
  return { ...issue, message, place: { productId: product.id, path: at } };
}

function checkDensity(product: Product): Issue[] {
  const { densityKgPerL: density } = product;
  if (density === null) return [];
  if (!(density > 0))
    return [
      labelIssue(product, 'density-not-positive', 'densityKgPerL', 'the density must be more than zero.'),
    ];
  const [least, most] = DENSITY_RANGE_KG_PER_L;
  if (density >= least && density <= most) return [];
  const sentence = 'the density is unusual (water is 8.34 lb/gal, 1 kg/L); check the unit.';
  return [labelIssue(product, 'density-odd', 'densityKgPerL', sentence, 'warning')];
}

function checkLimits(product: Product): Issue[] {
  const { maxPerDose, maxPerYear, minIntervalDays, maxDosesPerYear, maxAirTempC } = product.limits;
  const issues: Issue[] = [];
  const add = (field: string, sentence: string) =>
    issues.push(labelIssue(product, 'limit-not-positive', `limits.${field}`, sentence));
  const amounts = [
    ['maxPerDose', maxPerDose, 'the most for one dose'],
    ['maxPerYear', maxPerYear, 'the most for a year'],
  ] as const;
  for (const [field, limit, words] of amounts)
    if (limit !== null && !(limit.value > 0))
      add(field, `${words} must be more than zero; leave it empty when the label is silent.`);
  const positive = 'a limit must be a positive number; leave it empty when the label is silent.';
  if (minIntervalDays !== null && !(minIntervalDays >= 0)) add('minIntervalDays', positive);
  if (maxDosesPerYear !== null && !(maxDosesPerYear >= 1)) add('maxDosesPerYear', positive);
  if (maxAirTempC !== null && !(maxAirTempC >= 0 && maxAirTempC <= 50))
    issues.push(
      labelIssue(
        product,
        'limit-temperature-odd',
        'limits.maxAirTempC',
        'the warmest air it may go out in is unusual; check the unit.',
        'warning',
      ),
    );
  return issues;
}

function checkCare(product: Product): Issue[] {
  const { name, rainfastS, waterInDepthM, shelfLifeDays, openedLifeDays } = product;
  const issues: Issue[] = [];
  const add = (code: string, path: string, sentence: string, severity: Issue['severity'] = 'warning') =>
    issues.push(labelIssue(product, code, path, sentence, severity));
  if (name.trim() === '') add('no-name', 'name', 'give it a name, so that a helper can find it.');
  if (rainfastS !== null && !(rainfastS >= 0))
    add('rainfast-negative', 'rainfastS', 'the time without rain cannot be less than zero.', 'error');
  else if (rainfastS !== null && rainfastS > MOST_RAINFAST_S)
    add('rainfast-odd', 'rainfastS', 'the time without rain is over a week; check the unit.');
  if (waterInDepthM !== null && !(waterInDepthM >= 0))
    add('water-in-negative', 'waterInDepthM', 'the water to water it in cannot be less than zero.', 'error');
  else if (waterInDepthM !== null && waterInDepthM > MOST_WATER_IN_M)
    add('water-in-odd', 'waterInDepthM', 'that is much water to water it in with; check the unit.');
  else if (waterInDepthM !== null && usesOf(product).every((use) => !use.product.waterIn))
    add('water-in-unused', 'waterInDepthM', 'a depth of water is given, but no use is to be watered in.');
  for (const [field, days, words] of [
    ['shelfLifeDays', shelfLifeDays, 'how long a closed container keeps'],
    ['openedLifeDays', openedLifeDays, 'how long an opened container keeps'],
  ] as const)
    if (days !== null && !(days > 0))
      add(
        'life-not-positive',
        field,
        `${words} must be more than zero; leave it empty when not told.`,
        'error',
      );
  if (shelfLifeDays !== null && openedLifeDays !== null && openedLifeDays > shelfLifeDays)
    add('life-opened-longer', 'openedLifeDays', 'an opened container would keep longer than a closed one.');
  return issues;
}

/** Ids must differ; so should what the person reads, which is the applicator where there is no name. */
function checkUseNames(product: Product): Issue[] {
  const uses = usesOf(product).map(({ id, name, product: { applicator } }) => ({
    id,
    called: name.trim().toLowerCase() || (applicator ?? ''),
  }));
  return uses.flatMap(({ id, called }, i): Issue[] => {
    if (i === 0) return [];
    const before = uses.slice(0, i);
    const path = `otherUses[${i - 1}]`;
    if (before.some((other) => other.id === id)) {
      const sentence = `use ${i + 1} has the same id as an earlier one (${id}), so they cannot be told apart; take one out and add it anew.`;
      return [labelIssue(product, 'use-id-double', `${path}.id`, sentence)];
    }
    if (before.every((other) => other.called !== called)) return [];
    const sentence = `use ${i + 1} is called like an earlier one; give it a name of its own.`;
    return [labelIssue(product, 'use-name-double', `${path}.name`, sentence, 'warning')];
  });
}
