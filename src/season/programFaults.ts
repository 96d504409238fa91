import type { Issue, Visit, Yard } from '../yard/types';
import { ruleName } from './issueWords';
import { inOrderOfDays } from './ledgerExcess';
import type { LedgerEntry } from './types';

/** A planned visit of a program that is not right, and the first thing that is wrong. */
export interface ProgramFault {
  readonly visit: Visit;
  readonly message: string;
}

/**
 * Every planned visit of a program that is not right, by day. Where a rule for a year is passed by one visit, those
 * after it in that year that lay more of the nutrient on the same ground are not right either.
 * @param entries the ledger of the yard; @param issuesOf what speaks against a visit
 */
export function programFaults(
  yard: Yard,
  entries: readonly LedgerEntry[],
  issuesOf: (visitId: string) => readonly Issue[],
): readonly ProgramFault[] {
  const messages = new Map<string, string>();
  const isPlan = (visit: Visit) => visit.program !== null && visit.doneOn === null;
  const passed: Issue[] = [];
  for (const visit of yard.visits) {
    const errors = issuesOf(visit.id).filter((issue) => issue.severity === 'error');
    passed.push(...errors.filter((issue) => issue.code === 'rule-cap-year'));
    if (errors[0]) messages.set(visit.id, errors[0].message);
  }
  const sorted = inOrderOfDays(entries);
  for (const { place } of passed) {
    const rule = yard.rules.find((one) => one.id === place.ruleId);
    if (rule?.terms.kind !== 'cap') continue;
    const { nutrient, isSolubleOnly } = rule.terms;
    const lays = (entry: LedgerEntry) =>
      (isSolubleOnly && nutrient === 'N' ? entry.solubleNKgPerM2 : entry.nutrientKgPerM2[nutrient]) > 0;
    const own = sorted.filter((entry) => entry.visitId === place.visitId && lays(entry));
    const zones = new Set(own.map((entry) => entry.zoneId));
    const date = own[0]?.date ?? null;
    if (date === null) continue;
    const after = sorted.slice(sorted.findLastIndex((entry) => entry.visitId === place.visitId) + 1);
    for (const entry of after)
      if (
        lays(entry) &&
        zones.has(entry.zoneId) &&
        entry.date?.startsWith(date.slice(0, 4)) &&
        !messages.has(entry.visitId)
      )
        messages.set(entry.visitId, `${ruleName(rule)}: the year is over it before this visit.`);
  }
  return yard.visits
    .flatMap((visit) => {
      const message = messages.get(visit.id);
      return message !== undefined && isPlan(visit) ? [{ visit, message }] : [];
    })
    .sort((a, b) => ((a.visit.date ?? '9999') < (b.visit.date ?? '9999') ? -1 : 1));
}
