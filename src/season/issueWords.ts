import { formatDay } from '../units/formatDay';
import type { Issue, LocalRule } from '../yard/types';

/** Name of the product of an entry: as recorded where it is done. */
export function productName({ productName: name }: { readonly productName: string }): string {
  return name || 'A product without a name';
}

/** Name of a rule of the place in quotes. */
export function ruleName(rule: LocalRule): string {
  return `Rule “${rule.name.trim() || 'without a name'}”`;
}

/** From where and when the person took a rule. Nothing here claims that it holds today. */
export function ruleSource({ source, readOn }: LocalRule): string {
  const words = source.trim().replace(/\.$/, '');
  const from = words === '' ? ', without a source' : ` from “${words}”`;
  const read = readOn === null ? '' : `, read on ${formatDay(readOn, true)}`;
  return `As entered by you${from}${read}; check the local code.`;
}

/** An issue on a visit, and on its dose where one is at fault. */
export function visitIssue(
  code: string,
  severity: Issue['severity'],
  message: string,
  visitId: string,
  more: Issue['place'] = {},
): Issue {
  return { code, severity, message, place: { visitId, ...more } };
}
