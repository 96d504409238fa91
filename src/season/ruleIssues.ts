import { formatNutrientRate, formatPercent } from '../units/format';
import type { Issue, LocalRule, RuleTerms, Yard, Zone } from '../yard/types';
import { spanYearOf } from '../yard/yearDay';
import { zoneNames } from '../yard/zoneNames';
import { NUTRIENT_NAMES } from './capIssues';
import { productName, ruleName, ruleSource, visitIssue } from './issueWords';
import { findExcess } from './ledgerExcess';
import { phosphorusExcuse } from './ruleExcuses';
import type { LedgerEntry } from './types';
import { spanWords, yearDayWords } from './yearDayWords';

type Terms<K extends RuleTerms['kind']> = Extract<RuleTerms, { readonly kind: K }>;

/** Shares of slow-release nitrogen may fall short by rounding of the label. */
const SHARE_SLACK = 1e-9;

/**
 * Holds the ledger, planned and done together, against the rules of the place that are on. The rules are
 * the person's own entries: nothing here is claimed to be law. Buffers are kept by the strips (`stripWidths`).
 * @returns `rule-no-phosphorus`, `rule-blackout`, `rule-cap-dose`, `rule-cap-year`, `rule-slow-share`
 * (errors), with the rule and the dose or the visit that breaks it
 */
export function ruleIssues(yard: Yard, entries: readonly LedgerEntry[]): readonly Issue[] {
  return yard.rules.flatMap((rule) => (rule.isOn ? issuesOf(yard, rule, entries) : []));
}

function issuesOf(yard: Yard, rule: LocalRule, entries: readonly LedgerEntry[]): readonly Issue[] {
  switch (rule.terms.kind) {
    case 'no-phosphorus':
      return phosphorusIssues(yard, rule, rule.terms, entries);
    case 'blackout':
      return blackoutIssues(yard, rule, rule.terms, entries);
    case 'cap':
      return capRuleIssues(yard, rule, rule.terms, entries);
    case 'slow-share':
      return slowIssues(rule, rule.terms, entries);
    case 'buffer':
      return [];
  }
}

/** Entries at fault together by dose: one issue a dose, with all its zones. */
function byDose(
  entries: readonly LedgerEntry[],
): readonly (readonly [LedgerEntry, ...(readonly LedgerEntry[])])[] {
  const groups = new Map<string, [LedgerEntry, ...LedgerEntry[]]>();
  for (const entry of entries) {
    const group = groups.get(entry.doseId);
    if (group) group.push(entry);
    else groups.set(entry.doseId, [entry]);
  }
  return [...groups.values()];
}

function doseIssue(rule: LocalRule, code: string, of: LedgerEntry, words: string): Issue {
  const message = `${ruleName(rule)}: ${productName(of)} ${words} ${ruleSource(rule)}`;
  const { doseId, productId } = of;
  return visitIssue(code, 'error', message, of.visitId, { doseId, productId, ruleId: rule.id });
}

function phosphorusIssues(
  yard: Yard,
  rule: LocalRule,
  terms: Terms<'no-phosphorus'>,
  entries: readonly LedgerEntry[],
): readonly Issue[] {
  const zones = new Map(yard.zones.map((zone): [string, Zone] => [zone.id, zone]));
  const excuses = new Map<string, boolean>();
  const isExcused = ({ zoneId, date }: LedgerEntry): boolean => {
    const key = `${zoneId} ${date}`;
    const zone = zones.get(zoneId);
    // of ground that is gone nobody can tell any more whether a test or new turf excused it
    const known =
      excuses.get(key) ??
      (zone === undefined
        ? terms.unlessSoilTest || terms.unlessNewLawn
        : phosphorusExcuse(yard, zone, date, terms) !== null);
    excuses.set(key, known);
    return known;
  };
  const faults = entries.filter((entry) => entry.nutrientKgPerM2.P2O5 > 0 && !isExcused(entry));
  const ways = [
    ...(terms.unlessSoilTest
      ? [
          terms.testYears === null
            ? 'a soil test that shows a need'
            : `a soil test of the last ${terms.testYears === 1 ? 'year' : `${terms.testYears} years`} that shows a need`,
        ]
      : []),
    ...(terms.unlessNewLawn ? ['a lawn sown or laid within a year'] : []),
  ];
  const only = ways.length === 0 ? 'none is allowed' : `none is allowed without ${ways.join(' or ')}`;
  return byDose(faults).map((group) => {
    const most = Math.max(...group.map((entry) => entry.nutrientKgPerM2.P2O5));
    const where = zoneNames(
      yard,
      group.map((entry) => entry.zoneId),
    );
    const words = `lays down ${formatNutrientRate(most, yard.settings.units)} of P2O5 on ${where}; ${only}.`;
    return doseIssue(rule, 'rule-no-phosphorus', group[0], words);
  });
}

