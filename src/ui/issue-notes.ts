import { html, nothing, type TemplateResult } from 'lit';
import type { Issue } from '../yard/types';

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
