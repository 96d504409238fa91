import { ELEMENTS, type Issue, type Product } from '../yard/types';
import { elementalPct } from './elemental';
import { labelIssue } from './labelIssue';

const SLACK = 1 + 1e-9;
/** Pure magnesium oxide, the strongest liming material, is 250 (Univ. of Nebraska-Lincoln, Plant and Soil Sciences, table 4.4). */
const MOST_LIME_PCT = 250;
/** Table salt, the saltiest material of the tables, is 153.8 (Mortvedt 2001). */
const MOST_SALT_INDEX = 200;

const isPct = (pct: number) => pct >= 0 && pct <= 100;
const round = (pct: number) => Number(pct.toFixed(2));

/** What cannot be right in what the label says is inside: analysis, elements, ingredients, seed, lime, salt. */
export function checkContents(product: Product): Issue[] {
  return [
    ...checkAnalysis(product),
    ...checkElements(product),
    ...checkIngredients(product),
    ...checkSeed(product),
    ...checkValues(product),
  ];
}

function checkAnalysis(product: Product): Issue[] {
  const { nPct, p2o5Pct, k2oPct, slowNPctOfN } = product.analysis;
  const numbers = [
    ['nPct', nPct, 'N'],
    ['p2o5Pct', p2o5Pct, 'P2O5'],
    ['k2oPct', k2oPct, 'K2O'],
  ] as const;
  const issues = numbers
    .filter(([, pct]) => !isPct(pct))
    .map(([field, pct, name]) =>
      labelIssue(
        product,
        'analysis-out-of-range',
        `analysis.${field}`,
        `${name} must be from 0 to 100 %, not ${pct}.`,
      ),
    );
  const total = nPct + p2o5Pct + k2oPct;
  if (issues.length === 0 && total > 100 * SLACK) {
    const sentence = `the analysis adds up to ${round(total)} %; it cannot be over 100 %.`;
    issues.push(labelIssue(product, 'analysis-over-100', 'analysis', sentence));
  }
  if (slowNPctOfN !== null && !isPct(slowNPctOfN)) {
    const sentence = 'the slow-release share must be from 0 to 100 % of the nitrogen.';
    issues.push(labelIssue(product, 'slow-n-out-of-range', 'analysis.slowNPctOfN', sentence));
  }
  return issues;
}

/**
 * Elements lie from 0 to 100 %, and all of them with N, P and K no more than the whole. P and K count here
 * as elements: by the oxide convention muriate of potash, 0-0-62 with 47 % Cl, would pass 100 %.
 */
function checkElements(product: Product): Issue[] {
  const { analysis } = product;
  const given = ELEMENTS.flatMap((element) => {
    const pct = analysis.elementsPct[element];
    return pct === undefined ? [] : [{ element, pct }];
  });
  const issues = given
    .filter(({ pct }) => !isPct(pct))
    .map(({ element, pct }) =>
      labelIssue(
        product,
        'element-out-of-range',
        `analysis.elementsPct.${element}`,
        `${element} must be from 0 to 100 %, not ${pct}.`,
      ),
    );
  if (issues.length > 0 || given.length === 0) return issues;
  const { nPct, pPct, kPct } = elementalPct(analysis);
  const total = nPct + pPct + kPct + given.reduce((sum, { pct }) => sum + pct, 0);
  if (!(total > 100 * SLACK)) return [];
  const sentence = `N, P, K and the other elements add up to ${round(total)} % of the weight; it cannot be over 100 %.`;
  return [labelIssue(product, 'elements-over-100', 'analysis.elementsPct', sentence)];
}

function checkIngredients(product: Product): Issue[] {
  const { ingredients } = product;
  const names = ingredients.map(({ name }) => name.trim().toLowerCase());
  const issues = ingredients.flatMap(({ name, pct }, i): Issue[] => {
    const path = `ingredients[${i}]`;
    const called = name.trim() || `ingredient ${i + 1}`;
    const own: Issue[] = [];
    if (name.trim() === '')
      own.push(
        labelIssue(
          product,
          'ingredient-no-name',
          `${path}.name`,
          `ingredient ${i + 1} has no name.`,
          'warning',
        ),
      );
    else if (names.indexOf(names[i] ?? '') < i)
      own.push(
        labelIssue(product, 'ingredient-double', `${path}.name`, `${called} is listed twice.`, 'warning'),
      );
    if (!isPct(pct))
      own.push(
        labelIssue(
          product,
          'ingredient-out-of-range',
          `${path}.pct`,
          `${called} must be from 0 to 100 %, not ${pct}.`,
        ),
      );
    return own;
  });
  const total = ingredients.reduce((sum, { pct }) => sum + (isPct(pct) ? pct : 0), 0);
  if (total > 100 * SLACK) {
    const sentence = `the ingredients add up to ${round(total)} %; they cannot be over 100 %.`;
    issues.push(labelIssue(product, 'ingredients-over-100', 'ingredients', sentence));
  }
  return issues;
}

function checkSeed(product: Product): Issue[] {
  const { seed } = product;
  if (seed === null) return [];
  const fields = [
    ['purityPct', seed.purityPct, 'the purity of the seed'],
    ['germinationPct', seed.germinationPct, 'the germination of the seed'],
  ] as const;
  return fields
    .filter(([, pct]) => !isPct(pct))
    .map(([field, pct, what]) =>
      labelIssue(
        product,
        'seed-out-of-range',
        `seed.${field}`,
        `${what} must be from 0 to 100 %, not ${pct}.`,
      ),
    );
}

function checkValues(product: Product): Issue[] {
  const { limePct, saltIndex } = product;
  const issues: Issue[] = [];
  if (limePct !== null && !(limePct > 0 && limePct <= MOST_LIME_PCT)) {
    const sentence = `the effective neutralising value must be more than 0 and at most ${MOST_LIME_PCT} (pure calcium carbonate is 100); leave it empty for what is no lime.`;
    issues.push(labelIssue(product, 'lime-out-of-range', 'limePct', sentence));
  }
  if (saltIndex !== null && !(saltIndex >= 0))
    issues.push(
      labelIssue(product, 'salt-index-negative', 'saltIndex', 'the salt index cannot be less than zero.'),
    );
  else if (saltIndex !== null && saltIndex > MOST_SALT_INDEX)
    issues.push(
      labelIssue(
        product,
        'salt-index-odd',
        'saltIndex',
        'the salt index is unusual (sodium nitrate is 100, table salt about 154); check it.',
        'warning',
      ),
    );
  return issues;
}