function blackoutIssues(
  yard: Yard,
  rule: LocalRule,
  terms: Terms<'blackout'>,
  entries: readonly LedgerEntry[],
): readonly Issue[] {
  const faults = entries.filter(
    ({ date, nutrientKgPerM2 }) =>
      date !== null &&
      spanYearOf(date, terms) !== null &&
      terms.nutrients.some((nutrient) => nutrientKgPerM2[nutrient] > 0),
  );
  return byDose(faults).map((group) => {
    const { date } = group[0];
    const carried = terms.nutrients.filter((one) => group.some((entry) => entry.nutrientKgPerM2[one] > 0));
    const most = carried.map((one) => {
      const rate = Math.max(...group.map((entry) => entry.nutrientKgPerM2[one]));
      return `${formatNutrientRate(rate, yard.settings.units)} of ${one}`;
    });
    const where = zoneNames(
      yard,
      group.map((entry) => entry.zoneId),
    );
    const words = `lays down ${most.join(' and ')} on ${where} on ${date ? yearDayWords(date.slice(5)) : ''}; none is allowed from ${spanWords(terms)}.`;
    return doseIssue(rule, 'rule-blackout', group[0], words);
  });
}

function capRuleIssues(
  yard: Yard,
  rule: LocalRule,
  terms: Terms<'cap'>,
  entries: readonly LedgerEntry[],
): readonly Issue[] {
  const isSoluble = terms.isSolubleOnly && terms.nutrient === 'N';
  const passed = findExcess(entries, {
    amountOf: (entry) => (isSoluble ? entry.solubleNKgPerM2 : entry.nutrientKgPerM2[terms.nutrient]),
    // at once: all that is laid down on one day, or at one visit without a day
    stretchOf: ({ date, visitId }) =>
      terms.per === 'year' ? (date?.slice(0, 4) ?? null) : (date ?? `visit ${visitId}`),
    limitOf: () => terms.maxKgPerM2,
  });
  const show = (rate: number) => formatNutrientRate(rate, yard.settings.units);
  const what = isSoluble ? 'Soluble nitrogen' : NUTRIENT_NAMES[terms.nutrient];
  return passed.map(({ visitId, stretch, zoneIds, sum, limit }) => {
    const [when, most] = terms.per === 'year' ? [` in ${stretch}`, 'a year'] : ['', 'at once'];
    const passes = terms.per === 'year' ? '; this visit passes it' : '';
    const message = `${ruleName(rule)}: ${what} of ${show(sum)}${when} on ${zoneNames(yard, zoneIds)} is over ${show(limit)} ${most}${passes}. ${ruleSource(rule)}`;
    return visitIssue(`rule-cap-${terms.per}`, 'error', message, visitId, { ruleId: rule.id });
  });
}

function slowIssues(
  rule: LocalRule,
  terms: Terms<'slow-share'>,
  entries: readonly LedgerEntry[],
): readonly Issue[] {
  const least = terms.minPct / 100;
  const shareOf = ({ nutrientKgPerM2: { N }, solubleNKgPerM2 }: LedgerEntry) => 1 - solubleNKgPerM2 / N;
  const faults = entries.filter(
    (entry) => entry.nutrientKgPerM2.N > 0 && shareOf(entry) < least - SHARE_SLACK,
  );
  return byDose(faults).map((group) => {
    const [first] = group;
    const has = first.isSilentOnSlow
      ? 'does not say on its label how much of its nitrogen is slow-release, so all of it counts as soluble'
      : `has ${formatPercent(Math.max(0, shareOf(first)))} of its nitrogen slow-release`;
    const words = `${has}; at least ${formatPercent(least)} is asked for.`;
    return doseIssue(rule, 'rule-slow-share', first, words);
  });
}

/** True where a rule needs the day of a visit that lays down these nutrients. */
export function asksForDay({ isOn, terms }: LocalRule, { nutrientKgPerM2 }: LedgerEntry): boolean {
  if (!isOn) return false;
  if (terms.kind === 'blackout') return terms.nutrients.some((one) => nutrientKgPerM2[one] > 0);
  if (terms.kind === 'cap') return terms.per === 'year' && nutrientKgPerM2[terms.nutrient] > 0;
  return terms.kind === 'no-phosphorus' && nutrientKgPerM2.P2O5 > 0;
}
