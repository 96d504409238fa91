import { html, nothing, type TemplateResult } from 'lit';
import type { Issue } from '../../yard/types';

const WORDS: Readonly<Record<Issue['severity'], string>> = {
  error: 'Not right: ',
  warning: 'Check: ',
  note: '',
};

/** Issues as notes, the gravest first; nothing when there are none. The word tells the gravity, not the colour alone. */
export function issueNotes(issues: readonly Issue[]): TemplateResult | typeof nothing {
  if (issues.length === 0) return nothing;
  const order: readonly Issue['severity'][] = ['error', 'warning', 'note'];
  const sorted = [...issues].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  return html`${sorted.map(
    (issue) => html`<p class="note ${issue.severity}"><b>${WORDS[issue.severity]}</b>${issue.message}</p>`,
  )}`;
}

/** Issues whose `place.path` is one of the fields or lies within one. */
export function issuesAt(issues: readonly Issue[], ...fields: string[]): readonly Issue[] {
  return issues.filter((issue) => {
    const path = issue.place.path ?? '';
    return fields.some(
      (field) => path === field || path.startsWith(`${field}.`) || path.startsWith(`${field}[`),
    );
  });
}

/** The same issues for a place where the name at their head is already read: "Name: the rate …" gives "The rate …". */
export function withoutName(issues: readonly Issue[], name: string): readonly Issue[] {
  const heads = [`${name}: `, 'Unnamed product: '];
  return issues.map((issue) => {
    const head = heads.find((each) => issue.message.startsWith(each));
    if (head === undefined) return issue;
    const rest = issue.message.slice(head.length);
    return { ...issue, message: rest.charAt(0).toUpperCase() + rest.slice(1) };
  });
}
