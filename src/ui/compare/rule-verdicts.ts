import type { CompareOption } from '../../buy/compareTypes';
import { NUTRIENT_NAMES } from '../../season/capIssues';
import { ruleName, ruleSource } from '../../season/issueWords';
import { ruleIssues } from '../../season/ruleIssues';
import type { LedgerEntry } from '../../season/types';
import { formatNutrientRate } from '../../units/format';
import { chosenZones } from '../../yard/choose';
import type { LocalRule, RuleTerms, Yard, ZoneChoice } from '../../yard/types';

type YearCap = Extract<RuleTerms, { readonly kind: 'cap' }>;

/**
 * What the rules of the place that are on say against an option, by the same check as the ledger's: its
 * slow-release share, phosphorus and the most at once of one visit on chosen ground, and the most of a year of
 * all its visits. Rules about days and strips ask for a visit and are left to it.
 * @param today YYYY-MM-DD; soil tests and new turf count as on that day
 * @returns sentences; none where nothing speaks against it
 */
export function ruleVerdicts(
  yard: Yard,
  ground: ZoneChoice,
  option: CompareOption,
  today: string,
): readonly string[] {
  const { visits } = option;
  const ofVisit = yard.rules.filter(
    ({ terms }) => terms.kind === 'slow-share' || terms.kind === 'no-phosphorus' || isCapPer(terms, 'dose'),
  );
  const atOnce = ruleIssues({ ...yard, rules: ofVisit }, entriesOf(yard, ground, option, today, 1));
  const ofYear = yard.rules.filter(({ terms }) => isCapPer(terms, 'year'));
  const inAll = ruleIssues({ ...yard, rules: ofYear }, entriesOf(yard, ground, option, today, visits));
  return [
    ...atOnce.map((issue) => issue.message),
    ...ofYear.flatMap((rule) =>
      inAll.some(({ place }) => place.ruleId === rule.id)
        ? [yearWords(yard, rule, rule.terms as YearCap, option)]
        : [],
    ),
  ];
}

function isCapPer(terms: RuleTerms, per: YearCap['per']): terms is YearCap {
  return terms.kind === 'cap' && terms.per === per;
}

function yearWords(yard: Yard, rule: LocalRule, terms: YearCap, option: CompareOption): string {
  const isSoluble = terms.isSolubleOnly && terms.nutrient === 'N';
  const sum = isSoluble ? option.solubleNPerVisit * option.visits : option.nutrients[terms.nutrient];
  const what = isSoluble ? 'Soluble nitrogen' : NUTRIENT_NAMES[terms.nutrient];
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  const by = option.visits === 1 ? 'one visit' : 'all visits';
  return `${ruleName(rule)}: ${what} of ${show(sum)} by ${by} is over ${show(terms.maxKgPerM2)} a year. ${ruleSource(rule)}`;
}

/** What some of the option's visits lay on each zone, told as the ledger tells it. @param visits how many, all on one day */
function entriesOf(
  yard: Yard,
  ground: ZoneChoice,
  { productId, product, key, nutrients, elements, solubleNPerVisit, visits: all }: CompareOption,
  date: string,
  visits: number,
): readonly LedgerEntry[] {
  const part = visits / all;
  return chosenZones(yard, ground).map((zone) => ({
    visitId: 'compared',
    doseId: key,
    productId,
    productName: product.name,
    zoneId: zone.id,
    zoneName: zone.name,
    date,
    isDone: false,
    areaM2: 1,
    nutrientKgPerM2: { N: nutrients.N * part, P2O5: nutrients.P2O5 * part, K2O: nutrients.K2O * part },
    solubleNKgPerM2: solubleNPerVisit * visits,
    elementKgPerM2: elements,
    isSilentOnSlow: product.analysis.slowNPctOfN === null,
  }));
}
